/**
 * The shutter: the exposure time of an angle, the angle of an exposure time, and the longest exposure a rate leaves.
 *
 *     t = θ / (360 · f)        θ = 360 · f · t        t ≤ 1/f − d
 *
 * t exposure time, s        θ shutter angle, deg        f frame rate, fps        d dead time between exposures, s
 *
 * Holds for a shutter that opens once a frame, mechanical or electronic. A sensor read row by row has the same exposure
 * time in every row, begun at different moments.
 *
 * @source shutter-formula the relation and its usual angles
 * @source shutter-angle-table the same relation tabulated at 24 fps
 */
import { requireNotNegative, requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';

const TURN_deg = 360;
/** An exposure of one whole frame may come out a rounding error longer than the frame. */
const ROUNDING = 1e-9;

/** The exposure time of a shutter angle. Throws RangeError outside positive inputs or above 360 degrees. */
export function exposureTimeOfAngle_s({
  shutterAngle_deg,
  frameRate_fps,
}: {
  readonly shutterAngle_deg: number;
  readonly frameRate_fps: number;
}): number {
  requirePositive({ shutterAngle_deg, frameRate_fps });
  requireWithin(0, TURN_deg, { shutterAngle_deg });
  return shutterAngle_deg / (TURN_deg * frameRate_fps);
}

/** The shutter angle of an exposure time. Throws RangeError outside positive inputs or for more than one frame. */
export function shutterAngle_deg({
  exposureTime_s,
  frameRate_fps,
}: {
  readonly exposureTime_s: number;
  readonly frameRate_fps: number;
}): number {
  requirePositive({ exposureTime_s, frameRate_fps });
  const frames = exposureTime_s * frameRate_fps;
  if (frames > 1 + ROUNDING)
    throw new RangeError(`exposureTime_s must be at most one frame of ${1 / frameRate_fps} s, got ${exposureTime_s}`);
  return TURN_deg * Math.min(frames, 1);
}

/** What a frame leaves after the dead time. Throws RangeError outside its domain or when the dead time takes it all. */
export function longestExposure_s({
  frameRate_fps,
  deadTime_s,
}: {
  readonly frameRate_fps: number;
  readonly deadTime_s: number;
}): number {
  requirePositive({ frameRate_fps });
  requireNotNegative({ deadTime_s });
  const left_s = 1 / frameRate_fps - deadTime_s;
  if (!(left_s > 0))
    throw new RangeError(`deadTime_s must be shorter than one frame of ${1 / frameRate_fps} s, got ${deadTime_s}`);
  return left_s;
}

const SOURCES = ['shutter-formula', 'shutter-angle-table'];
const ONE_FRAME = 'One exposure a frame, so at most 360 degrees.';

export const exposureTimeOfAngle = law(exposureTimeOfAngle_s, {
  id: 'shutter-time',
  title: 'Exposure time of a shutter angle',
  says: 'How long each frame is exposed at a shutter angle and a frame rate.',
  equation: 't = θ / (360 · f)',
  takes: { shutterAngle_deg: 'Shutter angle', frameRate_fps: 'Frame rate' },
  gives: { exposureTime_s: 'Exposure time' },
  holds: ONE_FRAME,
  sources: SOURCES,
  words: ['shutter speed', '180 degrees', 'shutter angle'],
  example: { shutterAngle_deg: 172.8, frameRate_fps: 1000 },
});

export const shutterAngle = law(shutterAngle_deg, {
  id: 'shutter-angle',
  title: 'Shutter angle of an exposure time',
  says: 'The angle that exposes each frame for a given time.',
  equation: 'θ = 360 · f · t',
  takes: { exposureTime_s: 'Exposure time', frameRate_fps: 'Frame rate' },
  gives: { shutterAngle_deg: 'Shutter angle' },
  holds: ONE_FRAME,
  sources: SOURCES,
  words: ['shutter speed', 'degrees'],
  example: { exposureTime_s: 1 / 2000, frameRate_fps: 1000 },
});

export const longestExposure = law(longestExposure_s, {
  id: 'longest-exposure',
  title: 'Longest exposure a rate leaves',
  says: 'What is left of a frame once the sensor has taken its dead time.',
  equation: 't = 1/f − d',
  takes: {
    frameRate_fps: 'Frame rate',
    deadTime_s: { title: 'Dead time between exposures', note: 'reset and read-out, from the camera’s data sheet' },
  },
  gives: { exposureTime_s: 'Longest exposure time' },
  holds: 'The dead time is the camera’s at that mode; some cameras expose while reading out and have next to none.',
  sources: SOURCES,
  words: ['open shutter', 'read-out', 'shutter off', '360 degrees'],
  example: { frameRate_fps: 10_000, deadTime_s: 2e-6 },
});
