/** The only door from a shoot to its plan. */
import type { Shoot } from '../document/schema.ts';
import { dayMargin } from './day/dayMargin.ts';
import { isUnread } from './unread.ts';
import { hasLamps } from './lighting.ts';
import { matchesOf } from './matches.ts';
import { photometryTold } from './photometry.ts';
import { planShot } from './planShot.ts';
import { referencesOf } from './references.ts';
import { storageMargin } from './storage.ts';
import { cuesOf, hasTrigger } from './timing/structure.ts';
import { keptTakes, piecesElsewhere, plannedTakes } from './takes.ts';
import { waveformsTold } from './waveforms.ts';
import type { Margin, MarginState, Plan, PlanTotals, ShotPlan } from './types.ts';

/** Shots in the order people read them: the stated order first, then the rest as written. */
export function shotOrder(shoot: Shoot): readonly string[] {
  const stated = shoot.order.shots.filter((id) => shoot.shots[id] !== undefined);
  return [...new Set([...stated, ...Object.keys(shoot.shots)])];
}

/**
 * What a shot's plan is made from: as long as all of it is the same, so is the plan. Reading keeps the identity of what
 * was not edited, so that one edit plans one shot again.
 */
const sourcesOf = (shoot: Shoot, shotId: string): readonly unknown[] => {
  const { shots, defaults, deliverables, kit, lighting } = shoot;
  const own = shots[shotId]!.lighting ?? defaults.lighting;
  const product = shots[shotId]!.hero.product ?? defaults.hero.product;
  const pieces = product === undefined ? [] : [kit.products[product], piecesElsewhere(shoot, shotId, product)];
  const setup = own === undefined ? undefined : lighting[own];
  const lamps = hasLamps(setup) ? [kit.lamps, kit.modifiers, photometryTold(shoot), waveformsTold(shoot), shoot.shoot.mains] : [];
  const rigs = hasCues(shoot, shotId) ? [kit.rigs, shoot.shoot.day.usual] : [];
  return [...pieces, ...lamps, ...rigs, shots[shotId], defaults, deliverables, kit.cameras, kit.lenses, kit.attachments, setup, shoot.shoot.meterConstant_lx_s, isUnread(shoot.shoot, 'meterConstant'), shoot.shoot.air_degC, isUnread(shoot.shoot, 'air')];
}; // prettier-ignore

/** Whether a shot has anything that fires, or a memory that is told about: what rigs do and how long resets take then counts. */
const hasCues = ({ shots, defaults }: Shoot, shotId: string): boolean =>
  [shots[shotId]!, defaults].some((of) => cuesOf(of).length > 0 || hasTrigger(of) || of.rigs.length > 0);

interface Remembered {
  readonly sources: readonly unknown[];
  readonly plan: ShotPlan;
}

/** Plans kept by the shot they were made for, so that they go when the shot does. */
const remembered = new WeakMap<object, Map<string, Remembered>>();

function rememberedPlan(shoot: Shoot, shotId: string, number: number): ShotPlan {
  const shot = shoot.shots[shotId]!;
  const sources = sourcesOf(shoot, shotId);
  const plans = remembered.get(shot) ?? new Map<string, Remembered>();
  const before = plans.get(shotId);
  const isSame = before?.sources.every((source, i) => source === sources[i]) === true && before.plan.number === number;
  if (isSame) return before.plan;
  const plan = planShot(shoot, shotId, number);
  plans.set(shotId, { sources, plan });
  remembered.set(shot, plans);
  return plan;
}

/** Plans every shot of a shoot as the document stands. Pure: the same shoot gives the same plan. */
export function planShoot(shoot: Shoot): Plan {
  const shots = shotOrder(shoot).map((id, i) => rememberedPlan(shoot, id, i + 1));
  const margins = [...storageMargin(shoot, shots), ...dayMargin(shoot, shots)];
  return {
    title: shoot.shoot.title ?? 'Untitled shoot',
    shots,
    margins,
    matches: matchesOf(shoot, shots),
    references: referencesOf(shoot, shots),
    totals: totalsOf(shoot, shots, margins),
  };
}

function totalsOf(shoot: Shoot, shots: readonly ShotPlan[], whole: readonly Margin[]): PlanTotals {
  const sum = (of: (shot: ShotPlan) => number): number => shots.reduce((total, shot) => total + of(shot), 0);
  const judged = [...shots.flatMap(({ margins }) => margins), ...whole];
  const countOf = (state: MarginState) => judged.filter((margin) => margin.state === state).length;
  return {
    screenTime_s: sum(({ clocks }) => clocks?.screenTime_s ?? 0),
    takeCount: sum(({ id }) => plannedTakes(shoot, id)),
    keptSize_B: sum(({ id, keptSize_B }) => (keptSize_B ?? 0) * keptTakes(shoot, id)),
    saveTime_s: sum(({ id, saveTime_s }) => (saveTime_s ?? 0) * keptTakes(shoot, id)),
    shortCount: countOf('short'),
    tightCount: countOf('tight'),
    unknownCount: countOf('unknown'),
  };
}
