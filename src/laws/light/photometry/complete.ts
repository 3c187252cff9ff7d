/** The last step of every reader: a grid that has light in it, with its flux and what its own figures say against it. */
import { fluxOf_lm } from './flux.ts';
import { peakOf } from './intensity.ts';
import type { Grid, Notice, Photometry } from './photometry.ts';
import { refuse } from './refusal.ts';

/** Most values of a grid, planes times angles. */
export const MOST_VALUES = 1_000_000;
/** Bounds of what can be a lamp at all, wide on purpose. */
const BRIGHTEST_cd = 1e12;
const DIMMEST_cd = 1e-6;
/** How far planes may differ where they all meet, on the axis, as a share of the peak, before it is told. */
const AXIS_SHARE = 0.01;
const OVER_RATED = 1.05;

function axisNotices(grid: Grid, peak_cd: number): readonly Notice[] {
  const { planes_deg, gammas_deg, intensities_cd } = grid;
  const count = gammas_deg.length;
  const ends = [
    { gamma: 0, isOnAxis: gammas_deg[0] === 0 },
    { gamma: count - 1, isOnAxis: gammas_deg[count - 1] === 180 },
  ];
  return ends.flatMap(({ gamma, isOnAxis }) => {
    if (!isOnAxis || planes_deg.length === 1) return [];
    let [low_cd, high_cd] = [Infinity, 0];
    for (let plane = 0; plane < planes_deg.length; plane += 1) {
      const here_cd = intensities_cd[plane * count + gamma]!;
      low_cd = Math.min(low_cd, here_cd);
      high_cd = Math.max(high_cd, here_cd);
    }
    if (high_cd - low_cd <= AXIS_SHARE * peak_cd) return [];
    return [
      {
        code: 'photometry.axis-differs',
        what: `All planes meet at γ ${gammas_deg[gamma]!}°, yet give ${round(low_cd)} to ${round(high_cd)} cd there.`,
      },
    ];
  });
}

/** Four digits for a message, the same everywhere. */
const round = (value: number): string => String(Number(value.toPrecision(4)));

/**
 * A whole photometry from its parts. Refuses a grid without light and one brighter than any lamp; tells where planes
 * disagree on the axis and where more light leaves the lamp than is stated to enter it.
 */
export function complete(parts: Omit<Photometry, 'flux_lm'>): Photometry {
  const { intensity_cd: peak_cd } = peakOf(parts);
  if (peak_cd < DIMMEST_cd)
    refuse({
      code: 'photometry.no-light',
      what: 'Every intensity in the file is 0',
      line: 0,
      mend: 'Ask the maker for a measured file, or describe the lamp by a reading in lux at a distance.',
    });
  if (peak_cd > BRIGHTEST_cd)
    refuse({
      code: 'photometry.too-bright',
      what: `The brightest direction comes to ${round(peak_cd)} cd, which no lamp has`,
      line: 0,
      mend: 'Check the multipliers of the file, and whether its values are candela.',
    });
  const flux_lm = fluxOf_lm(parts);
  const { ratedFlux_lm } = parts;
  const overRated: readonly Notice[] =
    ratedFlux_lm !== undefined && flux_lm > OVER_RATED * ratedFlux_lm
      ? [
          {
            code: 'photometry.over-rated',
            what: `${round(flux_lm)} lm leave the lamp, more than the ${round(ratedFlux_lm)} lm stated to be in it; the stated figure may be for one lamp of several.`,
          },
        ]
      : [];
  return { ...parts, flux_lm, notices: [...parts.notices, ...axisNotices(parts, peak_cd), ...overRated] };
}
