import { expect, test } from 'vitest';
import { applyPatch } from '../../document/patch.ts';
import type { Written } from '../../document/written.ts';
import { bringBackPatch } from './bringBack.ts';

const THEN: Written = {
  longsecond: 1,
  order: { shots: ['pour', 'crown', 'honey'] },
  shots: { pour: { stop: 'T8' }, crown: { title: 'The crown', stop: 'T4' }, honey: {} },
};

const NOW: Written = { longsecond: 1, order: { shots: ['honey', 'pour'] }, shots: { pour: { stop: 'T8' }, honey: {} } };

const patch = [{ op: 'replace', path: '/shots/crown/stop', value: 'T11' }] as const;

test('a shot that was taken out comes back as it was, with the edit, after the shot that it followed', () => {
  const whole = bringBackPatch({ then: THEN, now: NOW, patch });
  expect(applyPatch(NOW, whole!)).toEqual({
    longsecond: 1,
    order: { shots: ['honey', 'pour', 'crown'] },
    shots: { pour: { stop: 'T8' }, honey: {}, crown: { title: 'The crown', stop: 'T11' } },
  });
});

test('where nothing is gone the edit alone is enough', () => {
  expect(bringBackPatch({ then: THEN, now: THEN, patch })).toEqual(patch);
});

test('what was not there then either cannot be brought back', () => {
  const lost = [{ op: 'replace', path: '/shots/never/stop', value: 'T11' }] as const;
  expect(bringBackPatch({ then: THEN, now: NOW, patch: lost })).toBeUndefined();
});
