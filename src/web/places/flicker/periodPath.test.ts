import { expect, test } from 'vitest';
import { waveformOf } from '../../../laws/flicker/lamp.ts';
import { periodPath } from './periodPath.ts';

const BOX = { left: 40, right: 440, top: 10, bottom: 110, most: 2 };

const spots = (path: string) =>
  path
    .slice(1)
    .split('L')
    .map((spot) => spot.split(' ').map(Number) as [number, number]);

test('a period runs from edge to edge, from left to right', () => {
  const path = spots(periodPath(waveformOf({ kind: 'led-ripple', mains_Hz: 50, depthFraction: 0.5 }).samples, BOX));
  expect([path[0]![0], path.at(-1)![0]]).toEqual([40, 440]);
  expect(path.map(([x]) => x)).toEqual([...path.map(([x]) => x)].sort((a, b) => a - b));
});

test('no extreme is lost however narrow it is', () => {
  const samples = Float64Array.from({ length: 8192 }, (_, i) => (i === 5001 ? 0 : i === 77 ? 2 : 1));
  const ys = spots(periodPath(samples, BOX)).map(([, y]) => y);
  expect(Math.max(...ys)).toBe(110);
  expect(Math.min(...ys)).toBe(10);
  expect(ys.length).toBeLessThan(900);
});

test('a period of few cells has a point for each', () => {
  expect(spots(periodPath([1, 2, 1, 0], BOX))).toEqual([
    [40, 60],
    [90, 60],
    [190, 10],
    [290, 60],
    [390, 110],
    [440, 110],
  ]);
});
