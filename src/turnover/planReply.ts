/** A plan, and where its numbers came from, as replies for programs. */
import type * as z from 'zod';
import { KINDS, unitSuffix } from '../base/kinds.ts';
import type { Problem } from '../document/problem.ts';
import type {
  Alternative,
  Assumption,
  Clocks,
  HeroLife,
  LimitId,
  Margin,
  Missing,
  Picture,
  Plan,
  Settings,
  ShotPlan,
  Trace,
  Way,
} from '../plan/types.ts';
import type { SampledTiming } from '../plan/timing/types.ts';
import type { PLAN_SCHEMA, PlanReply, TRACE_SCHEMA, TraceReply } from './planSchema.ts';
import { flickerReply } from './flickerReply.ts';
import { sampledReply, timingReply } from './timingReply.ts';

type Reply<T extends z.ZodType> = z.infer<T>;
type ShotReply = Reply<typeof PlanReply>['shots'][number];
type MarginReply = ShotReply['margins'][number];
type AssumptionReply = ShotReply['assumed'][number];
type ProblemReply = Reply<typeof PlanReply>['problems'][number];
type MissingReply = ShotReply['missing'][number];
type SettingsReply = NonNullable<ShotReply['settings']>;
type ClocksReply = NonNullable<ShotReply['clocks']>;
type AlternativeReply = ShotReply['alternatives'][number];
type WayReply = NonNullable<ShotReply['ways']>[string][number];
type TraceNode = Reply<typeof TraceReply>['traces'][number];

export interface PlanReplyOptions {
  /** Only the shot of this id. */
  readonly only?: string;
  /** Ways to close short margins, by shot and limit. */
  readonly ways?: ReadonlyMap<string, ReadonlyMap<LimitId, readonly Way[]>>;
  /** Takes drawn by chance, by shot. */
  readonly sampled?: ReadonlyMap<string, SampledTiming>;
}

/** The whole plan with the problems of its document, in the form of `docs/schema/plan.schema.json`. */
export function planReply(
  { title, shots, margins, matches, references, totals }: Plan,
  problems: readonly Problem[],
  { only, ways, sampled }: PlanReplyOptions = {},
): Reply<typeof PlanReply> {
  const schema: typeof PLAN_SCHEMA = 'longsecond.plan/1';
  return rounded({
    schema,
    title,
    problems: problems.map(problemReply),
    shots: shots.filter(({ id }) => only === undefined || id === only).map((shot) => shotReply(shot, ways?.get(shot.id), sampled?.get(shot.id))),
    margins: margins.map(marginReply),
    matches: matches.map(({ shotId, matchesId, differences }) => ({
      shotId,
      matchesId,
      differences: differences.map(({ what, here, there, patch }) => ({ what, here, there, patch: [...patch] })),
    })),
    references: references.map(({ shotId, what, because }) => ({ shotId, what, because })),
    totals,
  });
} // prettier-ignore

export function problemReply({ code, path, what, near, line, column }: Problem): ProblemReply {
  return { code, path, what, ...present({ near, line, column }) };
}

/** Traces of one shot's numbers, in the form of `docs/schema/trace.schema.json`. */
export function traceReply(shot: string, traces: readonly Trace[]): Reply<typeof TraceReply> {
  const schema: typeof TRACE_SCHEMA = 'longsecond.trace/1';
  return rounded({ schema, shot, traces: traces.map(traceNode) });
}

/** Members that have a value. */
export function present<T extends object>(members: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  const entries = Object.entries(members).filter(([, value]) => value !== undefined);
  return Object.fromEntries(entries) as { [K in keyof T]?: Exclude<T[K], undefined> };
}

function shotReply(shot: ShotPlan, ways: ReadonlyMap<LimitId, readonly Way[]> | undefined, sampled: SampledTiming | undefined): ShotReply {
  const { id, title, number, settings, reasons, margins, alternatives, clocks, picture, lamps, lampTimes, heroLife, missing, assumed } = shot;
  const { cautions, notes, keptSize_B, saveTime_s, triedCount } = shot;
  return {
    id,
    title,
    number,
    ...present({ settings: settings && settingsReply(settings) }),
    reasons: reasonsReply(reasons),
    margins: margins.map(marginReply),
    alternatives: alternatives.map(alternativeReply),
    ...present({ clocks: clocks && clocksReply(clocks), picture: picture && pictureReply(picture) }),
    lamps: lamps.map(({ id, title, illuminance_lx, shareFraction, distance_m }) => ({ id, title, illuminance_lx, shareFraction, distance_m })),
    lampTimes: lampTimes.map(({ id, title, warmUp_s, restrike_s, drift_stops }) => ({ id, title, ...present({ warmUp_s, restrike_s, drift_stops }) })),
    ...present({ heroLife: heroLife && heroLifeReply(heroLife), flicker: shot.flicker && flickerReply(shot.flicker, assumptionReply) }),
    ...present({ timing: shot.timing && timingReply(shot.timing), sampled: sampled && sampledReply(sampled) }),
    missing: missing.map(missingReply),
    assumed: assumed.map(assumptionReply),
    cautions: cautions.map(({ key, says }) => ({ key, says })),
    notes: [...notes],
    ...present({ keptSize_B, saveTime_s }),
    triedCount,
    ...(ways === undefined ? {} : { ways: Object.fromEntries([...ways].map(([limit, found]) => [limit, found.map(wayReply)])) }),
  };
} // prettier-ignore

function pictureReply({ fieldWidth_m, fieldHeight_m, reframeFraction, crops, reachWidth_m, reachHeight_m }: Picture) {
  return {
    fieldWidth_m,
    fieldHeight_m,
    reframeFraction,
    crops: crops.map(({ deliverable, title, width_m, height_m, safeFraction }) => ({
      deliverable,
      title,
      width_m,
      height_m,
      ...present({ safeFraction }),
    })),
    ...present({ reachWidth_m, reachHeight_m }),
  };
}

function heroLifeReply({ warms, life, lightOn_s, heat, airHeat_W_per_m2, start_degC, changes_degC, air_degC, thickness_m, isHeld, assumed }: HeroLife): NonNullable<ShotReply['heroLife']> {
  return {
    warms,
    shortestLife_s: life.low,
    longestLife_s: life.high,
    ...present({ lightOn_s }),
    heat: heat.map(({ lamp, illuminance_lx, irradiance_W_per_m2, absorbed_W_per_m2 }) => ({ lamp, illuminance_lx, irradiance_W_per_m2, absorbed_W_per_m2 })),
    airHeat_W_per_m2,
    start_degC,
    changes_degC,
    air_degC,
    thickness_m,
    isHeld,
    assumed: assumed.map(assumptionReply),
  };
} // prettier-ignore

function marginReply(margin: Margin): MarginReply {
  const { id, title, detail, isHard, state, kind, sense, have, need, spare, stops } = margin;
  const { path, haveName, needName, missing, assumed } = margin;
  return {
    id,
    title,
    ...present({ detail }),
    isHard,
    state,
    kind,
    unit: KINDS[kind].unit,
    sense,
    ...present({ have, need, spare, stops: stops && { value: stops.value, low: stops.low, high: stops.high } }),
    path,
    haveName,
    needName,
    missing: missing.map(missingReply),
    assumed: assumed.map(assumptionReply),
  };
}

const SETTINGS = [
  'camera', 'mode', 'lens', 'captureRate_fps', 'exposureTime_s', 'shutterAngle_deg', 'stop', 'isoSpeed', 'widthCount',
  'heightCount', 'focalLength_mm', 'magnificationRatio', 'sensorToSubject_m', 'workingDistance_m',
] as const satisfies readonly (keyof Settings)[]; // prettier-ignore

function settingsReply(settings: Settings): SettingsReply {
  return Object.fromEntries(SETTINGS.map((name) => [name, settings[name]])) as unknown as SettingsReply;
}

function reasonsReply(reasons: ShotPlan['reasons']): ShotReply['reasons'] {
  return Object.fromEntries(
    SETTINGS.flatMap((name) => {
      const reason = reasons[name];
      return reason ? [[name, { says: reason.says, isFixed: reason.isFixed }] as const] : [];
    }),
  );
}

function clocksReply(clocks: Clocks): ClocksReply {
  const { actionTime_s, handles_s, screenTime_s, samples, playRate, slowestFraction, fastestFraction, recordTime_s } = clocks;
  return {
    actionTime_s,
    handles_s,
    screenTime_s,
    samples: samples.map((sample) => ({ screenTime_s: sample.screenTime_s, realTime_s: sample.realTime_s })),
    playRate: { num: playRate.num, den: playRate.den },
    slowestFraction,
    fastestFraction,
    ...present({ recordTime_s }),
  };
} // prettier-ignore

export function missingReply({ name, title, path, because, what }: Missing): MissingReply {
  return { name, title, path, because, ...present({ what }) };
}

export function assumptionReply({ name, title, value, why, path }: Assumption): AssumptionReply {
  return { name, title, value, unit: unitSuffix(name), why, path };
}

function alternativeReply({ settings, margins, differs, patch }: Alternative): AlternativeReply {
  return { settings: settingsReply(settings), margins: margins.map(marginReply), differs, patch };
}

function wayReply({ margins, ...way }: Way): WayReply {
  const {
    move,
    title,
    says,
    patch,
    stops,
    gain_stops,
    closes,
    breaks,
    touchesFixed,
    gives_stops,
    effects,
    settings,
    cost,
  } = way;
  return {
    move,
    title,
    says,
    patch,
    stops,
    gain_stops,
    closes,
    breaks: breaks.map(({ id, title }) => ({ id, title })),
    touchesFixed,
    gives_stops,
    margins: margins.map(marginReply),
    effects: effects.map((effect) => ({
      id: effect.id,
      title: effect.title,
      change_stops: effect.change_stops,
      state: effect.state,
    })),
    ...present({ settings: settings && settingsReply(settings) }),
    cost,
  };
}

function traceNode({ name, title, value, origin, inputs }: Trace): TraceNode {
  return {
    name,
    title,
    ...present({ value }),
    unit: unitSuffix(name),
    origin: originReply(origin),
    inputs: inputs.map(traceNode),
  };
}

function originReply(origin: Trace['origin']): TraceNode['origin'] {
  switch (origin.by) {
    case 'law': {
      const { by, law, title, equation, sources, refused } = origin;
      return { by, law, title, equation, sources, ...present({ refused }) };
    }
    case 'choice':
      return { by: origin.by, says: origin.says };
    case 'document':
      return { by: origin.by, path: origin.path, ...present({ spread: origin.spread, says: origin.says }) };
    case 'assumption':
      return { by: origin.by, why: origin.why, path: origin.path, ...present({ spread: origin.spread }) };
  }
}

const DIGITS = 9;

/** Numbers rounded to nine significant digits: what differs beyond them is arithmetic, not the plan. */
export function rounded<T>(value: T): T {
  if (typeof value === 'number') return (Number(value.toPrecision(DIGITS)) + 0) as T;
  if (Array.isArray(value)) return value.map((item: unknown) => rounded(item)) as T;
  if (typeof value !== 'object' || value === null) return value;
  if ('num' in value && 'den' in value) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, item]: [string, unknown]) => [key, key === 'patch' ? item : rounded(item)]),
  ) as T;
}
