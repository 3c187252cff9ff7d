/**
 * How many takes to allow for, when some fail by chance: the takes after which enough good ones are there, at a
 * confidence that somebody chose.
 *
 *     P(n) = Σ C(n,k)·pᵏ·(1−p)ⁿ⁻ᵏ, k = r … n        n at confidence c: the least with P(n) ≥ c        mean n = r/p
 *
 * r good takes wanted        p chance that a take is good        n takes        c confidence
 *
 * Every take is good with the same chance, whatever the others were. Crews learn and tire, and one fault can spoil a
 * run of takes: both make the true number spread wider than this.
 *
 * The sum runs outward from its largest term, in multiples of it, so that nothing underflows and no logarithm is taken.
 *
 * @source negative-binomial-pages the least number of tries, worked and tabled
 * @source binomial-table the sum, tabled
 */
import { requireCount, requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';

/** More takes than any day holds: above this the answer is refused, not guessed. */
export const MOST_TAKES = 10_000;

/** The usual confidence of a plan: enough nine times in ten. */
export const USUAL_CONFIDENCE = 0.9;

/** A chance this near, relatively, to the one asked for has reached it: rounding makes no take. */
const ROUNDING = 1e-11;

interface Enough {
  readonly goodTakeCount: number;
  readonly goodTakeFraction: number;
}

function requireShare(shares: Readonly<Record<string, number>>): void {
  requirePositive(shares);
  requireWithin(0, 1, shares);
}

function requireTakes(takes: Readonly<Record<string, number>>, least: number): void {
  requireCount(takes, least);
  requireWithin(least, MOST_TAKES, takes);
}

/** The chances of fewer than r good takes in n and of r or more, each to full relative accuracy. */
function chancesOf(n: number, r: number, p: number): { readonly fewer: number; readonly enough: number } {
  if (r > n) return { fewer: 1, enough: 0 };
  if (p === 1) return { fewer: 0, enough: 1 };
  const odds = p / (1 - p);
  const mode = Math.min(n, Math.floor((n + 1) * p));
  let below = 0;
  let above = 0;
  let term = 1;
  for (let k = mode; k >= 0 && term > 0; k -= 1) {
    if (k >= r) above += term;
    else below += term;
    term *= k / ((n - k + 1) * odds);
  }
  term = 1;
  for (let k = mode + 1; k <= n && term > 0; k += 1) {
    term *= ((n - k + 1) * odds) / k;
    if (k >= r) above += term;
    else below += term;
  }
  const total = below + above;
  return { fewer: below / total, enough: above / total };
}

/** Chance that so many takes hold enough good ones. Throws RangeError outside its domain. */
export function chanceOfEnoughFraction(given: Enough & { readonly takeCount: number }): number {
  const { goodTakeCount, goodTakeFraction, takeCount } = given;
  requireTakes({ goodTakeCount }, 1);
  requireTakes({ takeCount }, 0);
  requireShare({ goodTakeFraction });
  return chancesOf(takeCount, goodTakeCount, goodTakeFraction).enough;
}

/**
 * Least number of takes that holds enough good ones with the confidence asked for. Throws RangeError outside its domain,
 * and where more than 10,000 takes would be needed.
 */
export function takesAtConfidenceCount(given: Enough & { readonly confidenceFraction?: number }): number {
  const { goodTakeCount, goodTakeFraction, confidenceFraction = USUAL_CONFIDENCE } = given;
  requireTakes({ goodTakeCount }, 1);
  requireShare({ goodTakeFraction, confidenceFraction });
  if (goodTakeFraction === 1) return goodTakeCount;
  if (confidenceFraction === 1) throw new RangeError('confidenceFraction must be below 1 where a take may fail, got 1');

  // Near 1 the chance of missing holds the digits that the chance of having enough has lost.
  const suffices = (n: number) => {
    const { fewer, enough } = chancesOf(n, goodTakeCount, goodTakeFraction);
    return confidenceFraction > 0.5
      ? fewer <= (1 - confidenceFraction) * (1 + ROUNDING)
      : enough >= confidenceFraction * (1 - ROUNDING);
  };
  if (!suffices(MOST_TAKES))
    throw new RangeError(
      `goodTakeFraction must let ${MOST_TAKES} takes hold ${goodTakeCount} good at ${confidenceFraction}, got ${goodTakeFraction}`,
    );
  let tooFew = goodTakeCount - 1;
  let enough = MOST_TAKES;
  while (enough - tooFew > 1) {
    const middle = Math.floor((tooFew + enough) / 2);
    if (suffices(middle)) enough = middle;
    else tooFew = middle;
  }
  return enough;
}

/** Takes until enough are good, on average over many such days. Throws RangeError outside its domain. */
export function meanTakesRatio({ goodTakeCount, goodTakeFraction }: Enough): number {
  requireTakes({ goodTakeCount }, 1);
  requireShare({ goodTakeFraction });
  return goodTakeCount / goodTakeFraction;
}

const TAKES = {
  goodTakeCount: { title: 'Good takes wanted', as: 'count' },
  goodTakeFraction: {
    title: 'Chance that a take is good',
    as: 'fraction',
    note: 'of the last takes, how many were kept',
  },
} as const;
const WORDS = ['takes', 'retakes', 'heroes', 'negative binomial', 'binomial', 'how many', 'confidence', 'spares'];
const HOLDS =
  'Takes that fail independently and equally often. A crew that learns needs fewer; a fault that stays needs more.';

export const takesAtConfidence = law(takesAtConfidenceCount, {
  id: 'takes-at-confidence',
  title: 'Takes to allow for',
  says: 'How many takes to allow for, so that enough of them are good.',
  equation: 'least n with Σ C(n,k) · pᵏ · (1 − p)ⁿ⁻ᵏ ≥ c, over k from r to n',
  takes: {
    ...TAKES,
    confidenceFraction: {
      title: 'Confidence',
      as: 'fraction',
      default: USUAL_CONFIDENCE,
      note: '0.9: enough on nine days in ten',
    },
  },
  gives: { takeCount: { title: 'Takes', as: 'count' } },
  holds: `${HOLDS} Up to 10,000 takes.`,
  sources: ['negative-binomial-pages', 'binomial-table'],
  words: WORDS,
  example: { goodTakeCount: 2, goodTakeFraction: 0.4, confidenceFraction: 0.9 },
});

export const chanceOfEnough = law(chanceOfEnoughFraction, {
  id: 'chance-of-enough',
  title: 'Chance that the takes are enough',
  says: 'How likely it is that so many takes hold the good ones wanted.',
  equation: 'P = Σ C(n,k) · pᵏ · (1 − p)ⁿ⁻ᵏ, over k from r to n',
  takes: { takeCount: { title: 'Takes', as: 'count' }, ...TAKES },
  gives: { chanceFraction: { title: 'Chance of enough', as: 'fraction' } },
  holds: HOLDS,
  sources: ['binomial-table'],
  words: WORDS,
  example: { takeCount: 6, goodTakeCount: 2, goodTakeFraction: 0.4 },
});

export const meanTakes = law(meanTakesRatio, {
  id: 'takes-on-average',
  title: 'Takes on average',
  says: 'How many takes the good ones cost on average, which about half of all days exceed.',
  equation: 'mean n = r / p',
  takes: TAKES,
  gives: { takesRatio: { title: 'Takes on average', as: 'ratio' } },
  holds: `${HOLDS} A plan needs the takes to allow for, not the average.`,
  sources: ['negative-binomial-pages'],
  words: WORDS,
  example: { goodTakeCount: 2, goodTakeFraction: 0.4 },
});
