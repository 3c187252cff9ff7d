/**
 * How far a drift may hide between two code values. Noise of a pixel lifts it over the step now and then, and the mean then
 * follows the light; without noise nothing does.
 *
 *     hidden = step·exp(−2π²·σ²) / π, at most        σ noise of a pixel, in steps
 *
 * The first term of the series of a staircase under normal noise.
 *
 * @source dither-series
 */
import { bulkSpreadOf, medianOf } from '../../base/median.ts';
import { lightOf, type TransferCurve } from '../transfer.ts';
import { codeOfColour } from './coding.ts';
import type { Balance } from './drift.ts';
import type { ColourSeen } from './meter.ts';
import type { ColourSeries } from './series.ts';

/** The signal that a light was written as, by halving. */
function signalOf(curve: TransferCurve, light: number): number {
  let [low, high] = [0, 1.25];
  for (let i = 0; i < 40; i += 1) {
    const middle = (low + high) / 2;
    if (lightOf(curve, middle) < light) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** How samples scatter from one to the next, where the part stands still in both. */
function scatterOf(values: Float64Array): number | undefined {
  const steps: number[] = [];
  for (let i = 1; i < values.length; i += 1) {
    const step = values[i]! - values[i - 1]!;
    if (!Number.isNaN(step)) steps.push(step);
  }
  return steps.length > 0 ? bulkSpreadOf(steps) / Math.SQRT2 : undefined;
}

function hidden_stops(step_stops: number, parts: readonly Float64Array[], pixels: number): number {
  const scatters = parts.map(scatterOf).filter((of) => of !== undefined);
  const noise = scatters.length > 0 ? (medianOf(scatters) * Math.sqrt(pixels)) / step_stops : 0;
  return (step_stops * Math.exp(-2 * Math.PI ** 2 * noise ** 2)) / Math.PI;
}

/** What may hide of red and of blue over green, on neutral parts of this light. */
export function hiddenBySteps({ grid, options }: ColourSeen, { parts }: ColourSeries, light: number): Balance {
  const { curve, form, coding } = options;
  const signal = signalOf(curve, light);
  const here = lightOf(curve, signal);
  const step = (of: number) => Math.log2(Math.max(lightOf(curve, signal + of), 1e-12) / Math.max(here, 1e-12));
  const pixels = (grid.cellColumns * grid.cellRows) / (grid.columns * grid.rows);
  const { red, blue } = codeOfColour(form, coding);
  return {
    red_stops: hidden_stops(step(red), parts.map(({ red_stops }) => red_stops), pixels),
    blue_stops: hidden_stops(step(blue), parts.map(({ blue_stops }) => blue_stops), pixels),
  };
} // prettier-ignore
