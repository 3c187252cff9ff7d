/** What is kept of an edit that the server refused. */
import type { PatchOperation } from '../../plan/types.ts';

/** An edit that was refused, kept until the person says what is to become of it: nothing typed is lost. */
export interface Refused {
  /** Id of the edit. */
  readonly id: string;
  /** What was done, and why it was not kept. */
  readonly says: string;
  readonly mend: string;
  /** Where two edits met: both values in words, and whose the other is. */
  readonly met?: Met;
  /** The edit with all that was built on it; absent where nothing can be put in again. */
  readonly edit?: { readonly patch: readonly PatchOperation[]; readonly summary: string };
}

export interface Met {
  readonly path: string;
  readonly who: string;
  readonly yours: string;
  readonly theirs: string;
  /** The revision that the other edit made. */
  readonly number: number;
}
