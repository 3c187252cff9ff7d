import { describe, expect, test } from 'vitest';
import { published } from '../../test/published.ts';
import { drawFour, drawKey } from '../base/randomStream.ts';
import { actionOf, cusumOf, onsetOf } from './action.ts';

/** Values of a worked table, quiet at 0 with a deviation of 1, and the sum after each as it prints it. */
const TABLE = [0.8, 1.9, 1.4, 2.0, 1.1, 0.7, 2.6];
const SUMS = ['0.3', '1.7', '2.6', '4.1', '4.7', '4.9', '7.0'];

published('the sum of a rise', (i: number) => cusumOf(Float64Array.from(TABLE), { mean: 0, deviation: 1 })[i]!,
  SUMS.map((expected, i) => ({ source: 'cusum-table', at: `table 24.1, no head start, row ${i + 1}`, given: i, expected })),
); // prettier-ignore

function noiseOf(seed: number, count: number): Float64Array {
  const key = drawKey(seed, 'quiet');
  const four = new Float64Array(4);
  return Float64Array.from({ length: count }, (_, i) => {
    drawFour(key, i, 0, 0, four);
    return Math.sqrt(-2 * Math.log(four[0]!)) * Math.cos(2 * Math.PI * four[1]!);
  });
}

describe('an onset', () => {
  test('of a rise by three deviations is found within a few frames of where it begins', () => {
    const late = Array.from({ length: 40 }, (_, seed) => {
      const values = noiseOf(seed, 200).map((value, i) => value + (i >= 120 ? 3 : 0));
      return onsetOf(values, { mean: 0, deviation: 1 })! - 120;
    });
    expect(late.filter((off) => Math.abs(off) <= 5).length).toBeGreaterThanOrEqual(36);
  });

  test('is rare where nothing rises', () => {
    const wrong = Array.from({ length: 40 }, (_, seed) => onsetOf(noiseOf(seed, 500), { mean: 0, deviation: 1 }));
    expect(wrong.filter((of) => of !== undefined).length).toBeLessThanOrEqual(4);
  });
});

/** Activity that is quiet, then lively from one frame to another. */
const lively = (count: number, from: number, to: number, seed = 1) =>
  noiseOf(seed, count).map((value, i) => Math.max(0, 0.2 * value) + (i >= from && i <= to ? 30 + 10 * Math.sin(i) : 0));
const asked = { leastDeviation: 0.05, playback_fps: 25 };

describe('an action', () => {
  test('is framed by where it is lively, with handles of a quarter of a second on the screen', () => {
    const action = actionOf({ ...asked, activity: lively(300, 100, 180) })!;
    expect(Math.abs(action.onset - 100)).toBeLessThanOrEqual(2);
    expect(Math.abs(action.end - 180)).toBeLessThanOrEqual(2);
    expect([action.in, action.out]).toEqual([action.onset - 6, action.end + 6]);
    expect(action).toMatchObject({ isBegun: true, isEnded: true, confidence: 'clear' });
  });

  test('keeps the handles asked for, within the clip', () => {
    const action = actionOf({ ...asked, activity: lively(300, 100, 290), handle_s: 2 })!;
    expect([action.in, action.out]).toEqual([action.onset - 50, 299]);
  });

  test('with a short lull is one, with a long one from first to last', () => {
    const activity = lively(300, 100, 180).map((value, i) => (i > 130 && i < 134 ? 0 : value));
    expect(actionOf({ ...asked, activity })!.end).toBeGreaterThan(175);
  });

  test('that runs from the first frame has not begun in the clip, and its quiet is only likely', () => {
    const action = actionOf({ ...asked, activity: lively(300, 0, 150) })!;
    expect(action).toMatchObject({ isBegun: false, isEnded: true, confidence: 'likely' });
  });

  test.each([
    ['nothing that moves', new Float64Array(200)],
    ['noise alone', noiseOf(3, 200).map((value) => Math.max(0, 0.2 * value))],
    ['one frame that flashes', lively(200, 90, 90)],
    ['hardly any frames', Float64Array.of(0, 9, 9)],
  ])('is not found in %s', (_, activity) => expect(actionOf({ ...asked, activity })).toBeUndefined());

  test('that stands out in no frame by itself is found by all of them together', () => {
    const activity = noiseOf(5, 240).map((value, i) => 4 + 0.5 * value + (i >= 120 ? 2.5 : 0));
    const action = actionOf({ ...asked, activity })!;
    expect(Math.abs(action.onset - 120)).toBeLessThanOrEqual(3);
    expect(action).toMatchObject({ isEnded: false, confidence: 'likely' });
  });

  test('is none where a long clip creeps up by less than its noise', () => {
    const activity = noiseOf(6, 2000).map((value, i) => 4 + 0.5 * value + i / 2000);
    expect(actionOf({ ...asked, activity })).toBeUndefined();
  });

  test('is found under frames that stand out one by one, as every twelfth of a coded clip may', () => {
    const coded = (i: number) => (i % 12 === 0 ? 60 : 0);
    const activity = lively(300, 100, 180).map((value, i) => value + coded(i));
    const action = actionOf({ ...asked, activity })!;
    expect(Math.abs(action.onset - 100)).toBeLessThanOrEqual(2);
    expect(Math.abs(action.end - 180)).toBeLessThanOrEqual(2);
  });

  test('at no playback rate is refused', () =>
    expect(() => actionOf({ ...asked, playback_fps: 0, activity: lively(300, 1, 2) })).toThrow(/playback_fps/));
});
