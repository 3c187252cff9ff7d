/** What clips teach, for programs. */
import type * as z from 'zod';
import { rounded } from '../planReply.ts';
import type { LearnKind, Learning } from './learnt.ts';
import type { LearntReply } from './learnSchema.ts';
import { marginChangeWords } from './marginsChanged.ts';

type Reply = z.infer<typeof LearntReply>;

export function learntReply(kind: LearnKind, learning: Learning): Reply {
  if (!learning.ok) {
    const { refusal, notices } = learning;
    const { code, what, mend } = refusal;
    return { kind, says: [], notices, cautions: [], changes: [], limits: [], patch: [], refusal: { code, what, mend } };
  }
  const { says, notices, cautions, changes, margins, patch } = learning.learnt;
  return rounded({
    kind,
    says,
    notices,
    cautions,
    changes: changes.map(({ path, title, before, after, says: from }) => ({ path, title, before, after, says: from })),
    limits: margins.map((margin) => ({
      says: marginChangeWords(margin),
      ...(margin.shotId !== undefined && { shot: margin.shotId }),
      ...(margin.before && { before: margin.before.state }),
      ...(margin.after && { after: margin.after.state }),
      ...(margin.change_stops !== undefined && { change_stops: margin.change_stops }),
    })),
    patch: [...patch],
  });
}
