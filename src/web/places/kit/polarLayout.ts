/**
 * A polar plot of a lamp's light laid out: how much it sends each way in two planes through its axis. The lamp stands at
 * the centre and its axis points to the right; one half is drawn where it sends nothing behind.
 */
import { intensityTowards_cd } from '../../../laws/light/photometry/intensity.ts';
import type { Grid } from '../../../laws/light/photometry/photometry.ts';
import { polarPoints, profileOf } from '../../../laws/light/photometry/profile.ts';

export interface PolarCircle {
  readonly intensity_cd: number;
  readonly radius: number;
}

export interface PolarSpoke {
  /** Off the axis, 0 to 180. */
  readonly angle_deg: number;
  /** The end of it, and where its label stands. */
  readonly x: number;
  readonly y: number;
  readonly labelX: number;
  readonly labelY: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

export interface PolarLayout {
  readonly width: number;
  readonly height: number;
  readonly centre: { readonly x: number; readonly y: number };
  readonly radius: number;
  readonly isHalf: boolean;
  /** From the innermost out. */
  readonly circles: readonly PolarCircle[];
  readonly spokes: readonly PolarSpoke[];
  /** The curve of each plane as an SVG path; one alone where the light is the same all round. */
  readonly paths: readonly { readonly plane_deg: 0 | 90; readonly d: string }[];
}

const LARGEST_px = 148;
const EDGE = { side: 46, label: 62, top: 24 } as const;
const SPOKE_deg = 30;
const LABEL_px = 9;

/** Light behind that is less than this share of the peak would not be seen in a drawing. */
const SEEN_SHARE = 0.003;

const planesOf = ({ symmetry }: Grid) => (symmetry === 'rotational' ? ([0] as const) : ([0, 90] as const));

const px = (value: number) => Math.round(value * 10) / 10;

/** The smallest step of 1, 2 or 5 tens that takes at most four circles to reach an intensity. */
export function circleStep_cd(peak_cd: number): number {
  const least = peak_cd / 4;
  const decade = 10 ** Math.floor(Math.log10(least) + 1e-9);
  return ([1, 2, 5].find((step) => step * decade >= least * (1 - 1e-9)) ?? 10) * decade;
}

/** Undefined where neither plane has any light. */
export function polarLayout(grid: Grid, width_px: number): PolarLayout | undefined {
  const planes = planesOf(grid);
  const profiles = planes.map((plane_deg) => profileOf(grid, plane_deg));
  const peak_cd = Math.max(...profiles.map(({ intensities_cd }) => intensities_cd.reduce((a, b) => Math.max(a, b), 0)));
  if (!(peak_cd > 0)) return undefined;
  const isHalf = profiles.every(({ angles_deg, intensities_cd }) =>
    intensities_cd.every((cd, i) => Math.abs(angles_deg[i]!) <= 90 || cd < peak_cd * SEEN_SHARE),
  );
  const step_cd = circleStep_cd(peak_cd);
  const circleCount = Math.ceil(peak_cd / step_cd - 1e-9);
  const outermost_cd = step_cd * circleCount;
  const left = isHalf ? EDGE.label : EDGE.side;
  const room = isHalf ? width_px - left - EDGE.side : (width_px - 2 * EDGE.side) / 2;
  const radius = Math.max(60, Math.min(LARGEST_px, room));
  const centre = { x: isHalf ? left : left + radius, y: EDGE.top + radius };
  const last_deg = isHalf ? 90 : 180;
  const spokes = Array.from({ length: (2 * last_deg) / SPOKE_deg + (isHalf ? 1 : 0) }, (_, i): PolarSpoke => {
    const turn_deg = i * SPOKE_deg - (isHalf ? 90 : 150);
    const [along, up] = [Math.cos((turn_deg * Math.PI) / 180), Math.sin((turn_deg * Math.PI) / 180)];
    return {
      angle_deg: Math.abs(turn_deg),
      x: px(centre.x + along * radius),
      y: px(centre.y - up * radius),
      labelX: px(centre.x + along * (radius + LABEL_px)),
      labelY: px(centre.y - up * (radius + LABEL_px)) + 4,
      anchor: along > 0.1 ? 'start' : along < -0.1 ? 'end' : 'middle',
    };
  });
  return {
    width: isHalf ? left + radius + EDGE.side : 2 * (EDGE.side + radius),
    height: 2 * (EDGE.top + radius),
    centre,
    radius,
    isHalf,
    circles: Array.from({ length: circleCount }, (_, i) => ({
      intensity_cd: step_cd * (i + 1),
      radius: (radius * (i + 1)) / circleCount,
    })),
    spokes,
    paths: planes.map((plane_deg) => {
      const points = polarPoints(grid, { plane_deg, outermost_cd });
      const ends = points.map(
        ({ across, along }) => `${px(centre.x + along * radius)} ${px(centre.y - across * radius)}`,
      );
      return { plane_deg, d: `M${ends.filter((end, i) => end !== ends[i - 1]).join('L')}Z` };
    }),
  };
}

/** A side of a plane that the table tells of. */
export interface PolarSide {
  readonly plane_deg: number;
  readonly title: string;
}

export interface PolarTable {
  readonly sides: readonly PolarSide[];
  readonly rows: readonly { readonly angle_deg: number; readonly intensities_cd: readonly number[] }[];
}

const SIDES: Readonly<Record<Grid['symmetry'], readonly (readonly [number, string])[]>> = {
  rotational: [[0, 'all round']],
  quadrants: [
    [0, 'C0 and C180'],
    [90, 'C90 and C270'],
  ],
  'about-c0': [
    [0, 'C0'],
    [180, 'C180'],
    [90, 'C90 and C270'],
  ],
  'about-c90': [
    [0, 'C0 and C180'],
    [90, 'C90'],
    [270, 'C270'],
  ],
  none: [
    [0, 'C0'],
    [180, 'C180'],
    [90, 'C90'],
    [270, 'C270'],
  ],
};

const TABLE_STEPS_deg = [1, 2, 5, 10, 15] as const;
const MOST_ROWS = 13;

/** The same in figures, at even angles out to where the light is as good as gone. */
export function polarTable(grid: Grid): PolarTable {
  const sides = SIDES[grid.symmetry].map(([plane_deg, title]) => ({ plane_deg, title }));
  const at = (angle_deg: number) =>
    sides.map(({ plane_deg }) => intensityTowards_cd(grid, { plane_deg, gamma_deg: angle_deg }));
  const whole = Array.from({ length: 181 }, (_, angle_deg) => Math.max(...at(angle_deg)));
  const peak_cd = Math.max(...whole);
  const reach_deg = whole.findLastIndex((cd) => cd > 0 && cd >= peak_cd * SEEN_SHARE);
  const step_deg = TABLE_STEPS_deg.find((step) => reach_deg / step <= MOST_ROWS - 1) ?? 15;
  const rowCount = Math.min(180 / step_deg, Math.ceil(Math.max(1, reach_deg) / step_deg)) + 1;
  return {
    sides,
    rows: Array.from({ length: rowCount }, (_, i) => ({ angle_deg: i * step_deg, intensities_cd: at(i * step_deg) })),
  };
}
