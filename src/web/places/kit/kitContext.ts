/** What every part of the Kit needs to know: the open shoot, the person's units, and how to go on. */
import { createContext, use } from 'react';
import type { UnitSystem } from '../../../base/quantity.ts';
import type { PatchOperation } from '../../../plan/types.ts';
import type { OpenShoot } from '../../state/contract.ts';
import type { Use } from './kitEdits.ts';
import type { KitKind } from './kinds.ts';

/** Something about to be taken out, and who refers to it. */
export interface Removal {
  readonly path: string;
  readonly title: string;
  readonly uses: readonly Use[];
  /** Where to go once it is gone. */
  readonly thenTo?: string;
}

export interface KitContext {
  readonly open: OpenShoot;
  readonly system: UnitSystem;
  readonly hrefOf: (kindKey?: string, itemId?: string) => string;
  readonly onGo: (href: string) => void;
  /** One edit at once, told in a line with how to take it back. */
  readonly edit: (patch: readonly PatchOperation[], summary: string) => void;
  /** Begins a new piece and puts the cursor into its title. */
  readonly onAdd: (kind: KitKind) => void;
  /** Goes to a piece just made, with the cursor in its title. */
  readonly onMade: (kind: KitKind, id: string) => void;
  readonly onCopyFrom: (kind: KitKind) => void;
  readonly onRemove: (removal: Removal) => void;
}

const Context = createContext<KitContext | undefined>(undefined);

export const KitProvider = Context.Provider;

export function useKit(): KitContext {
  const kit = use(Context);
  if (!kit) throw new Error('A part of the Kit stands outside it');
  return kit;
}
