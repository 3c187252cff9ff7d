/** The form in which the colour of a clip stands in the reply to `longsecond measure --json`. */
import * as z from 'zod';

const list = <T extends z.ZodType>(of: T) => z.array(of).readonly();

const Shift = z
  .strictObject({
    distanceRatio: z.number().describe('In CIE 1976 u′, v′.'),
    deviationRatio: z.number().describe('One standard deviation of it.'),
    uRatio: z.number().describe('By how much u′ grows.'),
    vRatio: z.number(),
    redOverGreen_stops: z.number().describe('By how much red grows against green.'),
    blueOverGreen_stops: z.number(),
    warmer_mired: z.number().describe('Cooler below 0; absent for colours far from any black body.').optional(),
    deviation_mired: z.number().optional(),
    greenerDuvRatio: z.number().describe('Away from the black bodies in CIE 1960 u, v; pinker below 0.').optional(),
  })
  .meta({ id: 'colourShift' });

const Neutral = z
  .strictObject({
    uRatio: z.number().describe('CIE 1976 u′, as the clip is coded.'),
    vRatio: z.number(),
    redOverGreen_stops: z.number(),
    blueOverGreen_stops: z.number(),
    deviation_stops: z.number().describe('One standard deviation of both.'),
    extentFraction: z.number().describe('Of the picture.'),
    place_mired: z.number().describe('Along the black bodies: of the coded picture, not of the lamps.').optional(),
    duvRatio: z.number().optional(),
    tileIndexes: list(z.int()).describe('The parts taken for neutral, row after row of the tiles of colour.'),
  })
  .describe('Over the whole clip.');

const Pulse = z
  .strictObject({
    beat_Hz: z.number(),
    greenDepthFraction: z.number(),
    redDepthFraction: z.number().describe('Against green.'),
    blueDepthFraction: z.number().describe('Against green.'),
    deviationFraction: z.number(),
  })
  .meta({ id: 'colourPulse' });

export const Colour = z.strictObject({
  verdict: z.enum(['steady', 'drifts', 'strays', 'cannot tell']).describe('strays: it goes off and comes back.'),
  why: z.string(),
  primaries: z.enum(['bt709', 'bt2020', 'smpte-c', 'ebu', 'p3-d65']).describe('As stated or assumed; see the notes.'),
  tileColumnCount: z.int().describe('Of the tiles of colour, which are smaller than the others.'),
  tileRowCount: z.int(),
  neutral: Neutral.optional(),
  drift: Shift.describe('From the first tenth of the clip to the last.').optional(),
  most: Shift.describe('Between the tenths farthest from each other.').optional(),
  leastDistanceRatio: z.number().describe('Drift that would have been told.').optional(),
  pulses: list(Pulse).describe('Waves in which red or blue part from green; none where not every frame was sampled.'),
  series: list(
    z.strictObject({ frameIndex: z.int(), redOverGreen_stops: z.number(), blueOverGreen_stops: z.number() }),
  ).describe('Of the sampled frames in which the neutral parts stand still.'),
});

export type ColourReply = z.infer<typeof Colour>;
