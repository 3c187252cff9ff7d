/** What an action is: one thing a person can do from anywhere, by key or from a list. */
import type { OpenShoot } from '../state/contract.ts';
import type { PlayerKeys } from './player.ts';

/** What actions know of the page, and what they may do to it. */
export interface ActionState {
  readonly open?: OpenShoot;
  /** The shot on the screen. */
  readonly shotId?: string;
  /** What plays footage on the screen. */
  readonly player?: PlayerKeys;
  readonly go: (href: string) => void;
  readonly nextTheme: () => void;
  readonly toggleHelp: () => void;
}

export interface Action {
  readonly id: string;
  readonly label: string;
  /** Combinations such as `Mod+Z`, where Mod is Command on a Mac and Control elsewhere, or single keys such as `N`, `Space` or `ArrowLeft`. */
  readonly keys: readonly string[];
  readonly when: (state: ActionState) => boolean;
  readonly perform: (state: ActionState) => void;
}
