/** The search for an answer: every mode, lens and stop worth trying, worked through the model and put in order. */
import { stopFromThirds, thirdsAboveOne } from '../base/stop.ts';
import type { Mode, Shoot } from '../document/schema.ts';
import { cameraGivens, lensGivens, modeGivens, type Effective, type Givens } from './givens.ts';
import { isUnread } from './unread.ts';
import { worstPart, type JudgedLimit } from './limits.ts';
import { affectedSteps, neededSteps, work, type Model } from './model.ts';

/** A camera, mode and lens that may be tried together. */
export interface Kit {
  readonly camera: string;
  readonly mode: string;
  readonly lens: string;
  readonly givens: Givens;
}

export interface Candidate {
  readonly kit: Kit;
  /** NaN where the lens does not tell which it has. */
  readonly stop: number;
  /** Settings, and limits that always count, that cannot be worked out. */
  readonly unknownCount: number;
  /** Stops that limits of each rank lack in all: hard, asked for, exposure. */
  readonly lacks: readonly [number, number, number];
  readonly worst_stops: number;
  /** Light asked, as stops: what dominance weighs. */
  readonly light_stops: number;
  readonly resolution_px: number;
  /** Light beyond what the exposure needs. */
  readonly over_stops: number;
  readonly noise_dB: number;
  /** From the front of the lens to the subject. */
  readonly clear_m: number;
  /** Place in the order tried, which breaks ties. */
  readonly place: number;
}

/** An answer that lacks this much more than the best is none. */
const FAR_BEHIND_STOPS = 1.5;

/** At most this many combinations are tried for a shot. */
const MOST_CANDIDATES = 5000;

/** What a piece of kit gives, kept for as long as the record it was read to. */
function keptWith<Of extends object>(make: (id: string, of: Of) => Givens): (id: string, of: Of) => Givens {
  const kept = new WeakMap<Of, Map<string, Givens>>();
  return (id, of) => {
    let byId = kept.get(of);
    if (!byId) kept.set(of, (byId = new Map<string, Givens>()));
    let givens = byId.get(id);
    if (!givens) byId.set(id, (givens = make(id, of)));
    return givens;
  };
}

const givensOfLens = keptWith(lensGivens);
const givensOfCamera = keptWith(cameraGivens);
const givensOfMode = keptWith((path, mode: Mode) => {
  const [cameraId = '', modeId = ''] = path.split('/');
  return modeGivens(cameraId, modeId, mode);
});

/** Every camera, mode and lens the shot may use: those it fixes, else all that are here; none while one it fixes is unread. */
export function kitsOf(shoot: Shoot, { shot }: Effective): readonly Kit[] {
  if (['camera', 'mode', 'lens'].some((key) => isUnread(shot, key))) return [];
  const may = <T extends { readonly availability?: string }>(
    items: Readonly<Record<string, T>>,
    fixed: string | undefined,
  ) =>
    Object.entries(items).filter(([id, item]) =>
      fixed === undefined ? item.availability !== 'unwanted' && item.availability !== 'hire' : id === fixed,
    );
  const cameras = may(shoot.kit.cameras, shot.camera);
  const lenses = may(shoot.kit.lenses, shot.lens).map(([id, lens]) => [id, givensOfLens(id, lens)] as const);
  const kits: Kit[] = [];
  for (const [cameraId, camera] of cameras) {
    const body = givensOfCamera(cameraId, camera);
    for (const [modeId, mode] of Object.entries(camera.modes)) {
      if (shot.mode !== undefined && shot.mode !== modeId) continue;
      const format = givensOfMode(`${cameraId}/${modeId}`, mode);
      for (const [lensId, lens] of lenses)
        kits.push({ camera: cameraId, mode: modeId, lens: lensId, givens: new Map([...body, ...format, ...lens]) });
    }
  }
  return kits;
}

/** Writes every given number to its slot; what a model does not use is passed over. */
export function fill(model: Model, values: Float64Array, givens: Givens): void {
  for (const [name, { value }] of givens) {
    const slot = model.slotOf.get(name);
    if (slot !== undefined) values[slot] = value;
  }
}

/**
 * Third-stops to try on a lens: those about the one that holds the depth, or all when no depth is asked. One unknown stop
 * where the one that is fixed, or the stops the lens has, cannot be read.
 */
function stopsToTry(fixed: number | undefined, widest: number, narrowest: number, forDepth: number): readonly number[] {
  if (fixed !== undefined) return [fixed];
  if (Number.isNaN(widest) || Number.isNaN(narrowest)) return [NaN];
  const first = Math.ceil(thirdsAboveOne(widest) - 1e-6);
  const last = Math.floor(thirdsAboveOne(narrowest) + 1e-6);
  let [from, to] = [first, last];
  if (forDepth > 0 && forDepth < Infinity) {
    const needed = Math.ceil(thirdsAboveOne(forDepth) - 1e-6);
    [from, to] = [Math.min(Math.max(first, needed - 2), last), Math.max(Math.min(last, needed + 3), first)];
  }
  // Beyond those, whole stops down to the narrowest: a way out where there is light to spare.
  const beyond = Array.from({ length: Math.max(0, Math.floor((last - to) / 3)) }, (_, i) => to + 3 * (i + 1));
  const stops = [...Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => from + i), ...beyond].map(
    stopFromThirds,
  );
  const marked = from === first && thirdsAboveOne(widest) < first - 0.01 ? [widest, ...stops] : stops;
  const within = marked.filter((stop) => stop > widest * (1 - 1e-6) && stop < narrowest * (1 + 1e-6));
  return within.length > 0 ? within : [widest];
}

/** Numbers that candidates are put in order by, beside their margins. */
const SCORED = [
  'fNumberForDepth',
  'cropWidth0_px',
  'signalToNoise_dB',
  'greyLightNeeded_lx',
  'greyLightNeeded_cd_per_m2',
  'overexposure_stops',
  'workingDistance_m',
];

/** Settings that a kit may leave without an answer. */
const SETTLED = [
  'captureRate_fps',
  'exposureTime_s',
  'stop',
  'isoSpeed',
  'widthCount',
  'heightCount',
  'focalLength_mm',
  'magnificationRatio',
  'sensorToSubject_m',
  'workingDistance_m',
];

export interface Search {
  readonly model: Model;
  readonly limits: readonly JudgedLimit[];
  readonly shotGivens: Givens;
  readonly kits: readonly Kit[];
}

/**
 * Limits that a kit or a stop can change. The others stand the same for every candidate: one of them short would only hide
 * which candidate has the better worst spare.
 */
function deciding(limits: readonly JudgedLimit[], model: Model, kits: readonly Kit[]): readonly JudgedLimit[] {
  const ofKit = new Set(['stop', ...kits.flatMap(({ givens }) => [...givens.keys()])]);
  for (const { name } of affectedSteps(model, [...ofKit])) ofKit.add(name);
  return limits.filter(({ parts }) => parts.some(({ part }) => ofKit.has(part.have) || ofKit.has(part.need)));
}

const RANKS = { last: 0, second: 1, first: 2 } as const;

/** Works through every combination; the values of each are worked again by whoever needs them all. */
export function tryAll({ model, limits: all, shotGivens, kits }: Search): readonly Candidate[] {
  const values = new Float64Array(model.names.length).fill(NaN);
  fill(model, values, shotGivens);
  const limits = deciding(all, model, kits);
  const compared = [...SCORED, ...SETTLED, ...limits.flatMap(({ parts }) => parts.flatMap(({ part }) => [part.have, part.need]))];
  const ofStop = neededSteps(affectedSteps(model, ['stop']), compared);
  const beforeStop = neededSteps(affectedSteps(model, [...new Set(kits.flatMap(({ givens }) => [...givens.keys()]))]), compared);
  const ofKit = beforeStop.filter((step) => !ofStop.includes(step));
  work(model.steps, values);
  const slot = (name: string): number => model.slotOf.get(name) ?? -1;
  const [stopAt, fNumberAt, resolutionAt, noiseAt] = [slot('stop'), slot('fNumberForDepth'), slot('cropWidth0_px'), slot('signalToNoise_dB')];
  const [overAt, clearAt] = [slot('overexposure_stops'), slot('workingDistance_m')];
  const lightAt = Math.max(slot('greyLightNeeded_lx'), slot('greyLightNeeded_cd_per_m2'));
  const fixedStop = shotGivens.get('stop')?.value;
  const settled = SETTLED.map(slot);
  const found: Candidate[] = [];
  const workKit = (kit: Kit): void => {
    fill(model, values, kit.givens);
    work(ofKit, values);
  };
  const tryStops = (kit: Kit, stops: readonly number[]): void => {
    for (const stop of stops.slice(0, MOST_CANDIDATES - found.length)) {
      values[stopAt] = stop;
      work(ofStop, values);
      found.push({
        kit,
        stop,
        ...score(limits, settled, values),
        light_stops: Math.log2(values[lightAt]! || 1),
        resolution_px: values[resolutionAt]! || 0,
        over_stops: values[overAt]! || 0,
        noise_dB: values[noiseAt]! || 0,
        clear_m: values[clearAt]! || 0,
        place: found.length,
      });
    }
  };
  for (const kit of worthTrying(kits, limits, ofStop, settled, (kit) => (workKit(kit), values))) {
    workKit(kit);
    const forDepth = values[fNumberAt]! / Math.sqrt(numberOf(kit, 'transmittanceFraction'));
    tryStops(kit, stopsToTry(fixedStop, numberOf(kit, 'widestStop'), numberOf(kit, 'narrowestStop'), forDepth));
  }
  if (found.length > 0 && fixedStop === undefined) {
    // The best may lie between whole stops that were tried: the thirds beside it are tried as well.
    const best = found.reduce((a, b) => (betterFirst(a, b) <= 0 ? a : b));
    const tried = new Set(found.filter(({ kit }) => kit === best.kit).map(({ stop }) => stop));
    workKit(best.kit);
    tryStops(best.kit, thirdsBeside(best).filter((stop) => !tried.has(stop)));
  }
  return found;
} // prettier-ignore

const numberOf = ({ givens }: Kit, name: string): number => givens.get(name)?.value ?? NaN;

/** The third-stops that the lens has within two of a candidate's. */
function thirdsBeside({ kit, stop }: Candidate): readonly number[] {
  if (Number.isNaN(stop)) return [];
  const [widest, narrowest] = [numberOf(kit, 'widestStop'), numberOf(kit, 'narrowestStop')];
  const at = Math.round(thirdsAboveOne(stop));
  return [-2, -1, 1, 2]
    .map((apart) => stopFromThirds(at + apart))
    .filter((beside) => beside > widest * (1 - 1e-6) && beside < narrowest * (1 + 1e-6));
}

/**
 * Kits whose hard limits, as far as no stop can help them, do not lie hopelessly behind the best: an answer gives way
 * in those last.
 */
function worthTrying(
  kits: readonly Kit[],
  limits: readonly JudgedLimit[],
  ofStop: readonly { readonly name: string }[],
  settled: readonly number[],
  workedAt: (kit: Kit) => Float64Array,
): readonly Kit[] {
  const byStop = new Set(ofStop.map(({ name }) => name));
  const fixed = limits.filter(
    ({ spec, parts }) =>
      spec.gives === 'last' && !parts.some(({ part }) => byStop.has(part.have) || byStop.has(part.need)),
  );
  const scores = kits.map((kit) => score(fixed, settled, workedAt(kit)));
  const fewest = Math.min(...scores.map(({ unknownCount }) => unknownCount));
  const least = Math.min(...scores.filter(({ unknownCount }) => unknownCount === fewest).map(({ lacks }) => lacks[0]));
  return kits.filter((_, i) => scores[i]!.lacks[0] <= least + FAR_BEHIND_STOPS);
}

/** Lacks below this do not count: a setting rounded to a third may miss by a hair. */
const HAIR_STOPS = 0.005;

function score(
  limits: readonly JudgedLimit[],
  settled: readonly number[],
  values: Float64Array,
): Pick<Candidate, 'unknownCount' | 'lacks' | 'worst_stops'> {
  let unknownCount = settled.reduce((count, slot) => count + Number(Number.isNaN(values[slot]!)), 0);
  const lacks: [number, number, number] = [0, 0, 0];
  let worst_stops = Infinity;
  for (const limit of limits) {
    const { stops } = worstPart(limit, values);
    if (Number.isNaN(stops)) {
      // A lens without an image circle is not asked for coverage; a mode without a rate must still be asked for its rate.
      if (limit.spec.askedBy.length === 0) unknownCount += 1;
      continue;
    }
    if (stops < worst_stops) worst_stops = stops;
    if (stops < -HAIR_STOPS) lacks[RANKS[limit.spec.gives]] -= stops;
  }
  return { unknownCount, lacks, worst_stops };
}

/** What a spare beyond this is worth: nothing more. */
const ENOUGH_STOPS = 1 / 3;

const compareNumbers = (a: number, b: number): number => (Math.abs(a - b) < 1e-6 ? 0 : a - b);

/** Room in front of the lens that lamps and hands are glad of; more is worth nothing. */
const ROOM_m = 0.5;

/** Overexposure is told in what a stop is set in. */
const wholeThirds = (over_stops: number): number => Math.floor(over_stops * 3 + 1e-6);

/**
 * The stated order of answers: least left unknown; least lacking in hard limits, then in what was asked for, then in
 * exposure; then the better worst spare up to a third of a stop; the larger picture; the less overexposed; the quieter;
 * the more room before the lens, up to half a metre; the less light asked; the first tried. Quieter comes before less
 * light: a solved index takes up whatever light there is, and what is left is its rounding.
 */
export function betterFirst(a: Candidate, b: Candidate): number {
  return (
    a.unknownCount - b.unknownCount ||
    compareNumbers(a.lacks[0], b.lacks[0]) ||
    compareNumbers(a.lacks[1], b.lacks[1]) ||
    compareNumbers(a.lacks[2], b.lacks[2]) ||
    compareNumbers(Math.min(b.worst_stops, ENOUGH_STOPS), Math.min(a.worst_stops, ENOUGH_STOPS)) ||
    compareNumbers(b.resolution_px, a.resolution_px) ||
    compareNumbers(wholeThirds(a.over_stops), wholeThirds(b.over_stops)) ||
    compareNumbers(b.noise_dB, a.noise_dB) ||
    compareNumbers(Math.min(b.clear_m, ROOM_m), Math.min(a.clear_m, ROOM_m)) ||
    compareNumbers(a.light_stops, b.light_stops) ||
    a.place - b.place
  );
}

/** Whether `a` is at least as good as `b` in worst spare, light asked, resolution and noise, and better in one. */
function dominates(a: Candidate, b: Candidate): boolean {
  const gains = [
    a.worst_stops - b.worst_stops,
    b.light_stops - a.light_stops,
    a.resolution_px - b.resolution_px,
    a.noise_dB - b.noise_dB,
  ];
  return gains.every((gain) => gain > -1e-9) && gains.some((gain) => gain > 1e-9);
}

const ALTERNATIVES = 7;

const total = ({ lacks }: Candidate): number => lacks[0] + lacks[1] + lacks[2];

/** The answer, and up to seven others that none told before them beats in every way, each a different camera, mode or lens first. */
export function answers(candidates: readonly Candidate[]): readonly Candidate[] {
  const ordered = [...candidates].sort(betterFirst);
  const [answer] = ordered;
  if (!answer) return [];
  const chosen: Candidate[] = [answer];
  const kitKey = ({ kit }: Candidate) => `${kit.camera} ${kit.mode} ${kit.lens}`;
  const seen = new Set([kitKey(answer)]);
  for (const mustDiffer of [true, false])
    for (const candidate of ordered) {
      if (chosen.length > ALTERNATIVES) return chosen;
      if (chosen.includes(candidate) || (mustDiffer && seen.has(kitKey(candidate)))) continue;
      if (
        candidate.unknownCount > answer.unknownCount ||
        candidate.lacks[0] > answer.lacks[0] + HAIR_STOPS ||
        total(candidate) > total(answer) + FAR_BEHIND_STOPS ||
        chosen.some((other) => dominates(other, candidate))
      )
        continue;
      seen.add(kitKey(candidate));
      chosen.push(candidate);
    }
  return chosen;
}
