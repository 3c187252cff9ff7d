import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../test/published.ts';
import { parseStopNumber, printStopNumber, stopFromThirds, thirdsAboveOne } from './stop.ts';

/** The value of a text that must be readable. */
function read(text: string): number {
  const parsed = parseStopNumber(text);
  if (!parsed.ok) throw new Error(parsed.why);
  return parsed.value;
}

const SERIES =
  '1.00 1.12 1.26 1.41 1.59 1.78 2.00 2.24 2.52 2.83 3.17 3.56 4.00 4.49 5.04 5.66 6.35 7.13 8.00 8.98 10.08 11.31 12.70 14.25 16.00 17.96 20.16 22.63 25.40 28.51 32.00 35.92 40.32 45.25 50.80 57.02 64.00 71.84 80.63 90.51 101.59 114.04 128.00 143.68 161.27'.split(
    ' ',
  );
/** As engraved and as displayed, from f/1 in thirds of a stop. */
const MARKS =
  '1 1.1 1.2 1.4 1.6 1.8 2 2.2 2.5 2.8 3.2 3.5 4 4.5 5 5.6 6.3 7.1 8 9 10 11 13 14 16 18 20 22 25 29 32 36 40 45 51 57 64 72 80 90 102 114 128'.split(
    ' ',
  );

describe('published values', () => {
  published(
    'third stops',
    stopFromThirds,
    SERIES.map((expected, given) => ({ source: 'stop-series-thread', at: `${given} thirds above 1`, given, expected })),
  );
  published(
    'a marked stop read exactly',
    read,
    MARKS.map((given, i) => ({ source: 'stop-series-thread', at: `marked ${given}`, given, expected: SERIES[i]! })),
  );
});

describe('stops as they are written', () => {
  test.each([
    ['5.6', 15],
    ['5.60', 15],
    ['0.7', -3],
    ['0.5', -6],
    ['5.6⅓', 16],
    ['5.6 ⅔', 17],
    ['5.6 1/3', 16],
    ['8 2/3', 20],
    ['11½', 22.5],
    ['2¼', 6.75],
    ['2 3/4', 8.25],
  ])('%j lies %s thirds of a stop above 1', (text, thirds) => {
    expect(thirdsAboveOne(read(text))).toBeCloseTo(thirds, 12);
  });

  test.each(['1.5', '1.3', '1.7', '2.1', '2.4', '3.14159'])(
    '%s is no third of a stop, and is taken as it stands',
    (text) => {
      expect(read(text)).toBe(Number(text));
    },
  );

  test.each([
    ['', 'a stop is written as T5.6, T5.6⅓ or f/8'],
    ['wide open', 'a stop is written as T5.6, T5.6⅓ or f/8'],
    ['-4', 'a stop is written as T5.6, T5.6⅓ or f/8'],
    ['NaN', 'a stop is written as T5.6, T5.6⅓ or f/8'],
    ['5,6', 'a stop is written as T5.6, T5.6⅓ or f/8'],
    ['5.61/3', 'a stop is written as T5.6, T5.6⅓ or f/8'],
    ['0', 'a stop must be above zero'],
    ['0.0', 'a stop must be above zero'],
    ['2.1⅓', '2.1 is no marked stop, so it takes no fraction'],
    ['5.6 3/3', '3/3 is no part of a stop'],
    ['5.6 3/2', '3/2 is no part of a stop'],
  ])('%j is refused: %s', (text, why) => {
    expect(parseStopNumber(text)).toEqual({ ok: false, why });
  });
});

describe('stops printed and read back', () => {
  test('every third from f/0.5 to f/128⅔ is printed with its mark and read back exactly', () => {
    for (let thirds = -6; thirds <= 44; thirds += 1) {
      const text = printStopNumber(stopFromThirds(thirds), { exact: true });
      expect(text).toMatch(/^[\d.]+[⅓⅔]?$/);
      expect(read(text) / stopFromThirds(thirds)).toBeCloseTo(1, 14);
    }
  });

  test('any number is written so that the same number is read, to twelve digits', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 9999, noNaN: true }), (number) => {
        expect(Math.abs(read(printStopNumber(number, { exact: true })) / number - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  test('a plain number whose digits are a mark is not read back as the exact stop of that mark', () => {
    for (const mark of MARKS) {
      const text = printStopNumber(Number(mark), { exact: true });
      expect(Math.abs(read(text) / Number(mark) - 1)).toBeLessThan(1e-12);
    }
  });

  test('for eyes a stop is its nearest third', () => {
    expect(printStopNumber(5.6)).toBe('5.6');
    expect(printStopNumber(6.35)).toBe('5.6⅓');
    expect(printStopNumber(5)).toBe('4⅔');
    expect(printStopNumber(300)).toBe('300');
    expect(printStopNumber(0.123456)).toBe('0.123');
  });

  test('a stop that is not positive is refused by name', () => {
    for (const bad of [0, -1, NaN, Infinity])
      expect(() => printStopNumber(bad)).toThrow(`number must be positive and finite, got ${bad}`);
  });
});
