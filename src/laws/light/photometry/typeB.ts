/**
 * Floodlight files of photometric type B, brought to C planes and γ angles.
 *
 * Their planes share a horizontal axis across the beam. With x to the side, y up and z along the beam,
 *
 *     H = asin x        V = atan2(y, z)        and so        direction = (sin H, cos H · sin V, cos H · cos V)
 *
 * C0 lies along +x, C90 along +y, γ is the angle from z. The file's own points lie on no C plane but the principal ones,
 * so the grid is drawn anew from them: exact in the two principal planes, interpolated elsewhere. Where the file measured
 * nothing the lamp is taken as dark.
 *
 * @source lm-63 planes of type B share a horizontal axis
 * @source ies-lm63-importer the same equations for H and V
 */
import type { Grid } from './photometry.ts';

const DEGREE_rad = Math.PI / 180;
const PLANE_STEP_deg = 5;
const GAMMA_STEP_deg = 1;
/** Above this many distinct angles a file is finer than any goniometer; an even grid of a tenth of a degree stands in. */
const MOST_GAMMAS = 2000;

export interface TypeBGrid {
  /** Ascending, −90 to 90. */
  readonly verticals_deg: Float64Array;
  /** Ascending, −90 to 90, or from 0 where both sides are alike. */
  readonly horizontals_deg: Float64Array;
  /** Each horizontal angle's values in turn. */
  readonly intensities_cd: Float64Array;
}

function shareAmong(
  angles_deg: Float64Array,
  value_deg: number,
): { readonly index: number; readonly share: number } | undefined {
  const last = angles_deg.length - 1;
  // Rounding in the angles' way there and back must not push a point off the grid's edge.
  const slack_deg = 1e-9;
  if (value_deg < angles_deg[0]! - slack_deg || value_deg > angles_deg[last]! + slack_deg) return undefined;
  let [low, high] = [0, last - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (angles_deg[middle]! <= value_deg) low = middle;
    else high = middle - 1;
  }
  const [from_deg, to_deg] = [angles_deg[low]!, angles_deg[low + 1]!];
  return { index: low, share: Math.min(1, Math.max(0, (value_deg - from_deg) / (to_deg - from_deg))) };
}

/** Intensity at a vertical and a horizontal angle of a type B grid, 0 outside it. */
function typeBIntensity_cd(grid: TypeBGrid, vertical_deg: number, horizontal_deg: number): number {
  const { verticals_deg, horizontals_deg, intensities_cd } = grid;
  const isMirrored = horizontals_deg[0] === 0;
  const v = shareAmong(verticals_deg, vertical_deg);
  const h = shareAmong(horizontals_deg, isMirrored ? Math.abs(horizontal_deg) : horizontal_deg);
  if (!v || !h) return 0;
  const along = (plane: number): number => {
    const at = plane * verticals_deg.length + v.index;
    return intensities_cd[at]! * (1 - v.share) + intensities_cd[at + 1]! * v.share;
  };
  return along(h.index) * (1 - h.share) + along(h.index + 1) * h.share;
}

function gammasFor({ verticals_deg, horizontals_deg }: TypeBGrid): Float64Array {
  const own = new Set<number>();
  for (const angle of verticals_deg) own.add(Math.abs(angle));
  for (const angle of horizontals_deg) own.add(Math.abs(angle));
  if (own.size > MOST_GAMMAS) return Float64Array.from({ length: 901 }, (_, i) => i / 10);
  for (let gamma_deg = 0; gamma_deg <= 90; gamma_deg += GAMMA_STEP_deg) own.add(gamma_deg);
  return Float64Array.from(own).sort();
}

/** A type B grid as C planes every 5° and γ at its own angles and every degree, to 90°. */
export function gridOfTypeB(grid: TypeBGrid): Grid {
  const gammas_deg = gammasFor(grid);
  const planes_deg = Float64Array.from({ length: 360 / PLANE_STEP_deg + 1 }, (_, i) => i * PLANE_STEP_deg);
  const intensities_cd = new Float64Array(planes_deg.length * gammas_deg.length);
  for (const [p, plane_deg] of planes_deg.entries()) {
    // Quarter turns exactly, so that points of the principal planes meet the file's own.
    const turn = (plane_deg % 360) * DEGREE_rad;
    const across = plane_deg % 180 === 90 ? 0 : Math.cos(turn);
    const up = plane_deg % 180 === 0 ? 0 : Math.sin(turn);
    for (const [k, gamma_deg] of gammas_deg.entries()) {
      const gamma = gamma_deg * DEGREE_rad;
      const x = Math.sin(gamma) * across;
      const y = Math.sin(gamma) * up;
      const z = gamma_deg === 90 ? 0 : Math.cos(gamma);
      const horizontal_deg = Math.asin(x) / DEGREE_rad;
      // At the ends of the horizontal axis every V is the same direction.
      const vertical_deg = y === 0 && z === 0 ? 0 : Math.atan2(y, z) / DEGREE_rad;
      intensities_cd[p * gammas_deg.length + k] = typeBIntensity_cd(grid, vertical_deg, horizontal_deg);
    }
  }
  return { symmetry: 'none', planes_deg, gammas_deg, intensities_cd };
}
