/** What a number lacks, and what it rests on that nobody wrote. */
import type { KindName } from '../base/kinds.ts';

export interface Missing {
  readonly name: string;
  readonly title: string;
  /** JSON Pointer of the key that would supply it. */
  readonly path: string;
  /** `absent`: not written. `unread`: written, but with a problem. `refused`: a law has no answer there. */
  readonly because: 'absent' | 'unread' | 'refused';
  /** What the law said, where it refused. */
  readonly what?: string;
}

/** An input nobody measured or published, used all the same. */
export interface Assumption {
  readonly name: string;
  readonly title: string;
  readonly value: number;
  readonly kind: KindName | undefined;
  readonly why: string;
  readonly path: string;
}
