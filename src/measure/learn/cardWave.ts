/**
 * One period of a lamp put together from the mean light of frames of a grey card: every harmonic that the frames tell
 * apart fitted at its own true rate beside a slow trend, and what the shutter took off it given back.
 *
 *     y[n]/trend = 1 + Σ aₖ·cos(2πk·f·n/R + φₖ)        lamp: Aₖ = aₖ/|sinc(k·f·T)|        sd Aₖ = s·√(2/N)/|sinc(k·f·T)|
 *
 * Fitted at k·f, a harmonic above half the frame rate unfolds by itself: the frames meet it just as they meet its beat.
 * Harmonics that cannot be told are taken to be as large as the upper half of those that can, falling off as an edge makes
 * them fall; they are left out of the period and counted in its error.
 *
 * @source harmonic-fit
 * @source exposure-mean what the shutter leaves of each harmonic
 */
import { sinc, type Waveform } from '../../laws/flicker/waveform.ts';
import { basisOf, faded, spectrumGrid, waveAt, withoutTrend, withoutWave, type Basis, type Wave } from '../lines/basis.ts'; // prettier-ignore
import { findLines } from '../lines/findLines.ts';
import { amplitudeOf, phaseOf_rad, precisionOf, refined } from '../lines/fit.ts';
import { isOfLamp, MOST_ORDER, ordersOf, SLOWEST, type Orders } from './cardOrders.ts';

export interface CardHarmonic {
  readonly order: number;
  /** Amplitude over the mean light, of the lamp. */
  readonly amplitudeFraction: number;
  /** Its standard deviation: noise, and what may beat at the same rate. */
  readonly deviationFraction: number;
  /** At the middle of the first exposure. */
  readonly phase_rad: number;
  /** False where it is no more than noise may be, and is left out of the period. */
  readonly isThere: boolean;
}

export interface CardWave {
  readonly rate_Hz: number;
  readonly rateDeviation_Hz: number;
  readonly harmonics: readonly CardHarmonic[];
  readonly orders: Orders;
  /** One period in even cells, the mean being 1. */
  readonly period: Waveform;
  /** (Brightest − dimmest) over their sum, with its standard deviation. */
  readonly depthFraction: number;
  readonly depthDeviationFraction: number;
  /** Standard deviation of the light at any moment of the period, over the mean, and the part of it that is not noise. */
  readonly lightDeviationFraction: number;
  readonly unseenFraction: number;
  /** Beats that are left, of no harmonic of the lamp: other lamps, strongest first. */
  readonly strangers_Hz: readonly number[];
  /** How far the period that could be told went below no light, over the mean: cut off there. */
  readonly belowNoneFraction: number;
}

export interface CardWaveGiven {
  /** Mean light of each frame, and how much each counts. */
  readonly light: Float64Array;
  readonly weights: Float64Array;
  readonly frameRate_fps: number;
  readonly exposureTime_s: number;
  /** True rate of the lamp, known to about what the clip tells apart; of it `times` is met as a beat. */
  readonly rate_Hz: number;
  /** The order whose beat is the strongest: 1, or 2 where the lamp's halves differ. */
  readonly strongestOrder: number;
}

const CELLS = 256;
/** Degree of the trend beside which harmonics are fitted: a lamp that warms, no more. */
const DEGREE = 2;
const SWEEPS = 6;
/** Times that the rate is looked for again, what else the clip holds taken off. */
const ROUNDS = 2;
/** Over its trend, less one. */
const DARKEST = -0.9;
/** Standard deviations from which a harmonic is there. */
const THERE = 3;

/** Highest order that is there. */
export const highestOrder = ({ harmonics }: Pick<CardWave, 'harmonics'>): number =>
  harmonics.reduce((most, { order, isThere }) => (isThere ? Math.max(most, order) : most), 0);

/** Light over its own slow trend, what is known to pulse in it taken out of the trend first. */
function overTrend(basis: Basis, light: Float64Array, pulsing?: Float64Array): Float64Array {
  const still = pulsing ? light.map((value, i) => value / (1 + pulsing[i]!)) : light;
  const rest = withoutTrend(basis, still);
  return light.map((value, i) => (basis.weights[i]! > 0 ? value / (still[i]! - rest[i]!) - 1 : 0));
}

/** The wave that, taken off, puts one back. */
const turned = ({ rate_Hz, cosine, sine, power }: Wave): Wave => ({ rate_Hz, cosine: -cosine, sine: -sine, power });

/** Waves at these rates fitted together, each in turn to what the others leave, and what all leave. */
function fittedTogether(basis: Basis, series: Float64Array, rates_Hz: readonly number[]): { readonly waves: readonly Wave[]; readonly rest: Float64Array } {
  let rest = withoutTrend(basis, series);
  const waves: Wave[] = rates_Hz.map((rate_Hz) => ({ rate_Hz, cosine: 0, sine: 0, power: 0 }));
  for (let sweep = 0; sweep < SWEEPS; sweep += 1)
    waves.forEach((wave, i) => {
      const alone = withoutWave(basis, rest, turned(wave));
      waves[i] = waveAt(basis, alone, wave.rate_Hz);
      rest = withoutWave(basis, alone, waves[i]);
    });
  return { waves, rest };
} // prettier-ignore

/** Waves added up at each frame; never quite down to no light, where no trend could be looked for. */
function sumOf(waves: readonly Wave[], { light, frameRate_fps }: CardWaveGiven): Float64Array {
  const sum = new Float64Array(light.length);
  for (const { rate_Hz, cosine, sine } of waves) {
    const turn = (2 * Math.PI * rate_Hz) / frameRate_fps;
    for (let i = 0; i < sum.length; i += 1) sum[i]! += cosine * Math.cos(turn * i) + sine * Math.sin(turn * i);
  }
  return sum.map((value) => Math.max(DARKEST, value));
}

/** The rate of the lamp, from the beat of its strongest order in a series that holds little else. */
function rateIn(basis: Basis, alone: Float64Array, { strongestOrder, frameRate_fps }: CardWaveGiven, rate_Hz: number): number {
  const met_Hz = strongestOrder * rate_Hz;
  const turns = Math.round(met_Hz / frameRate_fps);
  const beat_Hz = Math.abs(met_Hz - turns * frameRate_fps);
  const found_Hz = refined(basis, alone, beat_Hz, frameRate_fps / basis.effectiveCount).rate_Hz;
  return (turns * frameRate_fps + (met_Hz < turns * frameRate_fps ? -found_Hz : found_Hz)) / strongestOrder;
} // prettier-ignore

function spreadOf({ weights }: Basis, rest: Float64Array, fitted: number): number {
  let [squares, count] = [0, 0];
  for (let i = 0; i < rest.length; i += 1) {
    squares += weights[i]! * rest[i]! ** 2;
    count += weights[i]!;
  }
  return Math.sqrt(squares / Math.max(1, count - fitted));
}

/**
 * Size of the orders that cannot be told, were they as large as the upper half of those that can and falling off as an
 * edge makes them fall: of one, and root mean square of all of them together.
 */
function unseenBy(told: readonly { readonly order: number; readonly size: number }[], unseen: readonly number[]) {
  const upper = told.slice(Math.floor(told.length / 2));
  const last = upper.at(-1)!.order;
  const size = Math.sqrt(upper.reduce((sum, of) => sum + of.size ** 2, 0) / upper.length);
  const of = (order: number): number => size * Math.min(1, last / order);
  // Orders beyond the last that is looked at, added up without end.
  const beyond = (size * last) ** 2 / MOST_ORDER;
  const squares = unseen.reduce((sum, order) => sum + of(order) ** 2, beyond);
  return { of, together: Math.sqrt(squares / 2) };
}

/** Fewest orders of a sum that is worth easing out. */
const EASED_FROM = 8;
/** A sum whose orders reach past this share of those that can be told is cut off there, and rings about every edge. */
const CUT_FROM = 0.7;

/** What each order counts: where a sum is cut off rather than ended, orders are eased out so that it rings less. */
function easedBy(harmonics: readonly CardHarmonic[]): (order: number) => number {
  const [highest, last] = [highestOrder({ harmonics }), harmonics.at(-1)!.order];
  return highest > CUT_FROM * last && harmonics.length >= EASED_FROM ? (order) => sinc(order / (last + 1)) : () => 1;
}

function periodOf(harmonics: readonly CardHarmonic[], rate_Hz: number): { readonly period: Waveform; readonly lowest: number } {
  const there = harmonics.filter(({ isThere }) => isThere);
  const eased = easedBy(harmonics);
  let lowest = Infinity;
  const samples = Float64Array.from({ length: CELLS }, (_, cell) => {
    const turn = (2 * Math.PI * (cell + 0.5)) / CELLS;
    // A cell holds the mean within it, which lowers each harmonic a little.
    const light = there.reduce((sum, { order, amplitudeFraction, phase_rad }) => sum + eased(order) * amplitudeFraction * sinc(order / CELLS) * Math.cos(order * turn + phase_rad), 1);
    lowest = Math.min(lowest, light);
    return Math.max(0, light);
  });
  const mean = samples.reduce((sum, light) => sum + light, 0) / CELLS;
  return { period: { period_s: 1 / rate_Hz, samples: samples.map((light) => light / mean) }, lowest };
} // prettier-ignore

/** A wave that is left counts from this share of the strongest on, and where noise would show it once in as many clips. */
const STRANGE = 0.03;
const CHANCE = 0.001;
const MOST_STRANGERS = 4;

/** Beats of what is left that no order of the lamp has. */
function strangersIn(rest: Float64Array, { weights, frameRate_fps }: CardWaveGiven, rate_Hz: number, strongest: number): readonly number[] {
  const grid = spectrumGrid(basisOf({ frameRate_fps, weights: faded(weights), degree: DEGREE }));
  const step_Hz = frameRate_fps / weights.length;
  return findLines(grid, rest, { least_Hz: SLOWEST * step_Hz, mostChance: CHANCE, mostLines: MOST_STRANGERS })
    .filter(({ wave }) => amplitudeOf(wave) > STRANGE * strongest && !isOfLamp(wave.rate_Hz, { rate_Hz, frameRate_fps, step_Hz }))
    .map(({ wave }) => wave.rate_Hz);
} // prettier-ignore

/** The period of a lamp as frames of a card tell it. Undefined where not even its strongest order can be told. */
export function cardWaveOf(given: CardWaveGiven): CardWave | undefined {
  const { light, weights, frameRate_fps, exposureTime_s } = given;
  const basis = basisOf({ frameRate_fps, weights, degree: DEGREE });
  const frameCount = basis.effectiveCount;
  const fittedAt = (series: Float64Array, rate_Hz: number) => {
    const orders = ordersOf({ rate_Hz, frameRate_fps, exposureTime_s, frameCount });
    const place = orders.seen.findIndex(({ order }) => order === given.strongestOrder);
    return {
      rate_Hz,
      orders,
      place,
      ...fittedTogether(
        basis,
        series,
        orders.seen.map(({ order }) => order * rate_Hz),
      ),
    };
  };
  let series = overTrend(basis, light);
  let fitted = fittedAt(series, rateIn(basis, withoutTrend(basis, series), given, given.rate_Hz));
  for (let round = 0; round < ROUNDS && fitted.place >= 0; round += 1) {
    const { rest, waves, place } = fitted;
    const alone = withoutWave(basis, rest, turned(waves[place]!));
    const pulsing = sumOf(waves, given);
    series = overTrend(basis, light, pulsing);
    fitted = fittedAt(series, rateIn(basis, alone, given, fitted.rate_Hz));
  }
  const { rate_Hz, orders, place, waves, rest } = fitted;
  if (place < 0) return undefined;
  const spread = Math.max(spreadOf(basis, rest, 2 * waves.length + DEGREE + 1), Number.EPSILON);
  const amplitude = Math.max(amplitudeOf(waves[place]!), Number.EPSILON);
  const precision = precisionOf({ frameRate_fps, weights, amplitude, spread });
  const told = orders.seen.map(({ order, leftFraction }, i) => ({ order, leftFraction, amplitudeFraction: amplitudeOf(waves[i]!) / leftFraction, noise: precision.amplitude / leftFraction })); // prettier-ignore
  const sizes = told.map(({ order, amplitudeFraction, noise }) => ({ order, size: amplitudeFraction > THERE * noise ? amplitudeFraction : noise })); // prettier-ignore
  const unseen = unseenBy(sizes, orders.unseen);
  const harmonics = told.map(({ order, leftFraction, amplitudeFraction, noise }, i): CardHarmonic => {
    const beside = orders.seen[i]!.meets.map((other) => (unseen.of(other) * Math.abs(sinc(other * rate_Hz * exposureTime_s))) / leftFraction); // prettier-ignore
    return {
      order,
      amplitudeFraction,
      deviationFraction: Math.hypot(noise, ...beside),
      phase_rad: phaseOf_rad(waves[i]!),
      isThere: amplitudeFraction > THERE * noise,
    };
  });
  const { period, lowest } = periodOf(harmonics, rate_Hz);
  const noiseFraction = Math.hypot(...told.map(({ noise }) => noise));
  const lightDeviationFraction = Math.hypot(...harmonics.map(({ deviationFraction }) => deviationFraction), unseen.together); // prettier-ignore
  const [most, least] = [Math.max(...period.samples), Math.min(...period.samples)];
  return {
    rate_Hz,
    rateDeviation_Hz: precision.rate_Hz / given.strongestOrder,
    harmonics,
    orders,
    period,
    depthFraction: (most - least) / (most + least),
    depthDeviationFraction: (2 * lightDeviationFraction * Math.hypot(most, least)) / (most + least) ** 2,
    lightDeviationFraction,
    unseenFraction: Math.sqrt(Math.max(0, lightDeviationFraction ** 2 - noiseFraction ** 2)),
    strangers_Hz: strangersIn(rest, given, rate_Hz, amplitude),
    belowNoneFraction: Math.max(0, -lowest),
  };
}
