import { expect, test } from 'vitest';
import { edgeSpeed_px_per_s } from './edgeScroll.ts';

test.each([
  ['in the middle', 450, 900, 0],
  ['where the edge begins', 844, 900, 0],
  ['half into the edge at the foot', 872, 900, 450],
  ['half into the edge at the top', 28, 900, -450],
  ['at the foot', 900, 900, 900],
  ['below the window', 2000, 900, 900],
  ['above it', -500, 900, -900],
  ['in the middle of a low window', 45, 90, 0],
  ['at the foot of a low window', 90, 90, 900],
])('%s, %d px down a window of %d, the page goes %d px a second', (_, y_px, height_px, speed_px_per_s) => {
  expect(edgeSpeed_px_per_s(y_px, height_px)).toBeCloseTo(speed_px_per_s, 9);
});

test('the nearer to the edge, the faster', () => {
  const speeds = Array.from({ length: 57 }, (_, i) => edgeSpeed_px_per_s(844 + i, 900));
  expect(speeds.every((speed, i) => i === 0 || speed > speeds[i - 1]!)).toBe(true);
});
