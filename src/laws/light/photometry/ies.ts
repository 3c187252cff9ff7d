/**
 * Reads an IES photometric file (LM-63 of 1986, 1991, 1995, 2002 or 2019).
 *
 *     I = candela value · candela multiplier · ballast factor (· ballast-lamp photometric factor, to 1995)
 *
 * Lumens of the lamps are not multiplied in: the candela values already hold them.
 *
 * @source lm-63 the order of the records
 * @source ies-lm63-importer which factors multiply
 */
import { Fault } from '../../../base/fault.ts';
import { complete } from './complete.ts';
import { readIesHeader, type IesHeader, type IesYear } from './iesHeader.ts';
import { readIesNumbers, type IesNumbers, type IesRecord } from './iesNumbers.ts';
import { iesOpening } from './iesOpening.ts';
import type { Grid, Notice, Photometry } from './photometry.ts';
import { reading, refuse, type PhotometryRead } from './refusal.ts';
import { linesOf } from './text.ts';
import { shown } from './words.ts';

function tiltNotices({ tilt, tiltLine }: IesHeader): readonly Notice[] {
  const word = tilt.toUpperCase();
  if (word === 'NONE') return [];
  if (word === 'INCLUDE')
    return [
      {
        code: 'photometry.tilt-kept',
        what: 'The lamp’s output changes with its tilt. The table was kept, not applied: intensities are for the lamp as it was measured.',
        line: tiltLine,
      },
    ];
  if (word === '')
    return [{ code: 'photometry.tilt-line', what: 'TILT= says nothing; it was taken as NONE.', line: tiltLine }];
  // A name is never opened; one that points elsewhere is no name of a file beside this one.
  if (/[\\/:]|\.\./.test(tilt))
    refuse({
      code: 'photometry.tilt-path',
      what: `TILT= names a path, "${shown(tilt)}"`,
      line: tiltLine,
      mend: 'Write TILT=NONE if the lamp is used as it was measured, or paste the table in under TILT=INCLUDE.',
    });
  return [
    {
      code: 'photometry.tilt-file',
      what: `TILT= names another file, "${shown(tilt)}", which was not opened; intensities are for the lamp as it was measured.`,
      line: tiltLine,
    },
  ];
}

/** The factor on every candela value, and what there is to tell about it. */
function factorOf(record: IesRecord, year: IesYear): { readonly factor: number; readonly notices: readonly Notice[] } {
  const { multiplier, ballastFactor, secondFactor, secondFactorLine: line } = record;
  const factor = multiplier * ballastFactor;
  if (secondFactor === 1 || year === 2019) return { factor, notices: [] };
  if (year === 2002)
    return {
      factor,
      notices: [
        {
          code: 'photometry.reserved-factor',
          what: `The value ${secondFactor} stands in a place that LM-63-2002 reserves; it was not multiplied in.`,
          line,
        },
      ],
    };
  if (secondFactor <= 0)
    refuse({
      code: 'photometry.bad-multiplier',
      what: `The ballast-lamp photometric factor is ${secondFactor}, which leaves no light`,
      line,
      mend: 'Write 1 there if the lamp has no such factor, or ask the maker.',
    });
  return {
    factor: factor * secondFactor,
    notices: [
      {
        code: 'photometry.ballast-lamp-factor',
        what: `A ballast-lamp photometric factor of ${secondFactor} was multiplied in, as versions to 1995 ask.`,
        line,
      },
    ],
  };
}

function lampNotices({ lampCount, fluxPerLamp_lm, inputPower_W }: IesRecord): readonly Notice[] {
  const notices: Notice[] = [];
  if (fluxPerLamp_lm !== -1 && (fluxPerLamp_lm <= 0 || lampCount <= 0))
    notices.push({
      code: 'photometry.no-rated-flux',
      what: `${lampCount} lamps of ${fluxPerLamp_lm} lm say nothing of the light in the lamp; the candela values were used as they stand.`,
    });
  if (inputPower_W <= 0)
    notices.push({
      code: 'photometry.no-power',
      what: `Input power is given as ${inputPower_W} W and taken as unknown.`,
    });
  return notices;
}

function multiplied(grid: Grid, factor: number): Grid {
  return { ...grid, intensities_cd: grid.intensities_cd.map((value) => value * factor) };
}

function photometryOf(header: IesHeader, numbers: IesNumbers, notices: readonly Notice[]): Photometry {
  const { record, grid, tilt } = numbers;
  const { factor, notices: factorNotices } = factorOf(record, header.year);
  const { opening, isOwnCode } = iesOpening(record, { year: header.year, isInFeet: record.isInFeet });
  const { symmetry, planes_deg, gammas_deg, intensities_cd } = multiplied(grid, factor);
  const hasRated = record.fluxPerLamp_lm > 0 && record.lampCount > 0;
  const openingNotices: readonly Notice[] = isOwnCode
    ? []
    : [
        {
          code: 'photometry.opening-code',
          what: `The opening ${record.width} × ${record.length} × ${record.height} follows no rule of LM-63-${header.year}; it was read as ${opening.shape}.`,
        },
      ];
  return complete({
    format: 'ies',
    version: `LM-63-${header.year}`,
    symmetry,
    planes_deg,
    gammas_deg,
    intensities_cd,
    ratedFlux_lm: hasRated ? record.fluxPerLamp_lm * record.lampCount : undefined,
    inputPower_W: record.inputPower_W > 0 ? record.inputPower_W : undefined,
    opening,
    tilt,
    labels: header.labels,
    notices: [
      ...notices,
      ...header.notices,
      ...tiltNotices(header),
      ...numbers.notices,
      ...factorNotices,
      ...openingNotices,
      ...lampNotices(record),
    ],
  });
}

const DECIMAL_COMMA = /\d,\d/;

/**
 * The numbers with commas between values, as the standard has them, or else as decimals: read so only where the counts come
 * out exactly that way and do not the other.
 */
function numbersEitherWay(lines: readonly string[], header: IesHeader): IesNumbers {
  try {
    return readIesNumbers(lines, header, 'parts');
  } catch (first) {
    if (!(first instanceof Fault)) throw first;
    const last = lines.findIndex((line, index) => index >= header.start && DECIMAL_COMMA.test(line));
    if (last < 0) throw first;
    let numbers: IesNumbers;
    try {
      numbers = readIesNumbers(lines, header, 'decimal');
    } catch (second) {
      // The way the standard has it tells more of what is wrong.
      if (second instanceof Fault) throw first;
      throw second;
    }
    const told = { code: 'photometry.decimal-commas', what: 'Commas were read as decimal points.', line: last + 1 };
    return { ...numbers, notices: [told, ...numbers.notices] };
  }
}

/**
 * An IES file as photometry, or the refusal that says which line stops it and how to mend it. Never throws for what is in
 * the file, and never opens another.
 */
export function readIes(file: string | Uint8Array): PhotometryRead {
  return reading(() => {
    const { lines, notices } = linesOf(file);
    const header = readIesHeader(lines);
    return photometryOf(header, numbersEitherWay(lines, header), notices);
  });
}
