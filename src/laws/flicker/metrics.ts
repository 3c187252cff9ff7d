/**
 * Figures by which lamps are rated. They are made for people in a room; none of them says what a camera records.
 *
 *     percent flicker = (max − min)/(max + min)        flicker index = light above the mean / all light
 *     SVM = (Σ (Cₖ/T(f))^3.7)^(1/3.7)        T = 1/(1 + e^(−0.00518·(f − 306.6))) + 20·e^(−f/10), to 2 kHz
 *
 * Cₖ amplitude of harmonic k over the mean
 *
 * @source flux-modulation percent flicker and flicker index, as the vocabulary defines them
 * @source stroboscopic-measure SVM and its threshold
 * @source ieee-1789 the two levels of risk
 */
import { requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { stopsOfDepth } from './eye.ts';
import { extremesOf, harmonicAmplitudes, type Waveform } from './waveform.ts';

const LAST_Hz = 2000;
const POOLING = 3.7;

/** Depth of a waveform, (max − min)/(max + min). */
export function depthOf(waveform: Waveform): number {
  const { least, most } = extremesOf(waveform);
  return (most - least) / (most + least);
}

/** Light above the mean over all light. */
export function flickerIndexOf({ samples }: Waveform): number {
  let above = 0;
  for (let i = 0; i < samples.length; i += 1) above += Math.max(0, samples[i]! - 1);
  return above / samples.length;
}

/** Amplitude at which a sine's stroboscopic effect is just seen. Throws RangeError for a rate that is not positive. */
export function stroboscopicThreshold({ ripple_Hz }: { readonly ripple_Hz: number }): number {
  requirePositive({ ripple_Hz });
  return 1 / (1 + Math.exp(-0.00518 * (ripple_Hz - 306.6))) + 20 * Math.exp(-ripple_Hz / 10);
}

/** Stroboscopic visibility measure; 1 is just seen by people in a room. */
export function stroboscopicVisibility(waveform: Waveform): number {
  const most = Math.min(Math.floor(LAST_Hz * waveform.period_s * (1 + 1e-9)), Math.floor(waveform.samples.length / 2));
  if (most < 1) return 0;
  let sum = 0;
  harmonicAmplitudes(waveform, most).forEach((amplitude, i) => {
    sum += (amplitude / stroboscopicThreshold({ ripple_Hz: (i + 1) / waveform.period_s })) ** POOLING;
  });
  return sum ** (1 / POOLING);
}

/** The two levels of IEEE 1789 at a rate, 1 where it sets none. Throws RangeError for a rate that is not positive. */
export function ieee1789Levels({ ripple_Hz }: { readonly ripple_Hz: number }) {
  requirePositive({ ripple_Hz });
  const low = ripple_Hz < 90 ? 0.00025 * ripple_Hz : ripple_Hz <= 1250 ? 0.0008 * ripple_Hz : 1;
  const none = ripple_Hz < 90 ? 0.0001 * ripple_Hz : ripple_Hz <= 3000 ? ripple_Hz / 3000 : 1;
  return { lowRiskFraction: Math.min(1, low), noEffectFraction: Math.min(1, none) };
}

/** Depth and swing of a light between two values. Throws RangeError for none, or a least above the most. */
export function depthOfLight({
  mostLight_lx,
  leastLight_lx,
}: {
  readonly mostLight_lx: number;
  readonly leastLight_lx: number;
}) {
  requirePositive({ mostLight_lx });
  requireNotNegative({ leastLight_lx });
  if (leastLight_lx > mostLight_lx)
    throw new RangeError(`leastLight_lx must be at most ${mostLight_lx}, got ${leastLight_lx}`);
  return (mostLight_lx - leastLight_lx) / (mostLight_lx + leastLight_lx);
}

/** Flicker index of pulses. Throws RangeError outside a duty of 0 to 1. */
export function pulseFlickerIndex({
  dutyFraction,
  lowFraction = 0,
}: {
  readonly dutyFraction: number;
  readonly lowFraction?: number;
}): number {
  requirePositive({ dutyFraction });
  requireNotNegative({ lowFraction });
  if (dutyFraction > 1 || lowFraction > 1)
    throw new RangeError(`dutyFraction and lowFraction must be at most 1, got ${dutyFraction} and ${lowFraction}`);
  const mean = dutyFraction + (1 - dutyFraction) * lowFraction;
  return (dutyFraction * (1 - mean)) / mean;
}

/** Stops of a depth, as a law takes it. Throws RangeError outside 0 to below 1. */
export function depthInStops({ depthFraction }: { readonly depthFraction: number }): number {
  requireNotNegative({ depthFraction });
  if (depthFraction >= 1) throw new RangeError(`depthFraction must be below 1, got ${depthFraction}`);
  return stopsOfDepth(depthFraction);
}

/** The depth of a swing in stops. Throws RangeError below 0. */
export function depthOfStops({ swing_stops }: { readonly swing_stops: number }): number {
  requireNotNegative({ swing_stops });
  return Math.tanh((swing_stops * Math.LN2) / 2);
}

const PEOPLE =
  'For people in a room, not for footage: a camera’s frames can show what these pass, and miss what they fail.';
const COMMON = {
  cautions: ['flashing-light-and-photosensitive-people'],
  words: ['flicker', 'modulation', 'lamp', 'percent flicker', 'flicker index', 'photodiode', 'metric'],
};

export const percentFlicker = law(depthOfLight, {
  id: 'percent-flicker',
  title: 'Percent flicker',
  says: 'How deeply a light ripples, from its brightest and its dimmest.',
  equation: '(max − min) / (max + min)',
  takes: { mostLight_lx: { title: 'Brightest', note: 'any unit, both the same' }, leastLight_lx: 'Dimmest' },
  gives: { depthFraction: { title: 'Percent flicker', as: 'fraction' } },
  holds: `Noise in a reading makes it larger. ${PEOPLE}`,
  sources: ['flux-modulation'],
  ...COMMON,
  example: { mostLight_lx: 1400, leastLight_lx: 600 },
});

export const flickerIndex = law(pulseFlickerIndex, {
  id: 'flicker-index',
  title: 'Flicker index of pulses',
  says: 'What share of a pulsed lamp’s light lies above its mean.',
  equation: 'd · (1 − mean) / mean, mean = d + (1 − d) · lo',
  takes: {
    dutyFraction: { title: 'Duty', as: 'fraction' },
    lowFraction: { title: 'Light between pulses', as: 'fraction', default: 0 },
  },
  gives: { flickerIndexRatio: { title: 'Flicker index', as: 'ratio' } },
  holds: `Pulses with steep edges. ${PEOPLE}`,
  sources: ['flux-modulation'],
  ...COMMON,
  example: { dutyFraction: 0.3, lowFraction: 0.1 },
});

export const stroboscopicLimit = law(stroboscopicThreshold, {
  id: 'stroboscopic-threshold',
  title: 'Stroboscopic effect: the least that is seen',
  says: 'The amplitude at which people in a room just see moving things break up.',
  equation: '1 / (1 + e^(−0.00518 · (f − 306.6))) + 20 · e^(−f/10)',
  takes: { ripple_Hz: 'Ripple' },
  gives: { amplitudeRatio: { title: 'Amplitude over the mean', as: 'ratio' } },
  holds: `A sine from 80 Hz to 2 kHz, in an office. ${PEOPLE}`,
  sources: ['stroboscopic-measure'],
  ...COMMON,
  example: { ripple_Hz: 120 },
});

export const ieeeLevels = law(ieee1789Levels, {
  id: 'ieee-1789-levels',
  title: 'IEEE 1789: levels of percent flicker',
  says: 'The depths of ripple that IEEE 1789-2015 names as of low risk, and as without effect.',
  equation: 'low risk 0.025 % · f below 90 Hz, 0.08 % · f to 1250 Hz; no effect 0.01 % · f, 0.0333 % · f to 3000 Hz',
  takes: { ripple_Hz: 'Ripple' },
  gives: {
    lowRiskFraction: { title: 'Low risk, at most', as: 'fraction' },
    noEffectFraction: { title: 'No observable effect, at most', as: 'fraction' },
  },
  holds: `From memory of the standard; 1 where it sets no limit. Within a level says that and no more. ${PEOPLE}`,
  sources: ['ieee-1789'],
  ...COMMON,
  example: { ripple_Hz: 120 },
});

export const swingOfDepth = law(depthInStops, {
  id: 'flicker-in-stops',
  title: 'Depth of a ripple in stops',
  says: 'How many stops lie between the dimmest and the brightest of a ripple.',
  equation: 'log₂((1 + m) / (1 − m)); about 2.885 · m',
  takes: { depthFraction: { title: 'Depth, (max − min)/(max + min)', as: 'fraction' } },
  gives: { swing_stops: 'From dimmest to brightest' },
  holds: 'Linear light. Percent flicker, peak to peak over the mean and stops are three different measures.',
  sources: ['f-number-article'],
  ...COMMON,
  example: { depthFraction: 0.04 },
});

export const depthOfSwing = law(depthOfStops, {
  id: 'flicker-depth-of-stops',
  title: 'Depth of a swing in stops',
  says: 'How deep a ripple is whose dimmest and brightest lie so many stops apart.',
  equation: '(2^s − 1) / (2^s + 1)',
  takes: { swing_stops: 'From dimmest to brightest' },
  gives: { depthFraction: { title: 'Depth, (max − min)/(max + min)', as: 'fraction' } },
  holds: 'Linear light.',
  sources: ['f-number-article'],
  ...COMMON,
  example: { swing_stops: 0.03 },
});
