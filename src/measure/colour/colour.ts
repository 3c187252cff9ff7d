/**
 * What the samples of a clip say of its colour: where the neutral parts lie, how far they drift, and whether colours pulse
 * apart.
 *
 * @source colour-step the least that is told
 * @source colour-practice
 */
import { medianOf } from '../../base/median.ts';
import { xyzMatrix, type Chromaticity, type PrimariesName } from './chromaticity.ts';
import { chromaticityOfBalance, driftOf, type Balance, type ColourShift } from './drift.ts';
import type { ColourSeen } from './meter.ts';
import { neutralParts, type NeutralTile } from './neutral.ts';
import { pulsesOf, type ColourPulse } from './pulse.ts';
import { seriesOf, type ColourSeries } from './series.ts';
import { hiddenBySteps } from './steps.ts';
import { temperatureOf } from './temperature.ts';

/** The parts taken for neutral, over the whole clip, as it is coded. */
export interface NeutralReading extends Chromaticity, Balance {
  /** Place along the black bodies and beside them; absent far from all. Of the coded picture, not of the lamps. */
  readonly place_mired?: number;
  readonly duv?: number;
  /** Standard deviation of red and of blue over green. */
  readonly deviation_stops: number;
  /** Share of the picture. */
  readonly extentFraction: number;
  /** Tiles of the reading's own grid, row by row from 0, and each one's red and blue over green. */
  readonly tiles: readonly { readonly tile: number; readonly red_stops: number; readonly blue_stops: number }[];
}

export interface ColourReading {
  /** strays: it goes off and comes back. */
  readonly verdict: 'steady' | 'drifts' | 'strays' | 'cannot tell';
  readonly why: string;
  readonly tileColumns: number;
  readonly tileRows: number;
  /** Of the red, green and blue that balances are of. */
  readonly primaries: PrimariesName;
  readonly neutral?: NeutralReading;
  /** From the first tenth of the clip to the last. */
  readonly drift?: ColourShift;
  /** Between the tenths farthest from each other. */
  readonly most?: ColourShift;
  /** Drift that would have been told. */
  readonly leastDistance?: number;
  /** Waves in which red or blue part from green; empty where none do or where the samples cannot tell. */
  readonly pulses: readonly ColourPulse[];
  /** Of the samples in which the neutral parts stand still. */
  readonly series: { readonly places: Float64Array; readonly red_stops: Float64Array; readonly blue_stops: Float64Array };
} // prettier-ignore

export interface ColourGiven {
  readonly seen: ColourSeen;
  /** Rates at which the light was found to pulse. */
  readonly beats_Hz: readonly number[];
  readonly frameRate_fps: number;
  readonly frameWeights: Float64Array;
}

/** Fewest samples in which a drift is looked for. */
const FEWEST = 8;
/** Least distance that is told: what one step of matching lamps by eye is in this diagram. */
const ONE_STEP = 0.0011;
/** A drift is told from so many deviations on, and one between any of ten tenths from so many. */
const CLEAR = 3;
const CLEAR_OF_ANY = 4.5;
/** With an error beyond this, that there is no drift says nothing. */
const TOO_COARSE = 0.004;

function neutralReading(series: ColourSeries, tiles: readonly NeutralTile[], { grid, options }: ColourSeen, hidden: Balance): NeutralReading {
  const balance: Balance = { red_stops: series.redMiddle_stops, blue_stops: series.blueMiddle_stops };
  const chromaticity = chromaticityOfBalance(xyzMatrix(options.primaries), balance);
  const middle = (values: Float64Array) => medianOf(values.filter((value) => !Number.isNaN(value)));
  const own = series.parts.map(({ red_stops, blue_stops }, i) => ({ tile: tiles[i]!.tile, red_stops: middle(red_stops), blue_stops: middle(blue_stops) }));
  const spread = (of: 'red_stops' | 'blue_stops') => Math.sqrt(own.reduce((sum, tile) => sum + (tile[of] - balance[of]) ** 2, 0) / own.length ** 2);
  return {
    ...chromaticity,
    ...balance,
    ...temperatureOf(chromaticity),
    deviation_stops: Math.max(Math.hypot(spread('red_stops'), hidden.red_stops), Math.hypot(spread('blue_stops'), hidden.blue_stops)),
    extentFraction: tiles.length / (grid.columns * grid.rows),
    tiles: own,
  };
} // prettier-ignore

function countedSeries({ red_stops, blue_stops, weight }: ColourSeries, places: Float32Array): ColourReading['series'] {
  const counted = (of: ArrayLike<number>) => Float64Array.from(of).filter((_, i) => weight[i]! > 0);
  return { places: counted(places), red_stops: counted(red_stops), blue_stops: counted(blue_stops) };
}

/** The colour of a clip. */
export function colourOf({ seen, beats_Hz, frameRate_fps, frameWeights }: ColourGiven): ColourReading {
  const { grid, places } = seen;
  const none = new Float64Array(0);
  const untold = { verdict: 'cannot tell', tileColumns: grid.columns, tileRows: grid.rows, primaries: seen.options.primaries, pulses: [], series: { places: none, red_stops: none, blue_stops: none } } as const; // prettier-ignore
  if (places.length === 0) return { ...untold, why: 'No frame of it was sampled for colour.' };
  const { tiles, why } = neutralParts(seen);
  if (why !== undefined) return { ...untold, why };
  const matrix = xyzMatrix(seen.options.primaries);
  const series = seriesOf(seen, tiles);
  const hidden = hiddenBySteps(seen, series, series.light);
  const told = {
    ...untold,
    neutral: neutralReading(series, tiles, seen, hidden),
    series: countedSeries(series, places),
  };
  if (told.series.places.length < FEWEST) return { ...told, why: `${told.series.places.length} samples are too few to tell a drift.` }; // prettier-ignore
  const drift = driftOf(matrix, series, places, hidden);
  if (!drift) return { ...told, why: 'The neutral parts stand still in too little of the clip.' };
  const { over, most } = drift;
  const leastDistance = Math.max(ONE_STEP, CLEAR * over.deviation);
  const pulses = pulsesOf({ series, places, beats_Hz, frameRate_fps, frameWeights });
  const whole = { ...told, drift: over, most, leastDistance, pulses };
  if (over.distance >= leastDistance)
    return { ...whole, verdict: 'drifts', why: 'The last tenth differs from the first.' };
  if (over.deviation > TOO_COARSE) return { ...whole, why: 'The neutral parts are too noisy to tell.' };
  const strays = most.distance >= Math.max(2 * ONE_STEP, CLEAR_OF_ANY * most.deviation);
  return strays ? { ...whole, verdict: 'strays', why: 'It goes off within the clip and comes back.' } : { ...whole, verdict: 'steady', why: 'No tenth of the clip differs from another.' }; // prettier-ignore
}
