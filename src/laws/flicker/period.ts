/**
 * The period of a light that repeats, from its record: coarsely where the record is most like itself a while later, then
 * by fitting the ripple and its harmonics together to every sample at its own time.
 *
 * @source harmonic-fit a sum of harmonics fitted by least squares, and how well its rate can be known
 */
import { fourier, powerOfTwoFrom } from '../../base/fourier.ts';
import { highest } from '../../base/highest.ts';

export interface Sampled {
  readonly times_s: Float64Array;
  readonly values: Float64Array;
}

/** How like itself an even record is so many samples later, 1 at none, each lag by what overlaps. */
function likeness(values: Float64Array): Float64Array {
  const size = powerOfTwoFrom(2 * values.length);
  const [real, imaginary] = [new Float64Array(size), new Float64Array(size)];
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  for (let i = 0; i < values.length; i += 1) real[i] = values[i]! - mean;
  fourier(real, imaginary);
  for (let i = 0; i < size; i += 1) {
    real[i] = real[i]! ** 2 + imaginary[i]! ** 2;
    imaginary[i] = 0;
  }
  fourier(real, imaginary);
  const lags = new Float64Array(Math.floor(values.length / 2));
  const none = real[0]! / values.length;
  for (let lag = 0; lag < lags.length; lag += 1) lags[lag] = none > 0 ? real[lag]! / (values.length - lag) / none : 0;
  return lags;
}

/** Least likeness of a record to itself a period later that makes it a repeat. */
const LEAST_LIKENESS = 0.3;

/** The first lag at which a record is nearly as like itself as at any; undefined where it never is. */
function coarseLag(values: Float64Array): number | undefined {
  const lags = likeness(values);
  let from = 1;
  while (from < lags.length && lags[from]! > 0) from += 1;
  let best = 0;
  for (let lag = from; lag < lags.length; lag += 1) best = Math.max(best, lags[lag]!);
  if (best < LEAST_LIKENESS) return undefined;
  for (let lag = from; lag < lags.length - 1; lag += 1)
    if (lags[lag]! >= 0.9 * best && lags[lag]! >= lags[lag - 1]! && lags[lag]! >= lags[lag + 1]!) {
      const bend = lags[lag - 1]! - 2 * lags[lag]! + lags[lag + 1]!;
      return lag + (bend < 0 ? (0.5 * (lags[lag - 1]! - lags[lag + 1]!)) / bend : 0);
    }
  return undefined;
}

/** Power of a rate and its harmonics in a record, tapered so that where it is cut does not matter. */
function harmonicPower({ times_s, values }: Sampled, rate_Hz: number, harmonicCount: number): number {
  const length_s = times_s.at(-1)!;
  const [cosines, sines] = [new Float64Array(harmonicCount), new Float64Array(harmonicCount)];
  for (let i = 0; i < values.length; i += 1) {
    const taper = 1 - Math.cos((2 * Math.PI * times_s[i]!) / length_s);
    const turn = 2 * Math.PI * rate_Hz * times_s[i]!;
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    let [real, imaginary] = [values[i]! * taper * c, values[i]! * taper * s];
    for (let k = 0; k < harmonicCount; k += 1) {
      cosines[k] = cosines[k]! + real;
      sines[k] = sines[k]! + imaginary;
      [real, imaginary] = [real * c - imaginary * s, real * s + imaginary * c];
    }
  }
  return cosines.reduce((sum, c, k) => sum + c ** 2 + sines[k]! ** 2, 0);
}

/** An even record at the mean step of an uneven one, on straight lines between its samples. */
function evenly({ times_s, values }: Sampled): Float64Array {
  const step_s = times_s.at(-1)! / (times_s.length - 1);
  let at = 0;
  return Float64Array.from(values, (_, i) => {
    const time_s = i * step_s;
    while (at < times_s.length - 2 && times_s[at + 1]! < time_s) at += 1;
    const part = Math.min(1, Math.max(0, (time_s - times_s[at]!) / (times_s[at + 1]! - times_s[at]!)));
    return values[at]! + (values[at + 1]! - values[at]!) * part;
  });
}

const HARMONICS = 5;
/** Share of the reach to which a rate is looked for. */
const ENOUGH = 1e-5;

/** The rate at which a record repeats, or undefined where nothing in it does. Times begin at 0. */
export function repeatRate_Hz(record: Sampled): number | undefined {
  const { times_s, values } = record;
  const lag = coarseLag(evenly(record));
  if (lag === undefined) return undefined;
  const coarse_Hz = (times_s.length - 1) / (times_s.at(-1)! * lag);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const about = { times_s, values: values.map((value) => value - mean) };
  const harmonicCount = Math.max(1, Math.min(HARMONICS, Math.floor(lag / 2) - 1));
  const climb = (count: number, sampleCount: number, from_Hz: number, reach: number): number => {
    const part = { times_s: about.times_s.subarray(0, sampleCount), values: about.values.subarray(0, sampleCount) };
    const reach_Hz = reach / part.times_s.at(-1)!;
    const lookAt = (rate_Hz: number) => ({ x: rate_Hz, height: harmonicPower(part, rate_Hz, count) });
    const stretch = { low: from_Hz - reach_Hz, high: from_Hz + reach_Hz };
    return highest(lookAt, { ...stretch, first: from_Hz, enough: ENOUGH * reach_Hz }).x;
  };
  // A longer stretch has a narrower hill: each is climbed from where the shorter one's top was.
  let rate_Hz = coarse_Hz;
  for (let count = Math.ceil(8 * lag); ; count *= 4) {
    const sampleCount = Math.min(count, values.length);
    rate_Hz = climb(Math.min(2, harmonicCount), sampleCount, rate_Hz, 0.5);
    if (sampleCount === values.length) break;
  }
  return climb(harmonicCount, values.length, rate_Hz, 0.1);
}
