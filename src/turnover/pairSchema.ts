/** The form of two clips held against each other in the reply to `longsecond measure --pair --json`. */
import * as z from 'zod';

const list = <T extends z.ZodType>(of: T) => z.array(of).readonly();

export const Pair = z
  .strictObject({
    scene: z.enum(['same', 'other', 'cannot tell']).describe('One scene from one place, as far as the tiles tell.'),
    exposure_stops: z.number().describe('Brighter above 0: of one scene by what stands still, else of the middle tones.').optional(),
    colour: z
      .strictObject({
        distanceRatio: z.number().describe('In CIE 1976 u′, v′, of what passes for neutral.'),
        deviationRatio: z.number(),
        warmer_mired: z.number().optional(),
        greenerDuvRatio: z.number().optional(),
        isByShared: z.boolean().describe('Whether by parts that pass for neutral in both; else it may be another surface.'),
      })
      .optional(),
    swing_stops: z.number().describe('Of the flicker; deeper above 0.').optional(),
    detailRatio: z.number().describe('Of one scene alone.').optional(),
    speedRatio: z.number().describe('Of what moves fastest.').optional(),
    actionRatio: z.number().describe('Of lengths, where both clips hold the whole action.').optional(),
    noiseRatio: z.number().optional(),
    rows: list(z.strictObject({ title: z.string(), first: z.string(), second: z.string(), differs: z.string(), isSame: z.boolean() }).meta({ id: 'pairRow' })),
    notes: list(z.string()),
  })
  .describe('The second clip against the first; what cannot be told of both is left out.')
  .meta({ id: 'pair' }); // prettier-ignore

export type PairReply = z.infer<typeof Pair>;
