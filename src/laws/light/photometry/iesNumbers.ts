/** The numbers of an IES file, from the TILT block to the last candela, in the order the standard gives them. */
import type { IesHeader } from './iesHeader.ts';
import { MOST_VALUES } from './complete.ts';
import { gammaNotices, planesByRange, readAngles } from './angles.ts';
import type { Grid, Notice, TiltTable } from './photometry.ts';
import { refuse } from './refusal.ts';
import { gridOfTypeB } from './typeB.ts';
import { numberOf, numbersOf, shown, wordsFrom, type Comma, type Numbers, type WordReader } from './words.ts';

const MOST_TILTS = 1000;

/** The two records before the angles. */
export interface IesRecord {
  readonly lampCount: number;
  readonly fluxPerLamp_lm: number;
  readonly multiplier: number;
  readonly verticalCount: number;
  readonly horizontalCount: number;
  readonly type: 'B' | 'C';
  readonly isInFeet: boolean;
  readonly width: number;
  readonly length: number;
  readonly height: number;
  readonly ballastFactor: number;
  /** The ballast-lamp photometric factor to 1995, reserved in 2002, how the file was made in 2019. */
  readonly secondFactor: number;
  readonly secondFactorLine: number;
  readonly inputPower_W: number;
}

export interface IesNumbers {
  readonly record: IesRecord;
  readonly tilt: TiltTable | undefined;
  /** In the file's own candela values, before its multipliers. */
  readonly grid: Grid;
  readonly notices: readonly Notice[];
}

const LAMP_POSITIONS = ['vertical', 'horizontal', 'horizontal-tilting'] as const;

function readTilt(numbers: Numbers): TiltTable {
  const position = numbers.whole('the lamp’s position in the TILT block', 1, 3);
  const count = numbers.whole('the number of TILT angles', 1, MOST_TILTS);
  const angles_deg = readAngles(numbers, { what: 'TILT angle', count, least: 0, most: 180 });
  const factors = new Float64Array(count);
  for (let i = 0; i < count; i += 1) factors[i] = numbers.number('a TILT factor');
  return { lampPosition: LAMP_POSITIONS[position - 1]!, angles_deg, factors };
}

function refuseTypeA(line: number): never {
  return refuse({
    code: 'photometry.type-a',
    what: 'The file is of photometric type A, as headlamps are measured, which is not read',
    line,
    mend: 'Ask the maker for the same lamp as type C, or describe it by a reading in lux at a distance.',
  });
}

function readRecord(numbers: Numbers): IesRecord {
  const lampCount = numbers.number('the number of lamps');
  const fluxPerLamp_lm = numbers.number('the lumens of a lamp');
  const multiplier = numbers.number('the candela multiplier');
  if (multiplier <= 0)
    refuse({
      code: 'photometry.bad-multiplier',
      what: `The candela multiplier is ${multiplier}, which leaves no light`,
      line: numbers.line(),
      mend: 'Write 1 there if the candela values need no multiplying, or ask the maker.',
    });
  const verticalCount = numbers.whole('the number of vertical angles', 2, MOST_VALUES);
  const horizontalCount = numbers.whole('the number of horizontal angles', 1, MOST_VALUES);
  if (verticalCount * horizontalCount > MOST_VALUES)
    refuse({
      code: 'photometry.too-many-values',
      what: `${verticalCount} vertical by ${horizontalCount} horizontal angles are more than the ${MOST_VALUES} values that are read`,
      line: numbers.line(),
      mend: 'Check the two counts; a goniometer gives some thousands of values.',
    });
  const type = numbers.whole('the photometric type (1 C, 2 B, 3 A)', 1, 3);
  if (type === 3) refuseTypeA(numbers.line());
  const units = numbers.whole('the units (1 feet, 2 metres)', 1, 2);
  const width = numbers.number('the width of the opening');
  const length = numbers.number('the length of the opening');
  const height = numbers.number('the height of the opening');
  const ballastFactor = numbers.number('the ballast factor');
  if (ballastFactor <= 0)
    refuse({
      code: 'photometry.bad-multiplier',
      what: `The ballast factor is ${ballastFactor}, which leaves no light`,
      line: numbers.line(),
      mend: 'Write 1 there if the lamp has no ballast, or ask the maker.',
    });
  const secondFactor = numbers.number('the second factor of the second record');
  const secondFactorLine = numbers.line();
  const inputPower_W = numbers.number('the input watts');
  return {
    lampCount,
    fluxPerLamp_lm,
    multiplier,
    verticalCount,
    horizontalCount,
    type: type === 1 ? 'C' : 'B',
    isInFeet: units === 1,
    width,
    length,
    height,
    ballastFactor,
    secondFactor,
    secondFactorLine,
    inputPower_W,
  };
}

function readCandela(numbers: Numbers, words: WordReader, { verticalCount, horizontalCount }: IesRecord): Float64Array {
  const values = new Float64Array(verticalCount * horizontalCount);
  for (let i = 0; i < values.length; i += 1) {
    const word = words.next();
    if (!word)
      refuse({
        code: 'photometry.too-short',
        what: `The file ends after ${Math.floor(i / verticalCount)} whole planes of ${horizontalCount}, with ${i} candela values of ${values.length}`,
        line: numbers.line(),
        mend: 'Ask for the whole file again: values are missing, and guessing them would move the light.',
      });
    const value = numberOf(word.text, 'decimal') ?? NaN;
    if (Number.isNaN(value))
      refuse({
        code: 'photometry.not-a-number',
        what: `"${shown(word.text)}" stands where a candela value should be`,
        line: word.line,
        mend: 'Write a plain number such as 1250 or 12.5 there, or ask the maker for a sound file.',
      });
    if (value < 0)
      refuse({
        code: 'photometry.negative-intensity',
        what: `A candela value is ${value}, below 0`,
        line: word.line,
        mend: 'Ask the maker for a sound file: no direction can give less than no light.',
      });
    values[i] = value;
  }
  return values;
}

/** What stands after the last value: nothing, words to ignore, or a reason to doubt the counts. */
function readEnd(words: WordReader): readonly Notice[] {
  const word = words.next();
  if (!word) return [];
  const first = word.line;
  let hasNumbers = false;
  for (let next: typeof word | undefined = word, seen = 0; next && seen < 1000; next = words.next(), seen += 1) {
    if (/^(IES|TILT)/i.test(next.text))
      refuse({
        code: 'photometry.two-lamps',
        what: 'A second lamp begins after the values of the first',
        line: next.line,
        mend: 'Save each lamp as a file of its own and give the one that is on the set.',
      });
    hasNumbers ||= numberOf(next.text, 'decimal') !== undefined;
  }
  if (hasNumbers)
    refuse({
      code: 'photometry.too-many-numbers',
      what: 'Numbers are left over after the last value that the counts ask for',
      line: first,
      mend: 'Check the counts of vertical and horizontal angles against the lists below them.',
    });
  return [{ code: 'photometry.trailing-text', what: 'Text after the last value was left out.', line: first }];
}

interface Lists {
  readonly verticals_deg: Float64Array;
  readonly horizontals_deg: Float64Array;
  readonly candela: Float64Array;
  readonly verticalLine: number;
  readonly horizontalLine: number;
}

function typeC(lists: Lists): { readonly grid: Grid; readonly notices: readonly Notice[] } {
  const { verticals_deg, horizontals_deg, candela, verticalLine, horizontalLine } = lists;
  const notices = gammaNotices(verticals_deg, verticalLine);
  const planes = planesByRange({ planes_deg: horizontals_deg, intensities_cd: candela, line: horizontalLine });
  return { grid: { ...planes, gammas_deg: verticals_deg }, notices: [...notices, ...planes.notices] };
}

function typeB({ verticals_deg, horizontals_deg, candela, verticalLine, horizontalLine }: Lists): {
  readonly grid: Grid;
  readonly notices: readonly Notice[];
} {
  if (verticals_deg[0]! >= 0)
    refuse({
      code: 'photometry.axis-missing',
      what: `Vertical angles begin at ${verticals_deg[0]!}°; type B gives them from below the axis, so half of the beam is not known`,
      line: verticalLine,
      mend: 'Ask for a file with vertical angles from −90° to 90°, or of type C.',
    });
  if (horizontals_deg.length < 2 || horizontals_deg[0]! > 0 || horizontals_deg.at(-1)! <= 0)
    refuse({
      code: 'photometry.plane-range',
      what: `Horizontal angles run from ${horizontals_deg[0]!}° to ${horizontals_deg.at(-1)!}°, which leaves a side of the beam out`,
      line: horizontalLine,
      mend: 'Type B needs −90–90, or 0–90 where both sides are alike. Ask for such a file, or one of type C.',
    });
  const isWhole =
    verticals_deg[0] === -90 &&
    verticals_deg.at(-1) === 90 &&
    horizontals_deg.at(-1) === 90 &&
    (horizontals_deg[0] === 0 || horizontals_deg[0] === -90);
  const cut: Notice = {
    code: 'photometry.gamma-ends-early',
    what: `Vertical angles run from ${verticals_deg[0]!}° to ${verticals_deg.at(-1)!}°, horizontal ones from ${horizontals_deg[0]!}° to ${horizontals_deg.at(-1)!}°; beyond them the lamp is taken as dark.`,
    line: verticalLine,
  };
  const told: Notice = {
    code: 'photometry.type-b',
    what: 'The file is of type B and was brought to C planes: exact in the two principal planes, interpolated between them. Which side is left is not certain; check it against the lamp if its beam is lopsided.',
  };
  return {
    grid: gridOfTypeB({ verticals_deg, horizontals_deg, intensities_cd: candela }),
    notices: isWhole ? [told] : [told, cut],
  };
}

/** Reads all numbers of an IES file with commas taken one way. Refuses at the first that cannot be. */
export function readIesNumbers(lines: readonly string[], { year, tilt, start }: IesHeader, comma: Comma): IesNumbers {
  const words = wordsFrom(lines, start, comma);
  const numbers = numbersOf(words, comma);
  const table = tilt.toUpperCase() === 'INCLUDE' ? readTilt(numbers) : undefined;
  const record = readRecord(numbers);
  // To 1986 one code stood for types A and C; only type A looks below its horizon.
  const isC = record.type === 'C';
  const least = !isC || year === 1986 ? -90 : 0;
  const verticals_deg = readAngles(numbers, {
    what: 'Vertical angle',
    count: record.verticalCount,
    least,
    most: isC ? 180 : 90,
  });
  const verticalLine = numbers.line();
  if (isC && verticals_deg[0]! < 0) refuseTypeA(verticalLine);
  const horizontals_deg = readAngles(numbers, {
    what: 'Horizontal angle',
    count: record.horizontalCount,
    least: isC ? 0 : -90,
    most: isC ? 360 : 90,
  });
  const horizontalLine = numbers.line();
  const candela = readCandela(numbers, words, record);
  const ending = readEnd(words);
  const lists = { verticals_deg, horizontals_deg, candela, verticalLine, horizontalLine };
  const { grid, notices } = isC ? typeC(lists) : typeB(lists);
  return { record, tilt: table, grid, notices: [...notices, ...ending] };
}
