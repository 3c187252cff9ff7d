/**
 * The form of the reply to `longsecond measure --json`: numbers stand under keys that end in their unit, frames are counted
 * from 0, rates are those of the set. Within one major version keys may be added; none is removed, renamed or changed in
 * meaning.
 */
import * as z from 'zod';
import { Colour } from './colourSchema.ts';
import { LearntReply } from './learn/learnSchema.ts';
import { Pair } from './pairSchema.ts';

export const MEASURE_SCHEMA = 'longsecond.measure/1';

const list = <T extends z.ZodType>(of: T) => z.array(of).readonly();

const Lamp = z
  .strictObject({
    id: z.string(),
    title: z.string(),
    ripple_Hz: z.number(),
    order: z.int().describe('1 for the ripple itself, 2 and more for its harmonics.'),
    plannedDepthFraction: z.number().describe('That it was planned to have in the frames.'),
  })
  .meta({ id: 'fittingLamp' });

const Line = z
  .strictObject({
    says: z.string(),
    beat_Hz: z.number().describe('From frame to frame.'),
    deviation_Hz: z.number().describe('One standard deviation of it.'),
    screen_Hz: z.number().describe('At the playback rate.'),
    depthFraction: z.number().describe('Brightest less dimmest over their sum, where it is strongest.'),
    depthDeviationFraction: z.number(),
    swing_stops: z.number().describe('From the dimmest to the brightest.'),
    chanceFraction: z.number().describe('That noise alone would show as much.'),
    looksLike: z.enum(['light', 'bands', 'unsure']).describe('unsure: in too few places, or out of step: a lamp there, or something that moves.'),
    coherenceFraction: z.number().describe('How well its tiles keep step.'),
    extentFraction: z.number().describe('Share of the picture that shows it.'),
    where: z.string(),
    bandsPerFrameRatio: z.number().optional(),
    candidates: list(z.strictObject({ rate_Hz: z.number(), mains_Hz: z.number().describe('The mains whose ripple it is, where it is one.').optional() }).meta({ id: 'candidate' })).describe('Rates that would look the same, slowest first; none is chosen.'),
    fits: list(Lamp).describe('Lamps of the shot that it may come from.'),
    harmonicOf: z.strictObject({ line: z.int(), order: z.int() }).describe('The line it is a harmonic of, by its place, and which.').optional(),
    tileDepthFractions: list(z.number()).describe('By tile, row after row; 0 where it cannot be judged.'),
  })
  .describe('One wave in the light.')
  .meta({ id: 'line' }); // prettier-ignore

const Flicker = z.strictObject({
  verdict: z.enum(['steady', 'flicker', 'cannot tell']),
  why: z.string(),
  lines: list(Line).describe('Strongest first.'),
  slowest_Hz: z.number().describe('Slower than this a wave has less than a cycle and a half in the clip.').optional(),
  blindTo_Hz: list(z.number()).describe('Ripples of mains that would beat slower than that.'),
  leastDepthFraction: z.number().describe('Flicker of the whole picture that would have been found.').optional(),
  leastDepthFrom_Hz: z.number().describe('At rates from this on: slower ones hide behind what moves.').optional(),
  drift_stops: z.number().describe('Of the light, from the first tenth of the clip to the last.'),
});

const Exposure = z
  .strictObject({
    meanFraction: z.number().describe('Of the light between black and white.'),
    darkestFraction: z.number().describe('One pixel in a hundred is darker.'),
    middleFraction: z.number(),
    brightestFraction: z.number().describe('One pixel in a hundred is brighter.'),
    clippedFraction: z.number().describe('Of the pixels, at most in any frame.'),
    clippedFrameIndex: z.int(),
    crushedFraction: z.number(),
    crushedFrameIndex: z.int(),
  })
  .describe('Light in the middle frame, white being 1.');

const Focus = z
  .strictObject({
    verdict: z.enum(['steady', 'changes', 'hunts', 'cannot tell']),
    sharpestFrameIndex: z.int(),
    changeRatio: z.number().describe('Sharpness of the last tenth over that of the first.'),
    reversalCount: z.int(),
    tileSharpnessFractions: list(z.number()).describe('By tile, over the sharpest.'),
  })
  .describe('Against itself: the same scene and place.');

const Motion = z.strictObject({
  typical_px: z.number().describe('A frame.'),
  fastest_px: z.number().describe('A frame, of the fastest tenth.'),
  direction_deg: z.number().describe('Clockwise from the right.'),
  frameCount: z.int().describe('Frames in which movement could be told.'),
  speed_m_per_s: z.number().describe('Of the fastest, with the scale of the shot.').optional(),
  smear_px: z.number().describe('Of the fastest, with the shutter of the shot.').optional(),
});

const Signal = z
  .strictObject({
    frameIndex: z.int().describe('First frame in which it is lit.'),
    lastFrameIndex: z.int().describe('Last frame in which it is; absent where it stays lit.').optional(),
    movementIndex: z.int().describe('First frame after it in which anything moves.').optional(),
    tileIndex: z.int().describe('Row by row.'),
    rise_stops: z.number(),
    litFraction: z.number().describe('Share of its light that its first frame has.'),
  })
  .describe('A small light that comes on, as where a rig is fired.')
  .meta({ id: 'signal' });

const Reach = z
  .strictObject({ left_px: z.number(), top_px: z.number(), right_px: z.number(), bottom_px: z.number() })
  .describe('The box about all that the action touched, from the left and the top.')
  .meta({ id: 'reach' });

const Action = z
  .strictObject({
    onsetIndex: z.int(),
    peakIndex: z.int(),
    endIndex: z.int(),
    inIndex: z.int().describe('Suggested first frame to keep.'),
    outIndex: z.int().describe('Suggested last frame to keep.'),
    captureTime_s: z.number(),
    screenTime_s: z.number(),
    isBegun: z.boolean().describe('Whether the clip shows it begin.'),
    isEnded: z.boolean(),
    headFraction: z.number().describe('Of the clip, before it.').optional(),
    tailFraction: z.number().describe('Of the clip, after it.').optional(),
    confidence: z.enum(['clear', 'likely']),
  })
  .describe('A suggestion: nothing is trimmed.');

const Shake = z.strictObject({
  verdict: z.enum(['still', 'shakes', 'moves', 'cannot tell']),
  why: z.string(),
  rms_px: z.number(),
  drift_px: z.number(),
  rate_Hz: z.number().optional(),
  onsetIndex: z.int().optional(),
  whose: z.enum(['all', 'part', 'parts']).describe('all: everything together, the camera or all that it sees. part: one part while the rest stands. parts: two, each its own way.').optional(),
  parts: list(
    z.strictObject({
      where: z.string(),
      isStill: z.boolean(),
      rms_px: z.number(),
      rate_Hz: z.number().optional(),
      onsetIndex: z.int().optional(),
    }).meta({ id: 'shakePart' }),
  ).describe('That which goes with most of the picture and that which does not, where there are two.').optional(),
}); // prettier-ignore

const BandsFound = z
  .strictObject({
    says: z.string(),
    bandsPerFrameRatio: z.number(),
    depthFraction: z.number(),
    stepFraction: z.number().describe('Of a band, by which they go on from frame to frame.'),
    coherenceFraction: z.number().describe('How steadily they do.'),
    candidates: list(z.strictObject({ rate_Hz: z.number(), rowTime_s: z.number().describe('From one row to the next, at that rate.'), mains_Hz: z.number().optional() }).meta({ id: 'bandCandidate' })).describe('Rates of a lamp that would draw them, slowest first; none is chosen.'),
  })
  .meta({ id: 'bands' }); // prettier-ignore

const Noise = z.strictObject({
  deviationFraction: z.number().describe('Of a pixel at the middle light, over that light.'),
  levels: list(z.strictObject({ lightFraction: z.number(), deviationFraction: z.number() })).describe(
    'By light, white being 1.',
  ),
});

const Against = z
  .strictObject({
    what: z.enum(['flicker', 'blur', 'speed', 'duration', 'highlights']),
    says: z.string(),
    planned: z.number(),
    measured: z.number(),
    unit: z.enum(['stops', 'px', 'm_per_s', 's']).describe('Of both; pixels are those of the first deliverable.'),
    state: z.enum(['as planned', 'better', 'worse', 'differs']),
  })
  .meta({ id: 'against' });

const Clip = z
  .strictObject({
    clip: z.string().describe('As it was named.'),
    verdict: list(z.string()).describe('What matters, in sentences.'),
    codec: z.string(),
    pixelFormat: z.string(),
    widthCount: z.int(),
    heightCount: z.int(),
    frameCount: z.int().describe('Missing ones among them.'),
    missingFrameIndexes: list(z.int()),
    repeatedFrameIndexes: list(z.int()).describe('Frames that are the one before again.'),
    frameRate_fps: z.number(),
    frameRateBasis: z.enum(['given', 'plan', 'file']).describe('file: the rate at which it plays, for want of another.'),
    playback_fps: z.number(),
    curve: z.string(),
    curveBasis: z.enum(['given', 'stated', 'assumed']),
    isWhole: z.boolean().describe('False for a first look at a few stretches.'),
    tileColumnCount: z.int(),
    tileRowCount: z.int(),
    flicker: Flicker,
    exposure: Exposure,
    colour: Colour.describe('Of the parts that pass for neutral. Absent where the clip has no colours, or none that are read.').optional(),
    focus: Focus,
    motion: Motion.describe('Absent where nothing that moves could be followed.').optional(),
    action: Action.optional(),
    signal: Signal.optional(),
    reach: Reach.optional(),
    shake: Shake,
    noise: Noise.optional(),
    fixedPixels: list(z.strictObject({ x: z.int(), y: z.int(), kind: z.enum(['bright', 'dark']) }).meta({ id: 'fixedPixel' })).describe('Pixels that stood out from their neighbours in every frame looked at.'),
    dust: list(z.strictObject({ x: z.number(), y: z.number(), size_px: z.number(), depthFraction: z.number().describe('Share of the light that it takes.') }).meta({ id: 'dustSpot' })).describe('Spots that stayed while the picture behind them changed.').optional(),
    fixedPattern: z.strictObject({ columnsFraction: z.number().optional(), rowsFraction: z.number().optional() }).describe('Standard deviation of the columns and of the rows of the sensor in flat dark parts, over the range from black to white; absent where none can be told.').optional(),
    bands: list(BandsFound).describe('Of a rolling shutter, three or more in the height of the picture, the deepest first.').optional(),
    swappedFrameIndexes: list(z.int()).describe('The first of each pair of frames that seem to have changed places.').optional(),
    shot: z.strictObject({ id: z.string(), title: z.string() }).optional(),
    against: list(Against).describe('Held against the plan of the shot.'),
    notes: list(z.string()),
  })
  .meta({ id: 'clip' }); // prettier-ignore

const Failed = z
  .strictObject({ clip: z.string(), code: z.string(), what: z.string(), where: z.string(), mend: z.string() })
  .describe('A clip that could not be measured.')
  .meta({ id: 'failedClip' });

export const MeasureReply = z
  .strictObject({
    schema: z.literal(MEASURE_SCHEMA),
    clips: list(Clip),
    failed: list(Failed),
    pair: Pair.optional(),
    learnt: LearntReply.optional(),
  })
  .meta({ title: 'Reply of longsecond measure --json' });
