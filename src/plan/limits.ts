/** Limits: which two numbers of a shot's model each compares, and the margins that come of it. */
import { kindOfSuffix, unitSuffix, type KindName } from '../base/kinds.ts';
import type { GivenEntry, Givens } from './givens.ts';
import { affectedSteps, refusal, rootsOf, work, type Model } from './model.ts';
import type { Structure } from './shotModel.ts';
import { meetingPlaces } from './timing/structure.ts';
import type { Assumption, Figure, LimitId, Margin, MarginState, Missing } from './types.ts';

/** How two figures become stops: a plain ratio; a ratio of apertures, or of distances from a lamp, which counts twice; stops, which are differences already; decibels of amplitude; chances, of which the misses are weighed. */
type Measure = 'ratio' | 'apertures' | 'stops' | 'decibels' | 'chances';

export interface LimitPart {
  readonly have: string;
  readonly need: string;
  readonly detail?: string;
  /** Where it differs from its limit's. */
  readonly sense?: 'at-least' | 'at-most';
  /** Given name without which nobody asked for this part. */
  readonly askedBy?: string;
}

export interface LimitSpec {
  readonly id: LimitId;
  readonly title: string;
  readonly isHard: boolean;
  /** What the answer gives way on first: hard limits last, then what was asked for, then exposure. */
  readonly gives: 'last' | 'second' | 'first';
  readonly sense: 'at-least' | 'at-most';
  readonly kind: KindName;
  readonly measure: Measure;
  /** Judged apart; the margin shows the worst. */
  readonly parts: readonly LimitPart[];
  /** Given names without which nobody asked for it, and it is not shown. */
  readonly askedBy: readonly string[];
}

type Draft = Pick<LimitSpec, 'id' | 'title' | 'kind' | 'parts'> & Partial<LimitSpec>;

const spec = (draft: Draft): LimitSpec => ({
  isHard: false,
  gives: draft.isHard === true ? 'last' : 'second',
  sense: 'at-least',
  measure: 'ratio',
  askedBy: [],
  ...draft,
});

/** Most stops that anything is said to have to spare: beyond it a figure says no more. */
export const CEILING_STOPS = 30;

/** Below this a margin is short; what lies nearer to nothing is rounding. */
const SHORT_STOPS = -1e-9;

/** The limits of a shot of this structure, in the order they are read. */
export function limitsOf(structure: Structure, deliverableTitles: readonly string[]): readonly LimitSpec[] {
  const { readBy, rateBy, coverBy, shutterBy } = structure;
  const each = <T>(of: (i: number, detail: string) => T): T[] => deliverableTitles.map((title, i) => of(i, title));
  const unit = readBy === 'illuminance' ? 'lx' : 'cd_per_m2';
  return [
    spec({ id: 'frame-rate', title: 'Frame rate', kind: 'rate', isHard: true, sense: 'at-most', parts: [{ have: 'captureRate_fps', need: 'maxRate_fps' }] }),
    ...(rateBy === 'duration' || coverBy === 'screen' ? [] : [spec({ id: 'screen-time', title: 'Time on screen', kind: 'time', parts: [{ have: 'screenTime_s', need: 'screenTimeWanted_s' }], askedBy: ['screenTimeWanted_s'] })]),
    ...(shutterBy === 'solved' ? [] : [spec({ id: 'shutter', title: 'Shutter', kind: 'time', isHard: true, sense: 'at-most', parts: [{ have: 'exposureTime_s', need: 'longestExposure_s', detail: 'within the frame' }, { have: 'exposureTime_s', need: 'shortestExposure_s', detail: 'shortest of the camera', sense: 'at-least', askedBy: 'shortestExposure_s' }] })]),
    spec({ id: 'stop-range', title: 'Stop on the lens', kind: 'tStop', measure: 'apertures', isHard: true, parts: [{ have: 'stop', need: 'widestStop', detail: 'widest' }, { have: 'stop', need: 'narrowestStop', detail: 'narrowest', sense: 'at-most' }], askedBy: ['stop'] }),
    spec({ id: 'index-range', title: 'Index of the camera', kind: 'index', isHard: true, parts: [{ have: 'isoSpeed', need: 'highestIsoSpeed', detail: 'highest', sense: 'at-most', askedBy: 'highestIsoSpeed' }, { have: 'isoSpeed', need: 'lowestIsoSpeed', detail: 'lowest', askedBy: 'lowestIsoSpeed' }], askedBy: ['isoSpeed'] }),
    spec({ id: 'light', title: 'Light', kind: readBy, gives: 'first', parts: [{ have: `${readBy}_${unit}`, need: `lightNeeded_${unit}` }] }),
    spec({ id: 'highlights', title: 'Highlights', kind: 'stops', measure: 'stops', gives: 'first', parts: [{ have: 'headroom_stops', need: 'highlightsWanted_stops' }], askedBy: ['highlightsWanted_stops'] }),
    spec({ id: 'noise', title: 'Noise', kind: 'decibels', measure: 'decibels', gives: 'first', parts: [{ have: 'signalToNoise_dB', need: 'signalToNoiseWanted_dB' }], askedBy: ['signalToNoiseWanted_dB'] }),
    spec({ id: 'depth', title: 'Depth', kind: 'length', parts: [{ have: 'depth_m', need: 'depthWanted_m' }], askedBy: ['depthWanted_m'] }),
    spec({ id: 'blur', title: 'Blur', kind: 'pixels', sense: 'at-most', parts: [{ have: 'blur_px', need: 'blurWanted_px' }], askedBy: ['blurWanted_px'] }),
    spec({ id: 'diffraction', title: 'Diffraction', kind: 'pixels', sense: 'at-most', parts: [{ have: 'diffraction_px', need: 'diffractionWanted_px' }] }),
    spec({ id: 'picture-size', title: 'Picture size', kind: 'pixels', isHard: true, parts: each((i, detail) => ({ have: `cropWidth${i}_px`, need: `deliveredWidth${i}_px`, detail })) }),
    spec({ id: 'in-the-picture', title: 'In the picture', kind: 'length', sense: 'at-most', parts: each((i, detail) => [{ have: 'reachWidth_m', need: `fieldWidth${i}_m`, detail: `${detail}, across`, askedBy: 'reachWidth_m' }, { have: 'reachHeight_m', need: `fieldHeight${i}_m`, detail: `${detail}, up and down`, askedBy: 'reachHeight_m' }]).flat(), askedBy: ['reachWidth_m', 'reachHeight_m'] }),
    spec({ id: 'coverage', title: 'Coverage', kind: 'length', isHard: true, parts: [{ have: 'imageCircle_m', need: 'imageCircleNeeded_m' }], askedBy: ['imageCircle_m'] }),
    spec({ id: 'focus', title: 'Focus', kind: 'length', isHard: true, parts: [{ have: 'sensorToSubject_m', need: 'nearestFocus_m', detail: 'nearest' }, { have: 'sensorToSubject_m', need: 'farthestFocus_m', detail: 'farthest with the tubes', sense: 'at-most' }], askedBy: ['closeFocus_m'] }),
    spec({ id: 'clearance', title: 'Clearance', kind: 'length', isHard: true, parts: [{ have: 'workingDistance_m', need: 'clearanceNeeded_m' }], askedBy: ['clearanceWanted_m', 'reachTowardsLens_m'] }),
    spec({ id: 'buffer', title: 'Buffer', kind: 'time', isHard: true, parts: [{ have: 'recordTime_s', need: 'recordedTime_s' }] }),
    ...(structure.timing.trigger === 'none' ? [] : [spec({ id: 'trigger-catch', title: 'Trigger', kind: 'share', measure: 'chances', parts: [{ have: 'triggerFraction', need: 'catchWantedFraction' }], askedBy: ['catchWantedFraction'] })]),
    ...(meetingPlaces(structure.timing).length === 0 ? [] : [spec({ id: 'meeting', title: 'Meeting', kind: 'share', measure: 'chances', parts: [{ have: 'meetingFraction', need: 'meetWantedFraction' }], askedBy: ['meetWantedFraction'] })]),
    spec({ id: 'hero-life', title: 'Hero life', kind: 'time', parts: [{ have: 'heroLife_s', need: 'lightOn_s' }], askedBy: ['heroLife_s', 'lightOn_s', 'productStart_degC'] }),
    ...(structure.eyesBy === 'lamps' ? [spec({ id: 'eye-distance', title: 'Eye distance', kind: 'length', measure: 'apertures', isHard: true, parts: [{ have: 'glareDistance_m', need: 'blueEyeDistance_m', detail: 'blue light' }, { have: 'hotLampDistance_m', need: 'infraredEyeDistance_m', detail: 'infrared' }], askedBy: ['glareDistance_m'] })] : []),
    spec({ id: 'heroes', title: 'Heroes', kind: 'pieces', isHard: true, parts: [{ have: 'piecesLeftCount', need: 'piecesNeededCount' }], askedBy: ['pieceCount'] }),
  ];
} // prettier-ignore

/** Whether anybody asked for a limit: one of its asking figures is written, or assumed, or written and unreadable. */
export function isAsked(limit: LimitSpec, givens: Givens): boolean {
  return limit.askedBy.length === 0 || limit.askedBy.some((name) => isGiven(givens.get(name)));
}

const isGiven = (entry: GivenEntry | undefined): boolean =>
  entry !== undefined && (entry.isUnread === true || !Number.isNaN(entry.value));

/** The common measure of two figures, in stops. NaN where either is unknown. */
export function stopsOf(measure: Measure, sense: LimitSpec['sense'], have: number, need: number): number {
  const more = sense === 'at-least' ? have : need;
  const must = sense === 'at-least' ? need : have;
  if (Number.isNaN(more) || Number.isNaN(must)) return NaN;
  if (measure === 'stops') return more - must;
  if (measure === 'decibels') return (more - must) / (20 * Math.log10(2));
  if (measure === 'chances') return more === must ? 0 : stopsOf('ratio', 'at-least', 1 - must, 1 - more);
  if (must <= 0) return CEILING_STOPS;
  if (more <= 0) return -CEILING_STOPS;
  const stops = Math.log2(more / must) * (measure === 'apertures' ? 2 : 1);
  return Math.max(-CEILING_STOPS, Math.min(CEILING_STOPS, stops));
}

export interface JudgedLimit {
  readonly spec: LimitSpec;
  readonly parts: readonly { readonly have: number; readonly need: number; readonly part: LimitPart }[];
}

/** Limits tied to the slots of one model; what nobody asked for is left out. */
export function limitsInModel(model: Model, limits: readonly LimitSpec[], givens: Givens): readonly JudgedLimit[] {
  return limits
    .filter((limit) => isAsked(limit, givens))
    .map((limit) => ({
      spec: limit,
      parts: limit.parts
        .filter((part) => part.askedBy === undefined || isGiven(givens.get(part.askedBy)))
        .map((part) => ({ part, have: model.slotOf.get(part.have) ?? -1, need: model.slotOf.get(part.need) ?? -1 })),
    }))
    .filter(({ parts }) => parts.length > 0);
}

interface Worst {
  readonly stops: number;
  readonly at: number;
}

/** The worst part of a limit; an unknown part hides behind no known one unless the known one is short already. */
export function worstPart({ spec: limit, parts }: JudgedLimit, values: Float64Array): Worst {
  let worst: Worst = { stops: Infinity, at: 0 };
  let unknown: Worst | undefined;
  for (let at = 0; at < parts.length; at += 1) {
    const { have, need, part } = parts[at]!;
    const stops = stopsOf(limit.measure, part.sense ?? limit.sense, values[have] ?? NaN, values[need] ?? NaN);
    if (Number.isNaN(stops)) unknown ??= { stops, at };
    else if (stops < worst.stops) worst = { stops, at };
  }
  return unknown && worst.stops >= SHORT_STOPS ? unknown : worst;
}

/** How a margin of this spare stands. */
export function stateOf({ value, low }: Figure): MarginState {
  if (value < SHORT_STOPS) return 'short';
  return low < SHORT_STOPS ? 'tight' : 'spare';
}

interface Judging {
  readonly model: Model;
  readonly values: Float64Array;
  readonly givens: Givens;
  readonly limits: readonly JudgedLimit[];
  /** Settings that stay as they are while an input is moved within its band. */
  readonly held: readonly string[];
}

/** Every margin of a shot at settings already worked out, with bands from independent spreads of the inputs. */
export function judge({ model, values, givens, limits, held }: Judging): readonly Margin[] {
  const worst = limits.map((limit) => worstPart(limit, values));
  const variance = new Float64Array(limits.length);
  const above = new Float64Array(limits.length);
  const rests = limits.map(() => new Set<string>());
  const scratch = new Float64Array(values.length);
  for (const name of model.givens) {
    const entry = givens.get(name);
    if (!entry || !(entry.spread > 0 || entry.spreadAbove !== undefined)) continue;
    const slot = model.slotOf.get(name)!;
    const steps = affectedSteps(model, [name], held);
    const moved = [-1, 1].map((side) => {
      scratch.set(values);
      scratch[slot] = atBandEnd(entry, side);
      work(steps, scratch);
      return limits.map((limit) => worstPart(limit, scratch).stops);
    });
    limits.forEach((_, i) => {
      const half = (moved[1]![i]! - moved[0]![i]!) / 2;
      if (half !== 0) rests[i]!.add(name);
      if (!Number.isFinite(half)) return;
      if (entry.spreadAbove === undefined) variance[i]! += half ** 2;
      // Its low end is its value: what it adds, it adds on one side.
      else above[i]! += (2 * half) ** 2;
    });
  }
  return limits.map((limit, i) =>
    marginOf({ model, values, givens, limits, held }, limit, worst[i]!, {
      below: Math.sqrt(variance[i]!),
      above: Math.sqrt(variance[i]! + above[i]!),
    }),
  );
}

/**
 * A value that cannot be negative is moved by ratio downwards once its spread is half of it, so that a wide band never
 * crosses zero; the two meet there, with one slope.
 */
function atBandEnd({ value, spread, spreadAbove }: GivenEntry, side: number): number {
  if (spreadAbove !== undefined) return side > 0 ? value + spreadAbove : value;
  if (side > 0 || value <= 0) return value + side * spread;
  return spread < value / 2 ? value - spread : value ** 2 / (4 * spread);
}

function marginOf(
  judging: Judging,
  limit: JudgedLimit,
  worst: Worst,
  half: { readonly below: number; readonly above: number },
): Margin {
  const { model, values, givens } = judging;
  const { spec: of } = limit;
  const { part, have, need } = limit.parts[worst.at]!;
  const haveValue = values[have] ?? NaN;
  const needValue = values[need] ?? NaN;
  const isKnown = Number.isFinite(worst.stops);
  const stops = { value: worst.stops, low: worst.stops - half.below, high: worst.stops + half.above };
  const sense = part.sense ?? of.sense;
  return {
    id: of.id,
    title: of.title,
    ...(part.detail === undefined || limit.parts.length < 2 ? {} : { detail: part.detail }),
    isHard: of.isHard,
    state: isKnown ? stateOf(stops) : 'unknown',
    kind: of.kind,
    sense,
    ...(Number.isFinite(haveValue) ? { have: haveValue } : {}),
    ...(Number.isFinite(needValue) ? { need: needValue } : {}),
    ...(isKnown ? { stops, spare: sense === 'at-least' ? haveValue - needValue : needValue - haveValue } : {}),
    path: askingPath(judging, of, part),
    haveName: part.have,
    needName: part.need,
    missing: isKnown
      ? []
      : distinct([...missingOf(model, values, givens, part.have), ...missingOf(model, values, givens, part.need)]),
    assumed: assumptionsOf(model, givens, [part.have, part.need]),
  };
}

const distinct = (all: readonly Missing[]): readonly Missing[] => [
  ...new Map(all.map((missing) => [missing.name, missing])).values(),
];

/** The key to change first: what was asked, else what the figure there is rests on. */
function askingPath({ model, givens }: Judging, of: LimitSpec, part: LimitPart): string {
  for (const name of [
    ...of.askedBy,
    part.need,
    part.have,
    ...rootsOf(model, part.need),
    ...rootsOf(model, part.have),
  ]) {
    const entry = givens.get(name);
    if (entry && isGiven(entry)) return entry.path;
  }
  return '';
}

/** Inputs whose lack leaves a number unknown; where none is lacking, the law that refused. */
export function missingOf(model: Model, values: Float64Array, givens: Givens, name: string): readonly Missing[] {
  const found = new Map<string, Missing>();
  const seen = new Set<string>();
  const visit = (at: string): void => {
    const slot = model.slotOf.get(at);
    if (seen.has(at) || (slot !== undefined && !Number.isNaN(values[slot]!))) return;
    seen.add(at);
    const step = model.stepOf.get(at);
    if (!step) {
      const entry = givens.get(at);
      if (entry && Number.isNaN(entry.value)) found.set(at, { name: at, title: entry.title, path: entry.path, because: entry.isUnread === true ? 'unread' : 'absent' });
      else if (!entry) found.set(at, { name: at, title: at, path: '', because: 'absent' });
      return;
    }
    const what = refusal(step, values);
    if (what !== undefined) {
      found.set(at, { name: at, title: step.title, path: firstPath(model, givens, at), because: 'refused', what });
      return;
    }
    step.inputs.forEach(([argument, input]) => {
      if (!step.optional.has(argument)) visit(input);
    });
  };
  visit(name);
  return [...found.values()];
} // prettier-ignore

function firstPath(model: Model, givens: Givens, name: string): string {
  for (const root of rootsOf(model, name)) {
    const entry = givens.get(root);
    if (entry && isGiven(entry)) return entry.path;
  }
  return '';
}

/** The kind of a given number: what its unit says, or a stop. */
export function kindOfGiven(name: string): KindName | undefined {
  return /[sS]top$/.test(name) ? 'tStop' : kindOfSuffix(unitSuffix(name));
}

/** What a number rests on that nobody wrote. */
export function assumptionsOf(model: Model, givens: Givens, names: readonly string[]): readonly Assumption[] {
  const found = new Map<string, Assumption>();
  for (const name of names.flatMap((of) => rootsOf(model, of))) {
    const entry = givens.get(name);
    if (entry?.assumed === undefined) continue;
    found.set(name, { name, title: entry.title, value: entry.value, kind: kindOfGiven(name), why: entry.assumed, path: entry.path });
  }
  return [...found.values()];
} // prettier-ignore
