/**
 * Reads a EULUMDAT file.
 *
 *     I = value · conversion factor · lumens of the lamps / 1000
 *
 * All C angles are listed whatever the symmetry; of intensities only the planes that symmetry leaves:
 *
 *     0 none            C0 and on
 *     1 rotational      one plane
 *     2 about C0–C180   C0 to C180
 *     3 about C90–C270  C270 through C0 to C90
 *     4 both            C0 to C90
 *
 * Some editors write symmetry 3 from C90 through C180 to C270 instead, and nothing in the file tells the two apart. They
 * differ by half a turn about the axis; a beam that leans is told of.
 *
 * @source eulumdat-page the sections and the planes of each symmetry
 * @source eulumdat-importer the same, in a scene loader: symmetry 3 begins at the plane after three quarters
 */
import { closeTurn, gammaNotices, readAngles, type Planes } from './angles.ts';
import { complete } from './complete.ts';
import { readLdtHeader, type LdtHeader } from './ldtHeader.ts';
import type { Notice, Photometry } from './photometry.ts';
import { reading, refuse, type PhotometryRead } from './refusal.ts';
import { linesOf } from './text.ts';
import { numberOf, numbersOf, shown, wordsFrom, type WordReader } from './words.ts';

const RATIOS = 10;
/** Stated and integrated light output may differ by this much before it is told: files round their figures. */
const OUTPUT_SLACK = 0.05;
const LEAN_SHARE = 0.01;

/** All intensities left, at most one more than a whole turn needs. */
function readIntensities(
  words: WordReader,
  most: number,
): { readonly values: Float64Array; readonly notices: readonly Notice[] } {
  const values: number[] = [];
  for (let word = words.next(); word; word = words.next()) {
    const value = numberOf(word.text, 'decimal');
    if (value === undefined) {
      if (values.length === 0 || words.next() !== undefined)
        refuse({
          code: 'photometry.not-a-number',
          what: `"${shown(word.text)}" stands where an intensity should be`,
          line: word.line,
          mend: 'Write a plain number such as 125 or 12.5 there, or ask the maker for a sound file.',
        });
      return {
        values: Float64Array.from(values),
        notices: [
          { code: 'photometry.trailing-text', what: 'Text after the last value was left out.', line: word.line },
        ],
      };
    }
    if (value < 0)
      refuse({
        code: 'photometry.negative-intensity',
        what: `An intensity is ${value}, below 0`,
        line: word.line,
        mend: 'Ask the maker for a sound file: no direction can give less than no light.',
      });
    values.push(value);
    if (values.length > most) break;
  }
  return { values: Float64Array.from(values), notices: [] };
}

/** Index of a plane that must be listed. */
function indexOfPlane(planes_deg: Float64Array, wanted_deg: number, line: number): number {
  const index = planes_deg.indexOf(wanted_deg);
  if (index >= 0) return index;
  return refuse({
    code: 'photometry.plane-range',
    what: `The symmetry stated needs a plane at C${wanted_deg}, and none is listed`,
    line,
    mend: 'Check the symmetry indicator on line 3 against the C angles, or ask for a file with the whole turn.',
  });
}

/** The planes that are stored of those listed: their angles as symmetry folds them, in the order of the file. */
function storedPlanes(header: LdtHeader, listed_deg: Float64Array, line: number): Float64Array {
  const upTo = (last_deg: number) => listed_deg.slice(0, indexOfPlane(listed_deg, last_deg, line) + 1);
  switch (header.symmetry) {
    case 0:
      return listed_deg;
    case 1:
      return Float64Array.of(0);
    case 2:
      return upTo(180);
    case 4:
      return upTo(90);
    case 3: {
      const from = listed_deg.slice(indexOfPlane(listed_deg, 270, line)).filter((angle) => angle < 360);
      // C270 through C0 to C90, each as its mirror image 180 − C: 270 down to 90.
      return Float64Array.from([...from.map((angle) => 540 - angle), ...upTo(90).map((angle) => 180 - angle)]);
    }
  }
}

function reversedPlanes(values: Float64Array, gammaCount: number): Float64Array {
  const out = new Float64Array(values.length);
  const planes = values.length / gammaCount;
  for (let plane = 0; plane < planes; plane += 1)
    out.set(values.subarray(plane * gammaCount, (plane + 1) * gammaCount), (planes - 1 - plane) * gammaCount);
  return out;
}

/** Whether the two ends of the planes held, C90 and C270, differ by more than a share of the peak. */
function leans(values: Float64Array, gammaCount: number): boolean {
  const [first, last] = [values.subarray(0, gammaCount), values.subarray(values.length - gammaCount)];
  const peak = values.reduce((most, value) => Math.max(most, value), 0);
  return first.some((value, i) => Math.abs(value - last[i]!) > LEAN_SHARE * peak);
}

function planesOf(
  header: LdtHeader,
  {
    listed_deg,
    values,
    line,
  }: { readonly listed_deg: Float64Array; readonly values: Float64Array; readonly line: number },
): Planes {
  const { symmetry, gammaCount } = header;
  const whole = listed_deg.length * gammaCount;
  const stored_deg = storedPlanes(header, listed_deg, line);
  const expected = stored_deg.length * gammaCount;
  const isWhole = values.length === whole && whole !== expected;
  if (values.length !== expected && !isWhole)
    refuse({
      code: values.length < expected ? 'photometry.too-short' : 'photometry.too-many-numbers',
      what: `${stored_deg.length} planes of ${gammaCount} angles make ${expected} intensities, and ${values.length > whole ? 'more' : values.length} are there`,
      line,
      mend: 'Check lines 3 to 6 against the lists, or ask for the whole file again.',
    });
  if (isWhole || (symmetry === 0 && listed_deg.length > 1)) {
    const turn = closeTurn({ planes_deg: listed_deg, intensities_cd: values, line });
    return isWhole
      ? {
          ...turn,
          notices: [
            ...turn.notices,
            {
              code: 'photometry.all-planes-stored',
              what: `The file states symmetry ${symmetry}, yet holds every plane; all were read.`,
              line: 3,
            },
          ],
        }
      : turn;
  }
  if (symmetry === 3)
    return {
      symmetry: 'about-c90',
      planes_deg: stored_deg.toReversed(),
      intensities_cd: reversedPlanes(values, gammaCount),
      notices: leans(values, gammaCount)
        ? [
            {
              code: 'photometry.two-orders',
              what: 'Files of symmetry 3 are written in two orders, which nothing tells apart. The format’s own was taken, C270 first. If the beam leans to the wrong side of the lamp, turn it half round.',
              line: 3,
            },
          ]
        : [],
    };
  const named = symmetry === 2 ? 'about-c0' : symmetry === 4 ? 'quadrants' : 'rotational';
  return { symmetry: named, planes_deg: stored_deg, intensities_cd: values, notices: [] };
}

function outputNotices({ flux_lm }: Photometry, { outputFraction, setFlux_lm, factor }: LdtHeader): readonly Notice[] {
  if (outputFraction === undefined) return [];
  const found = flux_lm / setFlux_lm;
  if (Math.abs(found - outputFraction) <= OUTPUT_SLACK * Math.max(found, outputFraction)) return [];
  const percent = (value: number) => Number((100 * value).toPrecision(3));
  return [
    {
      code: 'photometry.output-differs',
      what: `The file states that ${percent(outputFraction)} % of the lamps’ light leaves; its intensities${factor === 1 ? '' : ` times ${factor}`} make ${percent(found)} %.`,
      line: 23,
    },
  ];
}

function readLdtLines(lines: readonly string[], notices: readonly Notice[]): Photometry {
  const header = readLdtHeader(lines);
  const { planeCount, gammaCount } = header;
  const words = wordsFrom(lines, header.start, 'decimal');
  const numbers = numbersOf(words, 'decimal');
  for (let i = 0; i < RATIOS; i += 1) numbers.number('a direct ratio');
  const listed_deg = readAngles(numbers, { what: 'C angle', count: planeCount, least: 0, most: 360 });
  const line = numbers.line();
  if (listed_deg[0] !== 0)
    refuse({
      code: 'photometry.plane-range',
      what: `C angles begin at ${listed_deg[0]!}°, and must begin at 0°`,
      line,
      mend: 'Check that no line before them is missing or written twice.',
    });
  const gammas_deg = readAngles(numbers, { what: 'γ angle', count: gammaCount, least: 0, most: 180 });
  const gammaLine = numbers.line();
  const { values, notices: ending } = readIntensities(words, planeCount * gammaCount);
  const planes = planesOf(header, { listed_deg, values, line });
  const scale = (header.factor * header.setFlux_lm) / 1000;
  const photometry = complete({
    format: 'ldt',
    version: 'EULUMDAT',
    symmetry: planes.symmetry,
    planes_deg: planes.planes_deg,
    gammas_deg,
    intensities_cd: planes.intensities_cd.map((value) => value * scale),
    ratedFlux_lm: header.isAbsolute ? undefined : header.setFlux_lm,
    inputPower_W: header.inputPower_W,
    opening: header.opening,
    tilt: undefined,
    labels: header.labels,
    notices: [...notices, ...header.notices, ...gammaNotices(gammas_deg, gammaLine), ...planes.notices, ...ending],
  });
  return { ...photometry, notices: [...photometry.notices, ...outputNotices(photometry, header)] };
}

/**
 * A EULUMDAT file as photometry, or the refusal that says which line stops it and how to mend it. Never throws for what is
 * in the file.
 */
export function readLdt(file: string | Uint8Array): PhotometryRead {
  return reading(() => {
    const { lines, notices } = linesOf(file);
    if (lines.every((line) => line.trim() === ''))
      refuse({ code: 'photometry.empty', what: 'The file is empty', line: 0, mend: 'Give the file again.' });
    return readLdtLines(lines, notices);
  });
}
