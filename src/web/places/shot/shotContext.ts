/** What every part of the Shot place needs to know: the open shoot, which shot, and how to edit it. */
import { createContext, use } from 'react';
import type { UnitSystem } from '../../../base/quantity.ts';
import type { ShotPlan } from '../../../plan/types.ts';
import type { OpenShoot } from '../../state/contract.ts';
import type { ShotEdits } from './useShotEdits.ts';

export interface ShotContext {
  readonly open: OpenShoot;
  readonly shotId: string;
  readonly plan: ShotPlan;
  readonly system: UnitSystem;
  readonly edits: ShotEdits;
  /** What is wrong with the value written at a path. */
  readonly problemAt: (path: string) => string | undefined;
  /** Puts the cursor where a path is written, or says where that is. */
  readonly follow: (path: string) => void;
  /** Opens where a number came from. */
  readonly trace: (name: string) => void;
  /** Goes to another place. */
  readonly go: (href: string) => void;
}

const Context = createContext<ShotContext | undefined>(undefined);

export const ShotProvider = Context.Provider;

export function useShot(): ShotContext {
  const shot = use(Context);
  if (!shot) throw new Error('A part of the Shot place stands outside it');
  return shot;
}

/** The id of the field that writes at a path. */
export function fieldId(path: string): string {
  return `at${path.replaceAll('/', '.')}`;
}
