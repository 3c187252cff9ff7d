/**
 * Wheels that stand still or turn backwards: repeats passing faster than half the frame rate are seen as something else.
 *
 *     seen = f − (F/n)·round(f·n/F)        still at f = F/n        true below f = F / 2n
 *
 * f true rotation, rev/s        n spokes, teeth or ribs alike        F frame rate, fps
 *
 * A negative rotation is seen backwards. Whatever makes one repeat differ from the rest gives it away.
 *
 * @source wagon-wheel a wheel of six spokes at 24 fps, worked
 */
import { requireCount, requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

interface Repeating {
  readonly repeatCount: number;
  readonly frameRate_fps: number;
}

/** The rotation a wheel seems to have, negative where backwards. Throws RangeError outside its domain. */
export function apparentRotation_rev_per_s(given: Repeating & { readonly rotation_rev_per_s: number }): number {
  const { rotation_rev_per_s, repeatCount, frameRate_fps } = given;
  requireNotNegative({ rotation_rev_per_s });
  const still_rev_per_s = standstillRotation_rev_per_s(given);
  return rotation_rev_per_s - still_rev_per_s * Math.round((rotation_rev_per_s * repeatCount) / frameRate_fps);
}

/** The lowest rotation at which a wheel seems to stand still. Throws RangeError for no repeats or a rate not positive. */
export function standstillRotation_rev_per_s({ repeatCount, frameRate_fps }: Repeating): number {
  requireCount({ repeatCount }, 1);
  requirePositive({ frameRate_fps });
  return frameRate_fps / repeatCount;
}

/** The frame rate above which a wheel is seen as it turns. Throws RangeError for no repeats or a rotation not positive. */
export function trueRotationRate_fps(given: {
  readonly rotation_rev_per_s: number;
  readonly repeatCount: number;
}): number {
  const { rotation_rev_per_s, repeatCount } = given;
  requireCount({ repeatCount }, 1);
  requirePositive({ rotation_rev_per_s });
  return 2 * rotation_rev_per_s * repeatCount;
}

const REPEATS = { repeatCount: { title: 'Spokes or teeth alike', as: 'count' } } as const;
const COMMON = {
  holds: 'Repeats that look alike, sharp enough to be told apart in one frame.',
  sources: ['wagon-wheel'],
  words: ['wagon wheel', 'backwards', 'strobing', 'aliasing', 'fan', 'whisk', 'blender'],
};

export const apparentRotation = law(apparentRotation_rev_per_s, {
  id: 'apparent-rotation',
  title: 'Rotation as it is seen',
  says: 'How fast, and which way, a wheel seems to turn at a frame rate.',
  equation: 'seen = f − (F/n) · round(f · n / F)',
  takes: { rotation_rev_per_s: 'Rotation', ...REPEATS, frameRate_fps: 'Frame rate' },
  gives: { apparent_rev_per_s: 'Rotation seen, negative if backwards' },
  example: { rotation_rev_per_s: 3.9, repeatCount: 6, frameRate_fps: 24 },
  ...COMMON,
});

export const standstillRotation = law(standstillRotation_rev_per_s, {
  id: 'standstill-rotation',
  title: 'Rotation that stands still',
  says: 'The slowest turning at which a wheel seems not to turn at all.',
  equation: 'f = F / n',
  takes: { ...REPEATS, frameRate_fps: 'Frame rate' },
  gives: { rotation_rev_per_s: 'Rotation' },
  example: { repeatCount: 6, frameRate_fps: 24 },
  ...COMMON,
});

export const trueRotationRate = law(trueRotationRate_fps, {
  id: 'true-rotation-rate',
  title: 'Frame rate that shows a rotation',
  says: 'The frame rate above which a wheel is seen turning the way it turns.',
  equation: 'F = 2 · f · n',
  takes: { rotation_rev_per_s: 'Rotation', ...REPEATS },
  gives: { frameRate_fps: 'Frame rate' },
  example: { rotation_rev_per_s: 25, repeatCount: 4 },
  ...COMMON,
});
