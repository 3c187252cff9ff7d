/** The colour of what is neutral in two clips held against each other: by the parts that both have, where they have any. */
import { bulkSpreadOf, medianOf } from '../base/median.ts';
import { apart, xyzMatrix } from '../measure/colour/chromaticity.ts';
import type { ColourReading, NeutralReading } from '../measure/colour/colour.ts';
import { chromaticityOfBalance, shiftOf, type Balance } from '../measure/colour/drift.ts';
import { temperatureOf } from '../measure/colour/temperature.ts';
import type { Measurement } from '../measure/types.ts';
import { shiftWords, type ToldShift } from './colourWords.ts';
import type { Pair } from './pairScene.ts';

export interface PairColour extends ToldShift {
  /** Standard deviation of the distance. */
  readonly deviation: number;
  /** Whether the same parts of both pictures were taken for neutral; else it may be another surface, and not the light. */
  readonly isByShared: boolean;
}

/** Fewest parts that both must have. */
const FEWEST_SHARED = 2;
/** Told from so many deviations on, and from one step of matching lamps by eye. */
const CLEAR = 3;
const ONE_STEP = 0.0011;

interface Shared {
  readonly to: Balance;
  readonly error: Balance;
}

/** What the parts that both have say: the first's balance with the middle of their differences added. */
function sharedOf(a: NeutralReading, b: NeutralReading): Shared | undefined {
  const own = new Map(a.tiles.map((tile) => [tile.tile, tile]));
  const both = b.tiles.flatMap((tile) => {
    const before = own.get(tile.tile);
    return before ? [{ red: tile.red_stops - before.red_stops, blue: tile.blue_stops - before.blue_stops }] : [];
  });
  if (both.length < FEWEST_SHARED) return undefined;
  const [red, blue] = [both.map((of) => of.red), both.map((of) => of.blue)];
  const error = (of: readonly number[], own: number) => Math.max(own, (1.2533 * bulkSpreadOf(of)) / Math.sqrt(of.length));
  const known = Math.hypot(a.deviation_stops, b.deviation_stops) / Math.SQRT2;
  return {
    to: { red_stops: a.red_stops + medianOf(red), blue_stops: a.blue_stops + medianOf(blue) },
    error: { red_stops: error(red, known), blue_stops: error(blue, known) },
  };
} // prettier-ignore

/** Of the second against the first; undefined where either has no neutral part. */
export function pairColour([first, second]: Pair<Measurement>): PairColour | undefined {
  const [a, b] = [first.colour?.neutral, second.colour?.neutral];
  if (!a || !b) return undefined;
  const [ofA, ofB] = [first.colour!, second.colour!];
  const isOneGrid = ofA.tileColumns === ofB.tileColumns && ofA.tileRows === ofB.tileRows && ofA.primaries === ofB.primaries; // prettier-ignore
  const shared = isOneGrid ? sharedOf(a, b) : undefined;
  const matrix = xyzMatrix(ofA.primaries);
  if (shared) {
    const { distance, deviation, warmer_mired, greenerDuv } = shiftOf(matrix, a, shared.to, shared.error);
    return { distance, deviation, isByShared: true, ...(warmer_mired !== undefined && { warmer_mired }), ...(greenerDuv !== undefined && { greenerDuv }) }; // prettier-ignore
  }
  const [before, after] = [temperatureOf(a), temperatureOf(b)];
  const error = (of: ColourReading, { red_stops, blue_stops, deviation_stops }: NeutralReading) => {
    const off = chromaticityOfBalance(xyzMatrix(of.primaries), { red_stops: red_stops + deviation_stops, blue_stops: blue_stops + deviation_stops }); // prettier-ignore
    return apart(off, chromaticityOfBalance(xyzMatrix(of.primaries), { red_stops, blue_stops }));
  };
  return {
    distance: apart(a, b),
    deviation: Math.hypot(error(ofA, a), error(ofB, b)),
    isByShared: false,
    ...(before &&
      after && { warmer_mired: after.place_mired - before.place_mired, greenerDuv: after.duv - before.duv }),
  };
}

/** Whether a difference is one that an eye could see, and surer than its error. */
export const isColourSame = ({ distance, deviation }: PairColour): boolean => distance < Math.max(ONE_STEP, CLEAR * deviation); // prettier-ignore

/** "the second 12 mired warmer". */
export function pairColourWords(colour: PairColour): string {
  const other = colour.isByShared ? '' : '; other parts of the picture, which may be another surface';
  return `the second ${shiftWords(colour)}${other}`;
}

/** What passes for neutral in one clip, for a table. */
export const neutralSays = ({ colour }: Measurement): string => {
  if (!colour) return 'no colours';
  const { neutral } = colour;
  if (!neutral) return 'no neutral part';
  const { u, v } = neutral;
  return `u′ ${u.toFixed(4)}, v′ ${v.toFixed(4)}`;
};
