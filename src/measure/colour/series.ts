/**
 * The light of the neutral parts sample by sample: red and blue over green in stops, each part against its own middle, and
 * of the parts that stand still in a sample the median, so that a few that something passes through change nothing.
 */
import { medianOf } from '../../base/median.ts';
import { PER_TILE, type ColourSeen } from './meter.ts';
import type { NeutralTile } from './neutral.ts';

/** Over green, or of green over its own middle, in stops. */
export interface ColourSeries {
  readonly red_stops: Float64Array;
  readonly blue_stops: Float64Array;
  readonly green_stops: Float64Array;
  /** 1 for a sample in which enough of the neutral parts stand still. */
  readonly weight: Uint8Array;
  /** Middle over the parts, of the whole clip. */
  readonly redMiddle_stops: number;
  readonly blueMiddle_stops: number;
  /** Of green, in the middle. */
  readonly light: number;
  /** Of each part, red and blue over green in every sample, NaN where it does not stand still. */
  readonly parts: readonly { readonly red_stops: Float64Array; readonly blue_stops: Float64Array }[];
}

/** Share of the neutral parts that must stand still in a sample. */
const ENOUGH = 0.5;

const countedMedian = (values: Float64Array): number => medianOf(values.filter((value) => !Number.isNaN(value)));

interface Part {
  readonly red_stops: Float64Array;
  readonly blue_stops: Float64Array;
  readonly green_stops: Float64Array;
}

function partOf({ kept, places, grid }: ColourSeen, { tile, isStill }: NeutralTile): Part {
  const tiles = grid.columns * grid.rows;
  const value = (sample: number, channel: number) => kept[(sample * tiles + tile) * PER_TILE + channel]!;
  const isTold = (i: number) => isStill[i]! > 0 && Math.min(value(i, 0), value(i, 1), value(i, 2)) > 0;
  const of = (stops: (i: number) => number) => Float64Array.from(places, (_, i) => (isTold(i) ? stops(i) : NaN));
  return {
    red_stops: of((i) => Math.log2(value(i, 0) / value(i, 1))),
    blue_stops: of((i) => Math.log2(value(i, 2) / value(i, 1))),
    green_stops: of((i) => Math.log2(value(i, 1))),
  };
}

/** Of each sample the median over the parts, each less its own middle. */
function together(parts: readonly Float64Array[], weight: Uint8Array): Float64Array {
  const middles = parts.map(countedMedian);
  return Float64Array.from(weight, (counts, i) => {
    if (counts === 0) return 0;
    return medianOf(parts.flatMap((values, part) => (Number.isNaN(values[i]!) ? [] : [values[i]! - middles[part]!])));
  });
}

/** The series of a clip's neutral parts, of which there is one at least. */
export function seriesOf(seen: ColourSeen, tiles: readonly NeutralTile[]): ColourSeries {
  const parts = tiles.map((tile) => partOf(seen, tile));
  const weight = Uint8Array.from(seen.places, (_, i) => {
    const told = parts.reduce((sum, { green_stops }) => sum + (Number.isNaN(green_stops[i]!) ? 0 : 1), 0);
    return told >= ENOUGH * parts.length ? 1 : 0;
  });
  const middle = (of: (part: Part) => Float64Array) => medianOf(parts.map((part) => countedMedian(of(part))));
  const [redMiddle_stops, blueMiddle_stops] = [middle((part) => part.red_stops), middle((part) => part.blue_stops)];
  const red = together(parts.map(({ red_stops }) => red_stops), weight);
  const blue = together(parts.map(({ blue_stops }) => blue_stops), weight);
  return {
    red_stops: red.map((value) => value + redMiddle_stops),
    blue_stops: blue.map((value) => value + blueMiddle_stops),
    green_stops: together(parts.map(({ green_stops }) => green_stops), weight),
    weight,
    redMiddle_stops,
    blueMiddle_stops,
    light: 2 ** middle((part) => part.green_stops),
    parts,
  };
} // prettier-ignore
