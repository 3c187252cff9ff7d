/**
 * The luminous opening of an IES file: three dimensions whose signs say what shape they are of.
 *
 *     width, length, height     to 1991             1995                   2002, 2019
 *     0  0  0                   point               point                  point
 *     +  +  0                   rectangle           rectangle              rectangle
 *     +  +  +                   box                 box                    box
 *     −  0  0                   disc                disc                   –
 *     −  0  +                   vertical cylinder   vertical cylinder      –
 *     −  +  0                   ellipse             –                      –
 *     −  0  −                   –                   sphere                 vertical disc
 *     0  +  −,  +  0  −         –                   horizontal cylinder    –
 *     −  +  +,  +  −  +         ellipsoid (1986)    vertical cylinder      –
 *     −  +  −,  +  −  −         –                   ellipsoid              horizontal cylinder
 *     −  −  0                   –                   –                      disc or ellipse
 *     −  −  +                   –                   –                      vertical cylinder
 *     −  −  −                   –                   –                      sphere or ellipsoid
 *
 * Codes of another version than the file's are read by that version's rule. The size is what planning needs; the shape is
 * for the reader.
 *
 * @source ies-lm63-importer the codes of each version
 */
import type { IesYear } from './iesHeader.ts';
import type { Opening, OpeningShape } from './photometry.ts';

const FOOT_m = 0.3048;

type Codes = Readonly<Record<string, OpeningShape>>;

const ALWAYS: Codes = { '000': 'point', '++0': 'rectangle', '+++': 'box', '+0+': 'box', '0++': 'box' };
const TO_1991: Codes = { '-00': 'disc', '-0+': 'vertical-cylinder', '-+0': 'ellipse', '-++': 'ellipsoid' };
const IN_1995: Codes = {
  '-00': 'disc',
  '-0+': 'vertical-cylinder',
  '-0-': 'sphere',
  '0+-': 'horizontal-cylinder',
  '+0-': 'horizontal-cylinder',
  '-++': 'vertical-cylinder',
  '+-+': 'vertical-cylinder',
  '-+-': 'ellipsoid',
  '+--': 'ellipsoid',
};
const FROM_2002: Codes = {
  '--0': 'ellipse',
  '--+': 'vertical-cylinder',
  '---': 'ellipsoid',
  '-+-': 'horizontal-cylinder',
  '+--': 'horizontal-cylinder',
  '-0-': 'vertical-disc',
  '0--': 'vertical-disc',
};

const ROUND: Readonly<Partial<Record<OpeningShape, OpeningShape>>> = { ellipse: 'disc', ellipsoid: 'sphere' };

/** The opening that three dimensions describe, and whether they follow the rules of the file's own version. */
export function iesOpening(
  { width, length, height }: { readonly width: number; readonly length: number; readonly height: number },
  { year, isInFeet }: { readonly year: IesYear; readonly isInFeet: boolean },
): { readonly opening: Opening; readonly isOwnCode: boolean } {
  const unit_m = isInFeet ? FOOT_m : 1;
  const code = [width, length, height].map((size) => (size === 0 ? '0' : size < 0 ? '-' : '+')).join('');
  const own: Codes = { ...ALWAYS, ...(year <= 1991 ? TO_1991 : year === 1995 ? IN_1995 : FROM_2002) };
  const found = own[code] ?? FROM_2002[code] ?? IN_1995[code] ?? TO_1991[code] ?? 'unlisted';
  const sizes = [width, length, height].filter((size) => size !== 0).map(Math.abs);
  const isRound = width < 0 && sizes.every((size) => size === sizes[0]);
  const shape = isRound ? (ROUND[found] ?? found) : found;
  // A round opening of the older versions gives its diameter once.
  const isDisc = length === 0 && (shape === 'disc' || shape === 'vertical-cylinder' || shape === 'sphere');
  return {
    opening: {
      shape,
      width_m: Math.abs(width) * unit_m,
      length_m: Math.abs(isDisc ? width : length) * unit_m,
      height_m: Math.abs(height) * unit_m,
    },
    isOwnCode: code in own,
  };
}
