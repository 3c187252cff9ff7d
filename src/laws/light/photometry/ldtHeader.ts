/**
 * The head of a EULUMDAT file: one item a line, 26 of them, then the sets of lamps and the ten direct ratios.
 *
 * @source eulumdat-page the items and their order
 */
import { MOST_VALUES } from './complete.ts';
import type { Label, Notice, Opening } from './photometry.ts';
import { refuse } from './refusal.ts';
import { numberOf, sentence, shown } from './words.ts';

export interface LdtHeader {
  /** 0 none, 1 rotational, 2 about C0–C180, 3 about C90–C270, 4 both. */
  readonly symmetry: 0 | 1 | 2 | 3 | 4;
  readonly planeCount: number;
  readonly gammaCount: number;
  readonly factor: number;
  /** Lumens of the first set of lamps; intensities are per thousand of them. */
  readonly setFlux_lm: number;
  /** Whether the flux is what leaves the lamp as a whole: a number of lamps below 0. */
  readonly isAbsolute: boolean;
  readonly inputPower_W: number | undefined;
  /** Share of the lamps' light that leaves, as stated. */
  readonly outputFraction: number | undefined;
  readonly opening: Opening;
  readonly labels: readonly Label[];
  /** Index of the first line of the direct ratios. */
  readonly start: number;
  readonly notices: readonly Notice[];
}

const ITEMS = 26;
const MOST_SETS = 20;
const PER_SET = 6;
const LONGEST_LABEL = 1000;

/** The first word of a line as a number with either decimal mark; undefined where it is none or empty. */
function lineNumber(text: string | undefined): number | undefined {
  const word = (text ?? '').slice(0, 200).trim().split(/\s/, 1)[0]!;
  return numberOf(word, 'decimal');
}

interface Items {
  /** A number that reading cannot do without. */
  readonly needed: (item: number, what: string) => number;
  readonly whole: (item: number, what: string, least: number, most: number) => number;
  /** A number that reading can do without: 0 and a notice where it is none. */
  readonly optional: (item: number, what: string) => number;
  readonly text: (item: number) => string;
  readonly notices: readonly Notice[];
}

function itemsOf(lines: readonly string[]): Items {
  const notices: Notice[] = [];
  const needed = (item: number, what: string): number => {
    const line = lines[item - 1];
    return (
      lineNumber(line) ??
      refuse({
        code: line === undefined ? 'photometry.too-short' : 'photometry.not-a-number',
        what:
          line === undefined
            ? `The file ends before ${what}`
            : `"${shown(line.trim())}" stands where ${what} should be`,
        line: Math.min(item, lines.length),
        mend: 'Each item of a EULUMDAT file has a line of its own: check that none is missing or broken in two.',
      })
    );
  };
  return {
    needed,
    whole: (item, what, least, most) => {
      const value = needed(item, what);
      if (Number.isInteger(value) && value >= least && value <= most) return value;
      return refuse({
        code: 'photometry.bad-count',
        what: `${sentence(what)} is ${value}, and must be a whole number from ${least} to ${most}`,
        line: item,
        mend: 'Each item of a EULUMDAT file has a line of its own: check that none is missing or broken in two.',
      });
    },
    optional: (item, what) => {
      const value = lineNumber(lines[item - 1]);
      if (value !== undefined) return value;
      if ((lines[item - 1] ?? '').trim() !== '')
        notices.push({
          code: 'photometry.not-a-number',
          what: `${what} is "${shown(lines[item - 1]!.trim())}", no number, and was left out.`,
          line: item,
        });
      return 0;
    },
    text: (item) => (lines[item - 1] ?? '').slice(0, LONGEST_LABEL).trim(),
    notices,
  };
}

const TEXTS: readonly (readonly [item: number, keyword: string])[] = [
  [1, 'COMPANY'],
  [8, 'REPORT'],
  [9, 'LUMINAIRE'],
  [10, 'NUMBER'],
  [11, 'FILE'],
  [12, 'DATE'],
];

function openingOf({ optional }: Items): Opening {
  const length_m = optional(16, 'The luminous length') / 1000;
  const width_m = optional(17, 'The luminous width') / 1000;
  const height_m = Math.max(...[18, 19, 20, 21].map((item) => optional(item, 'A luminous height'))) / 1000;
  const isSound = length_m >= 0 && width_m >= 0 && height_m >= 0;
  if (!isSound || length_m === 0)
    return {
      shape: length_m === 0 && width_m === 0 && height_m <= 0 ? 'point' : 'unlisted',
      width_m: Math.abs(width_m),
      length_m: Math.abs(length_m),
      height_m: Math.abs(height_m),
    };
  // A width of 0 says that the length is a diameter.
  if (width_m === 0)
    return { shape: height_m > 0 ? 'vertical-cylinder' : 'disc', width_m: length_m, length_m, height_m };
  return { shape: height_m > 0 ? 'box' : 'rectangle', width_m, length_m, height_m };
}

/** Reads the head of a EULUMDAT file. Refuses counts that cannot be, and intensities without lumens to stand on. */
export function readLdtHeader(lines: readonly string[]): LdtHeader {
  const items = itemsOf(lines);
  const { needed, whole, optional, text } = items;
  const symmetry = whole(3, 'the symmetry indicator', 0, 4) as LdtHeader['symmetry'];
  const planeCount = whole(4, 'the number of C planes', 1, MOST_VALUES);
  const gammaCount = whole(6, 'the number of angles in a plane', 2, MOST_VALUES);
  if (planeCount * gammaCount > MOST_VALUES)
    refuse({
      code: 'photometry.too-many-values',
      what: `${planeCount} planes of ${gammaCount} angles are more than the ${MOST_VALUES} values that are read`,
      line: 6,
      mend: 'Check the two counts; a goniometer gives some thousands of values.',
    });
  const opening = openingOf(items);
  const output = optional(23, 'The light output ratio');
  const factor = text(24) === '' ? 1 : needed(24, 'the conversion factor for intensities');
  if (factor <= 0)
    refuse({
      code: 'photometry.bad-multiplier',
      what: `The conversion factor for intensities is ${factor}, which leaves no light`,
      line: 24,
      mend: 'Write 1 there if the intensities need no multiplying, or ask the maker.',
    });
  const tilt_deg = optional(25, 'The tilt during measurement');
  const setCount = whole(26, 'the number of sets of lamps', 1, MOST_SETS);
  // Each item stands for all sets before the next item begins.
  const ofSet = (item: number): number => ITEMS + 1 + item * setCount;
  const lampCount = optional(ofSet(0), 'The number of lamps');
  const setFlux_lm = needed(ofSet(2), 'the total lumens of the lamps');
  if (setFlux_lm <= 0)
    refuse({
      code: 'photometry.no-rated-flux',
      what: `The lamps’ total is ${setFlux_lm} lm, and intensities per 1000 lm stand on it`,
      line: ofSet(2),
      mend: 'Write the lumens of the lamps there, from the maker’s data sheet.',
    });
  const inputPower_W = optional(ofSet(5), 'The power of the lamps');
  const told: Notice[] = [];
  if (setCount > 1)
    told.push({
      code: 'photometry.several-sets',
      what: `The file lists ${setCount} sets of lamps; the first was taken, ${setFlux_lm} lm.`,
      line: ITEMS,
    });
  if (tilt_deg !== 0)
    told.push({
      code: 'photometry.measured-tilted',
      what: `The lamp was tilted by ${tilt_deg}° when it was measured; angles were left as they stand.`,
      line: 25,
    });
  if (inputPower_W <= 0)
    told.push({
      code: 'photometry.no-power',
      what: `Input power is given as ${inputPower_W} W and taken as unknown.`,
      line: ofSet(5),
    });
  const labels = TEXTS.map(([item, keyword]) => ({ keyword, text: text(item) })).filter(
    ({ text: words }) => words !== '',
  );
  const lamps = text(ofSet(1));
  return {
    symmetry,
    planeCount,
    gammaCount,
    factor,
    setFlux_lm,
    isAbsolute: lampCount < 0,
    inputPower_W: inputPower_W > 0 ? inputPower_W : undefined,
    outputFraction: output > 0 ? output / 100 : undefined,
    opening,
    labels: lamps === '' ? labels : [...labels, { keyword: 'LAMP', text: lamps }],
    start: ITEMS + PER_SET * setCount,
    notices: [...items.notices, ...told],
  };
}
