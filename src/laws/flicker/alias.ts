/**
 * At what rate a ripple beats in the frames, and on the screen once they are slowed down.
 *
 *     a = |f − R·round(f/R)|        on screen a·P/R        clip needed, one beat: 1/a
 *
 * f ripple or one of its harmonics, Hz      R frame rate, fps      P playback rate, fps      a beat, 0 to R/2, Hz
 *
 * @source wagon-wheel the same folding, of a wheel's spokes
 */
import { requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

export interface AliasGiven {
  readonly ripple_Hz: number;
  readonly frameRate_fps: number;
}

/** A ripple this near to a whole number of cycles a frame beats slower than any clip can show. */
const STILL = 1e-12;

/** Rate at which a ripple beats from frame to frame, in the time of the set. Throws RangeError outside its domain. */
export function alias_Hz({ ripple_Hz, frameRate_fps }: AliasGiven): number {
  requireNotNegative({ ripple_Hz });
  requirePositive({ frameRate_fps });
  const turns = ripple_Hz / frameRate_fps;
  const off = Math.abs(turns - Math.round(turns));
  return off <= STILL * Math.max(1, turns) ? 0 : off * frameRate_fps;
}

/** As `alias_Hz`, and at the playback rate, with the screen time of one beat. Throws RangeError outside its domain. */
export function screenFlickerOf(given: AliasGiven & { readonly playback_fps: number }) {
  requirePositive({ playback_fps: given.playback_fps });
  const beat_Hz = alias_Hz(given);
  return { alias_Hz: beat_Hz, screen_Hz: (beat_Hz / given.frameRate_fps) * given.playback_fps };
}

export const screenFlicker = law(screenFlickerOf, {
  id: 'screen-flicker',
  title: 'Flicker as it is seen on the screen',
  says: 'At what rate a lamp’s ripple beats in the frames, and then on the screen.',
  equation: 'a = |f − R · round(f/R)|; on screen a · P / R',
  takes: {
    ripple_Hz: { title: 'Ripple', note: 'or one of its harmonics: two, three times it' },
    frameRate_fps: 'Frame rate',
    playback_fps: 'Playback rate',
  },
  gives: { alias_Hz: 'Beat in the frames', screen_Hz: 'Beat on the screen' },
  holds: 'Even frames. At 0 every frame meets the same light, and only a drift of the mains or of the lamp is seen.',
  sources: ['wagon-wheel'],
  cautions: ['flashing-light-and-photosensitive-people'],
  words: ['flicker', 'alias', 'beat', 'strobing', 'slow motion', 'mains', 'pulsing', 'breathing'],
  example: { ripple_Hz: 100, frameRate_fps: 1000, playback_fps: 25 },
});
