import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  realTimeAt_s,
  realTimeOfProfile_s,
  realTimeOfRamp_s,
  slowestSpeed,
  speedAt,
  type Knot,
  type RampShape,
} from './profile.ts';

const SHAPES: readonly RampShape[] = ['linear', 'smooth', 'geometric'];
const DIP: readonly Knot[] = [
  { screenTime_s: 0, speedFraction: 1 },
  { screenTime_s: 1, speedFraction: 1 / 40 },
  { screenTime_s: 4, speedFraction: 1 / 40 },
  { screenTime_s: 5, speedFraction: 1 },
];

describe('a dip to a fortieth and back, against an independent numpy reckoning', () => {
  test.each([
    [0.5, 0.378125],
    [1, 0.5125],
    [2.5, 0.55],
    [4, 0.5875],
    [5, 1.1],
  ])('linear, at %f s of film %f s of real time has passed', (at_s, real_s) => {
    expect(realTimeAt_s(DIP, 'linear', at_s)).toBeCloseTo(real_s, 12);
  });

  test('geometric, the whole takes 0.603616 s', () => {
    expect(realTimeOfProfile_s(DIP, 'geometric')).toBeCloseTo(0.603616, 6);
  });
});

const speed = fc.double({ min: 1 / 1000, max: 4, noNaN: true });
const profile = fc
  .array(fc.tuple(fc.double({ min: 0.02, max: 5, noNaN: true }), speed), { minLength: 2, maxLength: 6 })
  .map((steps) => {
    let screenTime_s = 0;
    return steps.map(([wait_s, speedFraction], i): Knot => {
      if (i > 0) screenTime_s += wait_s;
      return { screenTime_s, speedFraction };
    });
  });
const shape = fc.constantFrom(...SHAPES);
const place = fc.double({ min: 0, max: 1, noNaN: true });
const endOf = (knots: readonly Knot[]): number => knots.at(-1)!.screenTime_s;

/** Simpson's rule on speed, knot to knot, so that no panel crosses a corner. */
function quadrature(knots: readonly Knot[], of: RampShape): number {
  const PANELS = 400;
  let sum = 0;
  for (let i = 1; i < knots.length; i += 1) {
    const [from, to] = [knots[i - 1]!.screenTime_s, knots[i]!.screenTime_s];
    for (let k = 0; k <= PANELS; k += 1) {
      const weight = k === 0 || k === PANELS ? 1 : k % 2 === 1 ? 4 : 2;
      const at = k === PANELS ? to : from + ((to - from) * k) / PANELS;
      sum += (weight * (to - from) * speedAt(knots, of, at)) / (3 * PANELS);
    }
  }
  return sum;
}

test('real time is the integral of speed over the film, for every shape, by Simpson’s rule', () => {
  fc.assert(
    fc.property(profile, shape, (knots, of) => {
      expect(realTimeOfProfile_s(knots, of) / quadrature(knots, of)).toBeCloseTo(1, 7);
    }),
  );
});

test('inside a span, speed is the slope of real time', () => {
  fc.assert(
    fc.property(profile, shape, place, (knots, of, at) => {
      const from = knots[0]!;
      const to = knots[1]!;
      const length_s = to.screenTime_s - from.screenTime_s;
      const middle_s = from.screenTime_s + length_s * (0.05 + 0.9 * at);
      const step_s = length_s * 1e-4;
      const slope =
        (realTimeAt_s(knots, of, middle_s + step_s) - realTimeAt_s(knots, of, middle_s - step_s)) / (2 * step_s);
      expect(slope / speedAt(knots, of, middle_s)).toBeCloseTo(1, 4);
    }),
  );
});

test('real time never runs backwards', () => {
  fc.assert(
    fc.property(profile, shape, place, place, (knots, of, a, b) => {
      const [early_s, late_s] = [Math.min(a, b) * endOf(knots), Math.max(a, b) * endOf(knots)];
      const [early, late] = [realTimeAt_s(knots, of, early_s), realTimeAt_s(knots, of, late_s)];
      expect(late).toBeGreaterThanOrEqual(early * (1 - 1e-12));
    }),
  );
});

test('a knot set on a straight stretch changes nothing', () => {
  fc.assert(
    fc.property(speed, speed, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (start, end, x) => {
      const plain: readonly Knot[] = [
        { screenTime_s: 0, speedFraction: start },
        { screenTime_s: 3, speedFraction: end },
      ];
      for (const of of ['linear', 'geometric'] as const) {
        const split = plain.toSpliced(1, 0, { screenTime_s: 3 * x, speedFraction: speedAt(plain, of, 3 * x) });
        expect(realTimeOfProfile_s(split, of) / realTimeOfProfile_s(plain, of)).toBeCloseTo(1, 10);
      }
    }),
  );
});

test('a ramp run backwards uses the same real time', () => {
  fc.assert(
    fc.property(speed, speed, shape, (startSpeedFraction, endSpeedFraction, of) => {
      const there = realTimeOfRamp_s({ screenTime_s: 2, startSpeedFraction, endSpeedFraction, shape: of });
      const back = realTimeOfRamp_s({
        screenTime_s: 2,
        startSpeedFraction: endSpeedFraction,
        endSpeedFraction: startSpeedFraction,
        shape: of,
      });
      expect(there / back).toBeCloseTo(1, 12);
    }),
  );
});

test('geometric never uses more real time than linear, which smooth equals', () => {
  fc.assert(
    fc.property(speed, speed, (startSpeedFraction, endSpeedFraction) => {
      const [linear, smooth, geometric] = SHAPES.map((of) =>
        realTimeOfRamp_s({ screenTime_s: 3, startSpeedFraction, endSpeedFraction, shape: of }),
      ) as [number, number, number];
      expect(smooth / linear).toBeCloseTo(1, 12);
      expect(geometric).toBeLessThanOrEqual(linear * (1 + 1e-12));
    }),
  );
});

test('a geometric ramp between speeds a billionth apart keeps its digits', () => {
  const ramp = { screenTime_s: 4, startSpeedFraction: 0.5, endSpeedFraction: 0.5 * (1 + 1e-9) };
  expect(realTimeOfRamp_s({ ...ramp, shape: 'geometric' })).toBeCloseTo(2 * (1 + 0.5e-9), 14);
  expect(realTimeOfRamp_s({ ...ramp, endSpeedFraction: 0.5, shape: 'geometric' })).toBe(2);
});

test('the slowest speed is the least of the knots, and no moment is slower', () => {
  fc.assert(
    fc.property(profile, shape, place, (knots, of, at) => {
      const least = slowestSpeed(knots);
      expect(knots.map((knot) => knot.speedFraction)).toContain(least);
      expect(speedAt(knots, of, at * endOf(knots))).toBeGreaterThanOrEqual(least * (1 - 1e-12));
    }),
  );
});

test('real time is counted from the first knot, wherever in the film it lies', () => {
  const later = DIP.map((knot) => ({ ...knot, screenTime_s: knot.screenTime_s + 7 }));
  expect(realTimeAt_s(later, 'linear', 7)).toBe(0);
  expect(realTimeAt_s(later, 'linear', 9.5)).toBeCloseTo(0.55, 12);
});

test('faults are refused, naming the knot', () => {
  const knots = (...pairs: readonly (readonly [number, number])[]): readonly Knot[] =>
    pairs.map(([screenTime_s, speedFraction]) => ({ screenTime_s, speedFraction }));
  const total =
    (...pairs: readonly (readonly [number, number])[]) =>
    () =>
      realTimeOfProfile_s(knots(...pairs), 'linear');
  expect(total()).toThrow('knots must be at least 2, got 0');
  expect(total([0, 1])).toThrow('knots must be at least 2, got 1');
  expect(total([0, 1], [2, 1], [2, 0.5])).toThrow('knots[2].screenTime_s must be after 2, got 2');
  expect(total([0, 1], [3, 1], [2, 0.5])).toThrow('knots[2].screenTime_s must be after 3, got 2');
  expect(total([0, 1], [1, 0])).toThrow('knots[1].speedFraction must be positive and finite, got 0');
  expect(total([0, -1], [1, 1])).toThrow('knots[0].speedFraction must be positive');
  expect(total([0, 1], [NaN, 1])).toThrow('knots[1].screenTime_s must be zero or above and finite, got NaN');
  expect(() => slowestSpeed(knots([0, 1]))).toThrow('knots must be at least 2');
  expect(() => speedAt(DIP, 'linear', 5.1)).toThrow('screenTime_s must be from 0 to 5, got 5.1');
  expect(() => realTimeAt_s(DIP, 'smooth', NaN)).toThrow('screenTime_s must be from 0 to 5, got NaN');
  expect(() => realTimeAt_s(DIP, 'bouncy' as RampShape, 1)).toThrow('unexpected "bouncy"');
  expect(() => speedAt(DIP, 'bouncy' as RampShape, 1)).toThrow('unexpected "bouncy"');
  expect(() =>
    realTimeOfRamp_s({ screenTime_s: 1, startSpeedFraction: 1, endSpeedFraction: 0, shape: 'linear' }),
  ).toThrow('endSpeedFraction must be positive');
});
