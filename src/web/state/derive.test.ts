import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { applyPatch } from '../../document/patch.ts';
import { readShootText } from '../../document/text.ts';
import { deriveShoot } from './derive.ts';

const { written } = readShootText(readFileSync(new URL('../../../demo/shoot.yaml', import.meta.url), 'utf8'));

test('the same written shoot gives the very same plan', () => {
  expect(deriveShoot(written).plan).toBe(deriveShoot(written).plan);
});

test('an edit of one shot plans that shot anew and leaves the plans of all others as they are', () => {
  const before = deriveShoot(written).plan;
  const after = deriveShoot(
    applyPatch(written, [{ op: 'replace', path: '/shots/crown/frameWidth', value: '60 mm' }]),
  ).plan;
  const changed = after.shots.filter((shot, i) => shot !== before.shots[i]).map(({ id }) => id);
  expect(changed).toEqual(['crown']);
});
