/**
 * Things that must be in one place at one time, each arriving a little early or late by chance.
 *
 *     two     P = Φ((w − d)/s) − Φ((−w − d)/s),  s = √(σ1² + σ2²)
 *     many    P = Σᵢ ∫ φᵢ(x) · Πⱼ≠ᵢ [Φⱼ(x + w) − Φⱼ(x)] dx
 *
 * w window, s: the first and the last may be this far apart        d how far apart they are aimed, s
 * σ spread of an arrival, one standard deviation, s        φ, Φ height and share of a normal spread
 *
 * The sum is over which of them comes first. Arrivals are independent; what shifts them together changes nothing here
 * and moves the meeting.
 *
 * @source probability-textbook the difference of two normal spreads
 * @source range-table the range of many equal ones
 */
import { requireCount, requireFinite, requireNotNegative, requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';
import { normalDensity, normalShare, normalShareBetween } from './normal.ts';

export interface Arrival {
  readonly mean_s: number;
  readonly spread_s: number;
}

export interface PairGiven {
  readonly firstSpread_s: number;
  readonly secondSpread_s: number;
  readonly window_s: number;
  readonly apart_s?: number;
}

/** Chance that two arrivals lie within the window. Throws RangeError outside its domain. */
export function pairMeetsFraction({ firstSpread_s, secondSpread_s, window_s, apart_s = 0 }: PairGiven): number {
  requireNotNegative({ firstSpread_s, secondSpread_s });
  requirePositive({ window_s });
  requireFinite({ apart_s });
  const spread_s = Math.hypot(firstSpread_s, secondSpread_s);
  if (spread_s === 0) return Math.abs(apart_s) <= window_s ? 1 : 0;
  return normalShareBetween((-window_s - apart_s) / spread_s, (window_s - apart_s) / spread_s);
}

/** Points and weights of Gauss and Legendre for eight, upper half. */
const POINTS = [0.1834346424956498, 0.525532409916329, 0.7966664774136267, 0.9602898564975363] as const;
const WEIGHTS = [0.362683783378362, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763] as const;
/** Beyond this many spreads nothing counts; between these, in spreads, curves are smooth enough for eight points. */
const KNOTS = [-8.5, -5, -3.5, -2.5, -1.5, -0.75, 0, 0.75, 1.5, 2.5, 3.5, 5, 8.5] as const;

/** Share of an arrival in (x, x + w], a step where it does not vary; the first in the list comes first in a tie. */
function shareAfter({ mean_s, spread_s }: Arrival, x: number, window_s: number, isLater: boolean): number {
  if (spread_s > 0) return normalShareBetween((x - mean_s) / spread_s, (x + window_s - mean_s) / spread_s);
  const isAfter = isLater ? mean_s >= x : mean_s > x;
  return isAfter && mean_s <= x + window_s ? 1 : 0;
}

/** Chance that all arrivals lie within the window, given which is first: the integral over its moment. */
function firstOf(arrivals: readonly Arrival[], first: number, window_s: number): number {
  const { mean_s, spread_s } = arrivals[first]!;
  const others = (x: number) => {
    let product = 1;
    for (let j = 0; j < arrivals.length && product > 0; j += 1)
      if (j !== first) product *= shareAfter(arrivals[j]!, x, window_s, j > first);
    return product;
  };
  if (spread_s === 0) return others(mean_s);
  const low = mean_s + KNOTS[0] * spread_s;
  const high = mean_s + KNOTS.at(-1)! * spread_s;
  const knots = arrivals
    .flatMap((at) => KNOTS.flatMap((k) => [at.mean_s + k * at.spread_s, at.mean_s + k * at.spread_s - window_s]))
    .filter((x) => x > low && x < high)
    .concat(low, high)
    .sort((a, b) => a - b);
  let sum = 0;
  for (let k = 0; k + 1 < knots.length; k += 1) {
    const half = (knots[k + 1]! - knots[k]!) / 2;
    if (half <= 1e-14 * spread_s) continue;
    const middle = (knots[k + 1]! + knots[k]!) / 2;
    for (let point = 0; point < POINTS.length; point += 1)
      for (const side of [-1, 1]) {
        const x = middle + side * half * POINTS[point]!;
        sum += half * WEIGHTS[point]! * (normalDensity((x - mean_s) / spread_s) / spread_s) * others(x);
      }
  }
  return sum;
}

/** Chance that first and last of the arrivals lie within the window. Throws RangeError outside its domain. */
export function allMeetFraction({
  arrivals,
  window_s,
}: {
  readonly arrivals: readonly Arrival[];
  readonly window_s: number;
}): number {
  requirePositive({ window_s });
  for (const { mean_s, spread_s } of arrivals) {
    requireFinite({ mean_s });
    requireNotNegative({ spread_s });
  }
  if (arrivals.length < 2) return 1;
  let chance = 0;
  for (let first = 0; first < arrivals.length; first += 1) chance += firstOf(arrivals, first, window_s);
  return Math.min(1, chance);
}

const MOST_RIGS = 20;

/** Chances that any two, and that all of so many equal rigs lie within the window. Throws RangeError outside its domain. */
export function rigsMeet(given: { readonly rigCount: number; readonly spread_s: number; readonly window_s: number }): {
  readonly allFraction: number;
  readonly pairFraction: number;
} {
  const { rigCount, spread_s, window_s } = given;
  requireCount({ rigCount }, 2);
  requireWithin(2, MOST_RIGS, { rigCount });
  requirePositive({ spread_s, window_s });
  const arrivals = Array.from({ length: rigCount }, () => ({ mean_s: 0, spread_s }));
  return {
    // All of them being alike, whichever comes first has the same chance.
    allFraction: Math.min(1, rigCount * firstOf(arrivals, 0, window_s)),
    pairFraction: pairMeetsFraction({ firstSpread_s: spread_s, secondSpread_s: spread_s, window_s }),
  };
}

/** Largest spread of each rig at which all meet this often. Throws RangeError outside its domain. */
export function spreadToMeet_s(given: {
  readonly rigCount: number;
  readonly window_s: number;
  readonly chanceFraction?: number;
}): number {
  const { rigCount, window_s, chanceFraction = 0.9 } = given;
  requirePositive({ window_s, chanceFraction });
  requireWithin(0.01, 0.9999, { chanceFraction });
  let low = 0;
  let high = 1;
  const meets = (spreads: number) => rigsMeet({ rigCount, spread_s: spreads, window_s: 1 }).allFraction;
  while (meets(high) > chanceFraction) high *= 2;
  for (let step = 0; step < 50; step += 1) {
    const middle = (low + high) / 2;
    if (meets(middle) >= chanceFraction) low = middle;
    else high = middle;
  }
  return low * window_s;
}

/** Chance that a spread thing is between two limits. Throws RangeError unless the spread is positive. */
export function inDepthFraction(given: {
  readonly spread_m: number;
  readonly nearLimit_m: number;
  readonly farLimit_m: number;
}): number {
  const { spread_m, nearLimit_m, farLimit_m } = given;
  requirePositive({ spread_m });
  requireNotNegative({ nearLimit_m, farLimit_m });
  return normalShare(farLimit_m / spread_m) - normalShare(-nearLimit_m / spread_m);
}

const WINDOW = { window_s: { title: 'Window', note: 'first and last may be this far apart' } } as const;
const CAUTIONS = ['moving-rigs', 'pressure-and-projectiles'];
const WORDS = ['meeting', 'collision', 'cue', 'rig', 'jitter', 'coincidence', 'together'];
const HOLDS = 'Independent arrivals, each spread evenly about the moment it is aimed at.';

export const pairMeets = law(pairMeetsFraction, {
  id: 'pair-meets',
  title: 'Chance that two things meet',
  says: 'How often two rigs arrive close enough together.',
  equation: 'P = Φ((w − d)/s) − Φ((−w − d)/s), s = √(σ1² + σ2²)',
  takes: {
    firstSpread_s: 'Spread of the first arrival',
    secondSpread_s: 'Spread of the second arrival',
    ...WINDOW,
    apart_s: { title: 'Aimed apart', default: 0, note: 'second after first; 0 where both are aimed at one moment' },
  },
  gives: { chanceFraction: { title: 'They meet', as: 'fraction' } },
  holds: HOLDS,
  sources: ['probability-textbook', 'normal-table'],
  cautions: CAUTIONS,
  words: WORDS,
  example: { firstSpread_s: 0.001, secondSpread_s: 0.0015, window_s: 0.002, apart_s: 0.0005 },
});

export const rigsMeeting = law(rigsMeet, {
  id: 'rigs-meet',
  title: 'Chance that several rigs meet',
  says: 'How often all of several equal rigs arrive close enough together.',
  equation: 'P = n · ∫ φ(x) · [Φ(x + w) − Φ(x)]ⁿ⁻¹ dx',
  takes: {
    rigCount: { title: 'Rigs', as: 'count', note: `2 to ${MOST_RIGS}` },
    spread_s: 'Spread of each arrival',
    ...WINDOW,
  },
  gives: {
    allFraction: { title: 'All within the window', as: 'fraction' },
    pairFraction: { title: 'Any one pair within it', as: 'fraction' },
  },
  holds: HOLDS,
  sources: ['range-table', 'probability-textbook'],
  cautions: CAUTIONS,
  words: WORDS,
  example: { rigCount: 3, spread_s: 0.001, window_s: 0.002 },
});

export const spreadToMeet = law(spreadToMeet_s, {
  id: 'spread-to-meet',
  title: 'Spread that rigs may have',
  says: 'How steady each rig must be, so that all of them meet this often.',
  equation: 'largest σ with n · ∫ φ(x) · [Φ(x + w) − Φ(x)]ⁿ⁻¹ dx ≥ c',
  takes: {
    rigCount: { title: 'Rigs', as: 'count', note: `2 to ${MOST_RIGS}` },
    ...WINDOW,
    chanceFraction: { title: 'How often', as: 'fraction', default: 0.9 },
  },
  gives: { spread_s: 'Spread of each arrival, at most' },
  holds: HOLDS,
  sources: ['range-table', 'probability-textbook'],
  cautions: CAUTIONS,
  words: WORDS,
  example: { rigCount: 2, window_s: 0.002, chanceFraction: 0.95 },
});

export const inDepth = law(inDepthFraction, {
  id: 'in-depth',
  title: 'Chance of being in focus',
  says: 'How often a thing that lands here and there lies within the depth of field.',
  equation: 'P = Φ(far / σ) − Φ(−near / σ)',
  takes: {
    spread_m: 'Spread toward and away from the camera',
    nearLimit_m: { title: 'Sharp this far in front of the aim', note: 'toward the camera' },
    farLimit_m: 'Sharp this far behind it',
  },
  gives: { chanceFraction: { title: 'In focus', as: 'fraction' } },
  holds: 'Aimed at the plane of focus, spread evenly about it; several things must each be in focus.',
  sources: ['probability-textbook', 'normal-table'],
  words: ['depth of field', 'focus', 'landing', 'aim'],
  example: { spread_m: 0.004, nearLimit_m: 0.005, farLimit_m: 0.007 },
});
