/** A ruler of length about a zero: round steps in the units the shoot is written in, as many as there is room for. */
import type { UnitSystem } from '../../../base/quantity.ts';

const INCH_m = 0.0254;
const FOOT_m = 0.3048;

const LEADS = [1, 2, 5] as const;
/** As a tape is divided; whole feet after that. */
const INCH_STEPS_in = [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 3, 6] as const;

function decimalStep(least: number): number {
  const decade = 10 ** Math.floor(Math.log10(least) + 1e-12);
  return (LEADS.find((lead) => lead * decade >= least * (1 - 1e-9)) ?? 10) * decade;
}

export interface RulerSpan {
  readonly from_m: number;
  readonly to_m: number;
  /** Most ticks there is room for. */
  readonly most: number;
  readonly system: UnitSystem;
}

export interface LengthRuler {
  readonly step_m: number;
  readonly unit: 'mm' | 'm' | 'in' | 'ft';
  readonly ticks: readonly { readonly at_m: number; readonly label: string }[];
}

function stepOf(least_m: number, system: UnitSystem): number {
  if (system === 'metric') return decimalStep(least_m);
  const inches = INCH_STEPS_in.find((step) => step * INCH_m >= least_m * (1 - 1e-9));
  return inches === undefined ? decimalStep(least_m / FOOT_m) * FOOT_m : inches * INCH_m;
}

function unitOf(step_m: number, system: UnitSystem): { readonly unit: LengthRuler['unit']; readonly per_m: number } {
  if (system === 'imperial') return step_m < FOOT_m * 0.99 ? { unit: 'in', per_m: INCH_m } : { unit: 'ft', per_m: FOOT_m };
  return step_m < 0.19 ? { unit: 'mm', per_m: 1e-3 } : { unit: 'm', per_m: 1 };
} // prettier-ignore

/** The ruler over a span that holds zero; labels count away from it on both sides, without a sign. */
export function lengthRuler({ from_m, to_m, most, system }: RulerSpan): LengthRuler {
  const step_m = stepOf((to_m - from_m) / Math.max(1, most), system);
  const { unit, per_m } = unitOf(step_m, system);
  const first = Math.ceil(from_m / step_m - 1e-9);
  const last = Math.floor(to_m / step_m + 1e-9);
  const label = (at_m: number) => String(Number((Math.abs(at_m) / per_m).toPrecision(4)));
  const ticks = Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => {
    const at_m = first + i === 0 ? 0 : (first + i) * step_m;
    return { at_m, label: label(at_m) };
  });
  return { step_m, unit, ticks };
}
