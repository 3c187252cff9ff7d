/** What every place sees of the open shoot: the document, its plan, and the few things that can be done to it. */
import type { Problem } from '../../document/problem.ts';
import type { Written } from '../../document/read.ts';
import type { Shoot } from '../../document/schema.ts';
import type { Refused } from './refused.ts';
import type { LimitId, PatchOperation, Plan, Trace, Way } from '../../plan/types.ts';

/** Where an edit stands: nothing is called saved before the server has it on disk. */
export type Saving = 'saved' | 'saving' | 'unsent' | 'refused';

export interface Waiting {
  readonly shotId: string;
  readonly limit: LimitId;
  readonly state: 'working' | 'done' | 'failed';
  readonly done: number;
  readonly total: number;
  readonly ways: readonly Way[];
  /** A search among all lamps for more of them, which takes longer; absent where there is none, or it has ended. */
  readonly search?: 'working' | 'failed';
}

/** What can still be done with a refused edit: put it in again, or bring back what it edits and then put it in. */
export type Refusal = Refused & { readonly use?: 'again' | 'bring-back' };

export interface OpenShoot {
  readonly id: string;
  readonly revision: number;
  /** The written form with any draft applied: what is on the screen. */
  readonly written: Written;
  readonly shoot: Shoot;
  readonly problems: readonly Problem[];
  readonly plan: Plan;
  readonly saving: Saving;
  /** What the server refused, until the person who made it says what is to become of it; the oldest first. */
  readonly refusals: readonly Refusal[];
  readonly undoSummary?: string;
  readonly redoSummary?: string;

  /** Planned at once, sent at once; `summary` is what the history says. */
  readonly commit: (patch: readonly PatchOperation[], summary: string) => void;
  /** Planned at once, not sent; the newest draft replaces the one before. An empty patch drops it. */
  readonly draft: (patch: readonly PatchOperation[]) => void;
  /** Sends the draft as an edit. */
  readonly commitDraft: (summary: string) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  /** Has the shoot read again as it did at a revision. */
  readonly restore: (to: number) => void;
  /** Puts a refused edit in again over what is there now; rejects where what it needs cannot be fetched. */
  readonly useMine: (refusalId: string) => Promise<void>;
  /** Leaves what is there now, and forgets the refused edit. */
  readonly keepTheirs: (refusalId: string) => void;

  /** Ways to close one margin, worked out in a worker; asked anew when the plan changes. */
  readonly ways: (shotId: string, limit: LimitId) => Waiting;
  /** Where one number of a shot came from. */
  readonly explain: (shotId: string, name: string) => Trace | undefined;
}
