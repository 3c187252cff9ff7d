/** What a period of light comes to in figures: those that matter to footage, and those made for people in a room. */
import { stopsOfDepth } from '../../../laws/flicker/eye.ts';
import { depthOf, flickerIndexOf } from '../../../laws/flicker/metrics.ts';
import { harmonicAmplitudes, type Waveform } from '../../../laws/flicker/waveform.ts';

export interface LightFigures {
  /** Of its strongest harmonic; absent for light that does not change. */
  readonly ripple_Hz?: number;
  /** (Brightest − dimmest) over their sum. */
  readonly depthFraction: number;
  /** Brightest over dimmest; infinite where it goes dark. */
  readonly swing_stops: number;
  readonly flickerIndexRatio: number;
}

/** Harmonics looked at: beyond these none is the strongest. */
const HARMONICS = 32;
const LEAST_AMPLITUDE = 1e-6;

export function lightFigures(waveform: Waveform): LightFigures {
  const amplitudes = harmonicAmplitudes(waveform, Math.min(HARMONICS, Math.floor(waveform.samples.length / 2)));
  const strongest = Math.max(...amplitudes);
  const depthFraction = depthOf(waveform);
  return {
    ...(strongest > LEAST_AMPLITUDE ? { ripple_Hz: (amplitudes.indexOf(strongest) + 1) / waveform.period_s } : {}),
    depthFraction,
    swing_stops: depthFraction < 1 ? stopsOfDepth(depthFraction) : Infinity,
    flickerIndexRatio: flickerIndexOf(waveform),
  };
}
