/**
 * Intensity from a measured grid, made to be asked many times: the same sums as `intensityTowards_cd`, without checks,
 * without anything allocated, and without a search where the angles are evenly spaced.
 *
 *     I(C, γ) = linear in γ within a plane, then linear in C between planes, periodic in C
 *
 * @source ies-lm63-importer which planes each range of horizontal angles stands for
 */
import { foldPlane_deg } from '../photometry/intensity.ts';
import type { Grid } from '../photometry/photometry.ts';

interface Axis {
  readonly angles_deg: Float64Array;
  /** Steps per degree where all are even, as nearly as numbers hold it; 0 where they are not. */
  readonly perDegree: number;
}

export interface GridLookup {
  readonly grid: Grid;
  readonly planes: Axis;
  readonly gammas: Axis;
  readonly firstGamma_deg: number;
  readonly lastGamma_deg: number;
  readonly isRotational: boolean;
}

/** Angles this far off the even ones still count as even: the place found is then checked against its neighbours. */
const EVEN = 1e-6;

function axisOf(angles_deg: Float64Array): Axis {
  const last = angles_deg.length - 1;
  if (last < 1) return { angles_deg, perDegree: 0 };
  const step_deg = (angles_deg[last]! - angles_deg[0]!) / last;
  const isEven = angles_deg.every(
    (angle_deg, i) => Math.abs(angle_deg - angles_deg[0]! - i * step_deg) < EVEN * step_deg,
  );
  return { angles_deg, perDegree: isEven ? 1 / step_deg : 0 };
}

const prepared = new WeakMap<Grid, GridLookup>();

let newest: GridLookup | undefined;

/** A grid ready to be asked; the same one each time for the same grid. */
export function lookupOf(grid: Grid): GridLookup {
  if (newest !== undefined && newest.grid === grid) return newest;
  let lookup = prepared.get(grid);
  if (!lookup) {
    const { planes_deg, gammas_deg, symmetry } = grid;
    lookup = {
      grid,
      planes: axisOf(planes_deg),
      gammas: axisOf(gammas_deg),
      firstGamma_deg: gammas_deg[0]!,
      lastGamma_deg: gammas_deg[gammas_deg.length - 1]!,
      isRotational: symmetry === 'rotational' || planes_deg.length === 1,
    };
    prepared.set(grid, lookup);
  }
  newest = lookup;
  return lookup;
}

/** Index of the angle before a value, at most the last but one. */
function before({ angles_deg, perDegree }: Axis, value_deg: number): number {
  const last = angles_deg.length - 2;
  if (perDegree > 0) {
    let index = Math.floor((value_deg - angles_deg[0]!) * perDegree);
    index = index < 0 ? 0 : index > last ? last : index;
    if (index > 0 && angles_deg[index]! > value_deg) return index - 1;
    return index < last && angles_deg[index + 1]! <= value_deg ? index + 1 : index;
  }
  let low = 0;
  let high = last;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (angles_deg[middle]! <= value_deg) low = middle;
    else high = middle - 1;
  }
  return low;
}

const DEGREES_per_rad = 180 / Math.PI;

/**
 * Intensity towards a direction given by its parts across the axis, along C 0 and along C 90, and its angle off the axis.
 * Checks nothing.
 */
export function lookedUp_cd(lookup: GridLookup, right: number, up: number, gamma_deg: number): number {
  const { grid, gammas, planes } = lookup;
  if (gamma_deg < lookup.firstGamma_deg || gamma_deg > lookup.lastGamma_deg) return 0;
  const values = grid.intensities_cd;
  const angles_deg = gammas.angles_deg;
  const count = angles_deg.length;
  if (count === 1) return values[0]!;
  const gamma = before(gammas, gamma_deg);
  const from_deg = angles_deg[gamma]!;
  const share = (gamma_deg - from_deg) / (angles_deg[gamma + 1]! - from_deg);
  if (lookup.isRotational) return values[gamma]! * (1 - share) + values[gamma + 1]! * share;
  const turned_deg = right === 0 && up === 0 ? 0 : Math.atan2(up, right) * DEGREES_per_rad;
  const plane_deg = foldPlane_deg(grid.symmetry, turned_deg);
  const plane = before(planes, plane_deg);
  const planeFrom_deg = planes.angles_deg[plane]!;
  const raw = (plane_deg - planeFrom_deg) / (planes.angles_deg[plane + 1]! - planeFrom_deg);
  const turn = raw < 0 ? 0 : raw > 1 ? 1 : raw;
  const at = plane * count + gamma;
  const here_cd = values[at]! * (1 - share) + values[at + 1]! * share;
  const next_cd = values[at + count]! * (1 - share) + values[at + count + 1]! * share;
  return here_cd * (1 - turn) + next_cd * turn;
}
