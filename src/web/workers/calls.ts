/** The calls that the page's workers answer. */
import type { Written } from '../../document/read.ts';
import type { LimitId, Way } from '../../plan/types.ts';
import type { LightFound } from '../../solve/findLight.ts';
import type { Wish } from '../../solve/lampProgram.ts';

export interface WorkCalls {
  readonly ways: {
    readonly input: { readonly written: Written; readonly shotId: string; readonly limit: LimitId };
    readonly output: readonly Way[];
  };
}

export interface FindCalls {
  readonly light: {
    readonly input: { readonly written: Written; readonly setupId: string; readonly wish: Wish };
    readonly output: LightFound;
  };
}
