import { describe, expect, test } from 'vitest';
import { createPlaces } from './frames.ts';

function placesOf(ticksPerFrame: number | undefined, times: readonly (number | undefined)[]) {
  const { next, isVariable } = createPlaces({ ticksPerFrame });
  return { places: times.map(next), isVariable: isVariable() };
}

describe('places of frames', () => {
  test.each<readonly [string, number | undefined, readonly (number | undefined)[], readonly number[], boolean]>([
    ['one after the other', 512, [1024, 1536, 2048], [0, 1, 2], false],
    ['with two missing', 512, [0, 512, 2048], [0, 1, 4], false],
    ['in milliseconds, rounded', 1001 / 30, [0, 33, 67, 100, 167], [0, 1, 2, 3, 5], false],
    ['at a tick a frame, with three missing', 1, [7, 8, 9, 13], [0, 1, 2, 6], false],
    ['of a clock whose tick is not their rate', 1, [0, 53, 132, 170], [0, 1, 2, 3], true],
    ['of a clock too coarse for them', 1.2, [0, 1, 4, 5], [0, 1, 2, 3], false],
    ['at any time, counted from the first that fits no place', 40, [0, 40, 120, 175, 290], [0, 1, 3, 4, 5], true],
    ['without times', undefined, [undefined, undefined], [0, 1], false],
  ])('%s', (_, ticksPerFrame, times, places, isVariable) => {
    expect(placesOf(ticksPerFrame, times)).toEqual({ places, isVariable });
  });

  test('go on after a frame as if it had come before', () => {
    const { next } = createPlaces({ ticksPerFrame: 40, after: { place: 6, pts: 240, isVariable: false } });
    expect([next(280), next(400)]).toEqual([7, 10]);
  });
});
