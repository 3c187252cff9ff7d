/** What every part of the Light place needs to know: the set-up as it is drawn, the shot it is held against, and how to edit. */
import { createContext, use } from 'react';
import type { UnitSystem } from '../../../base/quantity.ts';
import type { LightingSetup, Shot } from '../../../document/schema.ts';
import type { Vec3 } from '../../../laws/light/area/polygon.ts';
import type { LightSource } from '../../../laws/light/placed/source.ts';
import type { View } from '../../../plan/lighting.ts';
import type { MeteredLight } from '../../../plan/meter.ts';
import type { Margin, PatchOperation, ShotPlan } from '../../../plan/types.ts';
import type { OpenShoot } from '../../state/contract.ts';
import type { ShotEdits } from '../shot/useShotEdits.ts';
import type { Thing } from './lightEdits.ts';
import type { LampMoves } from './useLampMoves.ts';

/** A shot that the set-up lights, and how its light stands. */
export interface LitShot {
  readonly id: string;
  readonly plan: ShotPlan;
  /** With the defaults put under it. */
  readonly shot: Shot;
  readonly margin: Margin | undefined;
}

/** What a light is held against. */
export interface Reference {
  readonly value_lx: number;
  /** Whether a shot needs it; else it is only the light at the subject. */
  readonly isNeed: boolean;
}

export interface LightContext {
  readonly open: OpenShoot;
  readonly system: UnitSystem;
  readonly setupId: string;
  readonly title: string;
  /** As it is drawn, with what is being dragged where it now is. */
  readonly setup: LightingSetup;
  /** With its lamps corrected by what a meter read, where one did. */
  readonly light: MeteredLight;
  readonly shots: readonly LitShot[];
  readonly shot: LitShot | undefined;
  readonly onChooseShot: (shotId: string) => void;
  readonly view: View;
  /** The way the lit surface that counts faces, and that in words. */
  readonly facing: Vec3;
  readonly facingSaid: string;
  readonly reference: Reference | undefined;
  /** Lamps that burn, as they are looked at: all that are not off, or one alone. */
  readonly burning: readonly LightSource[];
  readonly only: string | undefined;
  readonly onOnly: (lampId: string | undefined) => void;
  readonly selected: Thing | undefined;
  readonly onSelect: (thing: Thing | undefined) => void;
  readonly edits: ShotEdits;
  readonly moves: LampMoves;
  /** One edit at once, told in a line with how to take it back. */
  readonly edit: (patch: readonly PatchOperation[], summary: string) => void;
  /** Told politely to whoever listens. */
  readonly say: (words: string) => void;
  /** Goes to where a path is written. */
  readonly follow: (path: string) => void;
  readonly onGo: (href: string) => void;
}

const Context = createContext<LightContext | undefined>(undefined);

export const LightProvider = Context.Provider;

export function useLight(): LightContext {
  const light = use(Context);
  if (!light) throw new Error('A part of the Light place stands outside it');
  return light;
}

/** The stops of a light over what it is held against; undefined where there is nothing to hold it against. */
export function stopsOver(illuminance_lx: number, reference: Reference | undefined): number | undefined {
  return reference && illuminance_lx > 0 ? Math.log2(illuminance_lx / reference.value_lx) : undefined;
}
