/**
 * Whether red and blue pulse otherwise than green where the light of a clip was found to pulse: lamps whose colours have
 * lags or duties of their own do. Only samples of every frame can tell; fewer would fold the rate.
 *
 *     ln(R/G) = trend + A·cos(2πf·t + φ)        told from 4 deviations of A on
 */
import { bulkSpreadOf } from '../../base/median.ts';
import { basisOf, faded, waveAt, withoutTrend, withoutWave, type Basis } from '../lines/basis.ts';
import { amplitudeOf, precisionOf } from '../lines/fit.ts';
import type { ColourSeries } from './series.ts';

/** One wave of the light, colour by colour, on the neutral parts. */
export interface ColourPulse {
  readonly beat_Hz: number;
  /** (Brightest − dimmest) over their sum, of green; of red and of blue over green. */
  readonly greenDepthFraction: number;
  readonly redDepthFraction: number;
  readonly blueDepthFraction: number;
  /** Standard deviation of the larger of the two. */
  readonly deviationFraction: number;
}

export interface PulseGiven {
  readonly series: ColourSeries;
  readonly places: Float32Array;
  readonly beats_Hz: readonly number[];
  readonly frameRate_fps: number;
  /** Of the clip's frames: 0 for those that are missing or repeated. */
  readonly frameWeights: Float64Array;
}

/** Share of the clip's frames that must have a sample. */
const EVERY_FRAME = 0.95;
const FEWEST = 24;
const CLEAR = 4;
const LEAST_DEPTH = 0.0005;
const DEGREE = 3;

interface Wave {
  readonly depth: number;
  readonly deviation: number;
}

function waveIn(basis: Basis, of: Float64Array, rate_Hz: number): Wave {
  const rest = withoutTrend(basis, of);
  const wave = waveAt(basis, rest, rate_Hz);
  const left = withoutWave(basis, rest, wave).filter((_, i) => basis.weights[i]! > 0);
  const amplitude = Math.max(amplitudeOf(wave), 1e-12);
  const { frameRate_fps, weights } = basis;
  const precision = precisionOf({ frameRate_fps, weights, amplitude, spread: Math.max(bulkSpreadOf(left), 1e-12) });
  return { depth: Math.tanh(amplitude), deviation: precision.amplitude };
}

/** The waves in which colours part; none where the samples cannot tell. */
export function pulsesOf({ series, places, beats_Hz, frameRate_fps, frameWeights }: PulseGiven): readonly ColourPulse[] {
  const weights = new Float64Array(frameWeights.length);
  const spread = (of: Float64Array) => {
    const all = new Float64Array(frameWeights.length);
    places.forEach((place, i) => {
      if (weights[place]! > 0) all[place] = Math.LN2 * of[i]!;
    });
    return all;
  };
  places.forEach((place, i) => (weights[place] = series.weight[i]! * (frameWeights[place] ?? 0)));
  const counted = (of: Float64Array) => of.reduce((sum, weight) => sum + (weight > 0 ? 1 : 0), 0);
  if (counted(weights) < Math.max(FEWEST, EVERY_FRAME * counted(frameWeights))) return [];
  const basis = basisOf({ frameRate_fps, weights: faded(weights), degree: DEGREE });
  const [red, green, blue] = [spread(series.red_stops), spread(series.green_stops), spread(series.blue_stops)];
  return beats_Hz.flatMap((beat_Hz): readonly ColourPulse[] => {
    const [ofRed, ofGreen, ofBlue] = [waveIn(basis, red, beat_Hz), waveIn(basis, green, beat_Hz), waveIn(basis, blue, beat_Hz)]; // prettier-ignore
    const more = ofRed.depth > ofBlue.depth ? ofRed : ofBlue;
    if (more.depth < LEAST_DEPTH || more.depth < CLEAR * more.deviation) return [];
    return [{ beat_Hz, greenDepthFraction: ofGreen.depth, redDepthFraction: ofRed.depth, blueDepthFraction: ofBlue.depth, deviationFraction: more.deviation }]; // prettier-ignore
  });
} // prettier-ignore
