/** Where margins fall on the one axis, in fractions of its width. */
export { showSigned } from '../../base/quantity.ts';

/** A figure with the band it may lie in. */
export interface Span {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** The axis is the same in every chart, so that a place on it is learnt once; a little more room for spare. */
export const AXIS = { least: -2.4, most: 2.6 } as const;

/** Whole stops with a line of their own. */
export const AXIS_MARKS = [-2, -1, 0, 1, 2] as const;

export interface PlacedMargin {
  readonly from: number;
  readonly to: number;
  /** Ends of the whisker; equal when the band is too narrow to draw. */
  readonly low: number;
  readonly high: number;
  /** Side on which the figure lies beyond the axis. */
  readonly beyond?: 'left' | 'right';
}

/** A place on the axis from 0 to 1; what lies beyond it is kept at its edge. */
export function placeOnAxis(value: number): number {
  const { least, most } = AXIS;
  return (Math.min(most, Math.max(least, value)) - least) / (most - least);
}

/** The bar of a margin, from "just enough" to its figure, with its whisker. */
export function placeMargin({ value, low, high }: Span): PlacedMargin {
  const zero = placeOnAxis(0);
  const at = placeOnAxis(value);
  const placed = {
    from: Math.min(zero, at),
    to: Math.max(zero, at),
    low: placeOnAxis(low),
    high: placeOnAxis(high),
  };
  if (value < AXIS.least) return { ...placed, beyond: 'left' };
  if (value > AXIS.most) return { ...placed, beyond: 'right' };
  return placed;
}
