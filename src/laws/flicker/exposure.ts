/**
 * What each frame receives of a light that changes: its mean over the exposure, exactly, whatever the waveform.
 *
 *     E(t) = [F(f·(t + T)) − F(f·t)] / (f·T)        F(x + n) = F(x) + n        each harmonic k · |sinc(k·f·T)|
 *
 * F light summed from the start of a period to phase x, from a table      f rate of the waveform, Hz
 * t start, s      T exposure time, s      sinc x = sin πx / πx
 *
 * @source exposure-mean the mean of a cosine over an exposure
 */
import { requireCount, requireFinite, requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { sinc, type Waveform } from './waveform.ts';

/** A waveform with its light summed cell by cell, so that any exposure takes two look-ups. */
export interface ExposureTable {
  readonly period_s: number;
  readonly samples: Float64Array;
  /** From 0 at the start of the period to 1 at its end. */
  readonly sums: Float64Array;
}

/** Kept for as long as the waveform, whatever its period. */
const summed = new WeakMap<Float64Array, Float64Array>();

/** The sums of a waveform, which must not be changed afterwards. */
export function exposureTable({ period_s, samples }: Waveform): ExposureTable {
  let sums = summed.get(samples);
  if (!sums) {
    sums = new Float64Array(samples.length + 1);
    for (let i = 0; i < samples.length; i += 1) sums[i + 1] = sums[i]! + samples[i]! / samples.length;
    summed.set(samples, sums);
  }
  return { period_s, samples, sums };
}

/** Light summed to a phase of any number of periods. */
function sumTo({ sums }: ExposureTable, phase: number): number {
  const whole = Math.floor(phase);
  const cells = sums.length - 1;
  const at = (phase - whole) * cells;
  // A phase just below a whole one may round up to the cell past the last.
  const cell = Math.min(Math.floor(at), cells - 1);
  return whole * sums[cells]! + sums[cell]! + (sums[cell + 1]! - sums[cell]!) * (at - cell);
}

export interface Exposing {
  readonly start_s: number;
  readonly exposureTime_s: number;
}

/** Mean light from a start over an exposure, guards left to the caller. */
function meanFrom(table: ExposureTable, start_s: number, exposureTime_s: number): number {
  const begun = start_s / table.period_s;
  // The whole periods before the start change nothing but the rounding.
  const from = begun - Math.floor(begun);
  const length = exposureTime_s / table.period_s;
  if (length < 1e-12)
    return table.samples[Math.min(Math.floor(from * table.samples.length), table.samples.length - 1)]!;
  return (sumTo(table, from + length) - sumTo(table, from)) / length;
}

/** Mean light over an exposure, over the lamp's own mean; of none, the light itself. Throws RangeError for one below 0. */
export function meanLight(table: ExposureTable, { start_s, exposureTime_s }: Exposing): number {
  requireFinite({ start_s });
  requireNotNegative({ exposureTime_s });
  return meanFrom(table, start_s, exposureTime_s);
}

/** A lamp's part in the light at one point of the set. */
export interface LightPart {
  readonly table: ExposureTable;
  /** Share of the light there; shares are made to add up to 1. */
  readonly shareRatio: number;
  /** How much later than time 0 its period begins. */
  readonly delay_s?: number;
}

/** Most frames or rows worked out in one go. */
const MOST_FRAMES = 2_000_000;

function lights(
  parts: readonly LightPart[],
  given: Exposing & { readonly count: number; readonly step_s: number },
): Float64Array {
  const { start_s, exposureTime_s, count, step_s } = given;
  requireFinite({ start_s });
  requireNotNegative({ exposureTime_s });
  if (count > MOST_FRAMES) throw new RangeError(`count must be at most ${MOST_FRAMES}, got ${count}`);
  let whole = 0;
  for (const { shareRatio } of parts) {
    requireNotNegative({ shareRatio });
    whole += shareRatio;
  }
  requirePositive({ sumOfShares: whole });
  const light = new Float64Array(count);
  for (const { table, shareRatio, delay_s = 0 } of parts) {
    requireFinite({ delay_s });
    for (let i = 0; i < count; i += 1)
      light[i] = light[i]! + (shareRatio / whole) * meanFrom(table, start_s + i * step_s - delay_s, exposureTime_s);
  }
  return light;
}

/** Light of each frame of a clip, 1 the mean of the light. Throws RangeError for no light, no rate, or over 2,000,000. */
export function frameLights(
  parts: readonly LightPart[],
  given: Exposing & { readonly frameRate_fps: number; readonly frameCount: number },
): Float64Array {
  const { frameRate_fps, frameCount, ...exposing } = given;
  requirePositive({ frameRate_fps });
  requireCount({ frameCount });
  return lights(parts, { ...exposing, count: frameCount, step_s: 1 / frameRate_fps });
}

/** Light of each row of one frame, where every row starts a little after the row above. Throws RangeError as `frameLights`. */
export function rowLights(
  parts: readonly LightPart[],
  given: Exposing & { readonly rowTime_s: number; readonly rowCount: number },
): Float64Array {
  const { rowTime_s, rowCount, ...exposing } = given;
  requireNotNegative({ rowTime_s });
  requireCount({ rowCount });
  return lights(parts, { ...exposing, count: rowCount, step_s: rowTime_s });
}

/** How much later the light of each of three mains phases begins. Throws RangeError for mains that are not positive. */
export function threePhaseDelays_s({ mains_Hz }: { readonly mains_Hz: number }): readonly [number, number, number] {
  requirePositive({ mains_Hz });
  return [0, 1 / (3 * mains_Hz), 2 / (3 * mains_Hz)];
}

/** Share of a ripple that an exposure leaves. Throws RangeError outside positive inputs. */
export function exposedShare({
  ripple_Hz,
  exposureTime_s,
}: {
  readonly ripple_Hz: number;
  readonly exposureTime_s: number;
}): number {
  requirePositive({ ripple_Hz, exposureTime_s });
  return Math.abs(sinc(ripple_Hz * exposureTime_s));
}

/** Depth that three lamps, one on each mains phase, leave together. Throws RangeError for shares below 0 or all of none. */
export function threePhaseDepthFraction(given: {
  readonly depthFraction: number;
  readonly firstShareRatio?: number;
  readonly secondShareRatio?: number;
  readonly thirdShareRatio?: number;
}): number {
  const { depthFraction, firstShareRatio = 1, secondShareRatio = 1, thirdShareRatio = 1 } = given;
  requireNotNegative({ depthFraction, firstShareRatio, secondShareRatio, thirdShareRatio });
  const whole = firstShareRatio + secondShareRatio + thirdShareRatio;
  requirePositive({ sumOfShares: whole });
  // The ripple turns twice as fast as the mains, so phases a third apart lie two thirds apart in it: a third again.
  const real = firstShareRatio - (secondShareRatio + thirdShareRatio) / 2;
  const imaginary = (Math.sqrt(3) / 2) * (secondShareRatio - thirdShareRatio);
  return (depthFraction * Math.hypot(real, imaginary)) / whole;
}

export const exposedRipple = law(exposedShare, {
  id: 'exposed-ripple',
  title: 'Ripple that an exposure leaves',
  says: 'How much of a lamp’s ripple is left in the frames: all of it in a short exposure, none over a whole period.',
  equation: '|sin(π · f · t) / (π · f · t)|',
  takes: {
    ripple_Hz: { title: 'Ripple', note: 'twice the mains, for most lamps on them' },
    exposureTime_s: 'Exposure time',
  },
  gives: { shareFraction: { title: 'Share left', as: 'fraction' } },
  holds: 'One harmonic. A waveform of another shape has more of them, at two, three and more times the rate.',
  sources: ['exposure-mean'],
  cautions: ['flashing-light-and-photosensitive-people'],
  words: ['flicker', 'shutter', 'sinc', 'averaging', 'mains', 'hum'],
  example: { ripple_Hz: 100, exposureTime_s: 0.0005 },
});

const SHARE = (title: string) => ({ title, as: 'ratio', default: 1, note: 'of the light at the subject' }) as const;

export const threePhaseRipple = law(threePhaseDepthFraction, {
  id: 'three-phase-ripple',
  title: 'Ripple of lamps on three phases',
  says: 'How much ripple is left when lamps on three mains phases light one point together.',
  equation: 'm′ = m · |Σ wⱼ · e^(i·4πj/3)| / Σ wⱼ',
  takes: {
    depthFraction: { title: 'Depth of each lamp', as: 'fraction' },
    firstShareRatio: SHARE('Light from the first phase'),
    secondShareRatio: SHARE('Light from the second phase'),
    thirdShareRatio: SHARE('Light from the third phase'),
  },
  gives: { depthFraction: { title: 'Depth left', as: 'fraction' } },
  holds:
    'At one point lit by all three, and for the ripple itself. Shadows, highlights that mirror one lamp, and colours keep theirs. Three-phase supplies, the neutral under harmonics and the voltage between neighbouring stands are for a licensed electrician.',
  sources: ['three-phase-sum'],
  cautions: ['electricity'],
  words: ['three-phase', 'phases', 'flicker', 'distro', 'mains', 'R S T', 'L1 L2 L3'],
  example: { depthFraction: 0.4, firstShareRatio: 2, secondShareRatio: 1, thirdShareRatio: 1 },
});
