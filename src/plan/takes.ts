/** Takes of a shot: planned, kept, and those to allow for. */
import type { Shoot } from '../document/schema.ts';
import { takesAtConfidenceCount } from '../laws/chance/takes.ts';
import { isUnread } from './unread.ts';

/** Takes planned of a shot; one that does not say counts one. */
export function plannedTakes(shoot: Shoot, id: string): number {
  return shoot.shots[id]!.takeCount ?? shoot.defaults.takeCount ?? 1;
}

/** Takes saved of a shot: as stated, else all that are planned; a shot that says neither counts one. */
export function keptTakes(shoot: Shoot, id: string): number {
  const own = shoot.shots[id]!;
  const under = shoot.defaults;
  return own.keptTakeCount ?? under.keptTakeCount ?? own.takeCount ?? under.takeCount ?? 1;
}

/** Where a number of takes is written that cannot be read and no other one settles. */
export function unreadTakes(shoot: Shoot, id: string): string | undefined {
  const holders = [
    { of: shoot.shots[id]!, at: `/shots/${id}` },
    { of: shoot.defaults, at: '/defaults' },
  ];
  for (const [key, read] of [
    ['kept', 'keptTakeCount'],
    ['takes', 'takeCount'],
  ] as const)
    for (const { of, at } of holders) {
      if (isUnread(of, key)) return `${at}/${key}`;
      if (of[read] !== undefined) return undefined;
    }
  return undefined;
}

/** Share of takes that come out good: as stated, else those kept over those planned. */
export function goodShare(shoot: Shoot, id: string): number {
  const stated = shoot.shots[id]!.goodTakeFraction ?? shoot.defaults.goodTakeFraction;
  return stated ?? Math.min(1, keptTakes(shoot, id) / plannedTakes(shoot, id));
}

/** Takes to allow for, nine days in ten; NaN where no number of takes would do, or none is to be kept. */
export function takesAllowed(shoot: Shoot, id: string): number {
  const goodTakeCount = keptTakes(shoot, id);
  const goodTakeFraction = goodShare(shoot, id);
  try {
    return takesAtConfidenceCount({ goodTakeCount, goodTakeFraction });
  } catch (error) {
    if (error instanceof RangeError) return NaN;
    throw error;
  }
}

interface Needs {
  readonly defaults: Shoot['defaults'];
  readonly byShot: ReadonlyMap<string, { readonly product: string; readonly count: number }>;
  readonly byProduct: ReadonlyMap<string, number>;
}

/** Kept with the shots they were counted for. */
const counted = new WeakMap<Shoot['shots'], Needs>();

/** Pieces that every shot needs, those unknown left out, and their sums. */
function needsOf(shoot: Shoot): Needs {
  const { shots, defaults } = shoot;
  const known = counted.get(shots);
  if (known?.defaults === defaults) return known;
  const byShot = new Map<string, { readonly product: string; readonly count: number }>();
  const byProduct = new Map<string, number>();
  for (const [id, { hero }] of Object.entries(shots)) {
    const product = hero.product ?? defaults.hero.product;
    const takes = product === undefined ? NaN : takesAllowed(shoot, id);
    if (product === undefined || !Number.isFinite(takes)) continue;
    const count = takes * (hero.perTakeCount ?? defaults.hero.perTakeCount ?? 1);
    byShot.set(id, { product, count });
    byProduct.set(product, (byProduct.get(product) ?? 0) + count);
  }
  const needs = { defaults, byShot, byProduct };
  counted.set(shots, needs);
  return needs;
}

/** Pieces of a product that the other shots which use it need, those unknown left out. */
export function piecesElsewhere(shoot: Shoot, shotId: string, product: string): number {
  const { byShot, byProduct } = needsOf(shoot);
  const own = byShot.get(shotId);
  return (byProduct.get(product) ?? 0) - (own?.product === product ? own.count : 0);
}
