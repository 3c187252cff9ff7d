import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { AXIS, placeMargin, placeOnAxis, showSigned } from './marginScale.ts';

describe('a place on the axis', () => {
  test('the ends of the axis lie at 0 and 1', () => {
    expect(placeOnAxis(AXIS.least)).toBe(0);
    expect(placeOnAxis(AXIS.most)).toBe(1);
  });

  test('a larger figure never lies further left, and none leaves the axis', () => {
    const stops = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(stops, stops, (a, b) => {
        const [low, high] = [placeOnAxis(Math.min(a, b)), placeOnAxis(Math.max(a, b))];
        expect(low).toBeLessThanOrEqual(high);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1);
      }),
    );
  });
});

describe('the bar of a margin', () => {
  test('what is short grows left from just enough', () => {
    const bar = placeMargin({ value: -1.3, low: -1.6, high: -0.9 });
    expect(bar.to).toBe(placeOnAxis(0));
    expect(bar.from).toBeLessThan(bar.to);
    expect(bar.low).toBeLessThan(bar.from);
    expect(bar.beyond).toBeUndefined();
  });

  test('what is to spare grows right from just enough', () => {
    const bar = placeMargin({ value: 0.7, low: 0.7, high: 0.7 });
    expect(bar.from).toBe(placeOnAxis(0));
    expect(bar.to).toBeGreaterThan(bar.from);
  });

  test('a figure beyond the axis is kept at its edge and says on which side', () => {
    expect(placeMargin({ value: 6.1, low: 5.9, high: 6.3 })).toMatchObject({ to: 1, beyond: 'right' });
    expect(placeMargin({ value: -4, low: -4, high: -4 })).toMatchObject({ from: 0, beyond: 'left' });
  });
});

test.each([
  [0.42, '+0.4'],
  [-1.27, '−1.3'],
  [0.04, '0.0'],
  [-0.04, '0.0'],
  [Infinity, '+∞'],
])('%d is shown with its sign as %s', (value, shown) => expect(showSigned(value)).toBe(shown));
