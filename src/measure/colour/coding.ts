/**
 * From the code values of a colour to its signals of red, green and blue, by the matrix that wrote them.
 *
 *     Y′ = Kr·R′ + Kg·G′ + Kb·B′        Cb = (B′ − Y′) / (2·(1 − Kb))        Cr = (R′ − Y′) / (2·(1 − Kr))
 *
 * Y′ from 16 to 235 of eight bits and Cb, Cr 224 about 128 in video levels; all over the whole range in full ones.
 *
 * @source bt601-matrix
 * @source bt709-matrix
 * @source bt2020-matrix non-constant luminance
 * @source colour-bars code values of bars in all three
 */
import { assertNever, requireCount } from '../../base/domain.ts';
import type { Coding } from '../transfer.ts';

export type ColourMatrix = 'bt601' | 'bt709' | 'bt2020';

/** How three code values stand for red, green and blue. */
export type ColourForm =
  | { readonly kind: 'rgb' }
  /** Brightness and two differences, in video levels or over the whole range. */
  | { readonly kind: 'ycbcr'; readonly matrix: ColourMatrix; readonly range: 'video' | 'full' };

/** Shares of red and of blue in brightness. */
const WEIGHTS: Readonly<Record<ColourMatrix, readonly [red: number, blue: number]>> = {
  bt601: [0.299, 0.114],
  bt709: [0.2126, 0.0722],
  bt2020: [0.2627, 0.0593],
};

/** Signals of red, green and blue from three code values, each 0 at black and 1 at white. */
export type SignalsOf = (first: number, second: number, third: number, into: Float64Array) => void;

/** Code value at which there is no colour, and from there to the largest of either sign. */
function differenceCodes({ bitDepth }: Coding, range: 'video' | 'full'): readonly [middle: number, reach: number] {
  const middle = 2 ** (bitDepth - 1);
  return [middle, range === 'full' ? (2 ** bitDepth - 1) / 2 : 112 * 2 ** (bitDepth - 8)];
}

/** How far one code value moves the signals of red and of blue, green standing still. */
export function codeOfColour(form: ColourForm, coding: Coding): { readonly red: number; readonly blue: number } {
  if (form.kind === 'rgb') return { red: 1 / (coding.whiteCode - coding.blackCode), blue: 1 / (coding.whiteCode - coding.blackCode) }; // prettier-ignore
  const [ofRed, ofBlue] = WEIGHTS[form.matrix];
  const [, reach] = differenceCodes(coding, form.range);
  return { red: (1 - ofRed) / reach, blue: (1 - ofBlue) / reach };
}

/** What turns code values of a form into signals; of red, green and blue in that order, or brightness, Cb and Cr. Throws RangeError for a depth without meaning. */
export function signalsOf(form: ColourForm, coding: Coding): SignalsOf {
  const { bitDepth, blackCode, whiteCode } = coding;
  requireCount({ bitDepth }, 1);
  const span = whiteCode - blackCode;
  if (form.kind === 'rgb')
    return (red, green, blue, into) => {
      into[0] = (red - blackCode) / span;
      into[1] = (green - blackCode) / span;
      into[2] = (blue - blackCode) / span;
    };
  if (form.kind !== 'ycbcr') return assertNever(form);
  const [ofRed, ofBlue] = WEIGHTS[form.matrix];
  const ofGreen = 1 - ofRed - ofBlue;
  const [middle, reach] = differenceCodes(coding, form.range);
  return (y, cb, cr, into) => {
    const luma = (y - blackCode) / span;
    const red = luma + ((1 - ofRed) * (cr - middle)) / reach;
    const blue = luma + ((1 - ofBlue) * (cb - middle)) / reach;
    into[0] = red;
    into[1] = (luma - ofRed * red - ofBlue * blue) / ofGreen;
    into[2] = blue;
  };
}
