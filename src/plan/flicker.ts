/**
 * Flicker of a shot: what its frames show of the lamps that burn in its set-up, against the swing that is allowed.
 *
 * The figure is the swing of the worst first frame. Its band is no spread of independent inputs but two cases worked out
 * in full. The cautious end: mains, and lamps with a rate of their own, as far off as they may be, and filaments as their
 * heat balance alone has them. The hopeful end: the best first frame, and filaments at the least that handbooks print.
 */
import type { Shoot } from '../document/schema.ts';
import { exposureTable } from '../laws/flicker/exposure.ts';
import { depthOf } from '../laws/flicker/metrics.ts';
import { rangeOf } from '../laws/flicker/ranges.ts';
import type { SeenFlicker, SeenGiven } from '../laws/flicker/seen.ts';
import { judgeFlicker } from '../laws/flicker/visible.ts';
import type { Waveform } from '../laws/flicker/waveform.ts';
import { assumptionOf, isMissing, mainsDrift, mainsFigure } from './flickerFigures.ts';
import { drifted, gather, lampAt, seenOf, swingsUnder, waveformAt, type Gathered, type LitLamp, type SetupGroup } from './flickerGroups.ts'; // prettier-ignore
import { flickerLamps, type LampTaken } from './flickerLamps.ts';
import { flickerShares } from './flickerShares.ts';
import { viewOf, type Effective } from './givens.ts';
import { hasLamps, lightOfSetup } from './lighting.ts';
import type { Assumption, FlickerLamp, Missing, ShotFlicker } from './types.ts';

/** How the frames are taken and shown. */
export type FlickerAt = SeenGiven;

export interface FlickerFound {
  readonly lamps: readonly LampTaken[];
  readonly shares: ReadonlyMap<string, number>;
  /** Those that give light there, while all of them are known. */
  readonly lit: readonly LitLamp[];
  readonly gathered?: Gathered;
  readonly seen?: SeenFlicker;
  /** Swing of the frames in stops: at the cautious and at the hopeful end of its band. */
  readonly most_stops?: number;
  readonly least_stops?: number;
  readonly missing: readonly Missing[];
  readonly assumed: readonly Assumption[];
  readonly mains_Hz: number;
}

/** How far a lamp's own rate may be from what is written of it, and from what was measured. @source flicker-practice */
const OWN_DRIFT = { written: 0.01, measured: 0.001 } as const;

/** Least share of the light that counts: a lamp below it cannot be seen to flicker. */
const LEAST_SHARE = 1e-4;

/** The lamps of a shot's set-up, and what they do to frames taken so; undefined where no lamps stand. */
export function flickerFound(shoot: Shoot, { shot }: Effective, at: FlickerAt | undefined): FlickerFound | undefined {
  const setupId = shot.lighting;
  if (setupId === undefined || !hasLamps(shoot.lighting[setupId])) return undefined;
  const lamps = flickerLamps(shoot, setupId);
  if (lamps.length === 0) return undefined;
  const light = lightOfSetup(shoot, setupId, viewOf(shot));
  const { shares, missing } = flickerShares({ shoot, setupId, shot, light });
  const counting = lamps.filter(({ id }) => (shares.get(id) ?? 0) > LEAST_SHARE);
  const mains = mainsFigure(shoot);
  const mains_Hz = isMissing(mains) ? NaN : mains.value;
  const lacks = distinct([...missing, ...(missing.length > 0 ? lamps : counting).flatMap((lamp) => lamp.missing)]);
  const common = { lamps, shares, missing: lacks, assumed: assumedOf(counting), mains_Hz };
  const lit = counting.flatMap((taken) => (taken.lamp ? [{ taken: { ...taken, lamp: taken.lamp }, shareFraction: shares.get(taken.id)! }] : [])); // prettier-ignore
  if (!at || lacks.length > 0 || lit.length === 0 || lit.length < counting.length) return { ...common, lit: [] };
  try {
    return { ...common, lit, ...worked(shoot, lit, at, mains_Hz) };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const refused: Missing = { name: 'flickerSwing_stops', title: 'Light of the frames', path: `/lighting/${setupId}/lamps`, because: 'refused', what: error.message }; // prettier-ignore
    return { ...common, lit, missing: [refused] };
  }
}

const distinct = (all: readonly Missing[]): readonly Missing[] => [...new Map(all.map((one) => [`${one.name} ${one.path}`, one])).values()]; // prettier-ignore

function assumedOf(lamps: readonly LampTaken[]): readonly Assumption[] {
  const used = lamps.flatMap(({ figures }) => figures).filter(({ why }) => why !== undefined);
  return [...new Map(used.map((figure) => [figure.name, assumptionOf(figure)])).values()];
}

function worked(shoot: Shoot, lit: readonly LitLamp[], at: FlickerAt, mains_Hz: number) {
  const gathered = gather(lit, 'lamp', at, mains_Hz);
  const seen = seenOf(gathered, at);
  const swing = (of: Gathered) => swingsUnder(of, at).worst.peakToPeak_stops;
  const cautious = gather(lit, 'atWorst', at, mains_Hz);
  const hopeful = gather(lit, 'atBest', at, mains_Hz);
  const mostOff = driftsOf(shoot, lit, mains_Hz);
  const off = [-1, 1].map((side) => drifted(cautious, `off ${side}`, (group) => side * mostOff(group)));
  const half = cautious.groups.some((group) => reachesHalf(group, at.exposureTime_s, mostOff(group)))
    ? [drifted(cautious, 'half', (group) => towardsHalf(group, at.exposureTime_s, mostOff(group)))]
    : [];
  return {
    gathered,
    seen,
    most_stops: Math.max(
      seen.worst.peakToPeak_stops,
      ...[...(cautious.key === gathered.key ? [] : [cautious]), ...off, ...half].map(swing),
    ),
    least_stops: hopeful.key === gathered.key ? seen.best.peakToPeak_stops : Math.min(seen.best.peakToPeak_stops, swingsUnder(hopeful, at).best.peakToPeak_stops), // prettier-ignore
  };
}

/** How far each group's rate may be off, as a share. */
function driftsOf(shoot: Shoot, lit: readonly LitLamp[], mains_Hz: number): (group: SetupGroup) => number {
  const ofMains = mains_Hz > 0 ? mainsDrift(shoot, mains_Hz) : 0;
  const isMeasured = lit.every(({ taken }) => taken.basis === 'measured');
  return ({ isMainsLocked }) => (isMainsLocked ? ofMains : isMeasured ? OWN_DRIFT.measured : OWN_DRIFT.written);
}

/** The drift that leaves an exposure half a period over. */
const halfDrift = ({ waveform }: SetupGroup, exposureTime_s: number): number => {
  const periods = exposureTime_s / waveform.period_s;
  return (Math.floor(periods) + 0.5) / periods - 1;
};

/** Whether a drift within bounds gets there: else one of the bounds is as bad as it gets. */
const reachesHalf = (group: SetupGroup, exposureTime_s: number, most: number): boolean => Math.abs(halfDrift(group, exposureTime_s)) < most; // prettier-ignore

/** The drift within bounds that leaves an exposure most nearly half a period over: the least of a null. */
function towardsHalf(group: SetupGroup, exposureTime_s: number, most: number): number {
  return Math.min(most, Math.max(-most, halfDrift(group, exposureTime_s)));
}

/** The lamps and what was seen of them, as plans tell it. */
export function shotFlickerOf({ lamps, shares, seen }: FlickerFound, at: FlickerAt | undefined): ShotFlicker {
  return {
    lamps: lamps.map((taken) => flickerLamp(taken, shares.get(taken.id) ?? 0, at)),
    ...(seen ? { seen, verdict: judgeFlicker(seen) } : {}),
  };
}

function flickerLamp(taken: LampTaken, shareFraction: number, at: FlickerAt | undefined): FlickerLamp {
  const { id, title, says, basis, figures, unknown, lamp } = taken;
  const assumed = figures.filter(({ why }) => why !== undefined).map(assumptionOf);
  const common = { id, title, shareFraction, says, basis, assumed };
  if (!lamp) return { ...common, ripple_Hz: 0, depthFraction: 0, unknown: unknown ?? 'nobody knows how it ripples' };
  const taking = at ? lampAt({ taken: { ...taken, lamp }, shareFraction }, 'lamp', at) : lamp;
  return { ...common, ...ripplingOf(waveformAt(taking, taken.inStepWith)) };
}

type Rippling = Pick<FlickerLamp, 'ripple_Hz' | 'depthFraction'>;

/** Many lamps of many shots ripple alike: each waveform is looked through once. */
const rippling = new WeakMap<Waveform, Rippling>();

function ripplingOf(waveform: Waveform): Rippling {
  let of = rippling.get(waveform);
  if (!of) {
    const { least, most } = rangeOf(exposureTable(waveform).samples);
    of = { ripple_Hz: most - least > 1e-9 ? 1 / waveform.period_s : 0, depthFraction: depthOf(waveform) };
    rippling.set(waveform, of);
  }
  return of;
}
