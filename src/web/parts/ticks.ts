/** Ticks of a ruler of time: round steps, as many as there is room for. */

const STEPS = [1, 2, 5] as const;
/** Steps people count minutes and hours in. */
const SIXTIES_s = [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14_400] as const;

/** The smallest round step that puts at most `most` ticks in `span_s`. */
export function tickStep_s({ span_s, most }: { readonly span_s: number; readonly most: number }): number {
  const least_s = span_s / Math.max(1, most);
  if (least_s > 5) return SIXTIES_s.find((step_s) => step_s >= least_s) ?? 86_400;
  const decade = 10 ** Math.floor(Math.log10(least_s));
  return (STEPS.find((step) => step * decade >= least_s * (1 - 1e-9)) ?? 10) * decade;
}

export interface TickRange {
  readonly from_s: number;
  readonly to_s: number;
  readonly step_s: number;
}

/** Multiples of the step from one time to another, both included. */
export function ticksWithin({ from_s, to_s, step_s }: TickRange): readonly number[] {
  const first = Math.ceil(from_s / step_s - 1e-9);
  const last = Math.floor(to_s / step_s + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i === 0 ? 0 : (first + i) * step_s));
}

/** Units of a ruler, each from the step at which it reads well. */
const UNITS = [
  { symbol: 'h', per_s: 3600, from_s: 3600 },
  { symbol: 'min', per_s: 60, from_s: 60 },
  { symbol: 's', per_s: 1, from_s: 0.1 },
  { symbol: 'ms', per_s: 1e-3, from_s: 0.0001 },
  { symbol: 'µs', per_s: 1e-6, from_s: 0 },
] as const;

export interface TickToLabel {
  readonly time_s: number;
  readonly step_s: number;
  /** The step from which the ruler counts in seconds. */
  readonly secondsFrom_s?: number;
}

/** One unit for all the ticks of a ruler, chosen by its step. */
export function labelTick({ time_s, step_s, secondsFrom_s = 0.1 }: TickToLabel): string {
  const unit = UNITS.find(({ symbol, from_s }) => step_s >= (symbol === 's' ? secondsFrom_s : from_s) * 0.999)!;
  const decimals = Math.max(0, Math.ceil(-Math.log10(step_s / unit.per_s) - 1e-9));
  const number = time_s === 0 ? '0' : Math.abs(time_s / unit.per_s).toFixed(decimals);
  return `${time_s < 0 && Number(number) !== 0 ? '−' : ''}${number} ${unit.symbol}`;
}
