/**
 * Lines in the spectrum of a series: waves of one rate that stand out from what lies beside them.
 *
 * A test against the whole spectrum takes any step or ramp of the action for a wave. So each peak is held against the
 * median power on both sides of it, the higher of the two; it must fall off on both sides as one wave does; and its
 * chance counts every independent rate that was looked at:
 *
 *     chance = rates · (1 + r/m)^(−m)        r = power / mean of the noise beside it        mean = median / ln 2
 *
 * where m stands for how well the median of so many rates tells the mean. What is found is taken off, and the next is
 * looked for in what is left, so that the side lobes of one line are not taken for others.
 *
 * @source harmonic-fit power of noise at one rate is spread exponentially
 */
import { requirePositive, requireWithin } from '../../base/domain.ts';
import { medianOf } from '../../base/median.ts';
import { waveAt, withoutTrend, withoutWave, type Basis, type SpectrumGrid, type Wave } from './basis.ts';
import { amplitudeOf, refined } from './fit.ts';

export interface Line {
  readonly wave: Wave;
  /** Power over the mean of the noise beside it. */
  readonly ratio: number;
  /** That noise alone would show as much at any of the rates looked at. */
  readonly chance: number;
  /** Spread of the noise about the line, judged from the spectrum beside it. */
  readonly spread: number;
}

export interface LineSearch {
  /** Slowest rate looked for. */
  readonly least_Hz: number;
  /** Chance below which a line is one. */
  readonly mostChance: number;
  readonly mostLines: number;
}

/** Independent rates on each side that noise is judged from, as far as there are so many, and the fewest that will do. */
const BESIDE = 24;
const FEWEST_BESIDE = 5;
/** Independent rates on each side that belong to the line itself. */
const LINE_WIDTH = 1.5;
/** Power that a line may still have one independent rate off its top, as a share: none in theory, some where it drifts. */
const FALL = 0.5;
/** The median of so many exponential values tells their mean as well as this share of them would. */
const MEDIAN_WORTH = 0.48;

/** Median power over the rates on one side; where there are too few, the most of them, since a trend leaves its mark there. */
function noiseBeside(power: Float64Array, from: number, to: number, pointsPerRate: number): number | undefined {
  const values: number[] = [];
  const last = power.length - 1;
  // Beyond half the frame rate the spectrum is its own mirror.
  for (let k = from; k <= to; k += 1) if (k >= 0) values.push(power[k <= last ? k : 2 * last - k] ?? 0);
  if (values.length === 0) return undefined;
  return values.length < FEWEST_BESIDE * pointsPerRate ? Math.max(...values) : medianOf(values) / Math.LN2;
}

/** Independent rates next to a line on each side, of which the noise at its own rate cannot lie much below. */
const NEAR = 8;

/**
 * The noise at a rate from that on both sides of it. What moves has a spectrum that falls as a power of the rate, which is
 * a straight line in logarithms: so it is read off between the two sides, and is no less than what lies next to it.
 */
function noiseBetween(
  power: Float64Array,
  k: number,
  first: number,
  { pointsPerRate, points, basis }: SpectrumGrid,
): number {
  const guard = Math.ceil(LINE_WIDTH * pointsPerRate);
  // Rates that the trend itself takes up would look quieter than they are.
  const least = Math.min(Math.ceil((basis.polynomials.length / 2) * pointsPerRate), first);
  const sides = (reach: number) => {
    const [from, to] = [
      Math.max(least, k - guard - Math.ceil(reach * pointsPerRate)),
      k + guard + Math.ceil(reach * pointsPerRate),
    ];
    return {
      below: noiseBeside(power, from, k - guard, pointsPerRate),
      above: noiseBeside(power, k + guard, Math.min(to, 2 * points - 3), pointsPerRate),
      from,
      to,
    };
  };
  const { below, above, from, to } = sides(BESIDE);
  const near = sides(NEAR);
  const nearest = Math.max(near.below ?? 0, near.above ?? 0);
  if (below === undefined || above === undefined || !(above > 0) || below <= above)
    return Math.max(below ?? 0, above ?? 0);
  const at = (rate: number): number => Math.log(rate + 1);
  const [low, high] = [at((from + k - guard) / 2), at((k + guard + to) / 2)];
  const share = (high - at(k)) / (high - low);
  return Math.max(above * (below / above) ** share, Math.min(nearest, below));
}

interface Judged {
  readonly noise: number;
  readonly ratio: number;
  readonly chance: number;
}

/** How a point of a spectrum stands against both its sides, where rates from `first` on are looked at. */
function judge(power: Float64Array, k: number, first: number, grid: SpectrumGrid): Judged {
  const { pointsPerRate, points } = grid;
  const noise = Math.max(noiseBetween(power, k, first, grid), Number.MIN_VALUE);
  const ratio = power[k]! / noise;
  const rates = (points - first) / pointsPerRate;
  const worth = MEDIAN_WORTH * Math.min(BESIDE, rates);
  return { noise, ratio, chance: Math.min(1, rates * (1 + ratio / worth) ** -worth) };
}

/** Whether a peak falls off on both sides as a wave of one rate does, and is no slope of something broad. */
function isNarrow(power: Float64Array, k: number, pointsPerRate: number): boolean {
  const off = Math.round(pointsPerRate);
  const last = power.length - 1;
  const at = (i: number): number => power[i < 0 ? -i : i <= last ? i : 2 * last - i] ?? 0;
  return at(k - off) < FALL * power[k]! && at(k + off) < FALL * power[k]!;
}

/** No line stands out less than this from the quietest stretch about it. */
const LEAST_RATIO = 6;

/** Medians of stretches of a spectrum, so that most peaks are dismissed without sorting what lies beside each. */
function stretchNoise(power: Float64Array, length: number): Float64Array {
  const noise = new Float64Array(Math.ceil(power.length / length));
  for (let i = 0; i < noise.length; i += 1)
    noise[i] = medianOf(power.subarray(i * length, (i + 1) * length)) / Math.LN2;
  return noise;
}

/** The strongest peak of a spectrum that is a line, if any. */
function bestPeak(power: Float64Array, first: number, grid: SpectrumGrid, mostChance: number): { readonly k: number; readonly judged: Judged } | undefined {
  let best: { readonly k: number; readonly judged: Judged } | undefined;
  const last = power.length - 1;
  const length = Math.max(1, Math.ceil(BESIDE * grid.pointsPerRate));
  const noise = stretchNoise(power, length);
  for (let k = Math.max(first, 1); k <= last; k += 1) {
    if (power[k]! < power[k - 1]! || power[k]! < (power[k + 1] ?? power[k - 1])!) continue;
    const stretch = Math.floor(k / length);
    const quietest = Math.min(noise[stretch]!, noise[stretch - 1] ?? Infinity, noise[stretch + 1] ?? Infinity);
    if (power[k]! < LEAST_RATIO * quietest) continue;
    if (!isNarrow(power, k, grid.pointsPerRate)) continue;
    const judged = judge(power, k, first, grid);
    if (judged.chance <= mostChance && (!best || judged.ratio > best.judged.ratio)) best = { k, judged };
  }
  return best;
} // prettier-ignore

/** Sweeps over all lines found, each fitted again to what the others leave. */
const SWEEPS = 3;

/** Lines of a series, strongest first. Throws RangeError for a chance that is none. */
export function findLines(grid: SpectrumGrid, series: Float64Array, search: LineSearch): readonly Line[] {
  requirePositive({ least_Hz: search.least_Hz });
  requireWithin(Number.MIN_VALUE, 1, { mostChance: search.mostChance });
  const { basis, step_Hz, pointsPerRate } = grid;
  const first = Math.ceil(search.least_Hz / step_Hz);
  const found: { wave: Wave; readonly judged: Judged }[] = [];
  let rest = withoutTrend(basis, series);
  while (found.length < search.mostLines) {
    const peak = bestPeak(grid.powerOf(rest), first, grid, search.mostChance);
    if (!peak) break;
    const about_Hz = peak.k * step_Hz;
    // What is left beside a line already found is that line, drifting.
    if (found.some(({ wave }) => Math.abs(wave.rate_Hz - about_Hz) < LINE_WIDTH * pointsPerRate * step_Hz)) break;
    const wave = refined(basis, rest, about_Hz, step_Hz);
    found.push({ wave, judged: peak.judged });
    rest = withoutWave(basis, rest, wave);
    for (let sweep = 0; sweep < SWEEPS && found.length > 1; sweep += 1)
      for (const line of found) {
        const { rate_Hz, cosine, sine, power } = line.wave;
        const alone = withoutWave(basis, rest, { rate_Hz, cosine: -cosine, sine: -sine, power });
        line.wave = refined(basis, alone, rate_Hz, step_Hz);
        rest = withoutWave(basis, alone, line.wave);
      }
  }
  if (found.length === 0) return [];
  // Once they are taken off, side lobes no longer count as noise.
  const left = grid.powerOf(rest);
  return found
    .map(({ wave, judged: { ratio, chance } }) => {
      const { noise } = judge(left, Math.round(wave.rate_Hz / step_Hz), first, grid);
      return { wave, ratio, chance, spread: spreadOf(noise, basis) };
    })
    .sort((a, b) => amplitudeOf(b.wave) - amplitudeOf(a.wave));
}

/** The mean power of the noise of a series about a rate. */
export function noiseAbout(grid: SpectrumGrid, rest: Float64Array, rate_Hz: number, least_Hz: number): number {
  const k = Math.min(grid.points - 1, Math.round(rate_Hz / grid.step_Hz));
  return noiseBetween(grid.powerOf(rest), k, Math.ceil(least_Hz / grid.step_Hz), grid);
}

/** The power of noise at one rate is twice its variance, in the mean, where all frames weigh the same. */
const spreadOf = (noise: number, { weight, effectiveCount }: Basis): number =>
  Math.sqrt((noise / 2) * (effectiveCount / weight));

/** How a wave of a rate that is known already stands in a series: as `findLines`, for one rate alone. */
export function lineAt(grid: SpectrumGrid, series: Float64Array, rate_Hz: number, least_Hz: number): Line {
  const { basis, step_Hz } = grid;
  const first = Math.ceil(least_Hz / step_Hz);
  const rest = withoutTrend(basis, series);
  const wave = waveAt(basis, rest, rate_Hz);
  const k = Math.min(grid.points - 1, Math.round(rate_Hz / step_Hz));
  const { noise } = judge(grid.powerOf(withoutWave(basis, rest, wave)), k, first, grid);
  const ratio = wave.power / noise;
  const worth = MEDIAN_WORTH * BESIDE;
  return { wave, ratio, chance: Math.min(1, (1 + ratio / worth) ** -worth), spread: spreadOf(noise, basis) };
}

/** Noise of more than this many times that at the middle rate hides what the other rates would show. */
const LOUD = 2;
/** Rates at which a spectrum is asked what it would show. */
const RATES_ASKED = 256;
/** What noise takes off the root of a ratio in no more than one clip of ten: 1.28 deviations, each of √½. */
const NINE_IN_TEN = 1.28 * Math.SQRT1_2;

/** The smallest amplitude that nine clips of ten would show, at any rate from one on. */
export interface LeastFound {
  readonly amplitude: number;
  /** Slower than this, what moves makes more noise. */
  readonly from_Hz: number;
}

/** What would have been found: at the rates from which on the noise is no more than a few times that of the middle one. */
export function leastFound(grid: SpectrumGrid, series: Float64Array, search: LineSearch): LeastFound {
  const first = Math.max(1, Math.ceil(search.least_Hz / grid.step_Hz));
  const power = grid.powerOf(withoutTrend(grid.basis, series));
  if (power.length <= first) return { amplitude: Infinity, from_Hz: search.least_Hz };
  const every = Math.max(1, Math.floor((power.length - first) / RATES_ASKED));
  const asked = Array.from({ length: Math.ceil((power.length - first) / every) }, (_, i) => first + i * every);
  // As a line there would be judged.
  const noise = asked.map((k) => noiseBetween(power, k, first, grid));
  const quiet = noise.findLastIndex((of) => of > LOUD * medianOf(noise)) + 1;
  // Where the fastest rates are the loudest there is no such rate, and all of them count.
  const from = quiet < noise.length ? quiet : 0;
  const loudest = Math.max(...noise.slice(from));
  const rates = (power.length - first) / grid.pointsPerRate;
  const worth = MEDIAN_WORTH * Math.min(BESIDE, rates);
  const ratio = worth * ((rates / search.mostChance) ** (1 / worth) - 1);
  const surely = (Math.sqrt(ratio) + NINE_IN_TEN) ** 2;
  const from_Hz = from === 0 ? search.least_Hz : asked[from]! * grid.step_Hz;
  return { amplitude: Math.sqrt((2 * surely * loudest) / grid.basis.weight), from_Hz };
}
