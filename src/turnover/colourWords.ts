/** What is measured of the colour of a clip, in sentences: how the neutral parts drift, and colours that pulse apart. */
import { showNumber } from '../base/quantity.ts';
import { sayList } from '../base/sayList.ts';
import { WHITE_CHROMATICITY, apart } from '../measure/colour/chromaticity.ts';
import type { ColourReading } from '../measure/colour/colour.ts';
import { temperatureOf } from '../measure/colour/temperature.ts';
import type { Measurement } from '../measure/types.ts';
import { hertz, percent } from './measureWords.ts';

/** From one colour of what is neutral to another. */
export interface ToldShift {
  readonly distance: number;
  readonly warmer_mired?: number;
  readonly greenerDuv?: number;
}

/** How far a mired goes in u′, v′, about; and what of a shift is worth a word: this share of it. */
const MIRED = 0.0005;
const WORTH = 0.25;

const duv = (value: number): string => Math.abs(value).toFixed(4);
const difference = (value: number): string => value.toFixed(4);

/** "4 mired warmer", "greener by Duv 0.0012", or both; where there is no warmth to tell, "Δu′v′ 0.0310 off". */
export function shiftWords({ distance, warmer_mired, greenerDuv }: ToldShift): string {
  const said = [
    ...(warmer_mired !== undefined && Math.abs(warmer_mired) * MIRED >= WORTH * distance
      ? [`${showNumber(Math.abs(warmer_mired), Math.abs(warmer_mired) < 10 ? 1 : 2)} mired ${warmer_mired > 0 ? 'warmer' : 'cooler'}`]
      : []),
    // A distance in CIE 1960 v is half as much again in v′.
    ...(greenerDuv !== undefined && 1.5 * Math.abs(greenerDuv) >= WORTH * distance
      ? [`${greenerDuv > 0 ? 'greener' : 'pinker'} by Duv ${duv(greenerDuv)}`]
      : []),
  ];
  return said.length > 0 ? sayList(said) : `Δu′v′ ${difference(distance)} off`;
} // prettier-ignore

/** Farther from white than this, what passes for neutral is worth a word: a step that anybody sees side by side. */
const OFF_WHITE = 0.004;

/** How the parts taken for neutral lie to the white of the coding. */
function offWhite({ neutral }: ColourReading): string {
  if (!neutral || apart(neutral, WHITE_CHROMATICITY) < OFF_WHITE) return '';
  const white = temperatureOf(WHITE_CHROMATICITY)!;
  const warmer_mired = neutral.place_mired === undefined ? undefined : neutral.place_mired - white.place_mired;
  const greenerDuv = neutral.duv === undefined ? undefined : neutral.duv - white.duv;
  const words = shiftWords({ distance: apart(neutral, WHITE_CHROMATICITY), ...(warmer_mired !== undefined && { warmer_mired }), ...(greenerDuv !== undefined && { greenerDuv }) }); // prettier-ignore
  return ` Against the white of its coding, what passes for grey is ${words}.`;
}

/** Whether the colour of what is neutral stays, and how sure that is; nothing of a clip without colours. */
export function colourWords({ colour }: Measurement): string | undefined {
  if (!colour) return undefined;
  const { verdict, why, drift, most, leastDistance = 0, neutral } = colour;
  const part = neutral ? `${percent(neutral.extentFraction)} of the picture` : '';
  if (verdict === 'cannot tell' && neutral) return `Colour: a drift cannot be told. ${why}${offWhite(colour)}`;
  if (verdict === 'cannot tell') return `Colour: ${why.charAt(0).toLowerCase()}${why.slice(1)}`;
  if (verdict === 'drifts') return `Colour drifts: from the first tenth to the last, what passes for grey (${part}) goes ${shiftWords(drift!)}.${offWhite(colour)}`; // prettier-ignore
  if (verdict === 'strays') return `Colour strays: within the clip, what passes for grey (${part}) goes ${shiftWords(most!)} and comes back.${offWhite(colour)}`; // prettier-ignore
  return `Colour: steady, judged by ${part} that passes for grey; a drift from Δu′v′ ${difference(leastDistance)} on would have been found.${offWhite(colour)}`;
}

/** Of colours that pulse otherwise than green: a lamp whose colours have a flicker of their own. */
export function colourPulseWords({ colour, flicker }: Measurement): readonly string[] {
  return (colour?.pulses ?? []).map(({ beat_Hz, redDepthFraction, blueDepthFraction }) => {
    const line = flicker.lines.find((of) => of.beat_Hz === beat_Hz);
    return `Colours pulse apart at ${hertz(beat_Hz, line?.deviation_Hz ?? 0.1)}: red by ${percent(redDepthFraction)}, blue by ${percent(blueDepthFraction)} against green, as lamps whose colours flicker each in its own way do.`;
  });
}
