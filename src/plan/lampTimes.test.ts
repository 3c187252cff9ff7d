import { expect, test } from 'vitest';
import { changed, planned, SMALL } from '../../test/shoots.ts';
import type { Written } from '../document/written.ts';

type Changes = Readonly<Record<string, Written | undefined>>;

const ARC = { title: 'Arc', kind: 'discharge', warmUp: '3 min', restrike: '10 min', drift: '0.1 stops' };
const LAMPS = {
  arc: ARC,
  warm: { title: 'Warm', kind: 'tungsten', warmUp: '20 s' },
  plain: { title: 'Plain', kind: 'led' },
};
const lit = (lamps: Readonly<Record<string, Written>>, more: Changes = {}) =>
  planned(changed(SMALL, { '/kit/lamps': LAMPS, '/lighting/key/lamps': lamps, ...more }));

test('lamps that take their time are told to the plan and in its notes: up before the roll, not out between takes, read again', () => {
  const { lampTimes, notes } = lit({ rim: { lamp: 'arc', title: 'Rim', at: '0 m, -3 m, 0 m' } });
  expect(lampTimes).toEqual([{ id: 'rim', title: 'Rim', warmUp_s: 180, restrike_s: 600, drift_stops: 0.1 }]);
  expect(notes).toEqual([
    'Lamps to full 3 min before the roll: Rim takes that long to steady.',
    'Do not put Rim out between takes: 10 min before it lights again. Flag or turn away instead.',
    'Rim still changes by up to 0.1 stops in an hour: read the light again before what must match.',
  ]);
});

test('the slowest of several sets the time, and lamps that are off or say nothing are left out', () => {
  const { lampTimes, notes } = lit({
    a: { lamp: 'arc' },
    b: { lamp: 'warm' },
    c: { lamp: 'plain' },
    d: { lamp: 'warm', off: true },
  });
  expect(lampTimes.map(({ id }) => id)).toEqual(['a', 'b']);
  expect(notes[0]).toBe('Lamps to full 3 min before the roll: Arc and Warm take up to that long to steady.');
});

test('a lamp that is up at once and lights again at once calls for no note', () => {
  expect(
    lit({ c: { lamp: 'warm' } }, { '/kit/lamps/warm/warmUp': '0 s', '/kit/lamps/warm/restrike': '0 s' }).notes,
  ).toEqual([]);
});

test('warming up is no part of a take, and where nobody wrote how long a take is lit, that is said of what melts', () => {
  const melts = { '/kit/products/scoop': { warms: 'ice-cream' }, '/shots/one/hero': { product: 'scoop' } };
  const says = (more: Changes) => lit({ a: { lamp: 'arc' } }, more).notes.filter((note) => note.includes('stand-in'));
  expect(says(melts)).toEqual([
    'Let the lamps come to full on a stand-in: the light-on time of a take is not written, and on the product those 3 min would count as well.',
  ]);
  expect(says({ ...melts, '/shots/one/hero/lightOn': '2 min' })).toEqual([]);
  expect(says({})).toEqual([]);
});
