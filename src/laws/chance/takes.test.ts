import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { chanceOfEnoughFraction, meanTakesRatio, takesAtConfidenceCount } from './takes.ts';

describe('published values', () => {
  /** The source prints how many tries see more than k failures; one more than k is what is wanted here. */
  const tabled = (k: number, failureFraction: number, percent: number, expected: string) => ({
    source: 'negative-binomial-pages',
    at: `more than ${k} of chance ${failureFraction} at ${percent} %`,
    given: {
      goodTakeCount: k + 1,
      goodTakeFraction: failureFraction,
      confidenceFraction: Number((percent / 100).toFixed(5)),
    },
    expected,
  });

  published('takes to allow for, a coin', takesAtConfidenceCount, [
    tabled(5, 0.5, 50, '11'),
    tabled(5, 0.5, 75, '14'),
    tabled(5, 0.5, 90, '17'),
    tabled(5, 0.5, 95, '18'),
    tabled(5, 0.5, 99, '22'),
    tabled(5, 0.5, 99.9, '27'),
    tabled(5, 0.5, 99.99, '31'),
    tabled(5, 0.5, 99.999, '36'),
  ]);
  published('takes to allow for, a coin, fifty', takesAtConfidenceCount, [
    tabled(50, 0.5, 50, '101'),
    tabled(50, 0.5, 75, '109'),
    tabled(50, 0.5, 90, '115'),
    tabled(50, 0.5, 99, '128'),
    tabled(50, 0.5, 99.999, '154'),
  ]);
  published('takes to allow for, a coin, five hundred', takesAtConfidenceCount, [
    tabled(500, 0.5, 50, '1001'),
    tabled(500, 0.5, 75, '1023'),
    tabled(500, 0.5, 90, '1043'),
    tabled(500, 0.5, 99, '1078'),
    tabled(500, 0.5, 99.999, '1146'),
  ]);
  published('takes to allow for, nine in ten', takesAtConfidenceCount, [
    tabled(50, 0.9, 50, '56'),
    tabled(50, 0.9, 75, '58'),
    tabled(50, 0.9, 90, '60'),
    tabled(50, 0.9, 95, '61'),
    tabled(50, 0.9, 99.9, '66'),
    tabled(50, 0.9, 99.999, '71'),
  ]);
  published('takes to allow for, nine in ten, five hundred', takesAtConfidenceCount, [
    tabled(500, 0.9, 50, '556'),
    tabled(500, 0.9, 90, '567'),
    tabled(500, 0.9, 99, '576'),
    tabled(500, 0.9, 99.999, '594'),
  ]);
  published('takes to allow for, one in ten', takesAtConfidenceCount, [
    tabled(5, 0.1, 50, '57'),
    tabled(5, 0.1, 75, '73'),
    tabled(5, 0.1, 90, '91'),
    tabled(5, 0.1, 95, '103'),
    tabled(5, 0.1, 99, '127'),
    tabled(5, 0.1, 99.9, '159'),
    tabled(5, 0.1, 99.999, '217'),
  ]);
  published('takes to allow for, six in ten', takesAtConfidenceCount, [
    tabled(5, 0.6, 50, '10'),
    tabled(5, 0.6, 75, '11'),
    tabled(5, 0.6, 90, '13'),
    tabled(5, 0.6, 95, '15'),
    tabled(5, 0.6, 99, '18'),
    tabled(5, 0.6, 99.9, '21'),
    tabled(5, 0.6, 99.999, '28'),
  ]);

  published('takes to allow for', takesAtConfidenceCount, [
    {
      source: 'negative-binomial-pages',
      at: 'flips of a coin for ten heads at 99 %',
      given: { goodTakeCount: 10, goodTakeFraction: 0.5, confidenceFraction: 0.99 },
      expected: '33',
    },
  ]);

  /** The source prints the chance of x or fewer; the chance of more is the rest of it. */
  const short = (x: number, n: number, p: number) =>
    1 - chanceOfEnoughFraction({ takeCount: n, goodTakeCount: x + 1, goodTakeFraction: p });
  published('chance of too few', ({ x, n, p }: { x: number; n: number; p: number }) => short(x, n, p), [
    { source: 'binomial-table', at: 'Table A1, n 5, x 2, p .30', given: { x: 2, n: 5, p: 0.3 }, expected: '.8369' },
    { source: 'binomial-table', at: 'Table A1, n 6, x 1, p .40', given: { x: 1, n: 6, p: 0.4 }, expected: '.2333' },
    { source: 'binomial-table', at: 'Table A1, n 7, x 4, p .45', given: { x: 4, n: 7, p: 0.45 }, expected: '.8471' },
    { source: 'binomial-table', at: 'Table A1, n 8, x 1, p .15', given: { x: 1, n: 8, p: 0.15 }, expected: '.6572' },
  ]);
});

const share = fc.double({ min: 0.02, max: 1, noNaN: true });
const confidence = fc.double({ min: 0.01, max: 0.999, noNaN: true });
const wanted = fc.integer({ min: 1, max: 40 });

describe('true of every count', () => {
  test('the takes allowed for reach the confidence, and one take fewer does not', () => {
    fc.assert(
      fc.property(wanted, share, confidence, (goodTakeCount, goodTakeFraction, confidenceFraction) => {
        const takes = takesAtConfidenceCount({ goodTakeCount, goodTakeFraction, confidenceFraction });
        const chance = (takeCount: number) => chanceOfEnoughFraction({ takeCount, goodTakeCount, goodTakeFraction });
        expect(chance(takes)).toBeGreaterThanOrEqual(confidenceFraction - 1e-10);
        expect(chance(takes - 1)).toBeLessThan(confidenceFraction);
      }),
    );
  });

  test('a better chance, fewer good takes wanted or less confidence never ask for more takes', () => {
    fc.assert(
      fc.property(wanted, share, share, confidence, confidence, (goodTakeCount, p1, p2, c1, c2) => {
        const takes = (goodTakeFraction: number, confidenceFraction: number, more = 0) =>
          takesAtConfidenceCount({ goodTakeCount: goodTakeCount + more, goodTakeFraction, confidenceFraction });
        expect(takes(Math.max(p1, p2), c1)).toBeLessThanOrEqual(takes(Math.min(p1, p2), c1));
        expect(takes(p1, Math.min(c1, c2))).toBeLessThanOrEqual(takes(p1, Math.max(c1, c2)));
        expect(takes(p1, c1)).toBeLessThan(takes(p1, c1, 1));
      }),
    );
  });

  test('one good take is missed only when every take fails', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000 }), share, (takeCount, goodTakeFraction) => {
        const chance = chanceOfEnoughFraction({ takeCount, goodTakeCount: 1, goodTakeFraction });
        expect(chance).toBeCloseTo(1 - (1 - goodTakeFraction) ** takeCount, 12);
      }),
    );
  });

  test('one more good take is there or not there: the chances obey the law of the next take, to ten thousand takes', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 9_999 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        share,
        (takeCount, part, p) => {
          const r = 1 + Math.round(part * takeCount);
          const chance = (n: number, k: number) =>
            k === 0 ? 1 : chanceOfEnoughFraction({ takeCount: n, goodTakeCount: k, goodTakeFraction: p });
          const next = p * chance(takeCount, r - 1) + (1 - p) * chance(takeCount, r);
          expect(Math.abs(chance(takeCount + 1, r) - next)).toBeLessThanOrEqual(1e-11);
        },
      ),
    );
  });
});

test('a chance that equals the confidence exactly has reached it, whatever rounding says', () => {
  for (const takes of [1, 3, 51, 501, 4999])
    expect(
      takesAtConfidenceCount({ goodTakeCount: (takes + 1) / 2, goodTakeFraction: 0.5, confidenceFraction: 0.5 }),
    ).toBe(takes);
  for (let takes = 1; takes <= 20; takes += 1)
    expect(
      takesAtConfidenceCount({ goodTakeCount: 1, goodTakeFraction: 0.5, confidenceFraction: 1 - 0.5 ** takes }),
    ).toBe(takes);
});

test('takes that never fail need no spares, at any confidence', () => {
  expect(takesAtConfidenceCount({ goodTakeCount: 3, goodTakeFraction: 1, confidenceFraction: 1 })).toBe(3);
});

test('nine in ten is the confidence where none is given', () => {
  const given = { goodTakeCount: 2, goodTakeFraction: 0.4 };
  expect(takesAtConfidenceCount(given)).toBe(takesAtConfidenceCount({ ...given, confidenceFraction: 0.9 }));
});

test('a chance of one in four costs four takes a good one on average', () => {
  expect(meanTakesRatio({ goodTakeCount: 3, goodTakeFraction: 0.25 })).toBe(12);
});

test('what has no meaning is refused by name', () => {
  const given = { goodTakeCount: 2, goodTakeFraction: 0.4 };
  expect(() => takesAtConfidenceCount({ ...given, goodTakeCount: 0 })).toThrow('goodTakeCount must be a whole number');
  expect(() => takesAtConfidenceCount({ ...given, goodTakeCount: 2.5 })).toThrow('goodTakeCount must be a whole');
  expect(() => takesAtConfidenceCount({ ...given, goodTakeCount: 10_001 })).toThrow('goodTakeCount must be from 1');
  expect(() => takesAtConfidenceCount({ ...given, goodTakeFraction: 0 })).toThrow('goodTakeFraction must be positive');
  expect(() => takesAtConfidenceCount({ ...given, goodTakeFraction: 1.1 })).toThrow('goodTakeFraction must be from 0');
  expect(() => takesAtConfidenceCount({ ...given, confidenceFraction: 1 })).toThrow('confidenceFraction must be below');
  expect(() => takesAtConfidenceCount({ ...given, confidenceFraction: 0 })).toThrow('confidenceFraction must be posit');
  expect(() => takesAtConfidenceCount({ ...given, confidenceFraction: NaN })).toThrow('confidenceFraction must be pos');
  expect(() => takesAtConfidenceCount({ ...given, goodTakeFraction: 1e-5 })).toThrow(
    'goodTakeFraction must let 10000 takes hold 2 good at 0.9, got 0.00001',
  );
  expect(() => chanceOfEnoughFraction({ ...given, takeCount: -1 })).toThrow('takeCount must be a whole number');
  expect(() => chanceOfEnoughFraction({ ...given, takeCount: 10_001 })).toThrow('takeCount must be from 0 to 10000');
  expect(() => meanTakesRatio({ ...given, goodTakeFraction: NaN })).toThrow('goodTakeFraction must be positive');
});

test('too few takes to hold the good ones have no chance of it', () => {
  expect(chanceOfEnoughFraction({ takeCount: 1, goodTakeCount: 2, goodTakeFraction: 0.9 })).toBe(0);
  expect(chanceOfEnoughFraction({ takeCount: 0, goodTakeCount: 1, goodTakeFraction: 1 })).toBe(0);
});
