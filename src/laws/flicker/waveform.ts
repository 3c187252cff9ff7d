/**
 * The light of a lamp over one period, as data that everything here works on: even cells from the period's start, each
 * holding the mean light within it, the mean of all being 1.
 *
 * Cells hold means rather than points, so that an exposure summed over whole cells is exact, edges and all.
 *
 * @source flicker-practice light is linear here, and 1 is a lamp's own mean
 */
import { requireCount, requirePositive, requireWithin } from '../../base/domain.ts';

export interface Waveform {
  readonly period_s: number;
  /** Light relative to its own mean, one value a cell. */
  readonly samples: Float64Array;
}

/** Cells of a waveform that a formula gives: an edge of a pulse lies within a hundredth of a percent of the period. */
export const CELLS = 8192;
/** A waveform read from a meter may have fewer cells than this, but not more. */
const MOST_CELLS = 1 << 20;

/**
 * A waveform from light in even steps over one period, scaled to a mean of 1. Throws RangeError for fewer than 8 values,
 * light below 0, or none at all.
 */
export function waveformOfSamples({ period_s, samples }: Waveform): Waveform {
  requirePositive({ period_s });
  requireWithin(8, MOST_CELLS, { sampleCount: samples.length });
  let sum = 0;
  for (let i = 0; i < samples.length; i += 1) {
    const light = samples[i]!;
    if (!(light >= 0 && light < Infinity)) throw new RangeError(`light must be zero or above and finite, got ${light}`);
    sum += light;
  }
  const mean = sum / samples.length;
  requirePositive({ mean });
  return { period_s, samples: samples.map((light) => light / mean) };
}

/**
 * A waveform from the light summed from the start of the period up to a phase, both as shares of a period. Throws
 * RangeError where the light falls below 0.
 */
export function waveformOfSum({
  period_s,
  sumTo,
}: {
  readonly period_s: number;
  readonly sumTo: (phaseFraction: number) => number;
}): Waveform {
  const samples = new Float64Array(CELLS);
  let before = sumTo(0);
  for (let i = 0; i < CELLS; i += 1) {
    const after = sumTo((i + 1) / CELLS);
    // Rounding may leave a dark cell a hair below zero.
    const light = (after - before) * CELLS;
    samples[i] = light < 0 && light > -1e-9 ? 0 : light;
    before = after;
  }
  return waveformOfSamples({ period_s, samples });
}

const GAUSS_OFFSET = Math.sqrt(3 / 5) / 2;

/** A waveform from its light at each phase, a share of a period. Throws RangeError where the light falls below 0. */
export function waveformOfLight({
  period_s,
  lightAt,
}: {
  readonly period_s: number;
  readonly lightAt: (phaseFraction: number) => number;
}): Waveform {
  const samples = new Float64Array(CELLS);
  for (let i = 0; i < CELLS; i += 1) {
    const middle = (i + 0.5) / CELLS;
    const offset = GAUSS_OFFSET / CELLS;
    samples[i] = (5 * lightAt(middle - offset) + 8 * lightAt(middle) + 5 * lightAt(middle + offset)) / 18;
  }
  return waveformOfSamples({ period_s, samples });
}

/** Light that does not change. */
export function steadyWaveform({ period_s = 0.01 }: { readonly period_s?: number } = {}): Waveform {
  return waveformOfSamples({ period_s, samples: new Float64Array(8).fill(1) });
}

/** A cosine about its mean, brightest at the start of the period. Throws RangeError for a depth beyond 0 to 1. */
export function sineWaveform({
  ripple_Hz,
  depthFraction,
}: {
  readonly ripple_Hz: number;
  readonly depthFraction: number;
}): Waveform {
  requirePositive({ ripple_Hz });
  requireWithin(0, 1, { depthFraction });
  return waveformOfSum({
    period_s: 1 / ripple_Hz,
    sumTo: (x) => x + (depthFraction * Math.sin(2 * Math.PI * x)) / (2 * Math.PI),
  });
}

/** The same lamp on mains this share faster than it should be: 0.002 for 50.1 Hz. Throws RangeError at or below −1. */
export function waveformAtDrift({
  waveform,
  driftRatio,
}: {
  readonly waveform: Waveform;
  readonly driftRatio: number;
}) {
  requirePositive({ speed: 1 + driftRatio });
  return { period_s: waveform.period_s / (1 + driftRatio), samples: waveform.samples };
}

/** The dimmest and the brightest light of a waveform. */
export function extremesOf({ samples }: Pick<Waveform, 'samples'>): { readonly least: number; readonly most: number } {
  let least = Infinity;
  let most = 0;
  for (let i = 0; i < samples.length; i += 1) {
    least = Math.min(least, samples[i]!);
    most = Math.max(most, samples[i]!);
  }
  return { least, most };
}

/**
 * Amplitudes of the first harmonics, relative to the mean: the first is the ripple itself. Throws RangeError for fewer
 * than one, or more than half the cells.
 */
export function harmonicAmplitudes({ samples }: Pick<Waveform, 'samples'>, count: number): Float64Array {
  requireCount({ count }, 1);
  requireWithin(1, samples.length / 2, { count });
  const amplitudes = new Float64Array(count);
  for (let order = 1; order <= count; order += 1) {
    const turn = (2 * Math.PI * order) / samples.length;
    const [stepCos, stepSin] = [Math.cos(turn), Math.sin(turn)];
    let [cos, sin, real, imaginary] = [1, 0, 0, 0];
    for (let i = 0; i < samples.length; i += 1) {
      real += samples[i]! * cos;
      imaginary += samples[i]! * sin;
      const next = cos * stepCos - sin * stepSin;
      sin = sin * stepCos + cos * stepSin;
      cos = next;
    }
    // A cell's mean lowers each harmonic a little, as an exposure does.
    amplitudes[order - 1] = (2 * Math.hypot(real, imaginary)) / samples.length / sinc(order / samples.length);
  }
  return amplitudes;
}

/** sin πx / πx. */
export function sinc(x: number): number {
  return x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
}
