/**
 * Cues of unequal spread that are aimed at one moment: how often all of them arrive within the window.
 *
 *     P = Σᵢ ∫ φᵢ(x) · Πⱼ≠ᵢ [Φⱼ(x + w) − Φⱼ(x)] dx
 *
 * The sum over which of them comes first, as in meeting.ts; for two it is a difference of normal shares. Where all vary by
 * about as much, an even step below what the narrowest product of their curves can show sums it to the last digits.
 *
 * @source probability-textbook the difference of two normal spreads
 * @source range-table the range of many equal ones
 */
import { requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { allMeetFraction, pairMeetsFraction } from './meeting.ts';
import { normalDensity, normalShareBetween } from './normal.ts';

/** Chance that arrivals of these spreads, aimed at one moment, lie within the window. Throws RangeError outside its domain. */
export function spreadsMeetFraction(spreads_s: readonly number[], window_s: number): number {
  for (const spread_s of spreads_s) requireNotNegative({ spread_s });
  requirePositive({ window_s });
  // What never varies is there at the moment itself: two such things are one.
  const varying = spreads_s.filter((spread_s) => spread_s > 0);
  const still = varying.length < spreads_s.length ? [0] : [];
  const counted = [...still, ...varying];
  if (counted.length < 2) return 1;
  if (counted.length === 2)
    return pairMeetsFraction({ firstSpread_s: counted[0]!, secondSpread_s: counted[1]!, window_s });
  const [least_s, most_s] = [Math.min(...counted), Math.max(...counted)];
  return least_s * MOST_UNEVEN >= most_s
    ? evenlySummed(counted, window_s, most_s)
    : allMeetFraction({ arrivals: counted.map((spread_s) => ({ mean_s: 0, spread_s })), window_s });
}

/** Spreads further apart than this are better summed from knot to knot. */
const MOST_UNEVEN = 20;
/** Steps in the spread of the product of all curves: the error of an even step falls as e^(−2π²·steps²). */
const STEPS = 1.3;
/** Beyond this many spreads nothing counts. */
const REACH = 8.5;

function evenlySummed(spreads_s: readonly number[], window_s: number, most_s: number): number {
  const step_s = 1 / (STEPS * Math.hypot(...spreads_s.map((spread_s) => 1 / spread_s)));
  const last = Math.ceil((REACH * most_s) / step_s);
  const within = spreads_s.map(() => 0);
  let sum = 0;
  for (let i = -last; i <= last; i += 1) {
    const x = i * step_s;
    spreads_s.forEach((spread_s, j) => {
      within[j] = normalShareBetween(x / spread_s, (x + window_s) / spread_s);
    });
    spreads_s.forEach((spread_s, first) => {
      let product = normalDensity(x / spread_s) / spread_s;
      for (let j = 0; j < within.length; j += 1) if (j !== first) product *= within[j]!;
      sum += product;
    });
  }
  return Math.min(1, sum * step_s);
}

/** As `spreadsMeetFraction`, for three. */
export function threeMeetFraction(given: {
  readonly firstSpread_s: number;
  readonly secondSpread_s: number;
  readonly thirdSpread_s: number;
  readonly window_s: number;
}): number {
  const { firstSpread_s, secondSpread_s, thirdSpread_s, window_s } = given;
  requireNotNegative({ firstSpread_s, secondSpread_s, thirdSpread_s });
  return spreadsMeetFraction([firstSpread_s, secondSpread_s, thirdSpread_s], window_s);
}

export const threeMeet = law(threeMeetFraction, {
  id: 'three-meet',
  title: 'Chance that three unequal things meet',
  says: 'How often three rigs, each with a spread of its own, arrive close enough together.',
  equation: 'P = Σᵢ ∫ φᵢ(x) · Πⱼ≠ᵢ [Φⱼ(x + w) − Φⱼ(x)] dx',
  takes: {
    firstSpread_s: 'Spread of the first arrival',
    secondSpread_s: 'Spread of the second arrival',
    thirdSpread_s: { title: 'Spread of the third arrival', note: 'zero for what never varies' },
    window_s: { title: 'Window', note: 'first and last may be this far apart' },
  },
  gives: { chanceFraction: { title: 'They meet', as: 'fraction' } },
  holds: 'Independent arrivals, each spread evenly about the one moment all are aimed at.',
  sources: ['probability-textbook', 'range-table'],
  cautions: ['moving-rigs', 'pressure-and-projectiles'],
  words: ['meeting', 'collision', 'cue', 'rig', 'jitter', 'coincidence', 'together'],
  example: { firstSpread_s: 0.001, secondSpread_s: 0.0025, thirdSpread_s: 0.0004, window_s: 0.004 },
});
