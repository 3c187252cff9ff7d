/** Figures of a plan in the words and units of the set. Screens and sheets both print these, so that they agree. */
import { baseUnitsPer, kindOfSuffix, unitSuffix, type KindName } from '../base/kinds.ts';
import {
  sayShown as said,
  showNumber,
  showQuantity,
  showShutter,
  showSigned,
  type Shown,
  type UnitSystem,
} from '../base/quantity.ts';
import type { LimitId, Margin, MarginState, Missing, Way } from '../plan/types.ts';

export { said };

/** Times that crews say as a fraction of a second. */
const SHUTTERS: ReadonlySet<string> = new Set([
  'exposureTime_s',
  'exposureByAngle_s',
  'exposureByBlur_s',
  'longestExposure_s',
  'shortestExposure_s',
]);

export interface NamedNumber {
  /** Its name in the model: the unit it is in stands at the end. */
  readonly name: string;
  readonly value: number;
  /** What it is, where its name does not say. */
  readonly kind: KindName | undefined;
  readonly system?: UnitSystem;
}

/** Swings of the light are hundredths of a stop, where exposures are told in tenths. */
const isSwing = (name: string): boolean => /(?:swing|flickerSwing|flickerAllowed)_stops$/.test(name);

const swingWords = (value: number, digits = 2): Shown => ({ number: showNumber(value, digits), unit: 'stops' });

/** Shares are told in hundredths. */
const shareWords = (value: number, digits = 3): Shown => ({ number: showNumber(value * 100, digits), unit: '%' });

/** One number of a plan for eyes. */
export function numberWords({ name, value, kind, system = 'metric' }: NamedNumber): Shown {
  if (SHUTTERS.has(name)) return showShutter(value);
  if (isSwing(name)) return swingWords(value);
  const suffix = unitSuffix(name);
  const of = kind ?? kindOfSuffix(suffix);
  if (of === undefined) return { number: showNumber(value, 3), unit: '' };
  if (of === 'share') return shareWords(value);
  return showQuantity(of, value * baseUnitsPer(suffix), { system });
}

export interface MissingWords {
  /** What it is, and where that is not simply unwritten, how it stands. */
  readonly title: string;
  /** What it is, alone. */
  readonly name: string;
  readonly path: string;
  readonly says: string;
}

export interface MarginWords {
  readonly id: LimitId;
  /** With what it was judged for, where it was judged for several: "Picture size, Square". */
  readonly name: string;
  /** Absent while a figure is not known. */
  readonly have?: Shown;
  readonly need?: Shown;
  /** The word between the two figures: have *for* need, or have *of* the most there may be. */
  readonly joint: 'for' | 'of';
  /** "41 klx for 96 klx"; empty while a figure is not known. */
  readonly figures: string;
  /** Spare in stops with its sign, "−1.2"; empty while it is not known. */
  readonly spare: string;
  /** "−1.4 to −1.0", eight cases in ten; empty where the spare has no band or is not known. */
  readonly band: string;
  readonly state: MarginState;
  readonly missing: readonly MissingWords[];
}

const BECAUSE: Readonly<Record<Missing['because'], string>> = {
  absent: 'not written yet',
  unread: 'written, but cannot be read',
  refused: 'no answer there',
};

/** What a number lacks, and where it would be written. */
export function missingWords({ title, path, because, what }: Missing): MissingWords {
  return {
    title: because === 'absent' ? title : `${title}: ${BECAUSE[because]}`,
    name: title,
    path,
    says: what ?? BECAUSE[because],
  };
}

/** A margin's figures, spare, band and state as they are printed everywhere. */
export function marginWords(margin: Margin, system: UnitSystem = 'metric'): MarginWords {
  const { id, title, detail, sense, state, stops, missing } = margin;
  const pair = pairWords(margin, system);
  const joint = sense === 'at-least' ? 'for' : 'of';
  const [low, high] = stops ? [showSigned(stops.low), showSigned(stops.high)] : ['', ''];
  return {
    id,
    name: detail === undefined ? title : `${title}, ${detail}`,
    ...pair,
    joint,
    figures: pair ? `${said(pair.have)} ${joint} ${said(pair.need)}` : '',
    spare: stops ? showSigned(stops.value) : '',
    band: low === high ? '' : `${low} to ${high}`,
    state,
    missing: missing.map(missingWords),
  };
}

/** What a way leaves its limit at: "closes it", "closes it, but clearance is then short", "still 0.3 short". */
export function wayOutcome({ closes, stops, breaks }: Pick<Way, 'closes' | 'stops' | 'breaks'>): string {
  const broken = breaks.map(({ title }) => title.toLowerCase()).join(' and ');
  if (closes && broken !== '') return `closes it, but ${broken} ${breaks.length > 1 ? 'are' : 'is'} then short`;
  if (closes) return 'closes it';
  const size = Math.abs(stops).toFixed(1);
  return Number(size) === 0 ? 'still just short' : `still ${size} short`;
}

interface Pair {
  readonly have: Shown;
  readonly need: Shown;
}

/** Figures nearer than this need a digit more to be told apart. */
const CLOSE = 0.1;
const MOST_DIGITS = 5;

/** Both figures, with digits enough to see which is the larger. */
function pairWords({ id, kind, have, need }: Margin, system: UnitSystem): Pair | undefined {
  if (have === undefined || need === undefined) return undefined;
  const show = (value: number, digits: number): Shown => {
    if (id === 'shutter') return showShutter(value);
    if (id === 'flicker') return swingWords(value, digits);
    // Blur is told in tenths of a pixel, the width of a picture in whole ones.
    if (kind === 'pixels') return { number: showNumber(value, Math.abs(value) < 100 ? digits : 4), unit: 'px' };
    if (kind === 'share') return shareWords(value, digits);
    if (kind === 'pieces') return { number: showNumber(Math.round(value), MOST_DIGITS), unit: 'pieces' };
    return showQuantity(kind, value, { digits, system });
  };
  const pairAt = (digits: number): Pair => ({ have: show(have, digits), need: show(need, digits) });
  const isClose = Math.abs(have - need) <= CLOSE * Math.abs(need);
  if (have === need || !isClose) return pairAt(2);
  for (let digits = 3; digits <= MOST_DIGITS; digits += 1) {
    const pair = pairAt(digits);
    if (said(pair.have) !== said(pair.need)) return sameDecimals(pair);
  }
  return sameDecimals(pairAt(3));
}

/** "2.93 px of 3.00 px": close figures are read digit by digit. */
function sameDecimals({ have, need }: Pair): Pair {
  const isPlain = [have, need].every(({ number }) => /^−?\d+(\.\d+)?$/.test(number));
  if (have.unit !== need.unit || !isPlain) return { have, need };
  const decimals = Math.max(...[have, need].map(({ number }) => number.split('.')[1]?.length ?? 0));
  const padded = ({ number, unit }: Shown): Shown => {
    const [whole = '', part = ''] = number.split('.');
    return { number: decimals === 0 ? whole : `${whole}.${part.padEnd(decimals, '0')}`, unit };
  };
  return { have: padded(have), need: padded(need) };
}
