/** The form of a shot's flicker in the reply to `longsecond plan --json`: its lamps, what frames show of them, a verdict. */
import * as z from 'zod';

const Tone = z
  .strictObject({
    lamp_Hz: z.number().describe('In the light of the lamp.'),
    alias_Hz: z.number().describe('From frame to frame, in the time of the set.'),
    screen_Hz: z.number().describe('On the screen.'),
    amplitudeFraction: z.number().describe('In the frames, over the mean light.'),
  })
  .meta({ id: 'tone' });

/** The form, around that of an assumption. */
export function flickerSchema<T extends z.ZodType>(assumption: T) {
  const Lamp = z
    .strictObject({
      id: z.string(),
      title: z.string(),
      shareFraction: z.number().describe('Of the light that counts.'),
      says: z.string().describe('What it is taken for.'),
      basis: z.enum(['measured', 'stated', 'assumed']),
      assumed: z.array(assumption).readonly(),
      ripple_Hz: z.number().describe('0 for light that does not change.'),
      depthFraction: z.number().describe('Brightest less dimmest over their sum, of the lamp alone.'),
      unknown: z.string().describe('Why nobody knows how it ripples, where so.').optional(),
    })
    .meta({ id: 'flickerLamp' });
  return z
    .strictObject({
      lamps: z.array(Lamp).readonly(),
      seen: z
        .strictObject({
          worst_stops: z.number().describe('From the dimmest to the brightest frame, where the first falls worst; 30 where a frame can be dark.'),
          best_stops: z.number().describe('The same where it falls best.'),
          betweenTakes_stops: z.number().describe('What two takes can differ by, however short.'),
          looksLike: z.enum(['steady', 'flicker', 'drift or ramp']),
          tones: z.array(Tone).readonly().describe('Harmonics in the frames, strongest first; those at 0 are the same in every frame.'),
          cannotTell: z.string().describe('Why the clip cannot tell flicker from a change of light.').optional(),
        })
        .describe('Absent while a lamp that counts is unknown, or rate or shutter are.')
        .optional(),
      verdict: z
        .strictObject({
          verdict: z.enum(['invisible', 'marginal', 'visible']),
          remedy: z.enum(['none needed', 'look at plain backgrounds', 'can be repaired', 'shoot again']),
          thresholdRatio: z.number().describe('Times the least that an eye sees.'),
          why: z.string(),
        })
        .optional(),
    })
    .describe('What the lamps of the set-up do to the frames.')
    .meta({ id: 'flicker' });
} // prettier-ignore
