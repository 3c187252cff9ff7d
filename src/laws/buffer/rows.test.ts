import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { fitRows, frameRateByRows_fps, rowTimeOfColumns_s, throughputFrameRate_fps } from './rows.ts';

describe('published values', () => {
  const byColumns = ({ columns, rows }: { readonly columns: number; readonly rows: number }): number =>
    frameRateByRows_fps({
      rowCount: rows,
      rowTime_s: rowTimeOfColumns_s({ columnCount: columns, pixelRate_Hz: 40e6, blanking_s: 3.5e-6 }),
      overhead_s: 100e-6,
    });
  published('frameRateByRows_fps', frameRateByRows_fps, [
    {
      source: 'readout-notes',
      at: '1500 rows of 130 clocks at 86.4 MHz, with seven more and 1413 clocks a frame, as quoted',
      given: { rowCount: 1500, rowTime_s: 130 / 86.4e6, overhead_s: (7 * 130 + 1 + 3 * 130 + 1022) / 86.4e6 },
      expected: '437.86',
    },
  ]);
  published('frameRateByRows_fps with rowTimeOfColumns_s', byColumns, [
    {
      source: 'readout-notes',
      at: '1280 × 1024, 100 µs exposure, as quoted',
      given: { columns: 1280, rows: 1024 },
      expected: '27.43',
    },
    {
      source: 'readout-notes',
      at: '128 × 128, 100 µs exposure, as quoted',
      given: { columns: 128, rows: 128 },
      expected: '1044',
    },
  ]);
});

test('a partial scan of 633 lines of 1830 clocks of 17.24138 ns is 50.06 fps in readout-notes, cut off and not rounded', () => {
  const fps = frameRateByRows_fps({ rowCount: 633, rowTime_s: 1830 * 17.24138e-9, overhead_s: 0 });
  expect(Math.floor(100 * fps) / 100).toBe(50.06);
});

test('1000 fps at 2160 rows and 1950 at 1080, invented, make .451092 µs a row, 25.6410 µs besides, 2853.66 fps at 720', () => {
  const timing = fitRows({
    firstRowCount: 2160,
    firstFrameRate_fps: 1000,
    secondRowCount: 1080,
    secondFrameRate_fps: 1950,
  });
  expect(timing.rowTime_s * 1e6).toBeCloseTo(0.451092, 6);
  expect(timing.overhead_s * 1e6).toBeCloseTo(25.641, 4);
  expect(frameRateByRows_fps({ rowCount: 720, ...timing })).toBeCloseTo(2853.66, 2);
});

const rows = fc.integer({ min: 8, max: 4320 });
const timing = fc.record({
  rowTime_s: fc.double({ min: 1e-8, max: 1e-4, noNaN: true }),
  overhead_s: fc.double({ min: 1e-6, max: 1e-3, noNaN: true }),
});

test('a fit to two modes of a timing gives a third of it, whichever comes first', () => {
  fc.assert(
    fc.property(timing, rows, rows, rows, (of, a, b, c) => {
      fc.pre(Math.abs(a - b) >= 8);
      const [first, second] = [a, b].map((rowCount) => frameRateByRows_fps({ rowCount, ...of })) as [number, number];
      const forth = { firstRowCount: a, firstFrameRate_fps: first, secondRowCount: b, secondFrameRate_fps: second };
      const back = { firstRowCount: b, firstFrameRate_fps: second, secondRowCount: a, secondFrameRate_fps: first };
      for (const given of [forth, back])
        expect(
          frameRateByRows_fps({ rowCount: c, ...fitRows(given) }) / frameRateByRows_fps({ rowCount: c, ...of }),
        ).toBeCloseTo(1, 6);
    }),
  );
});

test('modes in exact proportion have no overhead, not a rounding error of one', () => {
  const { overhead_s } = fitRows({
    firstRowCount: 2160,
    firstFrameRate_fps: 1000,
    secondRowCount: 720,
    secondFrameRate_fps: 3000,
  });
  expect(overhead_s).toBe(0);
});

test('halving the rows nearly doubles the rate and never more', () => {
  fc.assert(
    fc.property(timing, fc.integer({ min: 4, max: 2000 }), (of, half) => {
      const gain = frameRateByRows_fps({ rowCount: half, ...of }) / frameRateByRows_fps({ rowCount: 2 * half, ...of });
      expect(gain).toBeGreaterThan(1);
      expect(gain).toBeLessThanOrEqual(2);
    }),
  );
});

test('9.2 GB/s pass 2957.8 frames a second of 3,110,400 bytes, worked by hand', () => {
  expect(throughputFrameRate_fps({ throughput_B_per_s: 9.2e9, frameSize_B: 3_110_400 })).toBeCloseTo(2957.8, 1);
});

test('faults are refused by name', () => {
  const modes = { firstRowCount: 2160, firstFrameRate_fps: 1000, secondRowCount: 1080, secondFrameRate_fps: 1950 };
  expect(() => fitRows({ ...modes, secondRowCount: 2160 })).toThrow(
    'secondRowCount must differ from firstRowCount, got 2160 for both',
  );
  expect(() => fitRows({ ...modes, secondFrameRate_fps: 900 })).toThrow('rowTime_s must be positive');
  expect(() => fitRows({ ...modes, secondFrameRate_fps: 2500 })).toThrow('overhead_s must be zero or above');
  expect(() => fitRows({ ...modes, firstFrameRate_fps: NaN })).toThrow('firstFrameRate_fps must be positive');
  expect(() => frameRateByRows_fps({ rowCount: 0, rowTime_s: 1e-6, overhead_s: 0 })).toThrow(
    'rowCount must be a whole number',
  );
  expect(() => frameRateByRows_fps({ rowCount: 9, rowTime_s: 0, overhead_s: 0 })).toThrow('rowTime_s must be positive');
  expect(() => frameRateByRows_fps({ rowCount: 9, rowTime_s: 1e-6, overhead_s: -1 })).toThrow(
    'overhead_s must be zero or above',
  );
  expect(() => rowTimeOfColumns_s({ columnCount: 1.5, pixelRate_Hz: 1, blanking_s: 0 })).toThrow(
    'columnCount must be a whole',
  );
  expect(() => rowTimeOfColumns_s({ columnCount: 5, pixelRate_Hz: 0, blanking_s: 0 })).toThrow(
    'pixelRate_Hz must be positive',
  );
  expect(() => throughputFrameRate_fps({ throughput_B_per_s: 0, frameSize_B: 1 })).toThrow(
    'throughput_B_per_s must be positive',
  );
});
