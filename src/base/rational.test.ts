import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dividedBy, isRoundedRate, parseRational, printRational, ratioOf, rational, times } from './rational.ts';

const small = fc.integer({ min: 1, max: 1_000_000 });

describe('exact ratios', () => {
  test('are kept in lowest terms', () => {
    expect(rational(48_000, 2002)).toEqual({ num: 24_000, den: 1001 });
    expect(rational(0, 7)).toEqual({ num: 0, den: 1 });
    expect(rational(25)).toEqual({ num: 25, den: 1 });
  });

  test('are written and read back to the same ratio, with and without a unit', () => {
    fc.assert(
      fc.property(small, small, fc.constantFrom('', ' fps', 'fps', ' FPS'), (num, den, unit) => {
        const ratio = rational(num, den);
        expect(parseRational(printRational(ratio) + unit)).toEqual({ ok: true, value: ratio });
      }),
    );
  });

  test('times one and divided by it is the other, with nothing rounded', () => {
    fc.assert(
      fc.property(small, small, small, small, (a, b, c, d) => {
        const one = rational(a % 1000 || 1, b % 1000 || 1);
        const other = rational(c % 1000 || 1, d % 1000 || 1);
        expect(dividedBy(times(one, other), other)).toEqual(one);
        expect(ratioOf(times(one, other))).toBeCloseTo(ratioOf(one) * ratioOf(other), 9);
      }),
    );
  });

  test('refuse what is not a ratio of whole numbers, or too large to be exact', () => {
    expect(() => rational(1, 0)).toThrow('den must be a whole number of at least 1, got 0');
    expect(() => rational(-24)).toThrow('num must be a whole number of at least 0, got -24');
    expect(() => rational(23.976)).toThrow('num must be a whole number');
    expect(() => dividedBy(rational(1), rational(0))).toThrow('den must be');
    expect(() => times(rational(2 ** 40), rational(2 ** 40))).toThrow('num must be a whole number');
  });
});

describe('rates as people write them', () => {
  test.each([
    ['25', 25, 1],
    ['24000/1001', 24_000, 1001],
    [' 24000 / 1001 fps ', 24_000, 1001],
    ['12.5', 25, 2],
    ['24.0', 24, 1],
    ['1000 frames a second', 1000, 1],
    ['0.5fps', 1, 2],
    ['119.5', 239, 2],
    ['23.5', 47, 2],
  ])('%j is read exactly', (text, num, den) => {
    expect(parseRational(text)).toEqual({ ok: true, value: { num, den } });
    expect(isRoundedRate(text)).toBe(false);
  });

  test.each([
    ['23.976', '24000/1001'],
    ['23.98', '24000/1001'],
    ['23.97', '24000/1001'],
    ['23.9760', '24000/1001'],
    ['23.976024', '24000/1001'],
    ['23.976 fps', '24000/1001'],
    ['29.97', '30000/1001'],
    ['29.970', '30000/1001'],
    ['47.952', '48000/1001'],
    ['47.95', '48000/1001'],
    ['59.94', '60000/1001'],
    ['59.9401', '60000/1001'],
    ['71.93', '72000/1001'],
    ['95.904', '96000/1001'],
    ['119.88', '120000/1001'],
    ['239.76', '240000/1001'],
  ])('%j is refused, and the ratio it is a name of given', (text, exact) => {
    const read = parseRational(text);
    expect(read).toMatchObject({ ok: false });
    expect(read.ok ? '' : read.why).toBe(`${text.replace(' fps', '')} is a rounded name; write ${exact}`);
    expect(isRoundedRate(text)).toBe(true);
    expect(parseRational(exact).ok).toBe(true);
  });

  test.each([
    '',
    ' ',
    'fps',
    'NaN',
    'Infinity',
    '-24',
    '24,5',
    '24/0',
    '1/2/3',
    '24e3',
    '0x18',
    '12 34',
    '9'.repeat(16),
  ])('%j is no rate', (text) => {
    const read = parseRational(text);
    expect(read.ok).toBe(false);
    expect(read.ok ? '' : read.why).toMatch(/rate/);
  });

  test('no text at all breaks the reading', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const read = parseRational(text);
        expect(read.ok ? Number.isSafeInteger(read.value.num) && read.value.den > 0 : read.why !== '').toBe(true);
      }),
    );
  });
});
