/** The tints of a map, faint for the least. */
import type { CSSProperties } from 'react';

/** How strongly the area above the nth of so many levels is tinted. */
export const tint = (i: number, count: number): CSSProperties => ({
  fill: `color-mix(in oklch, var(--map-low), var(--map-high) ${Math.round(((i + 1) / (count + 1)) * 100)}%)`,
});
