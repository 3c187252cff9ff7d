import { describe, expect, test } from 'vitest';
import { changed, DEMO, readSound, SMALL } from '../../../test/shoots.ts';
import { readShoot } from '../../document/read.ts';
import type { Written } from '../../document/written.ts';
import { planShoot } from '../plan.ts';
import type { Margin } from '../types.ts';
import { compileDay } from './dayModel.ts';
import { workLeft } from './dayMargin.ts';
import { simulateDays } from './simulate.ts';

type Changes = Readonly<Record<string, Written | undefined>>;

const dayOfMargin = (changes: Changes): Margin | undefined =>
  planShoot(readShoot(changed(SMALL, changes)).shoot).margins.find(({ id }) => id === 'day');

/** A day without any chance: change of 30 min, then takes of 7 + 1 + 3 min, all of them good. */
const EXACT: Changes = {
  '/shoot/day': { call: '08:00', wrap: '10:00', mealLength: '30 min' },
  '/shoot/day/usual': { set: '30 min ± 0 s', light: '0 s', camera: '0 s', lens: '0 s', mode: '0 s', reset: '7 min ± 0 s', safety: '0 s', roll: '60 s ± 0 s', review: '3 min ± 0 s' },
  '/shots/one/good': 1,
}; // prettier-ignore

describe('time in the day', () => {
  test('is call to wrap for the work by hand: 30 min and three takes of 11 min', () => {
    const margin = dayOfMargin(EXACT);
    expect(margin).toMatchObject({ state: 'spare', isHard: false, kind: 'time', have: 7200, need: 63 * 60, path: '/shoot/day/wrap' });
    expect(margin!.stops).toEqual({ value: Math.log2(7200 / 3780), low: Math.log2(7200 / 3780), high: Math.log2(7200 / 3780) });
  }); // prettier-ignore

  test('is short where the work is longer', () => {
    expect(dayOfMargin({ ...EXACT, '/shoot/day/wrap': '09:00' })).toMatchObject({ state: 'short', spare: -180 });
  });

  test('is tight where the middle day ends in time and the late one does not', () => {
    expect(dayOfMargin({ ...EXACT, '/shots/one/good': 0.5, '/shoot/day/wrap': '10:00' })).toMatchObject({ state: 'tight' }); // prettier-ignore
  });

  test('counts the meals that fall in it', () => {
    expect(dayOfMargin({ ...EXACT, '/shoot/day/meals': ['08:30', '12:00'] })!.need).toBe(93 * 60);
    expect(dayOfMargin({ ...EXACT, '/shoot/day/mealWithin': '40 min' })!.need).toBe(93 * 60);
  });

  test('counts from now what is left', () => {
    const margin = dayOfMargin({ ...EXACT, '/shoot/day/now': '09:00', '/shots/one/soFar': { takes: 2, good: 2 } });
    expect(margin).toMatchObject({ have: 3600, need: 11 * 60 });
    expect(dayOfMargin({ ...EXACT, '/shots/one/soFar': { done: true } })).toMatchObject({ need: 0, state: 'spare' });
  });

  test('counts no more takes than there are pieces for', () => {
    const pieces = { '/kit/products': { egg: { pieces: 5 } }, '/shots/one/hero/product': 'egg', '/shots/one/hero/perTake': 2 }; // prettier-ignore
    expect(dayOfMargin({ ...EXACT, ...pieces })!.need).toBe((30 + 2 * 11) * 60);
  });

  test('counts the wait for a memory that empties slowly', () => {
    // 1,244,160,000 B at 1 MB/s take 1244.16 s, and 600 s of review and reset cover part of it, twice.
    const need = dayOfMargin({ ...EXACT, '/kit/cameras/body/saveRate': '1 MB/s ± 0 %' })!.need!;
    expect(need).toBeCloseTo(3780 + 2 * (1244.16 - 600), 6);
  });

  test.each([
    ['call', { '/shoot/day/call': undefined }],
    ['wrap', { '/shoot/day/wrap': undefined }],
    ['any shot', { '/shots': {} }],
  ] as const)('is not judged without %s', (_, changes) => {
    expect(dayOfMargin({ ...EXACT, ...changes })).toBeUndefined();
  });

  test.each([
    ['/shoot/day/wrap', 'late'],
    ['/shoot/day/call', 'early'],
    ['/shoot/day/now', 'later'],
    ['/shoot/day/usual/review', 'a while'],
    ['/shots/one/times', { review: 'a while' }],
    ['/shots/one/takes', 'some'],
  ] as const)('is unknown while %s cannot be read, and says so', (path, value) => {
    const margin = dayOfMargin({ ...EXACT, [path]: value });
    expect(margin!.state).toBe('unknown');
    expect(margin!.missing.map((one) => [one.path, one.because])).toContainEqual([path.endsWith('times') ? `${path}/review` : path, 'unread']); // prettier-ignore
  });

  test('names what nobody wrote', () => {
    const margin = dayOfMargin({ '/shoot/day': { call: '08:00', wrap: '18:00' } });
    expect(margin!.assumed.map(({ name }) => name)).toEqual(expect.arrayContaining(['setTime_s', 'resetTime_s', 'reviewTime_s', 'mealWithin_s'])); // prettier-ignore
  });
});

test('the closed form comes near the mean of many drawn days', () => {
  const shoot = readSound(DEMO);
  const { shots } = planShoot(shoot);
  const { model } = compileDay(
    shoot,
    shots,
    shots.map(({ id }) => id),
  );
  const { wrap_s } = simulateDays(model, { dayCount: 4000, seed: 3 });
  const mean_s = wrap_s.reduce((a, b) => a + b, 0) / wrap_s.length - model.starts_s;
  const spread_s = Math.sqrt(wrap_s.reduce((sum, at) => sum + (at - model.starts_s - mean_s) ** 2, 0) / wrap_s.length);
  const left = workLeft(model);
  expect(left.mean_s / mean_s).toBeGreaterThan(0.95);
  expect(left.mean_s / mean_s).toBeLessThan(1.05);
  expect(Math.sqrt(left.variance) / spread_s).toBeGreaterThan(0.8);
  expect(Math.sqrt(left.variance) / spread_s).toBeLessThan(1.25);
});
