/**
 * Speed profiles, or ramps: how fast the action runs at each moment of the film, and so how much real time it uses.
 *
 *     t(u) = ∫ s du        over one span of length L, x from 0 to 1, speeds a to b:
 *     linear      t = L·(a·x + (b − a)·x²/2)
 *     smooth      t = L·(a·x + (b − a)·(x³ − x⁴/2))          s follows 3x² − 2x³
 *     geometric   t = L·a·((b/a)^x − 1) / ln(b/a)            equal ratios in equal times
 *
 * u screen time, s        t real time, s        s speed, 1 as on the set, 1/E where every frame is shown once
 *
 * Real time here is counted from the first knot. The integrals are our own; tests hold them against quadrature.
 *
 * @source smoothstep the cubic 3x² − 2x³ and its flat ends
 * @source frame-rate-practice speed as the ratio of play rate to capture rate
 */
import { assertNever, requireNotNegative, requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';

export type RampShape = 'linear' | 'smooth' | 'geometric';

/** The speed wanted at one moment of the film. */
export interface Knot {
  readonly screenTime_s: number;
  readonly speedFraction: number;
}

interface Span {
  readonly length_s: number;
  readonly start: number;
  readonly end: number;
}

/** Speed at x, 0 to 1, along a span. */
function speedAlong({ start, end }: Span, shape: RampShape, x: number): number {
  switch (shape) {
    case 'linear':
      return start + (end - start) * x;
    case 'smooth':
      return start + (end - start) * x * x * (3 - 2 * x);
    case 'geometric':
      return start * (end / start) ** x;
    default:
      return assertNever(shape);
  }
}

/** Real time used from the start of a span to x, 0 to 1, along it. */
function realTimeAlong({ length_s, start, end }: Span, shape: RampShape, x: number): number {
  switch (shape) {
    case 'linear':
      return length_s * x * (start + ((end - start) * x) / 2);
    case 'smooth':
      return length_s * x * (start + (end - start) * x * x * (1 - x / 2));
    case 'geometric': {
      const growth = Math.log1p((end - start) / start);
      // expm1 keeps the digits that a ratio near 1 would lose.
      return length_s * start * (growth === 0 ? x : Math.expm1(growth * x) / growth);
    }
    default:
      return assertNever(shape);
  }
}

function requireProfile(knots: readonly Knot[]): void {
  if (knots.length < 2) throw new RangeError(`knots must be at least 2, got ${knots.length}`);
  for (const [i, { screenTime_s, speedFraction }] of knots.entries()) {
    requireNotNegative({ [`knots[${i}].screenTime_s`]: screenTime_s });
    requirePositive({ [`knots[${i}].speedFraction`]: speedFraction });
    const before = knots[i - 1];
    if (before && screenTime_s <= before.screenTime_s)
      throw new RangeError(`knots[${i}].screenTime_s must be after ${before.screenTime_s}, got ${screenTime_s}`);
  }
}

function requireOnProfile(knots: readonly Knot[], screenTime_s: number): void {
  requireProfile(knots);
  requireWithin(knots[0]!.screenTime_s, knots.at(-1)!.screenTime_s, { screenTime_s });
}

/** The span from knot i − 1 to knot i, with how far along it a moment lies, 0 before it and 1 after. */
function spanTo(knots: readonly Knot[], i: number, screenTime_s: number): { readonly span: Span; readonly x: number } {
  const [from, to] = [knots[i - 1]!, knots[i]!];
  const length_s = to.screenTime_s - from.screenTime_s;
  const x = Math.min(1, Math.max(0, (screenTime_s - from.screenTime_s) / length_s));
  return { span: { length_s, start: from.speedFraction, end: to.speedFraction }, x };
}

/**
 * Real time used from the first knot until a moment of the film. Throws RangeError, naming the knot, unless knots are at
 * least two, ascend in screen time and have positive speeds, or if the moment lies outside them.
 */
export function realTimeAt_s(knots: readonly Knot[], shape: RampShape, screenTime_s: number): number {
  requireOnProfile(knots, screenTime_s);
  let real_s = 0;
  for (let i = 1; i < knots.length; i += 1) {
    const { span, x } = spanTo(knots, i, screenTime_s);
    real_s += realTimeAlong(span, shape, x);
  }
  return real_s;
}

/** Real time that the whole profile uses: what the camera's memory must hold. Throws RangeError as `realTimeAt_s` does. */
export function realTimeOfProfile_s(knots: readonly Knot[], shape: RampShape): number {
  requireProfile(knots);
  return realTimeAt_s(knots, shape, knots.at(-1)!.screenTime_s);
}

/** The least speed of a profile, which sets its capture rate. Throws RangeError as `realTimeAt_s` does. */
export function slowestSpeed(knots: readonly Knot[]): number {
  requireProfile(knots);
  return knots.reduce((least, { speedFraction }) => Math.min(least, speedFraction), Infinity);
}

/** Speed at a moment of the film. Throws RangeError as `realTimeAt_s` does. */
export function speedAt(knots: readonly Knot[], shape: RampShape, screenTime_s: number): number {
  requireOnProfile(knots, screenTime_s);
  const i = Math.max(
    1,
    knots.findIndex((knot) => screenTime_s <= knot.screenTime_s),
  );
  const { span, x } = spanTo(knots, i, screenTime_s);
  return speedAlong(span, shape, x);
}

/** Real time that one ramp uses. Throws RangeError outside positive inputs. */
export function realTimeOfRamp_s(given: {
  readonly screenTime_s: number;
  readonly startSpeedFraction: number;
  readonly endSpeedFraction: number;
  readonly shape: RampShape;
}): number {
  const { screenTime_s, startSpeedFraction, endSpeedFraction, shape } = given;
  requirePositive({ screenTime_s, startSpeedFraction, endSpeedFraction });
  return realTimeAlong({ length_s: screenTime_s, start: startSpeedFraction, end: endSpeedFraction }, shape, 1);
}

export const rampRealTime = law(realTimeOfRamp_s, {
  id: 'ramp-real-time',
  title: 'Real time of a ramp',
  says: 'How much of the action a change of speed uses up while it runs on screen.',
  equation: 'linear and smooth: t = L·(a + b)/2; geometric: t = L·(b − a)/ln(b/a)',
  takes: {
    screenTime_s: 'Time on screen',
    startSpeedFraction: { title: 'Speed at the start', as: 'fraction', note: '1 is as on the set' },
    endSpeedFraction: { title: 'Speed at the end', as: 'fraction' },
    shape: {
      title: 'Shape',
      choices: {
        linear: 'speed changes by equal amounts',
        smooth: 'speed eases in and out of the change',
        geometric: 'speed changes by equal ratios, which looks even',
      },
    },
  },
  gives: { captureTime_s: 'Time on the set' },
  holds: 'The speed is made afterwards from frames taken at one rate; one span between two speeds.',
  sources: ['smoothstep', 'frame-rate-practice'],
  words: ['speed ramp', 'retime', 'speed change', 'ease'],
  example: { screenTime_s: 2, startSpeedFraction: 1, endSpeedFraction: 0.025, shape: 'geometric' },
});
