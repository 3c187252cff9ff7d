/**
 * Light from a rectangular panel where a closed form is known: on a surface parallel to it, and on a table it stands by.
 *
 *     parallel   F = (1/2π)·[A/√(1+A²)·atan(B/√(1+A²)) + B/√(1+B²)·atan(A/√(1+B²))],  A = a/c, B = b/c
 *     standing   F = (1/2π)·[atan(1/Y) − Y/√(X²+Y²)·atan(1/√(X²+Y²))],  X = a/b, Y = c/b
 *
 * F configuration factor to a rectangle a × b: parallel, at distance c opposite one corner; standing, its lower edge b on
 * the table, height a, the point at distance c from one lower corner, square to the panel. E = π·L·F
 *
 * Other points are sums and differences of four such corners. The panel is matte and evenly bright.
 *
 * @source configuration-factors both forms
 * @source factor-examples rectangles worked
 */
import { requireFinite, requireNotNegative, requirePositive } from '../../../base/domain.ts';
import { law } from '../../law.ts';

/** Odd in a and b, so that corners on the far side of the point take themselves away. */
function parallelCorner(a: number, b: number): number {
  const [p, q] = [Math.sqrt(1 + a * a), Math.sqrt(1 + b * b)];
  return ((a / p) * Math.atan(b / p) + (b / q) * Math.atan(a / q)) / (2 * Math.PI);
}

export interface PanelGiven {
  readonly width_m: number;
  readonly height_m: number;
  readonly distance_m: number;
  readonly right_m?: number;
  readonly up_m?: number;
}

/** Configuration factor from a parallel surface to a panel. Throws RangeError outside positive sizes and distance. */
export function parallelPanelFactor({ width_m, height_m, distance_m, right_m = 0, up_m = 0 }: PanelGiven): number {
  requirePositive({ width_m, height_m, distance_m });
  requireFinite({ right_m, up_m });
  const [x0, x1] = [(-width_m / 2 - right_m) / distance_m, (width_m / 2 - right_m) / distance_m];
  const [y0, y1] = [(-height_m / 2 - up_m) / distance_m, (height_m / 2 - up_m) / distance_m];
  return Math.max(0, parallelCorner(x1, y1) - parallelCorner(x0, y1) - parallelCorner(x1, y0) + parallelCorner(x0, y0));
}

/** Even in nothing, odd in the width: a corner left of the point counts against. */
function standingCorner(height_m: number, width_m: number, distance_m: number): number {
  if (height_m === 0) return 0;
  const slant_m = Math.hypot(height_m, distance_m);
  return (Math.atan(width_m / distance_m) - (distance_m / slant_m) * Math.atan(width_m / slant_m)) / (2 * Math.PI);
}

export interface StandingGiven {
  readonly width_m: number;
  readonly height_m: number;
  readonly distance_m: number;
  readonly raised_m?: number;
  readonly right_m?: number;
}

/** Configuration factor from a table to a panel that stands upright beside it. Throws RangeError outside its domain. */
export function standingPanelFactor(given: StandingGiven): number {
  const { width_m, height_m, distance_m, raised_m = 0, right_m = 0 } = given;
  requirePositive({ width_m, height_m, distance_m });
  requireNotNegative({ raised_m });
  requireFinite({ right_m });
  const upTo = (top_m: number) =>
    standingCorner(top_m, width_m / 2 - right_m, distance_m) -
    standingCorner(top_m, -width_m / 2 - right_m, distance_m);
  return Math.max(0, upTo(raised_m + height_m) - upTo(raised_m));
}

interface Bright {
  readonly luminance_cd_per_m2: number;
}

/** Light on a surface parallel to a panel. Throws RangeError outside its domain. */
export function panelLight(given: PanelGiven & Bright): {
  readonly illuminance_lx: number;
  readonly factorFraction: number;
} {
  requireNotNegative({ luminance_cd_per_m2: given.luminance_cd_per_m2 });
  const factorFraction = parallelPanelFactor(given);
  return { illuminance_lx: Math.PI * given.luminance_cd_per_m2 * factorFraction, factorFraction };
}

/** Light on a table from a panel that stands by it. Throws RangeError outside its domain. */
export function standingPanelLight(given: StandingGiven & Bright): {
  readonly illuminance_lx: number;
  readonly factorFraction: number;
} {
  requireNotNegative({ luminance_cd_per_m2: given.luminance_cd_per_m2 });
  const factorFraction = standingPanelFactor(given);
  return { illuminance_lx: Math.PI * given.luminance_cd_per_m2 * factorFraction, factorFraction };
}

const PANEL = {
  width_m: 'Width of the panel',
  height_m: 'Height of the panel',
  luminance_cd_per_m2: { title: 'Luminance of the panel', note: 'measured with a spot meter over its face' },
} as const;
const GIVES = {
  illuminance_lx: 'Illuminance',
  factorFraction: { title: 'Share of a bright half sphere', as: 'fraction' },
} as const;
const COMMON = {
  sources: ['configuration-factors', 'factor-examples'],
  cautions: ['intense-light', 'heat'],
  words: [
    'softbox',
    'diffusion frame',
    'silk',
    'bounce',
    'book light',
    'window',
    'configuration factor',
    'view factor',
  ],
};
const HOLDS =
  'A matte panel, evenly bright. Thin diffusion throws forward and has a hot middle; walls and table add what they send back.';

export const panelIlluminance = law(panelLight, {
  id: 'panel-light',
  title: 'Light from a softbox or bounce',
  says: 'What a rectangular panel gives on a surface that faces it, also from close by.',
  equation: 'E = π · L · F, F from four corners',
  takes: {
    ...PANEL,
    distance_m: 'Distance',
    right_m: { title: 'Off its axis, to the side', default: 0 },
    up_m: { title: 'Off its axis, up or down', default: 0 },
  },
  gives: GIVES,
  holds: `A surface parallel to the panel. ${HOLDS}`,
  example: { width_m: 1.2, height_m: 0.8, distance_m: 0.9, luminance_cd_per_m2: 12_000, right_m: 0.2 },
  ...COMMON,
});

export const standingPanel = law(standingPanelLight, {
  id: 'standing-panel-light',
  title: 'Light on the table from a panel beside it',
  says: 'What an upright panel at the edge gives on the table itself.',
  equation: 'F = (1/2π) · [atan(1/Y) − Y/√(X² + Y²) · atan(1/√(X² + Y²))], X = a/b, Y = c/b',
  takes: {
    ...PANEL,
    distance_m: 'Distance along the table',
    raised_m: { title: 'Lower edge above the table', default: 0 },
    right_m: { title: 'Off its middle, to the side', default: 0 },
  },
  gives: GIVES,
  holds: `A level table and an upright panel. ${HOLDS}`,
  example: { width_m: 1.2, height_m: 0.8, distance_m: 0.5, luminance_cd_per_m2: 12_000, raised_m: 0.1 },
  ...COMMON,
});
