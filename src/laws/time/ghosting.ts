/**
 * Gaps between averaged frames: when film is sped up by averaging, a short shutter on the set leaves the moving thing as a
 * row of ghosts instead of one smear.
 *
 *     gap = w·(1 − θ/360) / Fc
 *
 * w speed across the picture, px/s        θ shutter angle on the set, deg        Fc capture rate, fps
 *
 * Ghosts show where the gap is more than about a pixel. Closed by shooting near 360 degrees, or by making frames between.
 *
 * @source frame-rate-practice the part of a frame in which the shutter is shut
 */
import { requireNotNegative, requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';

/** Empty stretch between two averaged frames. Throws RangeError for a negative speed, an angle outside 0 to 360 or a rate not positive. */
export function ghostGap_px(given: {
  readonly imageSpeed_px_per_s: number;
  readonly shutterAngle_deg: number;
  readonly captureRate_fps: number;
}): number {
  const { imageSpeed_px_per_s, shutterAngle_deg, captureRate_fps } = given;
  requireNotNegative({ imageSpeed_px_per_s });
  requirePositive({ shutterAngle_deg, captureRate_fps });
  requireWithin(0, 360, { shutterAngle_deg });
  return (imageSpeed_px_per_s * (1 - shutterAngle_deg / 360)) / captureRate_fps;
}

export const ghostGap = law(ghostGap_px, {
  id: 'ghost-gap',
  title: 'Gap between averaged frames',
  says: 'How far apart the ghosts of a moving thing stand when frames are averaged to speed film up.',
  equation: 'gap = w · (1 − θ/360) / Fc',
  takes: {
    imageSpeed_px_per_s: 'Speed across the picture',
    shutterAngle_deg: 'Shutter angle on the set',
    captureRate_fps: 'Capture rate',
  },
  gives: { gap_px: 'Gap' },
  holds: 'Every captured frame averaged; more than about a pixel shows.',
  sources: ['frame-rate-practice'],
  words: ['ramp', 'retime', 'stepping', 'ghost', 'motion blur', 'speed up'],
  example: { imageSpeed_px_per_s: 20_000, shutterAngle_deg: 180, captureRate_fps: 1000 },
});
