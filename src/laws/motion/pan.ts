/**
 * The fastest pan that does not judder: one picture width in seven seconds at 24 frames a second and 180 degrees, which
 * is 168 shown frames a width whatever the rates.
 *
 *     screen time = n·168 / Fp        time on the set = n·168 / Fc
 *
 * n picture widths crossed        Fp play rate, fps        Fc capture rate, fps
 *
 * A rule of thumb for panning, and for anything wide that crosses the picture; it says where judder becomes plain, not
 * where it begins. Bright high-contrast screens ask for slower.
 *
 * @source pan-rule seven seconds a picture width
 * @source animation-pan a like rule from drawn animation
 */
import { requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

/** Frames in which one picture width may pass: 7 s at 24 fps. @source pan-rule */
export const FRAMES_A_WIDTH = 7 * 24;

/** The shortest a pan may last, on screen and on the set. Throws RangeError outside positive inputs. */
export function shortestPanOf(given: {
  readonly captureRate_fps: number;
  readonly playRate_fps: number;
  readonly pictureWidthsRatio?: number;
}): { readonly screenTime_s: number; readonly captureTime_s: number } {
  const { captureRate_fps, playRate_fps, pictureWidthsRatio = 1 } = given;
  requirePositive({ captureRate_fps, playRate_fps, pictureWidthsRatio });
  const frames = FRAMES_A_WIDTH * pictureWidthsRatio;
  return { screenTime_s: frames / playRate_fps, captureTime_s: frames / captureRate_fps };
}

export const shortestPan = law(shortestPanOf, {
  id: 'shortest-pan',
  title: 'Shortest pan',
  says: 'How long a pan or a passing background must take so that it does not judder.',
  equation: 'screen time = n · 168 / Fp, time on the set = n · 168 / Fc',
  takes: {
    captureRate_fps: 'Capture rate',
    playRate_fps: 'Play rate',
    pictureWidthsRatio: { title: 'Picture widths crossed', as: 'ratio', default: 1 },
  },
  gives: { screenTime_s: 'Shortest on screen', captureTime_s: 'Shortest on the set' },
  holds: 'A shutter near 180 degrees and every frame shown once; a rule of thumb, looser for dim or soft pictures.',
  sources: ['pan-rule', 'animation-pan'],
  words: ['strobing', 'judder', 'tracking', 'camera move', 'seven seconds', 'dolly'],
  example: { captureRate_fps: 1000, playRate_fps: 24 },
});
