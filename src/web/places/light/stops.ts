/** The short axis that each lamp's light is drawn on, in stops about what is wanted. */

/** Weaker than this a lamp does next to nothing; stronger runs off with an arrow. */
export const FAINTEST_stops = -6;
export const STRONGEST_stops = 2;

/** Where a number of stops lies along the axis, 0 to 1. */
export function placeOfStops(stops: number): number {
  const held = Math.min(STRONGEST_stops, Math.max(FAINTEST_stops, stops));
  return (held - FAINTEST_stops) / (STRONGEST_stops - FAINTEST_stops);
}

export interface Band {
  readonly from: number;
  readonly at: number;
  readonly to: number;
}

/** A light and its spread as places along the axis; undefined where there is none. */
export function bandOf({ value, spreadFraction, reference }: { readonly value: number; readonly spreadFraction: number; readonly reference: number }): Band | undefined {
  if (!(value > 0 && reference > 0)) return undefined;
  const place = (times: number) => placeOfStops(times > 0 ? Math.log2((value * times) / reference) : FAINTEST_stops);
  return { from: place(1 - spreadFraction), at: place(1), to: place(1 + spreadFraction) };
} // prettier-ignore
