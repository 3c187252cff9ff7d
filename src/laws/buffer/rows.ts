/**
 * The highest frame rate of a sensor read row by row.
 *
 *     F = 1 / (rows·tr + to)        tr = columns / pixel rate + blanking        F ≤ throughput / B
 *
 * F frame rate, fps        tr time of a row, s        to time that each frame takes besides, s        B bytes a frame
 *
 * Two modes of one width fix tr and to; a third tests them. Fewer rows nearly always buys speed; fewer columns only where
 * rows are slow because of their pixels. Real formats come in steps: round down to a listed one and never past the table.
 *
 * @source readout-notes the model, in several cameras' published frame-rate notes, with worked examples
 */
import { requireCount, requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

export interface RowTiming {
  readonly rowTime_s: number;
  readonly overhead_s: number;
}

/** Highest rate at a number of rows. Throws RangeError unless rows are whole, row time positive, overhead 0 or above. */
export function frameRateByRows_fps({
  rowCount,
  rowTime_s,
  overhead_s,
}: RowTiming & { readonly rowCount: number }): number {
  requireCount({ rowCount }, 1);
  requirePositive({ rowTime_s });
  requireNotNegative({ overhead_s });
  return 1 / (rowCount * rowTime_s + overhead_s);
}

/** Time of one row read pixel by pixel. Throws RangeError unless columns are whole, pixel rate positive, blanking 0 or above. */
export function rowTimeOfColumns_s(given: {
  readonly columnCount: number;
  readonly pixelRate_Hz: number;
  readonly blanking_s: number;
}): number {
  const { columnCount, pixelRate_Hz, blanking_s } = given;
  requireCount({ columnCount }, 1);
  requirePositive({ pixelRate_Hz });
  requireNotNegative({ blanking_s });
  return columnCount / pixelRate_Hz + blanking_s;
}

/** Rounding in the subtraction below can leave this share of a frame's time where there is no overhead at all. */
const ROUNDING = 1e-12;

/**
 * Row time and overhead from two known modes of one width. Throws RangeError for equal rows, or modes that no positive row
 * time or no overhead of 0 or above explains.
 */
export function fitRows(given: {
  readonly firstRowCount: number;
  readonly firstFrameRate_fps: number;
  readonly secondRowCount: number;
  readonly secondFrameRate_fps: number;
}): RowTiming {
  const { firstRowCount, firstFrameRate_fps, secondRowCount, secondFrameRate_fps } = given;
  requireCount({ firstRowCount, secondRowCount }, 1);
  requirePositive({ firstFrameRate_fps, secondFrameRate_fps });
  if (firstRowCount === secondRowCount)
    throw new RangeError(`secondRowCount must differ from firstRowCount, got ${secondRowCount} for both`);
  const rowTime_s = (1 / firstFrameRate_fps - 1 / secondFrameRate_fps) / (firstRowCount - secondRowCount);
  requirePositive({ rowTime_s });
  const left_s = 1 / firstFrameRate_fps - firstRowCount * rowTime_s;
  const overhead_s = Math.abs(left_s) < ROUNDING / firstFrameRate_fps ? 0 : left_s;
  requireNotNegative({ overhead_s });
  return { rowTime_s, overhead_s };
}

/** Highest rate that a data path carries. Throws RangeError outside positive inputs. */
export function throughputFrameRate_fps(given: {
  readonly throughput_B_per_s: number;
  readonly frameSize_B: number;
}): number {
  const { throughput_B_per_s, frameSize_B } = given;
  requirePositive({ throughput_B_per_s, frameSize_B });
  return throughput_B_per_s / frameSize_B;
}

const COMMON = {
  holds: 'A sensor read row by row, exposure no longer than readout or counted in the overhead; modes of one width.',
  sources: ['readout-notes'],
};
const TIMING = { rowTime_s: 'Time of a row', overhead_s: 'Time besides the rows' };

export const frameRateByRows = law(frameRateByRows_fps, {
  id: 'frame-rate-by-rows',
  title: 'Frame rate by rows',
  says: 'The fastest a sensor runs when windowed to a number of rows.',
  equation: 'F = 1 / (rows · tr + to)',
  takes: { rowCount: { title: 'Rows', as: 'count' }, ...TIMING },
  gives: { frameRate_fps: 'Frame rate' },
  words: ['window', 'crop', 'region of interest', 'maximum frame rate', 'resolution'],
  example: { rowCount: 720, rowTime_s: 4.51e-7, overhead_s: 25.6e-6 },
  ...COMMON,
});

export const rowTime = law(rowTimeOfColumns_s, {
  id: 'row-time',
  title: 'Time of a row',
  says: 'How long a sensor takes over one row when its pixels set the pace.',
  equation: 'tr = columns / pixel rate + blanking',
  takes: {
    columnCount: { title: 'Columns', as: 'count' },
    pixelRate_Hz: { title: 'Pixels a second', note: 'all outputs together' },
    blanking_s: 'Blanking of a row',
  },
  gives: { rowTime_s: 'Time of a row' },
  words: ['window', 'readout', 'pixel clock'],
  example: { columnCount: 1280, pixelRate_Hz: 40e6, blanking_s: 3.5e-6 },
  ...COMMON,
});

export const rowsFit = law(fitRows, {
  id: 'rows-fit',
  title: 'Row timing from two modes',
  says: 'What two listed modes of one width tell about every number of rows between them.',
  equation: 'tr = (1/F₁ − 1/F₂) / (rows₁ − rows₂), to = 1/F₁ − rows₁ · tr',
  takes: {
    firstRowCount: { title: 'Rows of one mode', as: 'count' },
    firstFrameRate_fps: 'Its frame rate',
    secondRowCount: { title: 'Rows of another', as: 'count' },
    secondFrameRate_fps: 'Its frame rate',
  },
  gives: TIMING,
  words: ['window', 'modes', 'maximum frame rate', 'resolution'],
  example: { firstRowCount: 2160, firstFrameRate_fps: 1000, secondRowCount: 1080, secondFrameRate_fps: 1950 },
  ...COMMON,
});

export const frameRateByThroughput = law(throughputFrameRate_fps, {
  id: 'frame-rate-by-throughput',
  title: 'Frame rate by throughput',
  says: 'The fastest frames of a size can pass a data path.',
  equation: 'F = throughput / B',
  takes: { throughput_B_per_s: 'Throughput', frameSize_B: 'Size of a frame' },
  gives: { frameRate_fps: 'Frame rate' },
  words: ['bandwidth', 'data path', 'maximum frame rate'],
  example: { throughput_B_per_s: 9.2e9, frameSize_B: 3_110_400 },
  holds: 'A path that carries nothing else; row timing may bind first.',
  sources: ['frame-rate-practice'],
});
