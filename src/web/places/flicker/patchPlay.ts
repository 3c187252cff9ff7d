/**
 * Whether a flicker may be played as a patch of light, and at which levels.
 *
 * A flash is a pair of opposing changes in relative luminance of 10 % or more of the greatest, where the darker of the two
 * is below 0.80. No second may hold more than three. Both figures are those of WCAG 2.2, success criterion 2.3.1 and its
 * general flash threshold. The criterion forgives small areas and measures against the brightest that a screen can show;
 * here neither is made use of: changes count against the brightest of the patch itself, however small and dim that is.
 * The patch is grey, so that no saturated red comes into it.
 *
 * Whoever is sensitive to light may be so below both figures too, which is why nothing plays unasked.
 *
 * @source wcag-flash the two figures, and what counts as a flash
 */
import { showNumber } from '../../../base/quantity.ts';

export const FLASH = { changeFraction: 0.1, darkerBelow: 0.8, mostASecond: 3 } as const;

/** Below this nobody sees anything, and no screen shows it. */
const LEAST_CHANGE = 2e-4;

/** A patch stops by itself after this long. */
export const MOST_PLAY_s = 10;

/** Relative luminance of the brightest frame: well below white, and very low on a dark stage. */
export const BRIGHTEST = { room: 0.4, stage: 0.02 } as const;

export interface PatchAsk {
  /** Light of each frame, in the order in which they play; 1 is the mean. */
  readonly frames: ArrayLike<number>;
  readonly play_fps: number;
  /** Relative luminance that the brightest frame is shown at. */
  readonly brightest: number;
}

export interface Patch {
  /** Relative luminance of each frame, as it would be shown. */
  readonly levels: Float64Array;
  /** Brightest less dimmest, over the brightest. */
  readonly changeFraction: number;
  /** Most flashes within any second. */
  readonly flashCount: number;
  /** Why it is not played, where so. */
  readonly refused?: string;
}

/** The relative luminance of each frame, the brightest as asked. */
export function patchLevels({ frames, brightest }: Omit<PatchAsk, 'play_fps'>): Float64Array {
  const light = Float64Array.from(frames, (each) => Math.max(0, each));
  const most = light.reduce((high, each) => Math.max(high, each), 0);
  return most > 0 ? light.map((each) => (each / most) * brightest) : light;
}

/** When the light has changed, up or down, by as much as counts since it last turned. */
export function countedChanges_s(levels: Float64Array, play_fps: number): readonly number[] {
  const greatest = levels.reduce((high, level) => Math.max(high, level), 0);
  const least = FLASH.changeFraction * greatest;
  // Sums of decimals may miss a tenth by their last digit: what is a tenth counts.
  const counts = (brighter: number, darker: number) =>
    brighter - darker >= least * (1 - 1e-9) && darker < FLASH.darkerBelow;
  const changes: number[] = [];
  let [low, high] = [levels[0] ?? 0, levels[0] ?? 0];
  let direction: 'up' | 'down' | undefined;
  levels.forEach((level, i) => {
    const rises = direction !== 'up' && counts(level, low);
    const falls = direction !== 'down' && counts(high, level);
    if (rises || falls) {
      direction = rises ? 'up' : 'down';
      changes.push(i / play_fps);
      [low, high] = [level, level];
    } else {
      low = Math.min(low, level);
      high = Math.max(high, level);
    }
  });
  return changes;
}

/** Most flashes in any second: a change that has no opposite within it counts as half a flash, rounded up. */
export function mostFlashes(changes_s: readonly number[]): number {
  let most = 0;
  let first = 0;
  changes_s.forEach((time_s, i) => {
    while (time_s - changes_s[first]! >= 1 - 1e-9) first += 1;
    most = Math.max(most, i - first + 1);
  });
  return Math.ceil(most / 2);
}

/** A flicker as a patch, judged frame by frame as it would play. */
export function patchOf({ frames, play_fps, brightest }: PatchAsk): Patch {
  const levels = patchLevels({ frames, brightest });
  const most = levels.reduce((high, level) => Math.max(high, level), 0);
  const least = levels.reduce((low, level) => Math.min(low, level), Infinity);
  const changeFraction = most > 0 ? (most - least) / most : 0;
  const flashCount = mostFlashes(countedChanges_s(levels, play_fps));
  const common = { levels, changeFraction, flashCount };
  if (levels.length === 0 || !(most > 0) || !Number.isFinite(most) || !(play_fps > 0))
    return { ...common, refused: 'There is no light to play.' };
  if (changeFraction < LEAST_CHANGE) return { ...common, refused: 'There is nothing to play: every frame gets the same light.' }; // prettier-ignore
  if (flashCount <= FLASH.mostASecond) return common;
  const change = showNumber(100 * changeFraction, 2);
  return {
    ...common,
    refused: `It is not played: it would flash ${flashCount} times within a second, by ${change} % of its brightest, and more than ${FLASH.mostASecond} flashes a second of ${100 * FLASH.changeFraction} % can harm people who are sensitive to them. Its frames stand here instead.`,
  };
}

/** How far a person has gone towards playing it: every press is theirs, and none is remembered. */
export type PatchStep = 'off' | 'warned' | 'asked-again' | 'playing';

export type PatchPress = 'begin' | 'play' | 'stop';

/** Where a press leads. Whoever asked their device for less motion confirms once more. */
export function afterPress(step: PatchStep, press: PatchPress, { isMotionReduced }: { readonly isMotionReduced: boolean }): PatchStep {
  if (press === 'stop') return 'off';
  if (press === 'begin') return step === 'off' ? 'warned' : step;
  if (step === 'warned') return isMotionReduced ? 'asked-again' : 'playing';
  return step === 'asked-again' ? 'playing' : step;
} // prettier-ignore
