/**
 * Which rows of a large picture are read. All of them tell hardly more than two of each cell, and to have them all brought
 * takes longer than to look at them: so only those are asked for.
 */
import { powerOfTwoFrom } from '../base/fourier.ts';

/** Steps are powers of two. */
export interface RowsRead {
  /** Of every so many rows the first. */
  readonly step: number;
  /** Of every so many rows the second and the third as well, by which sharpness is judged; 4 or more, and no less than the step. */
  readonly judgedStep: number;
}

/** How many rows of each kind there are: the first of each step, then the second and the third of each that is judged. */
export function rowCounts({ step, judgedStep }: RowsRead, height: number): readonly [first: number, second: number, third: number] {
  return [Math.ceil(height / step), Math.ceil((height - 1) / judgedStep), Math.ceil((height - 2) / judgedStep)];
} // prettier-ignore

/** How many rows there are together; all of them where none are named. */
export function rowsIn(rows: RowsRead | undefined, height: number): number {
  return rows ? rowCounts(rows, height).reduce((sum, count) => sum + count, 0) : height;
}

/** Pixels whose sharpness is judged in a frame, at most about, and times that its height is gone down at least. */
const MOST_JUDGED = 50_000;
const FEWEST_JUDGED = 16;

/** Every so many rows sharpness is judged, where every so many are read. */
export function judgedStepOf(width: number, height: number, step: number): number {
  const enough = powerOfTwoFrom((width * height) / MOST_JUDGED);
  const most = powerOfTwoFrom(Math.max(1, height / FEWEST_JUDGED / 2));
  const judgedStep = Math.min(enough, most);
  return step > 1 ? Math.max(4, step, judgedStep) : judgedStep;
}

/** Where in a picture's code values those rows are: in the whole picture, or in what is left of it, kind after kind. */
export interface RowPlaces {
  /** From one row of the steps to the next. */
  readonly stride: number;
  /** The first row of the second and of the third kind, and from one to the next. */
  readonly second: number;
  readonly third: number;
  readonly judgedStride: number;
}

export function placesInWhole({ step, judgedStep }: RowsRead, width: number): RowPlaces {
  return { stride: step * width, second: width, third: 2 * width, judgedStride: judgedStep * width };
}

export function placesInThinned(rows: RowsRead, width: number, height: number): RowPlaces {
  const [first, second] = rowCounts(rows, height);
  return { stride: width, second: first * width, third: (first + second) * width, judgedStride: width };
}
