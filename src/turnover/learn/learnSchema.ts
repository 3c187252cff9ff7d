/** The form of what clips teach, in the reply to `longsecond measure --learn … --json`. */
import * as z from 'zod';

const list = <T extends z.ZodType>(of: T) => z.array(of).readonly();

const Change = z
  .strictObject({
    path: z.string().describe('JSON Pointer into the written shoot.'),
    title: z.string(),
    before: z.string().describe('As the plan takes it now; empty where there is nothing.'),
    after: z.string(),
    says: z.string().describe('Where the figure before comes from.'),
  })
  .meta({ id: 'learntChange' });

const Limit = z
  .strictObject({
    says: z.string(),
    shot: z.string().describe('Id of the shot; absent for a limit of the whole shoot.').optional(),
    before: z.enum(['short', 'tight', 'spare', 'unknown']).optional(),
    after: z.enum(['short', 'tight', 'spare', 'unknown']).optional(),
    change_stops: z.number().optional(),
  })
  .describe('A limit that stands otherwise once the patch is taken.')
  .meta({ id: 'learntLimit' });

const Operation = z
  .looseObject({ op: z.string(), path: z.string() })
  .describe('One operation of a JSON Patch (RFC 6902) on the written shoot.')
  .meta({ id: 'learntOperation' });

export const LearntReply = z
  .strictObject({
    kind: z.enum(['event', 'rig', 'lamp']),
    says: list(z.string()).describe('What was learnt, in sentences.'),
    notices: list(z.string()),
    cautions: list(z.string()),
    changes: list(Change),
    limits: list(Limit),
    patch: list(Operation).describe('Empty where nothing was learnt. Nothing is changed by printing it.'),
    refusal: z.strictObject({ code: z.string(), what: z.string(), mend: z.string() }).describe('Why nothing was learnt.').optional(),
  })
  .describe('What the clips together teach of the shoot.')
  .meta({ id: 'learnt' }); // prettier-ignore
