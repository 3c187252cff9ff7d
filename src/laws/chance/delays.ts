/**
 * Delays that vary, written as the time half of them and nine in ten of them keep within: their spread, any other share,
 * and what several make one after the other.
 *
 *     σ = (P90 − P50) / 1.2816        P(q) = P50 + z(q)·σ        in a row: P50 = Σ P50ᵢ, σ = √(Σ σᵢ²)
 *
 * σ spread, one standard deviation, s        z(q) spreads above the middle that share q lies below
 *
 * Holds for delays spread evenly about their middle and independent of each other. A shared cause, such as one supply
 * pressure for two valves, shifts them together: good for two that must meet, bad for where they meet.
 *
 * @source function-handbook quantiles of the normal distribution
 * @source probability-textbook sums of independent spreads
 */
import { requireFinite, requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { NINETIETH_SPREADS, normalQuantile } from './normal.ts';

export interface VaryingDelay {
  readonly median_s: number;
  readonly ninetieth_s: number;
}

function requireNotBelow(median_s: number, ninetieths: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(ninetieths))
    if (value < median_s) throw new RangeError(`${name} must be at or above its P50, ${median_s}, got ${value}`);
}

/** Spread of a delay known by its P50 and P90. Throws RangeError unless P90 is at or above P50. */
export function delaySpread_s({ median_s, ninetieth_s }: VaryingDelay): number {
  requireFinite({ median_s, ninetieth_s });
  requireNotBelow(median_s, { ninetieth_s });
  return (ninetieth_s - median_s) / NINETIETH_SPREADS;
}

/** Delay that this share keeps within. Throws RangeError for a share of none or all, or a P90 below P50. */
export function delayAtShare_s(given: VaryingDelay & { readonly shareFraction: number }): number {
  return given.median_s + normalQuantile(given.shareFraction) * delaySpread_s(given);
}

/** P50 and P90 of delays one after the other. Throws RangeError where any of them has P90 below P50. */
export function sumOfDelays(delays: readonly VaryingDelay[]): VaryingDelay {
  const median_s = delays.reduce((sum, delay) => sum + delay.median_s, 0);
  return { median_s, ninetieth_s: median_s + NINETIETH_SPREADS * Math.hypot(...delays.map(delaySpread_s)) };
}

/** As `sumOfDelays`, for up to three. */
export function delaysInARow(given: {
  readonly firstMedian_s: number;
  readonly firstNinetieth_s: number;
  readonly secondMedian_s: number;
  readonly secondNinetieth_s: number;
  readonly thirdMedian_s?: number;
  readonly thirdNinetieth_s?: number;
}): VaryingDelay & { readonly spread_s: number } {
  const { thirdMedian_s = 0, thirdNinetieth_s = 0 } = given;
  const { firstMedian_s, firstNinetieth_s, secondMedian_s, secondNinetieth_s } = given;
  requireFinite({ ...given, thirdMedian_s, thirdNinetieth_s });
  requireNotBelow(firstMedian_s, { firstNinetieth_s });
  requireNotBelow(secondMedian_s, { secondNinetieth_s });
  requireNotBelow(thirdMedian_s, { thirdNinetieth_s });
  const sum = sumOfDelays([
    { median_s: firstMedian_s, ninetieth_s: firstNinetieth_s },
    { median_s: secondMedian_s, ninetieth_s: secondNinetieth_s },
    { median_s: thirdMedian_s, ninetieth_s: thirdNinetieth_s },
  ]);
  return { ...sum, spread_s: delaySpread_s(sum) };
}

export interface ArrivalGiven {
  readonly latencySpread_s: number;
  readonly heightSpread_m?: number;
  readonly speed_m_per_s: number;
  readonly otherSpread_s?: number;
}

/** Spread of the moment a thing let go arrives. Throws RangeError for a negative spread or a speed that is not positive. */
export function arrivalSpread_s(given: ArrivalGiven): number {
  const { latencySpread_s, heightSpread_m = 0, speed_m_per_s, otherSpread_s = 0 } = given;
  requireNotNegative({ latencySpread_s, heightSpread_m, otherSpread_s });
  requirePositive({ speed_m_per_s });
  return Math.hypot(latencySpread_s, heightSpread_m / speed_m_per_s, otherSpread_s);
}

const MEDIAN = 'P50: half keep within';
const NINETIETH = 'P90: nine in ten keep within';
const HOLDS = 'Delays spread evenly about their middle. Few presses or openings give a poor P90: thirty is a start.';
const WORDS = ['latency', 'jitter', 'P50', 'P90', 'valve', 'relay', 'cue', 'sigma', 'standard deviation'];

export const delaySpread = law(delaySpread_s, {
  id: 'delay-spread',
  title: 'Spread of a delay',
  says: 'How much a delay varies, when half of them and nine in ten of them are known.',
  equation: 'σ = (P90 − P50) / 1.2816',
  takes: { median_s: MEDIAN, ninetieth_s: NINETIETH },
  gives: { spread_s: 'Spread, one standard deviation' },
  holds: HOLDS,
  sources: ['function-handbook', 'normal-table'],
  words: WORDS,
  example: { median_s: 0.022, ninetieth_s: 0.025 },
});

export const delayAtShare = law(delayAtShare_s, {
  id: 'delay-at-share',
  title: 'Delay that a share keeps within',
  says: 'How late it may be, this often.',
  equation: 'P(q) = P50 + z(q) · (P90 − P50) / 1.2816',
  takes: { median_s: MEDIAN, ninetieth_s: NINETIETH, shareFraction: { title: 'How often', as: 'fraction' } },
  gives: { delay_s: 'Delay' },
  holds: HOLDS,
  sources: ['function-handbook', 'normal-table'],
  words: WORDS,
  example: { median_s: 0.022, ninetieth_s: 0.025, shareFraction: 0.99 },
});

export const delayChain = law(delaysInARow, {
  id: 'delay-chain',
  title: 'Delays one after the other',
  says: 'What a controller, a relay and a valve make together.',
  equation: 'P50 = Σ P50ᵢ, σ = √(Σ σᵢ²), P90 = P50 + 1.2816 · σ',
  takes: {
    firstMedian_s: `First, ${MEDIAN}`,
    firstNinetieth_s: `First, ${NINETIETH}`,
    secondMedian_s: `Second, ${MEDIAN}`,
    secondNinetieth_s: `Second, ${NINETIETH}`,
    thirdMedian_s: { title: `Third, ${MEDIAN}`, default: 0 },
    thirdNinetieth_s: { title: `Third, ${NINETIETH}`, default: 0 },
  },
  gives: { median_s: 'Together, P50', ninetieth_s: 'Together, P90', spread_s: 'Spread, one standard deviation' },
  holds: `${HOLDS} Independent of each other: P90s never simply add.`,
  sources: ['probability-textbook', 'function-handbook'],
  words: WORDS,
  example: {
    firstMedian_s: 0.004,
    firstNinetieth_s: 0.0045,
    secondMedian_s: 0.022,
    secondNinetieth_s: 0.025,
  },
});

export const arrivalSpread = law(arrivalSpread_s, {
  id: 'arrival-spread',
  title: 'Spread of an arrival',
  says: 'How much the moment of arrival varies, from the release and from where the thing hung.',
  equation: '√(σ_release² + (σ_height / v)² + σ_other²)',
  takes: {
    latencySpread_s: 'Spread of the release',
    heightSpread_m: { title: 'Spread of the height', default: 0, note: 'how exactly it is hung again' },
    speed_m_per_s: 'Speed on arrival',
    otherSpread_s: { title: 'Any other spread', default: 0, note: 'of the way down, such as air or a wobble' },
  },
  gives: { spread_s: 'Spread of the arrival, one standard deviation' },
  holds: 'Small, independent spreads, each one standard deviation.',
  sources: ['probability-textbook'],
  cautions: ['moving-rigs'],
  words: [...WORDS, 'drop', 'meeting'],
  example: { latencySpread_s: 0.001, heightSpread_m: 0.002, speed_m_per_s: 3.43, otherSpread_s: 0.0002 },
});
