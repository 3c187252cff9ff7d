/**
 * The normal distribution, to thirteen digits or better, also far out in its tails.
 *
 *     Φ(z) = ½·erfc(−z/√2)        erf x = 2/√π · x·e^(−x²) · Σ (2x²)ⁿ / (1·3·5 … (2n+1))
 *
 * Beyond 2.5 the complement comes from its continued fraction, which the series would lose digits to. The quantile
 * starts from a rational estimate and is made exact by Halley's steps.
 *
 * @source function-handbook the series, the fraction and the estimate
 */
import { requireFinite, requirePositive, requireWithin } from '../../base/domain.ts';

/** From here on the continued fraction is the quicker way. */
const FRACTION_FROM = 2.5;
/** Enough terms for full accuracy where the fraction begins. */
const FRACTION_TERMS = 80;

/** 90 in 100 lie below this many spreads above the middle: the distance from P50 to P90. */
export const NINETIETH_SPREADS = 1.2815515655446004;

function errorFunctionSeries(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; Math.abs(term) > 1e-17 * Math.abs(sum); n += 1) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * sum;
}

/** e^(x²)·erfc x for x of zero or above, which neither underflows nor overflows. */
export function scaledErrorComplement(x: number): number {
  if (x < FRACTION_FROM) return Math.exp(x * x) * (1 - errorFunctionSeries(x));
  let below = x;
  for (let k = FRACTION_TERMS; k >= 1; k -= 1) below = x + k / 2 / below;
  return 1 / (below * Math.sqrt(Math.PI));
}

function errorComplement(x: number): number {
  if (x < 0) return 2 - errorComplement(-x);
  return x < FRACTION_FROM ? 1 - errorFunctionSeries(x) : Math.exp(-x * x) * scaledErrorComplement(x);
}

/** Share of a normal spread that lies below z spreads above its middle. */
export function normalShare(z: number): number {
  return errorComplement(-z / Math.SQRT2) / 2;
}

/** Height of the normal curve z spreads from its middle. */
export function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/** How many spreads above the middle this share lies below. Throws RangeError unless it is above 0 and below 1. */
export function normalQuantile(shareFraction: number): number {
  requirePositive({ shareFraction });
  requireWithin(0, 1 - Number.EPSILON / 2, { shareFraction });
  if (shareFraction > 0.5) return -normalQuantile(1 - shareFraction);
  const t = Math.sqrt(-2 * Math.log(shareFraction));
  let z =
    (2.515517 + 0.802853 * t + 0.010328 * t * t) / (1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t * t * t) - t;
  for (let step = 0; step < 4; step += 1) {
    const off = (normalShare(z) - shareFraction) / normalDensity(z);
    z -= off / (1 + (z * off) / 2);
  }
  return z;
}

/** Share of a normal spread from one value to another, kept accurate where both lie far out on one side. */
export function normalShareBetween(low: number, high: number): number {
  requireFinite({ low, high });
  if (!(high > low)) return 0;
  return low > 0 ? normalShare(-low) - normalShare(-high) : normalShare(high) - normalShare(low);
}
