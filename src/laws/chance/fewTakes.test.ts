import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { drawFour, drawKey } from '../../base/randomStream.ts';
import { chiSquareAbove, chiSquareQuantile, deviationBand, middleReach, studentQuantile, studentShare } from './fewTakes.ts'; // prettier-ignore
import { normalQuantile } from './normal.ts';

type Given = readonly [shareFraction: number, degreeCount: number];
const chiSquare = ([shareFraction, degreeCount]: Given): number => chiSquareQuantile({ shareFraction, degreeCount });
const student = ([shareFraction, degreeCount]: Given): number => studentQuantile({ shareFraction, degreeCount });

describe('published values', () => {
  published('chi-square', chiSquare, [
    { source: 'chi-square-table', at: '2 degrees, 0.90 above', given: [0.1, 2] as const, expected: '.211' },
    { source: 'chi-square-table', at: '3 degrees, 0.95 above', given: [0.05, 3] as const, expected: '.352' },
    { source: 'chi-square-table', at: '4 degrees, 0.90 above', given: [0.1, 4] as const, expected: '1.064' },
    { source: 'chi-square-table', at: '7 degrees, 0.975 above', given: [0.025, 7] as const, expected: '1.690' },
    { source: 'chi-square-table', at: '10 degrees, 0.99 above', given: [0.01, 10] as const, expected: '2.558' },
    { source: 'chi-square-table', at: '29 degrees, 0.90 above', given: [0.1, 29] as const, expected: '19.768' },
    { source: 'chi-square-table', at: '100 degrees, 0.95 above', given: [0.05, 100] as const, expected: '77.929' },
    { source: 'chi-square-table-upper', at: '4 degrees, 0.10 above', given: [0.9, 4] as const, expected: '7.77944' },
    { source: 'chi-square-table-upper', at: '9 degrees, 0.01 above', given: [0.99, 9] as const, expected: '21.66599' },
  ]);
  published('Student’s t', student, [
    { source: 'student-table', at: '1 degree, 0.05', given: [0.95, 1] as const, expected: '6.314' },
    { source: 'student-table', at: '2 degrees, 0.025', given: [0.975, 2] as const, expected: '4.303' },
    { source: 'student-table', at: '4 degrees, 0.10', given: [0.9, 4] as const, expected: '1.533' },
    { source: 'student-table', at: '7 degrees, 0.05', given: [0.95, 7] as const, expected: '1.895' },
    { source: 'student-table', at: '30 degrees, 0.005', given: [0.995, 30] as const, expected: '2.750' },
    { source: 'student-table', at: '100 degrees, 0.01', given: [0.99, 100] as const, expected: '2.364' },
  ]);
});

describe('scipy’s quantiles, kept beside the script that worked them out', () => {
  const kept = JSON.parse(
    readFileSync(new URL('../../../test/footage/fewTakesCheck.json', import.meta.url), 'utf8'),
  ) as Readonly<Record<'chiSquare' | 'student', readonly (readonly [number, number, number])[]>>;
  test.each(kept.chiSquare)('chi-square at %d with %d degrees is %d', (share, degrees, x) =>
    expect(Math.abs(chiSquare([share, degrees]) / x - 1)).toBeLessThan(1e-9));
  test.each(kept.student)('t at %d with %d degrees is %d', (share, degrees, t) =>
    expect(Math.abs(student([share, degrees]) / t - 1)).toBeLessThan(1e-9));
}); // prettier-ignore

test('shares and quantiles undo each other, and t nears the normal spread', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.001, max: 0.999, noNaN: true }), fc.integer({ min: 1, max: 300 }), (shareFraction, degreeCount) => {
      expect(chiSquareAbove({ x: chiSquareQuantile({ shareFraction, degreeCount }), degreeCount })).toBeCloseTo(1 - shareFraction, 9);
      expect(studentShare({ t: studentQuantile({ shareFraction, degreeCount }), degreeCount })).toBeCloseTo(shareFraction, 9);
    }),
  );
  expect(student([0.9, 10_000])).toBeCloseTo(normalQuantile(0.9), 3);
}); // prettier-ignore

describe('bands from a few takes', () => {
  const normal = (key: ReturnType<typeof drawKey>, x: number, y: number): number => {
    const four = new Float64Array(4);
    drawFour(key, x, y, 0, four);
    return normalQuantile(four[0]!);
  };

  test.each([3, 5, 8])('hold the truth in eight of ten sets of %d takes drawn', (takeCount) => {
    const key = drawKey(7, 'few takes', String(takeCount));
    const SETS = 4000;
    let [middles, deviations] = [0, 0];
    for (let set = 0; set < SETS; set += 1) {
      const takes = Array.from({ length: takeCount }, (_, i) => normal(key, set, i)).sort((a, b) => a - b);
      const mean = takes.reduce((sum, take) => sum + take, 0) / takeCount;
      const deviation = Math.sqrt(takes.reduce((sum, take) => sum + (take - mean) ** 2, 0) / (takeCount - 1));
      const middle = (takes[Math.floor((takeCount - 1) / 2)]! + takes[Math.ceil((takeCount - 1) / 2)]!) / 2;
      const given = { deviation, takeCount, sureFraction: 0.8 };
      if (Math.abs(middle) <= middleReach(given)) middles += 1;
      const { low, high } = deviationBand(given);
      if (low <= 1 && high >= 1) deviations += 1;
    }
    // Two standard deviations of what counting 4,000 can do; the reach of the middle is a little too wide for few takes.
    expect(deviations / SETS).toBeGreaterThan(0.787);
    expect(deviations / SETS).toBeLessThan(0.813);
    expect(middles / SETS).toBeGreaterThan(0.787);
    expect(middles / SETS).toBeLessThan(0.87);
  });
});

test.each([
  [() => chiSquareQuantile({ shareFraction: 1, degreeCount: 3 }), /restFraction/],
  [() => studentQuantile({ shareFraction: 0, degreeCount: 3 }), /shareFraction/],
  [() => studentShare({ t: 1, degreeCount: 1.5 }), /degreeCount/],
  [() => chiSquareAbove({ x: -1, degreeCount: 2 }), /x must/],
  [() => middleReach({ deviation: 1, takeCount: 1, sureFraction: 0.8 }), /takeCount/],
  [() => deviationBand({ deviation: -1, takeCount: 4, sureFraction: 0.8 }), /deviation/],
])('outside its domain %#: refused by name', (call, says) => expect(call).toThrow(says));
