/** GET /api/shoots/:shootId/paper: what is printed, and on which paper. */
import * as z from 'zod';
import { DUTIES } from '../document/schema.ts';

const Name = z.string().min(1).max(100);

const duties = Object.keys(DUTIES).join(', ');

export const PaperQuery = z
  .strictObject({
    sheet: z.enum(['card', 'plan', 'morning', 'cues', 'day', 'dressing'], 'must be card, plan, morning, cues, day or dressing'),
    /** The id of a shot; all of them where it is left out. Only with cards and cue sheets. */
    shot: Name.optional(),
    /** A duty, or the id of a person of the crew; everybody where it is left out. Only with morning sheets. */
    duty: Name.optional(),
    size: z.enum(['a4', 'letter'], 'must be a4 or letter').default('a4'),
    /** Left out, as the shoot prefers. */
    units: z.enum(['metric', 'imperial'], 'must be metric or imperial').optional(),
  })
  .superRefine(({ sheet, shot, duty }, context) => {
    if (shot !== undefined && sheet !== 'card' && sheet !== 'cues')
      context.addIssue({ code: 'custom', path: ['shot'], message: 'goes with sheet=card and sheet=cues only' });
    if (duty !== undefined && sheet !== 'morning')
      context.addIssue({ code: 'custom', path: ['duty'], message: `goes with sheet=morning only; it is one of ${duties}, or a person of the crew` });
  }); // prettier-ignore
