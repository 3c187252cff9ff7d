/** Metres of the set onto the pixels of a drawing, equally across and up. */
import type { Flat } from './projection.ts';

export interface Viewport {
  readonly width_px: number;
  readonly height_px: number;
  readonly perMetre_px: number;
  /** What lies in the middle. */
  readonly middle: Flat;
}

export const toPage = ({ width_px, height_px, perMetre_px, middle }: Viewport, { x, y }: Flat): Flat => ({
  x: width_px / 2 + (x - middle.x) * perMetre_px,
  y: height_px / 2 - (y - middle.y) * perMetre_px,
});

export const fromPage = ({ width_px, height_px, perMetre_px, middle }: Viewport, { x, y }: Flat): Flat => ({
  x: middle.x + (x - width_px / 2) / perMetre_px,
  y: middle.y - (y - height_px / 2) / perMetre_px,
});

export interface Room {
  readonly width_px: number;
  readonly height_px: number;
  /** Kept free of marks at each edge, for the ruler and the words. */
  readonly edge_px: number;
}

/** Nearer than this a drawing says nothing about stands. */
const LEAST_m = 0.6;

/** The ruler along the foot. */
export const FOOT_px = 24;

/** A viewport that shows all the points and the subject. */
export function fitAll(points: readonly Flat[], { width_px, height_px, edge_px }: Room): Viewport {
  const xs = [0, ...points.map(({ x }) => x)];
  const ys = [0, ...points.map(({ y }) => y)];
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const perMetre_px = Math.min(
    Math.max(1, width_px - 2 * edge_px) / Math.max(LEAST_m, right - left),
    Math.max(1, height_px - FOOT_px - 2 * edge_px) / Math.max(LEAST_m, high - low),
  );
  return {
    width_px,
    height_px,
    perMetre_px,
    middle: { x: (left + right) / 2, y: (low + high - FOOT_px / perMetre_px) / 2 },
  };
}

/** A viewport about the subject that reaches at least so far every way. */
export function fitAbout(half_m: number, { width_px, height_px }: Room): Viewport {
  return {
    width_px,
    height_px,
    perMetre_px: Math.min(width_px, height_px - FOOT_px) / 2 / half_m,
    middle: { x: 0, y: 0 },
  };
}

/** How far about the subject a drawing may be asked to reach, far to near; the whole set comes before. */
export const REACHES_m = [2, 1, 0.5, 0.25, 0.1] as const;

export const px = (value: number): number => Math.round(value * 10) / 10;

export const pathOf = (points: readonly Flat[], isClosed = true): string =>
  points.length === 0 ? '' : `M${points.map(({ x, y }) => `${px(x)} ${px(y)}`).join('L')}${isClosed ? 'Z' : ''}`;
