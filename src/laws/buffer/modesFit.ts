/**
 * Row timing from all the listed modes of a camera, so that a slip in one of them shows.
 *
 *     tr = median over pairs of (1/F₁ − 1/F₂) / (rows₁ − rows₂)        to = median over modes of 1/F − rows · tr
 *
 * F listed frame rate, fps        tr time of a row, s        to time that each frame takes besides, s, at least 0
 *
 * Medians let about one mode in four be wrong without moving the others; that they do so is common practice, no source.
 * Holds where one row time explains the modes: give those of one binning together, and of one width where rows are slow
 * because of their pixels.
 *
 * @source readout-notes the model that the modes are held against
 */
import { requireCount, requirePositive } from '../../base/domain.ts';
import { frameRateByRows_fps, type RowTiming } from './rows.ts';

export interface ListedMode {
  readonly rowCount: number;
  readonly frameRate_fps: number;
}

function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/**
 * Row time and overhead that most of the modes agree on. Throws RangeError with fewer than two heights, or for modes that
 * no positive row time explains.
 */
export function fitModes(modes: readonly ListedMode[]): RowTiming {
  for (const { rowCount, frameRate_fps } of modes) {
    requireCount({ rowCount }, 1);
    requirePositive({ frameRate_fps });
  }
  const rowTimes = modes.flatMap((one, i) =>
    modes
      .slice(i + 1)
      .filter((other) => other.rowCount !== one.rowCount)
      .map((other) => (1 / one.frameRate_fps - 1 / other.frameRate_fps) / (one.rowCount - other.rowCount)),
  );
  if (rowTimes.length === 0) throw new RangeError('modes must have two different row counts, got fewer');
  const rowTime_s = medianOf(rowTimes);
  requirePositive({ rowTime_s });
  const left_s = medianOf(modes.map(({ rowCount, frameRate_fps }) => 1 / frameRate_fps - rowCount * rowTime_s));
  return { rowTime_s, overhead_s: Math.max(0, left_s) };
}

/** How much faster a mode is listed than its timing makes it, as a share; below zero where it is listed slower. */
export function misfitFraction({ rowCount, frameRate_fps, ...timing }: ListedMode & RowTiming): number {
  requirePositive({ frameRate_fps });
  return frameRate_fps / frameRateByRows_fps({ rowCount, ...timing }) - 1;
}
