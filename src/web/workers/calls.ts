/** The calls that the page's worker answers. */
import type { Written } from '../../document/read.ts';
import type { LimitId, Way } from '../../plan/types.ts';

export interface WorkCalls {
  readonly ways: {
    readonly input: { readonly written: Written; readonly shotId: string; readonly limit: LimitId };
    readonly output: readonly Way[];
  };
}
