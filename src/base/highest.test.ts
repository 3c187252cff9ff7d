import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { highest } from './highest.ts';

/** Looks at a curve and counts how often. */
function counted(curve: (x: number) => number) {
  let looks = 0;
  const lookAt = (x: number) => {
    looks += 1;
    return { x, height: curve(x) };
  };
  return { lookAt, looks: () => looks };
}

describe('the highest point', () => {
  // CODATA, exact constants: 6.62607015e-34 J s, 1.380649e-23 J/K, 299792458 m/s; Wien's displacement law says 58.78925757
  // GHz/K by frequency and 2897.771955 µm K by wavelength. From memory.
  const [h, k, c] = [6.62607015e-34, 1.380649e-23, 299_792_458];
  test.each([
    ['frequency', 3, (h * 5.878925757e10) / k],
    ['wavelength', 5, (h * c) / (k * 2.897771955e-3)],
  ])('of the light of a black body by %s lies where the displacement law says', (_, power, at) => {
    const { lookAt, looks } = counted((x) => x ** power / Math.expm1(x));
    const found = highest(lookAt, { low: 1, high: 8, first: 4, enough: 1e-9 });
    expect(Math.abs(found.x / at - 1)).toBeLessThan(2e-8);
    expect(looks()).toBeLessThan(25);
  });

  test('of a parabola is found in a few looks', () => {
    const { lookAt, looks } = counted((x) => 3 - (x - 0.7) ** 2);
    expect(highest(lookAt, { low: 0, high: 2, first: 1, enough: 1e-7 }).x).toBeCloseTo(0.7, 7);
    expect(looks()).toBeLessThan(10);
  });

  test('of a curve with an edge, or with a top at an end of the stretch, is found within what is enough', () => {
    fc.assert(
      fc.property(fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: -1, max: 1, noNaN: true }), (at, first) => {
        const { lookAt } = counted((x) => -Math.abs(x - at));
        const found = highest(lookAt, { low: -1, high: 1, first, enough: 1e-6 });
        expect(Math.abs(found.x - at)).toBeLessThan(5e-6);
        expect(found.height).toBe(-Math.abs(found.x - at));
      }),
    );
    for (const slope of [1, -1])
      expect(highest((x) => ({ x, height: slope * x }), { low: -1, high: 1, first: 0, enough: 1e-6 }).x).toBeCloseTo(slope, 5);
  });

  test('of a stretch of no length, or of a curve that is level, is where one first looks or near it', () => {
    expect(highest((x) => ({ x, height: 0 }), { low: 2, high: 2, first: 2, enough: 1e-6 }).x).toBe(2);
    const { lookAt, looks } = counted(() => 1);
    expect(highest(lookAt, { low: 0, high: 1, first: 0.5, enough: 1e-6 }).height).toBe(1);
    expect(looks()).toBeLessThan(100);
  });

  test('is handed on with whatever else was seen there', () => {
    const lookAt = (x: number) => ({ x, height: -(x ** 2), says: `at ${x.toFixed(3)}` });
    expect(highest(lookAt, { low: -1, high: 1, first: 0.5, enough: 1e-9 }).says).toMatch(/^at -?0\.000$/);
  });

  test.each([
    [{ low: 0, high: 1, first: 2, enough: 1e-3 }, /first must lie from 0 to 1, got 2/],
    [{ low: 0, high: 1, first: 0.5, enough: 0 }, /enough/],
    [{ low: 1, high: 0, first: 0.5, enough: 1e-3 }, /first must lie/],
  ])('of %o is refused', (stretch, says) => {
    expect(() => highest((x) => ({ x, height: x }), stretch)).toThrow(says);
  });
}); // prettier-ignore
