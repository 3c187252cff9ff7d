/**
 * A shutter made afterwards: which captured frames an output frame averages when film runs faster than it was taken.
 *
 *     window = [t(u)·Fc, t(u + (θ/360)/Fp)·Fc]        n = Fc·s·(θ/360)/Fp        θ = 360·n·Fp / (Fc·s)
 *
 * u screen time at which the made shutter opens, s        t real time, s        Fc, Fp capture and play rates, fps
 * θ angle of the made shutter, deg        n captured frames averaged        s speed, 1 as on the set
 *
 * Frame i of a clip fills [i, i + 1) of a window. Averages must be taken in linear light. Below one captured frame an
 * output frame no average lengthens the blur: the camera's own shutter sets it.
 *
 * @source frame-rate-practice averaging whole frames to a shutter angle
 */
import { requireCount, requireFinite, requireNotNegative, requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';
import { realTimeAt_s, type Knot, type RampShape } from './profile.ts';

/** A stretch of a clip, in captured frames; either end may fall within a frame. */
export interface FrameWindow {
  readonly startFrame: number;
  readonly endFrame: number;
}

export interface MadeShutter {
  readonly captureRate_fps: number;
  readonly playRate_fps: number;
  readonly shutterAngle_deg: number;
}

/** Captured frames that a shutter of this angle spans at real speed. Throws RangeError outside 0 to 360 and positive rates. */
export function framesAveraged({ captureRate_fps, playRate_fps, shutterAngle_deg }: MadeShutter): number {
  requirePositive({ captureRate_fps, playRate_fps, shutterAngle_deg });
  requireWithin(0, 360, { shutterAngle_deg });
  return (captureRate_fps * shutterAngle_deg) / (360 * playRate_fps);
}

/** The shutter angle that an average of whole frames stands for. Throws RangeError outside positive inputs. */
export function averagedShutterAngle_deg(given: {
  readonly averagedCount: number;
  readonly captureRate_fps: number;
  readonly playRate_fps: number;
  readonly speedFraction?: number;
}): number {
  const { averagedCount, captureRate_fps, playRate_fps, speedFraction = 1 } = given;
  requireCount({ averagedCount }, 1);
  requirePositive({ captureRate_fps, playRate_fps, speedFraction });
  return (360 * averagedCount * playRate_fps) / (captureRate_fps * speedFraction);
}

/**
 * The captured frames that one output frame of a profile sees, its shutter opening at `screenTime_s`. Past the last knot
 * the last speed runs on. Throws RangeError for a faulty profile, a moment outside it, or as `framesAveraged` does.
 */
export function sourceWindow(
  given: MadeShutter & { readonly knots: readonly Knot[]; readonly shape: RampShape; readonly screenTime_s: number },
): FrameWindow {
  const { knots, shape, screenTime_s, captureRate_fps, playRate_fps, shutterAngle_deg } = given;
  framesAveraged({ captureRate_fps, playRate_fps, shutterAngle_deg });
  const startFrame = realTimeAt_s(knots, shape, screenTime_s) * captureRate_fps;
  const last = knots.at(-1)!;
  const closes_s = screenTime_s + shutterAngle_deg / 360 / playRate_fps;
  const beyond_s = Math.max(0, closes_s - last.screenTime_s);
  const closesAt_s = realTimeAt_s(knots, shape, Math.min(closes_s, last.screenTime_s)) + beyond_s * last.speedFraction;
  return { startFrame, endFrame: closesAt_s * captureRate_fps };
}

/** How many whole captured frames stand best for a window: never none. */
export function wholeFramesOf({ startFrame, endFrame }: FrameWindow): number {
  requireFinite({ startFrame, endFrame });
  return Math.max(1, Math.round(endFrame - startFrame));
}

/** A window wider than this is no shutter but a mistake, and its weights would fill memory. */
const WIDEST_WINDOW = 1e6;

/**
 * Weights, of sum 1, of the frames from `firstFrame` on that make a window exact, its ends taking part frames. Throws
 * RangeError unless the window is finite, starts at 0 or later, and is wider than 0 and at most a million frames.
 */
export function boxWeights({ startFrame, endFrame }: FrameWindow): {
  readonly firstFrame: number;
  readonly weights: readonly number[];
} {
  requireNotNegative({ startFrame, endFrame });
  const width = endFrame - startFrame;
  requirePositive({ 'endFrame - startFrame': width });
  requireWithin(0, WIDEST_WINDOW, { 'endFrame - startFrame': width });
  const firstFrame = Math.floor(startFrame);
  const weights = Array.from({ length: Math.ceil(endFrame) - firstFrame }, (_, i) => {
    const frame = firstFrame + i;
    return (Math.min(endFrame, frame + 1) - Math.max(startFrame, frame)) / width;
  });
  return { firstFrame, weights };
}

const COMMON = {
  holds: 'Frames averaged in linear light; the capture shutter open nearly all the time, or gaps show as ghosts.',
  sources: ['frame-rate-practice'],
};

export const framesToAverage = law(framesAveraged, {
  id: 'frames-averaged',
  title: 'Frames averaged for real speed',
  says: 'How many captured frames one shown frame blends, so that fast film shown at real speed blurs as usual.',
  equation: 'n = Fc · (θ/360) / Fp',
  takes: {
    captureRate_fps: 'Capture rate',
    playRate_fps: 'Play rate',
    shutterAngle_deg: 'Shutter angle to imitate',
  },
  gives: { averagedRatio: { title: 'Captured frames a shown frame', as: 'ratio' } },
  words: ['frame blending', 'synthetic shutter', 'speed ramp', 'motion blur'],
  example: { captureRate_fps: 1000, playRate_fps: 24, shutterAngle_deg: 180 },
  ...COMMON,
});

export const averagedAngle = law(averagedShutterAngle_deg, {
  id: 'averaged-shutter-angle',
  title: 'Shutter angle of an average',
  says: 'The shutter angle that a blend of whole frames amounts to.',
  equation: 'θ = 360 · n · Fp / (Fc · s)',
  takes: {
    averagedCount: { title: 'Frames averaged', as: 'count' },
    captureRate_fps: 'Capture rate',
    playRate_fps: 'Play rate',
    speedFraction: { title: 'Speed on screen', as: 'fraction', default: 1, note: '1 is as on the set' },
  },
  gives: { shutterAngle_deg: 'Shutter angle' },
  words: ['frame blending', 'synthetic shutter', 'speed ramp', 'motion blur'],
  example: { averagedCount: 21, captureRate_fps: 1000, playRate_fps: 24 },
  ...COMMON,
});
