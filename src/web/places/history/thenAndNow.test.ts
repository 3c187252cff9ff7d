import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { applyPatch } from '../../../document/patch.ts';
import { readShoot } from '../../../document/read.ts';
import { readShootText } from '../../../document/text.ts';
import { planShoot } from '../../../plan/plan.ts';
import { thenAndNow } from './thenAndNow.ts';

const { written } = readShootText(readFileSync(new URL('../../../../demo/shoot.yaml', import.meta.url), 'utf8'));

const planOf = (...patch: Parameters<typeof applyPatch>[1]) => planShoot(readShoot(applyPatch(written, patch)).shoot);

test('a shoot against itself has no shot that stood otherwise', () => {
  expect(thenAndNow(planOf(), planOf())).toEqual([]);
});

test('a shot that asks for more than it did stands otherwise, and only that one', () => {
  const found = thenAndNow(planOf(), planOf({ op: 'add', path: '/shots/crown/depth', value: '60 mm' }));
  expect(found.map(({ id }) => id)).toEqual(['crown']);
  expect(found[0]?.then?.says).not.toBe(found[0]?.now?.says);
  expect(found[0]?.now?.standing).toBe('short');
});

test('a shot that was taken out has no now, and one that was added no then', () => {
  const without = planOf({ op: 'remove', path: '/shots/honey' });
  const gone = thenAndNow(planOf(), without).find(({ id }) => id === 'honey');
  expect(gone?.now).toBeUndefined();
  expect(gone?.then).toBeDefined();
  const added = thenAndNow(without, planOf()).find(({ id }) => id === 'honey');
  expect(added?.then).toBeUndefined();
  expect(added?.now).toBeDefined();
});
