import { describe, expect, test } from 'vitest';
import { drawFour, drawKey } from '../base/randomStream.ts';
import { createCorrelator, type Picture } from './phaseCorrelation.ts';

const SIDE = 96;

/** Soft blobs, so that any shift can be worked out and none is between pixels. */
function texture(dx: number, dy: number, { noise = 0, gain = 1 } = {}): Float32Array {
  const key = drawKey(9, 'texture');
  const four = new Float64Array(4);
  const blobs = Array.from({ length: 160 }, (_, i) => {
    drawFour(key, i, 0, 0, four);
    return [140 * four[0]! - 20, 140 * four[1]! - 20, 1.2 + 1.5 * four[2]!, four[3]! - 0.3] as const;
  });
  return Float32Array.from({ length: SIDE * SIDE }, (_, i) => {
    const [x, y] = [i % SIDE, Math.floor(i / SIDE)];
    let value = 1;
    for (const [bx, by, size, tall] of blobs)
      value += tall * Math.exp(-((x - bx - dx) ** 2 + (y - by - dy) ** 2) / (2 * size * size));
    drawFour(key, i, 1, Math.round(1000 * dx) + 7, four);
    return gain * value + noise * Math.sqrt(-2 * Math.log(four[0]!)) * Math.cos(2 * Math.PI * four[1]!);
  });
}

const windowed = (values: Float32Array) => ({ values, stride: SIDE });
const { shift, leastPeak } = createCorrelator(64);
const correlate = (a: Picture, b: Picture) => shift(a, b, [{ left: 16, top: 16 }]);
const still = windowed(texture(0, 0));

describe('a shift', () => {
  test.each([
    [0, 0],
    [-2, 3],
    [7, -5],
    [15, 11],
  ])('of whole pixels (%d, %d) is found to a twentieth of one', (dx, dy) => {
    const { x, y, peak } = correlate(still, windowed(texture(dx, dy)));
    expect(Math.abs(x - dx)).toBeLessThan(0.05);
    expect(Math.abs(y - dy)).toBeLessThan(0.05);
    expect(peak).toBeGreaterThan(2 * leastPeak);
  });

  test.each([
    [0.3, 0.5],
    [-1.7, 2.25],
    [4.5, -0.4],
  ])('between pixels (%d, %d) is found to a tenth of one', (dx, dy) => {
    const { x, y } = correlate(still, windowed(texture(dx, dy)));
    expect(Math.abs(x - dx)).toBeLessThan(0.1);
    expect(Math.abs(y - dy)).toBeLessThan(0.1);
  });

  test('is not changed by brighter light, and little by noise', () => {
    const { x, y } = correlate(still, windowed(texture(3, -2, { gain: 1.6, noise: 0.03 })));
    expect(Math.hypot(x - 3, y + 2)).toBeLessThan(0.15);
  });

  test('turned round is the opposite shift', () => {
    const moved = windowed(texture(3, -2));
    const [forth, back] = [correlate(still, moved), correlate(moved, still)];
    expect(forth.x).toBeCloseTo(-back.x, 6);
    expect(forth.y).toBeCloseTo(-back.y, 6);
  });
});

test('a thing that moves in one window of several does not pull the shift of all', () => {
  const { shift: of } = createCorrelator(32);
  const corners = [0, 32, 64].flatMap((top) => [0, 32, 64].map((left) => ({ left, top })));
  const moved = texture(2, 1);
  const strange = texture(-6, 5);
  for (let y = 0; y < 32; y += 1) for (let x = 0; x < 32; x += 1) moved[y * SIDE + x] = strange[y * SIDE + x]!;
  const { x, y } = of(still, windowed(moved), corners);
  expect(Math.hypot(x - 2, y - 1)).toBeLessThan(0.1);
});

describe('a low peak', () => {
  test('tells of a texture of few waves in noise, where no shift can be known', () => {
    const waves = (d: number) =>
      texture(d, 0, { gain: 0, noise: 0.01 }).map((noise, i) => noise + Math.cos(0.4 * ((i % SIDE) - d)) + Math.cos(0.3 * Math.floor(i / SIDE))); // prettier-ignore
    expect(correlate(windowed(waves(0)), windowed(waves(3))).peak).toBeLessThan(leastPeak);
  });

  test('tells of pictures that have nothing in common', () => {
    const noise = (seed: number) => texture(seed, 0, { gain: 0, noise: 1 });
    expect(correlate(windowed(noise(1)), windowed(noise(2))).peak).toBeLessThan(leastPeak);
  });

  test('is 0 of nothing at all', () => {
    const plain = windowed(new Float32Array(SIDE * SIDE).fill(3));
    expect(correlate(plain, plain)).toEqual({ x: 0, y: 0, peak: 0 });
  });
});

test('a window too small is refused', () => expect(() => createCorrelator(4)).toThrow(/side/));
