/**
 * Diodes follow their current at once: what they flicker is what their driver does.
 *
 *     ripple        1 + m·cos 2πx, or a + (1 − a)·|sin πx|, at twice the mains
 *     pulses        1 for x < d, else lo        Cₖ = 2·(1 − lo)·|sin πkd| / (πk·mean),  mean = d + (1 − d)·lo
 *     interleaved   n channels of such pulses, each 1/n of a period later: only harmonics n, 2n, 3n … are left
 *
 * x phase, share of a period      d duty      lo light between pulses      Cₖ amplitude of harmonic k over the mean
 *
 * The colours of a lamp that mixes them are each dimmed with a duty of their own, so that its colour flickers too.
 *
 * @source pwm-series the amplitudes of a pulse's harmonics
 * @source flicker-practice shapes and depths
 */
import { requireCount, requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';
import { sinc, sineWaveform, waveformOfLight, waveformOfSum, type Waveform } from './waveform.ts';

/** A diode whose driver lets the mains through. Throws RangeError for a depth beyond 0 to 1. */
export function ledRippleWaveform(lamp: {
  readonly mains_Hz: number;
  readonly depthFraction: number;
  readonly shape: 'sine' | 'rectified';
}): Waveform {
  const ripple_Hz = 2 * lamp.mains_Hz;
  if (lamp.shape === 'sine') return sineWaveform({ ripple_Hz, depthFraction: lamp.depthFraction });
  requirePositive({ ripple_Hz });
  requireWithin(0, 1, { depthFraction: lamp.depthFraction });
  // The floor below which a rectified sine has this depth: m = (1 − a)/(1 + a).
  const floor = (1 - lamp.depthFraction) / (1 + lamp.depthFraction);
  return waveformOfLight({
    period_s: 1 / ripple_Hz,
    lightAt: (x) => floor + (1 - floor) * Math.abs(Math.sin(Math.PI * x)),
  });
}

export interface Pulses {
  readonly pulse_Hz: number;
  readonly dutyFraction: number;
  /** Light between pulses over the light of a pulse. */
  readonly lowFraction?: number;
}

function requirePulses({ pulse_Hz, dutyFraction, lowFraction = 0 }: Pulses): Required<Pulses> {
  requirePositive({ pulse_Hz, dutyFraction });
  requireWithin(0, 1, { dutyFraction, lowFraction });
  return { pulse_Hz, dutyFraction, lowFraction };
}

/** Light of a pulse train summed from 0 to x periods, any number of them. */
function pulsesTo(x: number, { dutyFraction, lowFraction }: Required<Pulses>): number {
  const whole = Math.floor(x);
  const on = whole * dutyFraction + Math.min(x - whole, dutyFraction);
  return on + (x - on) * lowFraction;
}

/** A diode dimmed by pulses, lit at the start of the period. Throws RangeError for a duty of none, or shares beyond 1. */
export function pulseWaveform(lamp: Pulses): Waveform {
  const pulses = requirePulses(lamp);
  return waveformOfSum({ period_s: 1 / pulses.pulse_Hz, sumTo: (x) => pulsesTo(x, pulses) });
}

/** Equal channels of pulses, one after the other. Throws RangeError as `pulseWaveform`, and for no channels or over 64. */
export function interleavedWaveform(lamp: Pulses & { readonly channelCount: number }): Waveform {
  const pulses = requirePulses(lamp);
  const { channelCount } = lamp;
  requireCount({ channelCount }, 1);
  requireWithin(1, 64, { channelCount });
  return waveformOfSum({
    period_s: 1 / pulses.pulse_Hz,
    sumTo: (x) => {
      let sum = 0;
      for (let channel = 0; channel < channelCount; channel += 1)
        sum += pulsesTo(x + channel / channelCount, pulses) - pulsesTo(channel / channelCount, pulses);
      return sum / channelCount;
    },
  });
}

/** Amplitude of one harmonic of pulses as an exposure records it, over the mean. Throws RangeError outside its domain. */
export function pulseHarmonicFraction(
  given: Pulses & { readonly exposureTime_s: number; readonly harmonicCount?: number },
): number {
  const { pulse_Hz, dutyFraction, lowFraction } = requirePulses(given);
  const { exposureTime_s, harmonicCount = 1 } = given;
  requirePositive({ exposureTime_s });
  requireCount({ harmonicCount }, 1);
  const mean = dutyFraction + (1 - dutyFraction) * lowFraction;
  const lamp = (2 * (1 - lowFraction) * Math.abs(Math.sin(Math.PI * harmonicCount * dutyFraction))) / mean;
  return (lamp / (Math.PI * harmonicCount)) * Math.abs(sinc(harmonicCount * pulse_Hz * exposureTime_s));
}

export const pulseHarmonic = law(pulseHarmonicFraction, {
  id: 'pulse-ripple',
  title: 'Ripple of a pulsed diode in an exposure',
  says: 'How much of a pulsed lamp’s ripple is left in the frames, one harmonic at a time.',
  equation: 'C = 2 · (1 − lo) · |sin πkd| / (πk · mean) · |sinc(k · f · t)|, mean = d + (1 − d) · lo',
  takes: {
    pulse_Hz: { title: 'Pulses', note: 'often 200 Hz to 25 kHz' },
    dutyFraction: { title: 'Duty', as: 'fraction', note: 'share of the time that it is lit' },
    lowFraction: { title: 'Light between pulses', as: 'fraction', default: 0 },
    exposureTime_s: 'Exposure time',
    harmonicCount: { title: 'Harmonic', as: 'count', default: 1 },
  },
  gives: { amplitudeFraction: { title: 'Amplitude over the mean', as: 'ratio' } },
  holds: 'Pulses with steep edges. Ask the maker for their rate, or measure it; many lamps change it with the dimming.',
  sources: ['pwm-series'],
  cautions: ['flashing-light-and-photosensitive-people'],
  words: ['PWM', 'LED', 'dimmer', 'panel', 'pulse width', 'flicker', 'duty cycle', 'harmonic'],
  example: { pulse_Hz: 2000, dutyFraction: 0.3, exposureTime_s: 0.0004 },
});
