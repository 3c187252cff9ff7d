/**
 * How wide a beam is: the angle between the directions, either side of the brightest, where the light falls to a share of it.
 *
 *     beam angle: half of the peak        field angle: a tenth of the peak
 *
 * Read in one plane through the axis, against the brightest direction in that plane.
 *
 * @source beam-angle-entry beam and field angle as half and a tenth of the highest intensity, in two planes at 90°
 */
import { requirePositive, requireWithin } from '../../../base/domain.ts';
import type { Grid } from './photometry.ts';
import { profileOf, type Profile } from './profile.ts';

/** The share of the peak at the edge of a beam. @source beam-angle-entry */
export const BEAM_SHARE = 0.5;
/** The share of the peak at the edge of a field. @source beam-angle-entry */
export const FIELD_SHARE = 0.1;

export interface Spread {
  readonly width_deg: number;
  /** The edges, as angles of the plane's profile; beyond ±180 where the lobe reaches round the back. */
  readonly from_deg: number;
  readonly to_deg: number;
  /** Whether the plane holds that much light outside these edges too: a hollow or a two-way beam. */
  readonly hasOtherLobes: boolean;
}

function brightest({ angles_deg, intensities_cd }: Profile): number {
  let best = 0;
  for (let i = 1; i < angles_deg.length; i += 1) {
    const more_cd = intensities_cd[i]! - intensities_cd[best]!;
    if (more_cd > 0 || (more_cd === 0 && Math.abs(angles_deg[i]!) < Math.abs(angles_deg[best]!))) best = i;
  }
  return best;
}

/** The edge met going one way round from a point of a profile, or undefined when there is none. */
function edgeFrom(
  { angles_deg, intensities_cd }: Profile,
  { start, threshold_cd, way }: { readonly start: number; readonly threshold_cd: number; readonly way: 1 | -1 },
): number | undefined {
  const count = angles_deg.length;
  let turn_deg = 0;
  let here = start;
  for (let step = 0; step < count; step += 1) {
    let next = here + way;
    if (next < 0 || next === count) {
      // −180 and 180 are the same direction: step across to it.
      next = way > 0 ? 0 : count - 1;
      turn_deg += way * 360;
      here = next;
      continue;
    }
    const [here_cd, next_cd] = [intensities_cd[here]!, intensities_cd[next]!];
    if (next_cd < threshold_cd) {
      const share = (here_cd - threshold_cd) / (here_cd - next_cd);
      return turn_deg + angles_deg[here]! + share * (angles_deg[next]! - angles_deg[here]!);
    }
    here = next;
  }
  return undefined;
}

/**
 * The lobe about the brightest direction of a plane, out to a share of its intensity; undefined where the plane is dark or
 * never falls so far, as with a bare bulb. Throws RangeError unless the share is above 0 and at most 1.
 */
export function spreadOf(
  grid: Grid,
  { plane_deg, share }: { readonly plane_deg: number; readonly share: number },
): Spread | undefined {
  requirePositive({ share });
  requireWithin(0, 1, { share });
  const profile = profileOf(grid, plane_deg);
  const start = brightest(profile);
  const peak_cd = profile.intensities_cd[start]!;
  if (peak_cd === 0) return undefined;
  const threshold_cd = share * peak_cd;
  const to_deg = edgeFrom(profile, { start, threshold_cd, way: 1 });
  const from_deg = edgeFrom(profile, { start, threshold_cd, way: -1 });
  if (to_deg === undefined || from_deg === undefined) return undefined;
  const isInside = (angle_deg: number) =>
    [angle_deg - 360, angle_deg, angle_deg + 360].some((turned_deg) => turned_deg >= from_deg && turned_deg <= to_deg);
  const hasOtherLobes = profile.angles_deg.some(
    (angle_deg, i) => profile.intensities_cd[i]! >= threshold_cd && !isInside(angle_deg),
  );
  return { width_deg: to_deg - from_deg, from_deg, to_deg, hasOtherLobes };
}

export interface PlaneSpreads {
  readonly beam: Spread | undefined;
  readonly field: Spread | undefined;
}

/** Beam and field angle in the two principal planes. */
export function principalSpreads(grid: Grid): { readonly c0: PlaneSpreads; readonly c90: PlaneSpreads } {
  const both = (plane_deg: number): PlaneSpreads => ({
    beam: spreadOf(grid, { plane_deg, share: BEAM_SHARE }),
    field: spreadOf(grid, { plane_deg, share: FIELD_SHARE }),
  });
  return { c0: both(0), c90: both(90) };
}
