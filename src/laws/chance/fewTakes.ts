/**
 * How far off a mean and a spread may be that were judged from a few takes: Student's t and chi-square for whole degrees
 * of freedom, from their finite series.
 *
 *     χ² odd ν:   Q = 2·Q(√x) + 2·φ(√x)·Σ x^(r−½)/(1·3 … (2r−1))        even ν:   Q = e^(−x/2)·Σ (x/2)^r/r!
 *     t  odd ν:   A = 2/π·(θ + sin θ·(cos θ + 2/3·cos³θ + …))              even ν:   A = sin θ·(1 + ½·cos²θ + …)
 *
 * Q share above x      A share within ±t      θ = arctan(t/√ν)      ν degrees of freedom: takes less one
 *
 * @source function-handbook the series, 26.4.4 to 26.4.5 and 26.7.3 to 26.7.4
 */
import { requireCount, requireFinite, requireNotNegative, requirePositive, requireWithin } from '../../base/domain.ts';
import { normalDensity, normalShare } from './normal.ts';

/** Beyond this the series would take long, and the normal spread would do. */
const MOST_DEGREES = 10_000;

function requireDegrees(degreeCount: number): void {
  requireCount({ degreeCount }, 1);
  requireWithin(1, MOST_DEGREES, { degreeCount });
}

export interface ChiSquareGiven {
  readonly x: number;
  readonly degreeCount: number;
}

/** Share of a chi-square spread that lies above x. Throws RangeError below 0, or for degrees that are no count. */
export function chiSquareAbove({ x, degreeCount }: ChiSquareGiven): number {
  requireNotNegative({ x });
  requireDegrees(degreeCount);
  const isOdd = degreeCount % 2 === 1;
  const root = Math.sqrt(x);
  let term = isOdd ? 2 * normalDensity(root) * root : Math.exp(-x / 2);
  let sum = isOdd ? 2 * normalShare(-root) : 0;
  for (let r = 1; r <= Math.floor(degreeCount / 2); r += 1) {
    sum += term;
    term *= isOdd ? x / (2 * r + 1) : x / (2 * r);
  }
  return Math.min(1, sum);
}

export interface StudentGiven {
  readonly t: number;
  readonly degreeCount: number;
}

/** Share of Student's spread that lies below t. Throws RangeError for t not finite, or degrees that are no count. */
export function studentShare({ t, degreeCount }: StudentGiven): number {
  requireFinite({ t });
  requireDegrees(degreeCount);
  const turn = Math.atan(t / Math.sqrt(degreeCount));
  const [sine, cosine] = [Math.sin(turn), Math.cos(turn)];
  const isOdd = degreeCount % 2 === 1;
  let term = isOdd ? cosine : 1;
  let sum = 0;
  for (let power = isOdd ? 1 : 0; power <= degreeCount - 2; power += 2) {
    sum += term;
    term *= ((power + 1) / (power + 2)) * cosine * cosine;
  }
  const within = isOdd ? (2 / Math.PI) * (turn + sine * sum) : sine * sum;
  return (1 + within) / 2;
}

/** Where a share that rises with its place reaches a value, by halving. */
function placeOf(shareBelow: (place: number) => number, wanted: number, low: number, high: number): number {
  let [from, to] = [low, high];
  for (let step = 0; step < 200 && to - from > 1e-13 * to; step += 1) {
    const middle = (from + to) / 2;
    if (shareBelow(middle) < wanted) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}

export interface QuantileGiven {
  /** Share that lies below. */
  readonly shareFraction: number;
  readonly degreeCount: number;
}

function requireShare(shareFraction: number): void {
  requirePositive({ shareFraction, restFraction: 1 - shareFraction });
}

/** What this share of a chi-square spread lies below. Throws RangeError unless the share is above 0 and below 1. */
export function chiSquareQuantile({ shareFraction, degreeCount }: QuantileGiven): number {
  requireShare(shareFraction);
  const reach = degreeCount + 100 * Math.sqrt(2 * degreeCount) + 1000;
  return placeOf((x) => 1 - chiSquareAbove({ x, degreeCount }), shareFraction, 0, reach);
}

/** What this share of Student's spread lies below. Throws RangeError unless the share is above 0 and below 1. */
export function studentQuantile({ shareFraction, degreeCount }: QuantileGiven): number {
  requireShare(shareFraction);
  if (shareFraction < 0.5) return -studentQuantile({ shareFraction: 1 - shareFraction, degreeCount });
  let reach = 2;
  while (studentShare({ t: reach, degreeCount }) < shareFraction) reach *= 2;
  return placeOf((t) => studentShare({ t, degreeCount }), shareFraction, 0, reach);
}

/** Over the root of the takes and the spread: how far the median of a normal spread strays, at most, over its mean. */
const MEDIAN_OVER_MEAN = Math.sqrt(Math.PI / 2);

export interface TakesGiven {
  /** Standard deviation of the takes, over one less than their number. */
  readonly deviation: number;
  readonly takeCount: number;
  /** How sure: the share of cases that the band holds. */
  readonly sureFraction: number;
}

/** How far either way the middle of takes may lie from that of all takes ever. Throws RangeError for fewer than two takes. */
export function middleReach({ deviation, takeCount, sureFraction }: TakesGiven): number {
  requireNotNegative({ deviation });
  requireCount({ takeCount }, 2);
  const t = studentQuantile({ shareFraction: (1 + sureFraction) / 2, degreeCount: takeCount - 1 });
  return (MEDIAN_OVER_MEAN * t * deviation) / Math.sqrt(takeCount);
}

/** Between what the standard deviation of all takes ever lies. Throws RangeError for fewer than two takes. */
export function deviationBand({ deviation, takeCount, sureFraction }: TakesGiven): { readonly low: number; readonly high: number } {
  requireNotNegative({ deviation });
  requireCount({ takeCount }, 2);
  const degreeCount = takeCount - 1;
  const at = (shareFraction: number): number =>
    deviation * Math.sqrt(degreeCount / chiSquareQuantile({ shareFraction, degreeCount }));
  return { low: at((1 + sureFraction) / 2), high: at((1 - sureFraction) / 2) };
} // prettier-ignore
