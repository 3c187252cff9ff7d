import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { chromaticityOf, placeOfXyz, WHITE_CHROMATICITY, xyzMatrix, type PrimariesName } from './chromaticity.ts';
import { temperatureOf } from './temperature.ts';

const entry = ({ primaries, at }: { primaries: PrimariesName; at: number }) => xyzMatrix(primaries)[at]!;
published('a matrix to X, Y, Z', entry, [
  { source: 'bt709-matrix', at: 'conversion equations, X of red', given: { primaries: 'bt709', at: 0 }, expected: '0.412' },
  { source: 'bt709-matrix', at: 'conversion equations, X of green', given: { primaries: 'bt709', at: 1 }, expected: '0.358' },
  { source: 'bt709-matrix', at: 'conversion equations, X of blue', given: { primaries: 'bt709', at: 2 }, expected: '0.180' },
  { source: 'bt709-matrix', at: 'weight of red in brightness', given: { primaries: 'bt709', at: 3 }, expected: '0.2126' },
  { source: 'bt709-matrix', at: 'weight of green in brightness', given: { primaries: 'bt709', at: 4 }, expected: '0.7152' },
  { source: 'bt709-matrix', at: 'weight of blue in brightness', given: { primaries: 'bt709', at: 5 }, expected: '0.0722' },
  { source: 'bt709-matrix', at: 'conversion equations, Z of red', given: { primaries: 'bt709', at: 6 }, expected: '0.019' },
  { source: 'bt709-matrix', at: 'conversion equations, Z of green', given: { primaries: 'bt709', at: 7 }, expected: '0.119' },
  { source: 'bt2020-matrix', at: 'weight of red in brightness', given: { primaries: 'bt2020', at: 3 }, expected: '0.2627' },
  { source: 'bt2020-matrix', at: 'weight of green in brightness', given: { primaries: 'bt2020', at: 4 }, expected: '0.6780' },
  { source: 'bt2020-matrix', at: 'weight of blue in brightness', given: { primaries: 'bt2020', at: 5 }, expected: '0.0593' },
]); // prettier-ignore

const of709 = (red: number, green: number, blue: number) => chromaticityOf(xyzMatrix('bt709'), red, green, blue)!;
published('a place in the CIE 1976 diagram', ({ rgb: [r, g, b], axis }: { rgb: readonly [number, number, number]; axis: 'u' | 'v' }) => of709(r, g, b)[axis], [
  { source: 'cie-1976-ucs', at: 'u′ of D65', given: { rgb: [1, 1, 1], axis: 'u' }, expected: '0.1978' },
  { source: 'cie-1976-ucs', at: 'v′ of D65', given: { rgb: [1, 1, 1], axis: 'v' }, expected: '0.4683' },
]); // prettier-ignore

published('a place of X, Y, Z', ({ axis }: { axis: 'u' | 'v' }) => placeOfXyz(0.20654008, 0.12197225, 0.05136952)![axis], [
  { source: 'cie-1976-ucs', at: 'worked example, u′', given: { axis: 'u' }, expected: '0.3772021' },
  { source: 'cie-1976-ucs', at: 'worked example, v′', given: { axis: 'v' }, expected: '0.5012026' },
]); // prettier-ignore

test.each(['bt709', 'bt2020', 'smpte-c', 'ebu', 'p3-d65'] as const)('equal parts of %s are D65', (primaries) => {
  const white = chromaticityOf(xyzMatrix(primaries), 1, 1, 1)!;
  expect(white.u).toBeCloseTo(WHITE_CHROMATICITY.u, 9);
  expect(white.v).toBeCloseTo(WHITE_CHROMATICITY.v, 9);
});

test('light that is none lies nowhere', () => {
  expect(chromaticityOf(xyzMatrix('bt709'), 0, 0, 0)).toBeUndefined();
  expect(chromaticityOf(xyzMatrix('bt709'), -1, 0, 0)).toBeUndefined();
});

/** From CIE 1960 u, v. */
const at = (u: number, v: number) => temperatureOf({ u, v: 1.5 * v });

// Temperatures by Robertson's own method, and D65 by a newer one, which it stays a mired from.
published('a temperature in mired', ({ u, v }: { u: number; v: number }) => at(u, v)!.place_mired, [
  { source: 'robertson-lines', at: 'worked example, 6500.016 K', given: { u: 0.19374137599823, v: 0.315221043940594 }, expected: '153.846' },
  { source: 'ohno-example', at: 'example, 6507.47 K', given: { u: 0.1978, v: 0.3122 }, expected: '153.7' },
]); // prettier-ignore
published('a distance from the black bodies', ({ u, v }: { u: number; v: number }) => at(u, v)!.duv, [
  { source: 'robertson-lines', at: 'worked example', given: { u: 0.19374137599823, v: 0.315221043940594 }, expected: '0.0083333' },
  { source: 'ohno-example', at: 'example, 3.2233e-3', given: { u: 0.1978, v: 0.3122 }, expected: '0.003' },
]); // prettier-ignore

describe('along the black bodies', () => {
  test('warmer is more mired, greener above, pinker below, and both are told apart', () => {
    const [day, evening] = [at(0.1978, 0.3122)!, at(0.256, 0.3495)!];
    expect(evening.place_mired - day.place_mired).toBeGreaterThan(190);
    // Illuminant A, 2856 K, is a black body.
    expect(evening.place_mired / (1e6 / 2856)).toBeCloseTo(1, 2);
    expect(Math.abs(evening.duv)).toBeLessThan(0.0001);
    expect(temperatureOf(of709(1, 1.1, 1))!.duv).toBeGreaterThan(day.duv + 0.003);
    expect(temperatureOf(of709(1, 0.9, 1))!.duv).toBeLessThan(day.duv - 0.003);
    expect(temperatureOf(of709(1.1, 1, 0.9))!.place_mired).toBeGreaterThan(day.place_mired + 10);
  });

  test('a colour has none', () => {
    for (const [red, green, blue] of [[1, 0, 0], [0, 1, 0], [0, 0, 1], [0.3, 1, 0.3]] as const) expect(temperatureOf(of709(red, green, blue))).toBeUndefined(); // prettier-ignore
  });
});
