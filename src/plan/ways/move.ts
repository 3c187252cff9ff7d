/** What a move is: one change to the document that may close a short margin, its value solved and rounded to what can be set. */
import { writeQuantity } from '../../base/quantity.ts';
import type { KindName } from '../../base/kinds.ts';
import type { Shoot } from '../../document/schema.ts';
import type { Written } from '../../document/written.ts';
import type { Effective } from '../givens.ts';
import type { LimitId, Margin, PatchOperation, Settings } from '../types.ts';

export interface MoveContext {
  readonly shoot: Shoot;
  readonly shotId: string;
  readonly effective: Effective;
  readonly settings: Settings;
  /** The margin to close. */
  readonly margin: Margin;
  /** How many stops it lacks; above zero. */
  readonly lack_stops: number;
  /** A number of the shot's model by name, or NaN. */
  readonly number: (name: string) => number;
}

export interface Proposal {
  readonly title: string;
  readonly says?: string;
  readonly patch: readonly PatchOperation[];
  /** How many stops of what was asked for it gives up, or of effort it costs. */
  readonly gives_stops: number;
  /** Whether it changes what a person fixed. */
  readonly touchesFixed?: boolean;
}

export interface Move {
  readonly id: string;
  readonly closes: readonly LimitId[];
  readonly propose: (context: MoveContext) => readonly Proposal[];
}

/** The move of ways that were found by searching all lamps of the kit, apart from the plan, which only moves what stands. */
export const LAMP_SEARCH = 'search-lamps';

/** How such a way is told from the plan's own. */
export const FOUND_BY_SEARCH = 'found by searching the lamps of the kit';

/** Sets a key of the shot. `key` may name a key inside one of its records: `action/speed`. */
export function setKey({ shotId }: MoveContext, key: string, value: Written): PatchOperation {
  return { op: 'add', path: `/shots/${shotId}/${key}`, value };
}

/** Sets a key of the shot to a quantity. */
export function setQuantity(context: MoveContext, key: string, kind: KindName, value: number): PatchOperation {
  return setKey(context, key, writeQuantity(kind, value));
}

/** How far apart two amounts lie, in stops, whichever is larger. */
export function apart_stops(a: number, b: number): number {
  return a > 0 && b > 0 ? Math.abs(Math.log2(a / b)) : 0;
}

/** What else a set-up lights, for the words of a way that changes it; nothing where it lights this shot alone. */
export function alsoLights({ shoot, shotId }: Pick<MoveContext, 'shoot' | 'shotId'>, setupId: string): string {
  const others = Object.entries(shoot.shots).filter(
    ([id, { lighting }]) => id !== shotId && (lighting ?? shoot.defaults.lighting) === setupId,
  );
  return others.length === 0 ? '' : `; it also lights ${others.map(([id, { title }]) => title ?? id).join(', ')}`;
}
