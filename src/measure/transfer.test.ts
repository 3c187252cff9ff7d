import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../test/published.ts';
import { codingOf, lightOf, lightTable, type TransferCurve } from './transfer.ts';

const REC709 = { kind: 'rec709' } as const;
const SRGB = { kind: 'srgb' } as const;
const PQ = { kind: 'pq' } as const;
const HLG = { kind: 'hlg' } as const;
const ACESCCT = { kind: 'acescct' } as const;

published('light of a signal', ({ curve, signal }: { curve: TransferCurve; signal: number }) => lightOf(curve, signal), [
  { source: 'bt709-curve', at: 'inverse curve, example', given: { curve: REC709, signal: 0.40900772886415 }, expected: '0.18000' },
  { source: 'bt709-curve', at: 'end of the straight part', given: { curve: REC709, signal: 0.081 }, expected: '0.018' },
  { source: 'srgb-curve', at: 'end of the straight part', given: { curve: SRGB, signal: 0.04045 }, expected: '0.0031308' },
  { source: 'srgb-curve', at: 'half of the signal', given: { curve: SRGB, signal: 0.5 }, expected: '0.21404' },
  { source: 'pq-curve', at: 'eotf_ST2084, example, 100 cd/m² of 10 000', given: { curve: PQ, signal: 0.508078421517399 }, expected: '0.010000' },
  { source: 'pq-curve', at: 'tests, 400 cd/m²', given: { curve: PQ, signal: 0.652578597563067 }, expected: '0.040000' },
  { source: 'hlg-curve', at: 'example', given: { curve: HLG, signal: 0.212132034355964 }, expected: '0.015000' },
  { source: 'hlg-curve', at: 'where the square root ends, a twelfth', given: { curve: HLG, signal: 0.5 }, expected: '0.083333' },
  { source: 'hlg-curve', at: 'white', given: { curve: HLG, signal: 1 }, expected: '1.0000' },
  { source: 'log-curve', at: 'the break of its foot, X_BRK', given: { curve: ACESCCT, signal: 0.155251141552511 }, expected: '0.0078125' },
  { source: 'log-curve', at: 'middle grey', given: { curve: ACESCCT, signal: 0.4135884 }, expected: '0.18000' },
]); // prettier-ignore

/** The same curve written out in the form that takes constants. */
const WRITTEN_OUT: TransferCurve = {
  kind: 'log',
  a: 1,
  b: 0,
  c: 1 / (17.52 * Math.log10(2)),
  d: 9.72 / 17.52,
  e: 10.5402377416545,
  f: 0.0729055341958355,
  cut: 0.0078125,
};

const CURVES: readonly TransferCurve[] = [
  { kind: 'linear' },
  { kind: 'gamma', exponent: 2.2 },
  SRGB,
  REC709,
  PQ,
  HLG,
  ACESCCT,
  WRITTEN_OUT,
];

describe.each(CURVES.map((curve) => ({ kind: curve.kind, curve })))('the curve $kind', ({ curve }) => {
  test('gives more light for more signal, below black too', () => {
    for (let i = -20; i < 120; i += 1)
      expect(lightOf(curve, i / 100)).toBeLessThan(lightOf(curve, (i + 1) / 100));
  });

  test('is unbroken where its parts meet', () => {
    for (let i = -2000; i < 10_000; i += 1) {
      const [before, after] = [lightOf(curve, i / 1e4), lightOf(curve, (i + 1) / 1e4)];
      expect(after - before).toBeLessThan(0.002 * (1 + after));
    }
  });
}); // prettier-ignore

test('a curve with its constants written out is that curve', () => {
  fc.assert(
    fc.property(fc.double({ min: -0.05, max: 1, noNaN: true }), (signal) => {
      expect(lightOf(WRITTEN_OUT, signal)).toBeCloseTo(lightOf(ACESCCT, signal), 9);
    }),
  );
});

test('a gamma left in would scale a small change of light by its inverse, which is why it is undone first', () => {
  const curve = { kind: 'gamma', exponent: 2.2 } as const;
  const [low, high] = [0.4, 0.404];
  const change = lightOf(curve, high) / lightOf(curve, low) - 1;
  expect(change / (high / low - 1)).toBeCloseTo(2.2, 1);
});

describe('a table of light', () => {
  test('has black at none and white at one for video levels of ten bits', () => {
    const table = lightTable(REC709, codingOf('video', 10));
    expect([table.length, table[64], table[940]]).toEqual([1024, 0, 1]);
    expect(table[1023]).toBeGreaterThan(1);
    expect(table[40]).toBeLessThan(0);
    expect(table[88]).toBeCloseTo(-table[40]!, 9);
  });

  test('has none at 0 and one at the last code of the whole range', () => {
    const table = lightTable({ kind: 'linear' }, codingOf('full', 12));
    expect([table[0], table[4095], table[1365]]).toEqual([0, 1, Math.fround(1 / 3)]);
  });

  test.each([
    [{ bitDepth: 0, blackCode: 0, whiteCode: 1 }, /bitDepth/],
    [{ bitDepth: 17, blackCode: 0, whiteCode: 1 }, /bitDepth/],
    [{ bitDepth: 8, blackCode: 100, whiteCode: 100 }, /whiteCode/],
    [{ bitDepth: 8, blackCode: 0, whiteCode: 256 }, /whiteCode/],
    [{ bitDepth: 8, blackCode: 0.5, whiteCode: 200 }, /blackCode/],
  ])('of %j is refused', (coding, says) => expect(() => lightTable(SRGB, coding)).toThrow(says));

  test.each([
    [{ kind: 'gamma', exponent: 0 }, /exponent/],
    [{ ...WRITTEN_OUT, c: 0 }, /c must/],
    [{ ...WRITTEN_OUT, cut: NaN }, /cut/],
  ] as const)('of the curve %j is refused', (curve, says) => {
    expect(() => lightTable(curve, codingOf('full', 8))).toThrow(says);
  });
});
