import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { afterPress, BRIGHTEST, countedChanges_s, FLASH, MOST_PLAY_s, mostFlashes, patchLevels, patchOf, type PatchPress, type PatchStep } from './patchPlay.ts'; // prettier-ignore

/** Frames that beat so many times a second by so much of their brightest. */
const beating = ({ beat_Hz, changeFraction, play_fps = 25 }: { readonly beat_Hz: number; readonly changeFraction: number; readonly play_fps?: number }) =>
  Float64Array.from({ length: MOST_PLAY_s * play_fps }, (_, i) => {
    const depth = changeFraction / (2 - changeFraction);
    return 1 + depth * Math.cos((2 * Math.PI * beat_Hz * i) / play_fps);
  }); // prettier-ignore

const patch = (given: Parameters<typeof beating>[0]) =>
  patchOf({ frames: beating(given), play_fps: given.play_fps ?? 25, brightest: BRIGHTEST.room });

describe('a general flash, as WCAG 2.2 defines it', () => {
  test('is a change of a tenth and its opposite; a smaller one is none', () => {
    const square = (low: number) => Float64Array.from([1, low, 1, low, 1], (level) => level * 0.5);
    expect(countedChanges_s(square(0.9), 1)).toHaveLength(4);
    expect(countedChanges_s(square(0.91), 1)).toHaveLength(0);
  });

  test('is counted however gradual the change is', () => {
    const slow = Float64Array.from({ length: 40 }, (_, i) => 0.3 + 0.1 * Math.abs(Math.sin((Math.PI * i) / 20)));
    expect(countedChanges_s(slow, 20).length).toBe(4);
  });

  test('is none where the darker of the two is bright', () => {
    expect(countedChanges_s(Float64Array.from([1, 0.85, 1, 0.85]), 1)).toHaveLength(0);
    expect(countedChanges_s(Float64Array.from([1, 0.79, 1, 0.79]), 1)).toHaveLength(3);
  });

  test('is two changes: three flashes in a second are six of them', () => {
    expect(mostFlashes([0, 0.1, 0.2, 0.3, 0.4, 0.5])).toBe(3);
    expect(mostFlashes([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.99])).toBe(4);
    expect(mostFlashes([0, 0.1, 0.2, 0.3, 0.4, 0.5, 1])).toBe(3);
    expect(mostFlashes([])).toBe(0);
  });
});

describe('a flicker', () => {
  test.each([
    [2.5, 0.5],
    [1, 0.9],
    [2.9, 0.15],
    [10, 0.09],
    [12.5, 0.05],
  ])('of %f beats a second and %f of its brightest is played', (beat_Hz, changeFraction) => {
    expect(patch({ beat_Hz, changeFraction }).refused).toBeUndefined();
  });

  test.each([
    [4, 0.2],
    [10, 0.12],
    [12.5, 1],
    [3.5, 0.5],
  ])('of %f beats a second and %f of its brightest is refused, with the reason', (beat_Hz, changeFraction) => {
    const { refused, flashCount } = patch({ beat_Hz, changeFraction });
    expect(flashCount).toBeGreaterThan(FLASH.mostASecond);
    expect(refused).toMatch(/not played.*flash \d+ times within a second/);
  });

  test('is refused on a dark stage as it is in a bright room: dimness does not excuse it', () => {
    const frames = beating({ beat_Hz: 8, changeFraction: 0.3 });
    const stage = patchOf({ frames, play_fps: 25, brightest: BRIGHTEST.stage });
    expect(stage.refused).toBeDefined();
    expect(Math.max(...stage.levels)).toBeCloseTo(BRIGHTEST.stage, 12);
  });

  /** The longest run of changes up and down in turn, each of a tenth of the greatest: every choice of frames tried. */
  const mostTurns = (levels: ArrayLike<number>, least: number): number => {
    const [up, down] = [new Array<number>(levels.length).fill(0), new Array<number>(levels.length).fill(0)];
    for (let to = 0; to < levels.length; to += 1)
      for (let from = 0; from < to; from += 1) {
        if (levels[to]! - levels[from]! >= least) up[to] = Math.max(up[to]!, down[from]! + 1);
        if (levels[from]! - levels[to]! >= least) down[to] = Math.max(down[to]!, up[from]! + 1);
      }
    return Math.max(0, ...up, ...down);
  };

  test('whatever it is, what is played holds no more than six changes in any second, every choice of frames tried', () => {
    let playedCount = 0;
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.2, max: 1, noNaN: true }), { minLength: 3, maxLength: 12 }),
        fc.double({ min: 0.02, max: 1, noNaN: true }),
        fc.integer({ min: 1, max: 8 }),
        (poles, share, hold) => {
          const frames = poles.flatMap((pole) => new Array<number>(hold).fill(1 - share * (1 - pole)));
          const { levels, refused } = patchOf({ frames, play_fps: 25, brightest: BRIGHTEST.room });
          if (refused !== undefined) return;
          playedCount += 1;
          for (let from = 0; from < levels.length; from += 1)
            expect(mostTurns(levels.slice(from, from + 25), 0.1 * Math.max(...levels))).toBeLessThanOrEqual(6);
        },
      ),
    );
    expect(playedCount).toBeGreaterThan(10);
  });

  test('of no light, or of none that plays, is nothing to play', () => {
    expect(patchOf({ frames: [], play_fps: 25, brightest: 0.4 }).refused).toBeDefined();
    expect(patchOf({ frames: [0, 0], play_fps: 25, brightest: 0.4 }).refused).toBeDefined();
    expect(patchOf({ frames: [1, 1], play_fps: 0, brightest: 0.4 }).refused).toBeDefined();
    expect(patchOf({ frames: [1, 1.0001, 1], play_fps: 25, brightest: 0.4 }).refused).toMatch(/every frame gets the same light/); // prettier-ignore
    expect(patchOf({ frames: [1, 1.001, 1], play_fps: 25, brightest: 0.4 }).refused).toBeUndefined();
  });
});

test('the brightest frame is shown at the level asked, and the others in proportion', () => {
  expect([...patchLevels({ frames: [1, 0.5, 2], brightest: 0.4 })]).toEqual([0.2, 0.1, 0.4]);
});

describe('pressing', () => {
  const press = (step: PatchStep, isMotionReduced: boolean, ...presses: readonly PatchPress[]) =>
    presses.reduce((at, each) => afterPress(at, each, { isMotionReduced }), step);

  test('once warns, and only a second press plays', () => {
    expect(press('off', false, 'begin')).toBe('warned');
    expect(press('off', false, 'begin', 'begin', 'begin')).toBe('warned');
    expect(press('off', false, 'begin', 'play')).toBe('playing');
    expect(press('off', false, 'play')).toBe('off');
  });

  test('with less motion asked for takes one confirmation more', () => {
    expect(press('off', true, 'begin', 'play')).toBe('asked-again');
    expect(press('off', true, 'begin', 'play', 'play')).toBe('playing');
  });

  test('stop leads back to the beginning from anywhere, and the warning stands anew', () => {
    for (const step of ['off', 'warned', 'asked-again', 'playing'] as const) expect(press(step, true, 'stop')).toBe('off'); // prettier-ignore
    expect(press('playing', false, 'stop', 'begin')).toBe('warned');
  });
});
