/**
 * Intensity towards any direction, from a measured grid.
 *
 *     I(C, γ) = linear in γ within a plane, then linear in C between planes, periodic in C
 *
 * Planes that the file left to symmetry are found by folding C into those it holds. Outside the γ that were measured the
 * answer is 0.
 *
 * @source ies-lm63-importer which planes each range of horizontal angles stands for
 * @source eulumdat-page which planes each symmetry indicator stands for
 */
import { requireFinite, requireWithin } from '../../../base/domain.ts';
import type { Grid, Symmetry } from './photometry.ts';

/** A direction from the lamp. */
export interface Direction {
  /** The C plane; any turn, wrapped. */
  readonly plane_deg: number;
  /** From the lamp's axis, 0 to 180. */
  readonly gamma_deg: number;
}

/** The plane among those held that a plane equals by symmetry. */
export function foldPlane_deg(symmetry: Symmetry, plane_deg: number): number {
  const turn_deg = plane_deg - 360 * Math.floor(plane_deg / 360);
  const half_deg = turn_deg > 180 ? 360 - turn_deg : turn_deg;
  switch (symmetry) {
    case 'rotational':
      return 0;
    case 'quadrants':
      return half_deg > 90 ? 180 - half_deg : half_deg;
    case 'about-c0':
      return half_deg;
    case 'about-c90':
      if (turn_deg < 90) return 180 - turn_deg;
      return turn_deg > 270 ? 540 - turn_deg : turn_deg;
    case 'none':
      return turn_deg;
  }
}

/** Index of the last of some ascending angles that is not above a value; the value must not be below the first. */
function indexBelow(angles_deg: Float64Array, value_deg: number): number {
  let low = 0;
  let high = angles_deg.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (angles_deg[middle]! <= value_deg) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Where a value stands among ascending angles: the index before it, and the share of the way to the next. */
function standing(angles_deg: Float64Array, value_deg: number): { readonly index: number; readonly share: number } {
  const last = angles_deg.length - 1;
  const index = Math.min(indexBelow(angles_deg, value_deg), Math.max(0, last - 1));
  if (last === 0) return { index: 0, share: 0 };
  const [from_deg, to_deg] = [angles_deg[index]!, angles_deg[index + 1]!];
  return { index, share: Math.min(1, Math.max(0, (value_deg - from_deg) / (to_deg - from_deg))) };
}

/** Intensity towards a direction. Throws RangeError unless the plane is finite and γ within 0 to 180. */
export function intensityTowards_cd(grid: Grid, { plane_deg, gamma_deg }: Direction): number {
  requireFinite({ plane_deg });
  requireWithin(0, 180, { gamma_deg });
  const { symmetry, planes_deg, gammas_deg, intensities_cd } = grid;
  const count = gammas_deg.length;
  if (gamma_deg < gammas_deg[0]! || gamma_deg > gammas_deg[count - 1]!) return 0;
  const plane = standing(planes_deg, foldPlane_deg(symmetry, plane_deg));
  const gamma = standing(gammas_deg, gamma_deg);
  const along = (index: number): number => {
    const at = index * count + gamma.index;
    return intensities_cd[at]! * (1 - gamma.share) + intensities_cd[at + 1]! * gamma.share;
  };
  const here_cd = along(plane.index);
  return plane.share === 0 ? here_cd : here_cd * (1 - plane.share) + along(plane.index + 1) * plane.share;
}

/** The brightest point of a grid; of equals, the one nearest the axis, then in the first plane. */
export function peakOf(grid: Grid): Direction & { readonly intensity_cd: number } {
  const { planes_deg, gammas_deg, intensities_cd } = grid;
  const count = gammas_deg.length;
  let best = { intensity_cd: -1, plane_deg: 0, gamma_deg: 0 };
  for (let at = 0; at < intensities_cd.length; at += 1) {
    const intensity_cd = intensities_cd[at]!;
    if (intensity_cd < best.intensity_cd) continue;
    const gamma_deg = gammas_deg[at % count]!;
    if (intensity_cd > best.intensity_cd || gamma_deg < best.gamma_deg)
      best = { intensity_cd, plane_deg: planes_deg[Math.floor(at / count)]!, gamma_deg };
  }
  return best;
}
