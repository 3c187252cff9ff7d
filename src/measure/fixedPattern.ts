/**
 * The sensor's own pattern of columns and rows in flat dark parts of the picture: what is the same at every look of how each
 * differs from the two beside it. A lens draws nothing so fine, and noise is another at every look.
 *
 *     r_x = m_x − (m_{x−1} + m_{x+1})/2        σ² = mean over pairs of looks of r_x·r′_x / 1.5
 *
 * m mean of a column over a flat dark part, code values
 *
 * Columns and rows at the edges of blocks of eight, by which pictures are coded, are left out.
 */
import type { Plane } from './frameReader.ts';
import type { Coding } from './transfer.ts';

export interface FixedPattern {
  /** Standard deviation of columns and of rows, over the range from black to white; absent where none can be told. */
  readonly columnsFraction?: number;
  readonly rowsFraction?: number;
}

/** Of each column, then of each row: sum over looks, sum of squares, and how many looks. */
export interface FixedPatternState {
  readonly sums: Float64Array;
  readonly squares: Float64Array;
  readonly counts: Float64Array;
}

export interface FixedPatternMeter {
  /** Looks at a whole picture; a few, far apart, are enough. */
  readonly look: (plane: Plane) => void;
  readonly found: () => FixedPattern;
  readonly state: () => FixedPatternState;
}

const PART = 32;
const BLOCK = 8;
/** Flat and dark: below this light, quarters that differ by no more than this share of what lies above black, nothing black. */
const DARK = 0.05;
const FLAT = 0.06;
const FEWEST_LOOKS = 3;
const FEWEST_LINES = 48;
/** Above its own uncertainty; and the least that is a pattern, in code values. */
const CLEAR = 6;
const LEAST_CODES = 0.05;

/** Whether a part is flat, dark and nowhere black. */
function isFlatDark({ data, width }: Plane, left: number, top: number, { blackCode }: Coding, table: Float32Array): boolean {
  const quarters = [0, 0, 0, 0];
  for (let y = 0; y < PART; y += 1)
    for (let x = 0, i = (top + y) * width + left; x < PART; x += 1, i += 1) {
      if (data[i]! <= blackCode) return false;
      quarters[(y < PART / 2 ? 0 : 2) + (x < PART / 2 ? 0 : 1)]! += data[i]! - blackCode;
    }
  const each = quarters.map((sum) => sum / (PART * PART * 0.25));
  const mean = each.reduce((sum, value) => sum + value, 0) / 4;
  return table[Math.round(mean + blackCode)]! < DARK && Math.max(...each) - Math.min(...each) < Math.max(FLAT * mean, 0.25);
} // prettier-ignore

/** A meter of pictures of this size and coding, from the first or from where it was saved. */
export function createFixedPatternMeter({ width, height, coding, table }: { readonly width: number; readonly height: number; readonly coding: Coding; readonly table: Float32Array }, saved?: FixedPatternState): FixedPatternMeter {
  const lines = width + height;
  const sums = saved?.sums.slice() ?? new Float64Array(lines);
  const squares = saved?.squares.slice() ?? new Float64Array(lines);
  const counts = saved?.counts.slice() ?? new Float64Array(lines);
  const [here, parts] = [new Float64Array(lines), new Float64Array(lines)];
  const [across, down] = [new Float64Array(PART), new Float64Array(PART)];

  const addPart = ({ data }: Plane, left: number, top: number): void => {
    across.fill(0);
    down.fill(0);
    for (let y = 0; y < PART; y += 1)
      for (let x = 0, i = (top + y) * width + left; x < PART; x += 1, i += 1) {
        across[x]! += data[i]! / PART;
        down[y]! += data[i]! / PART;
      }
    for (const [means, from] of [[across, left], [down, width + top]] as const)
      for (let i = 1; i + 1 < PART; i += 1) {
        here[from + i]! += means[i]! - (means[i - 1]! + means[i + 1]!) / 2;
        parts[from + i]! += 1;
      }
  };

  const look = (plane: Plane): void => {
    here.fill(0);
    parts.fill(0);
    for (let top = 0; top + PART <= height; top += PART)
      for (let left = 0; left + PART <= width; left += PART)
        if (isFlatDark(plane, left, top, coding, table)) addPart(plane, left, top);
    for (let line = 0; line < lines; line += 1) {
      if (parts[line] === 0) continue;
      const value = here[line]! / parts[line]!;
      sums[line]! += value;
      squares[line]! += value * value;
      counts[line]! += 1;
    }
  };

  const spreadOf = (from: number, to: number): number | undefined => {
    const products: number[] = [];
    for (let line = from; line < to; line += 1) {
      const [n, place] = [counts[line]!, (line - from) % BLOCK];
      // At the edge of a block its coding shows, and so it does in the lines that lean on it.
      if (n < FEWEST_LOOKS || place <= 1 || place >= BLOCK - 2) continue;
      products.push((sums[line]! ** 2 - squares[line]!) / (n * (n - 1)));
    }
    if (products.length < FEWEST_LINES) return undefined;
    const mean = products.reduce((sum, value) => sum + value, 0) / products.length;
    const variance = products.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (products.length - 1);
    const spread = Math.sqrt(Math.max(0, mean) / 1.5);
    return mean > CLEAR * Math.sqrt(variance / products.length) && spread > LEAST_CODES ? spread : undefined;
  };

  const found = (): FixedPattern => {
    const range = coding.whiteCode - coding.blackCode;
    const [columns, rows] = [spreadOf(0, width), spreadOf(width, lines)];
    return { ...(columns !== undefined && { columnsFraction: columns / range }), ...(rows !== undefined && { rowsFraction: rows / range }) };
  };
  return { look, found, state: () => ({ sums, squares, counts }) };
} // prettier-ignore
