/**
 * The form of the reply to `longsecond flicker --json`: a measured lamp, and with `--at` what a camera sees of it. Within
 * one major version keys may be added; none is removed, renamed or changed in meaning.
 */
import * as z from 'zod';
import { flickerSchema } from './flickerSchema.ts';

export const FLICKER_SCHEMA = 'longsecond.flicker/1';

const Shot = flickerSchema(z.never());

const Record = z
  .strictObject({
    sampleRate_Hz: z.number(),
    sampleCount: z.int().describe('Samples used.'),
    periodCount: z.int().describe('Whole periods in them.'),
    periodErrorFraction: z.number().describe('One standard deviation of the period, over it.'),
    residualFraction: z.number().describe('What one period does not explain, root mean square over the mean light.'),
    jitterFraction: z.number().describe('Spread of the steps in time, over their mean.'),
    darkRatio: z.number().describe('Reading taken away as dark, in the unit of the record.'),
  })
  .describe('How good the record is.');

const Room = z
  .strictObject({
    says: z.string(),
    percentFlickerFraction: z.number(),
    flickerIndexRatio: z.number(),
    stroboscopicRatio: z.number().describe('Stroboscopic visibility measure; 1 is just seen.'),
    ieee1789: z
      .strictObject({
        lowRiskFraction: z.number(),
        noEffectFraction: z.number(),
        isWithinLowRisk: z.boolean(),
        isWithinNoEffect: z.boolean(),
      })
      .describe('The two levels of IEEE 1789 at this rate, from memory; 1 where it sets none.'),
  })
  .describe('Figures made for people in a room: none of them says what a camera records.');

const Camera = z
  .strictObject({
    frameRate_fps: z.number(),
    exposureTime_s: z.number(),
    playback_fps: z.number(),
    frameCount: z.int().describe('Frames of the clip; left out, without end.').optional(),
    seen: Shot.shape.seen.unwrap(),
    verdict: Shot.shape.verdict.unwrap(),
    nullShutters: z
      .array(z.strictObject({ exposureTime_s: z.number(), periodCount: z.int(), leftFraction: z.number().describe('Share of the ripple left when the mains are off by 0.2 %.') }))
      .readonly()
      .describe('Exposures that hold whole periods, within the frame; those nearest to the one asked for.'),
    lockedRates_fps: z.array(z.number()).readonly().describe('Rates at which every frame meets the same light; none above the ripple.'),
  })
  .describe('With --at: what a camera sees of this lamp alone.'); // prettier-ignore

export const FlickerReply = z
  .strictObject({
    schema: z.literal(FLICKER_SCHEMA),
    name: z.string(),
    record: Record,
    period_s: z.number(),
    ripple_Hz: z.number(),
    depthFraction: z.number().describe('Brightest less dimmest over their sum.'),
    swing_stops: z.number().describe('From dimmest to brightest, for an exposure of no length; 30 where it is dark in between.'),
    harmonics: z.array(z.strictObject({ rate_Hz: z.number(), amplitudeFraction: z.number() })).readonly().describe('Strongest first, over the mean light.'),
    room: Room,
    notices: z.array(z.string()).readonly(),
    camera: Camera.optional(),
  })
  .meta({ title: 'Reply of longsecond flicker --json' }); // prettier-ignore
