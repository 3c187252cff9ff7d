/**
 * How deep a wave of each rate is in the mean light of a clip, for eyes: lines stand up from it, action lies low and slow.
 *
 *     ln light = trend + A·cos(2πf·t + φ) + rest        depth = tanh A        A² = 2·power / Σw
 *
 * power what the wave takes off the weighted squares of the rest        w weights of the frames, fading to both ends; 0 for
 * a frame that is missing
 *
 * The wave is fitted together with the trend at every rate. Taken from its power, the depth stays within bounds at both
 * ends of the spectrum too, where cosine and sine can no longer be told apart.
 *
 * @source harmonic-fit
 * @source gap-spectrum
 */
import { withoutTrend } from '../lines/basis.ts';
import { gridOfClip, logLight } from './tiles.ts';

export interface SpectrumGiven {
  /** Mean light of each frame. */
  readonly light: Float64Array;
  /** Of each frame: 0 where it is missing or repeated. */
  readonly frameWeights: Float64Array;
  readonly frameRate_fps: number;
}

export interface Spectrum {
  readonly step_Hz: number;
  /** Of a wave of each rate from 0 to half the frame rate, both included: (brightest − dimmest) over their sum. */
  readonly depthFraction: Float64Array;
  /** Slower than this the trend takes up what there is. */
  readonly slowest_Hz: number;
}

/** Fewest frames that count for a spectrum to say anything. */
const FEWEST_FRAMES = 24;

/** The spectrum of a clip; undefined where it is too short or too dark. Throws RangeError for series of different lengths. */
export function spectrumOf({ light, frameWeights, frameRate_fps }: SpectrumGiven): Spectrum | undefined {
  if (light.length !== frameWeights.length) throw new RangeError(`light must have ${frameWeights.length} frames as its weights have, got ${light.length}`); // prettier-ignore
  if (frameWeights.reduce((sum, weight) => sum + (weight > 0 ? 1 : 0), 0) < FEWEST_FRAMES) return undefined;
  const series = logLight(light, frameWeights);
  if (!series) return undefined;
  const { basis, step_Hz, pointsPerRate, powerOf } = gridOfClip({ frameRate_fps, frameWeights });
  const depthFraction = powerOf(withoutTrend(basis, series)).map((power) => Math.tanh(Math.sqrt((2 * power) / basis.weight))); // prettier-ignore
  return { step_Hz, depthFraction, slowest_Hz: (basis.polynomials.length / 2) * pointsPerRate * step_Hz };
}
