/** What clips teach, as an edit of the shoot that somebody may take: in words, as a patch, and with what it does to the plan. */
import type { FaultDetails } from '../../base/fault.ts';
import { applyPatch, withParents, writtenValueAt } from '../../document/patch.ts';
import { readShoot } from '../../document/read.ts';
import type { Shoot } from '../../document/schema.ts';
import type { Written } from '../../document/written.ts';
import type { PatchOperation } from '../../plan/types.ts';
import { marginsChanged, type MarginChange } from './marginsChanged.ts';

export type LearnKind = 'event' | 'rig' | 'lamp';

/** One figure of the shoot, as it was and as it would be, for eyes. */
export interface LearntChange {
  readonly path: string;
  readonly title: string;
  /** Empty where there was none. */
  readonly before: string;
  readonly after: string;
  /** From where what was there came, and on what the new figure rests. */
  readonly says: string;
}

export interface Learnt {
  readonly kind: LearnKind;
  /** What the history says of the edit. */
  readonly summary: string;
  /** What was learnt, in sentences, with how sure it is. */
  readonly says: readonly string[];
  /** What to bear in mind about it. */
  readonly notices: readonly string[];
  readonly cautions: readonly string[];
  readonly changes: readonly LearntChange[];
  readonly margins: readonly MarginChange[];
  readonly patch: readonly PatchOperation[];
}

export type LearnRefusal = Pick<FaultDetails, 'code' | 'what' | 'mend'>;

/** What was learnt, or why nothing is, and what else was seen. */
export type Learning<Of extends Learnt = Learnt> =
  | { readonly ok: true; readonly learnt: Of }
  | { readonly ok: false; readonly refusal: LearnRefusal; readonly notices: readonly string[] };

/** A clip that was worked out, not filmed, says so in its name. */
const SYNTHETIC = /(?:^|[^a-z])synthetic(?:[^a-z]|$)/i;

/** Whether any of the clips was worked out and not filmed. */
export const isSynthetic = (names: readonly string[]): boolean => names.some((name) => SYNTHETIC.test(name));

export const SYNTHETIC_NOTICE =
  'SYNTHETIC clips: worked out, not filmed. They say nothing about a real lamp, rig or event.';

/** As long as a note may be. */
const LONGEST_NOTE = 4000;

/** A note with a line added; where it gets too long, its oldest words go. */
export function notePatch(written: Written, path: string, line: string): PatchOperation {
  const before = writtenValueAt(written, path);
  const whole = typeof before === 'string' && before.trim() !== '' ? `${before.trimEnd()}\n${line}` : line;
  return { op: 'add', path, value: whole.slice(-LONGEST_NOTE) };
}

interface Draft extends Omit<Learnt, 'margins' | 'patch'> {
  readonly patch: readonly PatchOperation[];
  /** Tells the shoot as it would be what its new files hold. */
  readonly tell?: (before: Shoot, after: Shoot) => void;
}

/** A change put together: planned again, and refused where the shoot would not take it. */
export function learning(written: Written, { tell, ...draft }: Draft): Learning {
  const patch = withParents(written, draft.patch);
  const { shoot, problems } = readShoot(applyPatch(written, patch));
  const problem = problems.find(({ path }) => patch.some((operation) => path === operation.path || path.startsWith(`${operation.path}/`)));
  if (problem) return { ok: false, notices: draft.notices, refusal: { code: 'learn.not-taken', what: `${problem.what} (${problem.path})`, mend: 'Write it as the shoot takes it.' } };
  const before = readShoot(written).shoot;
  tell?.(before, shoot);
  return { ok: true, learnt: { ...draft, patch, margins: marginsChanged(before, shoot) } };
} // prettier-ignore
