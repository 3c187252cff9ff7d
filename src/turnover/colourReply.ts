/** What is measured of the colour of a clip as it stands in a reply. */
import type { ColourReading } from '../measure/colour/colour.ts';
import type { ColourShift } from '../measure/colour/drift.ts';
import type { ColourReply } from './colourSchema.ts';
import { present } from './planReply.ts';

function shiftReply(shift: ColourShift): NonNullable<ColourReply['drift']> {
  const { distance, deviation, u, v, red_stops, blue_stops, warmer_mired, deviation_mired, greenerDuv } = shift;
  return {
    distanceRatio: distance,
    deviationRatio: deviation,
    uRatio: u,
    vRatio: v,
    redOverGreen_stops: red_stops,
    blueOverGreen_stops: blue_stops,
    ...present({ warmer_mired, deviation_mired, greenerDuvRatio: greenerDuv }),
  };
}

function neutralReply({ u, v, red_stops, blue_stops, place_mired, duv, deviation_stops, extentFraction, tiles }: NonNullable<ColourReading['neutral']>): NonNullable<ColourReply['neutral']> {
  return {
    uRatio: u,
    vRatio: v,
    redOverGreen_stops: red_stops,
    blueOverGreen_stops: blue_stops,
    deviation_stops,
    extentFraction,
    ...present({ place_mired, duvRatio: duv }),
    tileIndexes: tiles.map(({ tile }) => tile),
  };
} // prettier-ignore

/** The colour of a clip in the form of the reply to `measure`. */
export function colourReply({ verdict, why, neutral, drift, most, leastDistance, pulses, series, tileColumns, tileRows, primaries }: ColourReading): ColourReply {
  return {
    verdict,
    why,
    primaries,
    tileColumnCount: tileColumns,
    tileRowCount: tileRows,
    ...present({ neutral: neutral && neutralReply(neutral), drift: drift && shiftReply(drift), most: most && shiftReply(most), leastDistanceRatio: leastDistance }),
    pulses: pulses.map(({ beat_Hz, greenDepthFraction, redDepthFraction, blueDepthFraction, deviationFraction }) => ({ beat_Hz, greenDepthFraction, redDepthFraction, blueDepthFraction, deviationFraction })),
    series: Array.from(series.places, (place, i) => ({ frameIndex: place, redOverGreen_stops: series.red_stops[i]!, blueOverGreen_stops: series.blue_stops[i]! })),
  };
} // prettier-ignore
