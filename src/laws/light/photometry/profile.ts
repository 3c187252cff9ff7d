/**
 * The light in one plane through the lamp's axis, as a closed line round it: what beam angles are read from and what a
 * polar plot draws.
 *
 * Angles run from −180 to 180 about the axis, positive on the side of the plane named and negative on the side opposite.
 * Where the measurement ends short of the axis or of 180 the line steps down to 0, as no light is reckoned with there.
 */
import { intensityTowards_cd } from './intensity.ts';
import type { Grid } from './photometry.ts';

export interface Profile {
  /** From −180 to 180, ascending; twice the same where the line steps. */
  readonly angles_deg: Float64Array;
  readonly intensities_cd: Float64Array;
}

/** The profile of the plane through C and C + 180. Throws RangeError unless the plane is finite. */
export function profileOf(grid: Grid, plane_deg: number): Profile {
  const gammas_deg = [...grid.gammas_deg];
  const [first_deg, last_deg] = [gammas_deg[0]!, gammas_deg.at(-1)!];
  const angles_deg: number[] = [];
  const intensities_cd: number[] = [];
  const add = (angle_deg: number, intensity_cd: number) => {
    angles_deg.push(angle_deg);
    intensities_cd.push(intensity_cd);
  };
  const measured = (side_deg: number, gamma_deg: number) =>
    intensityTowards_cd(grid, { plane_deg: side_deg, gamma_deg });
  // The axis belongs to both sides: where a file gives them apart, their mean is drawn.
  const onAxis = (gamma_deg: number) => (measured(plane_deg, gamma_deg) + measured(plane_deg + 180, gamma_deg)) / 2;

  const side = (sign: 1 | -1) => {
    for (const gamma_deg of sign > 0 ? gammas_deg : gammas_deg.toReversed()) {
      if (gamma_deg === 0 && sign < 0) continue;
      const isShared = gamma_deg === 0 || gamma_deg === 180;
      add(sign * gamma_deg, isShared ? onAxis(gamma_deg) : measured(sign > 0 ? plane_deg : plane_deg + 180, gamma_deg));
    }
  };
  if (last_deg < 180) {
    add(-180, 0);
    add(-last_deg, 0);
  }
  side(-1);
  if (first_deg > 0) {
    add(-first_deg, 0);
    add(first_deg, 0);
  }
  side(1);
  if (last_deg < 180) {
    add(last_deg, 0);
    add(180, 0);
  }
  return { angles_deg: Float64Array.from(angles_deg), intensities_cd: Float64Array.from(intensities_cd) };
}

export interface PolarPoint {
  readonly angle_deg: number;
  readonly intensity_cd: number;
  /** Along the plane, and along the axis, as shares of a radius: 1 is `outermost_cd`. */
  readonly across: number;
  readonly along: number;
}

/** Chords of curves stay within 0.02 % of a circle's radius at this step. */
const DRAWN_STEP_deg = 2;

/**
 * Points of a closed polar curve of one plane, for a drawing whose outermost circle stands for an intensity. Throws
 * RangeError unless that intensity is positive.
 */
export function polarPoints(
  grid: Grid,
  { plane_deg, outermost_cd }: { readonly plane_deg: number; readonly outermost_cd: number },
): readonly PolarPoint[] {
  if (!(outermost_cd > 0 && outermost_cd < Infinity))
    throw new RangeError(`outermost_cd must be positive and finite, got ${outermost_cd}`);
  const { angles_deg, intensities_cd } = profileOf(grid, plane_deg);
  const points: PolarPoint[] = [];
  const add = (angle_deg: number, intensity_cd: number) => {
    const turn = (angle_deg * Math.PI) / 180;
    const radius = intensity_cd / outermost_cd;
    points.push({ angle_deg, intensity_cd, across: radius * Math.sin(turn), along: radius * Math.cos(turn) });
  };
  add(angles_deg[0]!, intensities_cd[0]!);
  for (let i = 1; i < angles_deg.length; i += 1) {
    const [from_deg, to_deg] = [angles_deg[i - 1]!, angles_deg[i]!];
    const [from_cd, to_cd] = [intensities_cd[i - 1]!, intensities_cd[i]!];
    // Where there is no light the curve rests at the centre.
    const steps = from_cd + to_cd > 0 ? Math.max(1, Math.ceil((to_deg - from_deg) / DRAWN_STEP_deg)) : 1;
    for (let k = 1; k <= steps; k += 1)
      add(from_deg + ((to_deg - from_deg) * k) / steps, from_cd + ((to_cd - from_cd) * k) / steps);
  }
  return points;
}
