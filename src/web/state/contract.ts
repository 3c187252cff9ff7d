/** What every place sees of the open shoot: the document, its plan, and the few things that can be done to it. */
import type { Problem } from '../../document/problem.ts';
import type { Written } from '../../document/read.ts';
import type { Shoot } from '../../document/schema.ts';
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
}

export interface OpenShoot {
  readonly id: string;
  readonly revision: number;
  /** The written form with any draft applied: what is on the screen. */
  readonly written: Written;
  readonly shoot: Shoot;
  readonly problems: readonly Problem[];
  readonly plan: Plan;
  readonly saving: Saving;
  /** Why the server refused the newest edit, for the person who made it. */
  readonly refusal?: string;
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

  /** Ways to close one margin, worked out in a worker; asked anew when the plan changes. */
  readonly ways: (shotId: string, limit: LimitId) => Waiting;
  /** Where one number of a shot came from. */
  readonly explain: (shotId: string, name: string) => Trace | undefined;
}
