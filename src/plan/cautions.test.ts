import { expect, test } from 'vitest';
import { changed, planned, SMALL } from '../../test/shoots.ts';
import type { Written } from '../document/written.ts';

const keysOf = (changes: Readonly<Record<string, Written | undefined>>): readonly string[] => planned(changed(SMALL, changes)).cautions.map(({ key }) => key); // prettier-ignore

const PLAIN = { '/shots/one/hero': undefined };

test('a shot in ordinary light, that moves and heats nothing, calls for no caution', () => {
  expect(keysOf(PLAIN)).toEqual([]);
});

test('the words of the shot itself come first, as written', () => {
  const plan = planned(changed(SMALL, { '/shots/one/cautions': ['Wet floor.', 'Glass.'] }));
  expect(plan.cautions.slice(0, 2)).toEqual([
    { key: 'own', says: 'Wet floor.' },
    { key: 'own', says: 'Glass.' },
  ]);
});

test('light beyond 50 klx calls for one, whether it is needed or already there', () => {
  expect(keysOf({ ...PLAIN, '/shots/one/stop': 'T8', '/shots/one/index': 800 })).toEqual(['intense-light']);
  expect(keysOf({ ...PLAIN, '/lighting/key/illuminance': '60 klx' })).toEqual(['intense-light']);
  expect(keysOf({ ...PLAIN, '/lighting/key/illuminance': '49 klx' })).toEqual([]);
});

test('a rig calls for one, and so does a product that does not last', () => {
  const rigs = { '/kit/rigs': { arm: { title: 'Arm' } }, '/shots/one/rigs': ['arm'] };
  expect(keysOf({ ...PLAIN, ...rigs })).toEqual(['moving-rigs']);
  expect(keysOf({})).toEqual(['heat']);
});

test('no caution says that anything is safe', () => {
  const rigs = { '/kit/rigs': { arm: { title: 'Arm' } }, '/shots/one/rigs': ['arm'] };
  const { cautions } = planned(changed(SMALL, { ...rigs, '/lighting/key/illuminance': '90 klx' }));
  expect(cautions).toHaveLength(3);
  for (const { says } of cautions) expect(says).not.toMatch(/\bsafe/i);
});
