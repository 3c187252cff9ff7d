/**
 * How sharp each tile of a frame is, judged on some rows of it, each with the two about it.
 *
 *     mean of gx² + gy² (Sobel) and of the square of the Laplacian [0 1 0; 1 −4 1; 0 1 0], on light
 *
 * @source focus-measures
 */
import type { Grid } from './grid.ts';
import type { RowPlaces } from './rowsRead.ts';

type Codes = Uint8Array | Uint16Array;

/** A row of light. */
function lightRow(data: Codes, from: number, table: Float32Array, into: Float32Array): void {
  for (let x = 0; x < into.length; x += 1) into[x] = table[data[from + x]!]!;
}

interface SharpRows {
  above: Float32Array;
  here: Float32Array;
  below: Float32Array;
}

/** Sums of squares of gradient and Laplacian between two columns. */
interface SharpSums {
  gradient: number;
  laplacian: number;
}

function sumSharpness({ above, here, below }: SharpRows, from: number, to: number, into: SharpSums): void {
  // Each column's part is worked out once: of the column before, of this one and of the next.
  let sumWest = above[from - 1]! + 2 * here[from - 1]! + below[from - 1]!;
  let fallWest = below[from - 1]! - above[from - 1]!;
  let west = here[from - 1]!;
  let sides = above[from]! + below[from]!;
  let fall = below[from]! - above[from]!;
  let middle = here[from]!;
  let gradient = 0;
  let laplacian = 0;
  for (let x = from + 1; x <= to; x += 1) {
    const high = above[x]!;
    const low = below[x]!;
    const east = here[x]!;
    const sidesEast = high + low;
    const fallEast = low - high;
    const sumEast = sidesEast + 2 * east;
    const across = sumEast - sumWest;
    const down = fallWest + 2 * fall + fallEast;
    const curve = sides + west + east - 4 * middle;
    gradient += across * across + down * down;
    laplacian += curve * curve;
    sumWest = sides + 2 * middle;
    fallWest = fall;
    west = middle;
    sides = sidesEast;
    fall = fallEast;
    middle = east;
  }
  into.gradient = gradient;
  into.laplacian = laplacian;
}

/** Judges a frame whose rows lie at these places in its code values: mean squares of gradient and of Laplacian of each tile. */
export type Sharpness = (data: Codes, places: RowPlaces, gradient: Float32Array, laplacian: Float32Array) => void;

/** For frames cut up like this, light of each code value from the table. */
export function createSharpness(grid: Grid, table: Float32Array): Sharpness {
  const { width, height, cell_px, rowsRead, columns, columnEdges, rowOf, cellRows } = grid;
  const { step, judgedStep } = rowsRead;
  const rowOfLight = () => new Float32Array(width);
  const rows: SharpRows = { above: rowOfLight(), here: rowOfLight(), below: rowOfLight() };
  const judged = new Float64Array(columns * grid.rows);
  const sums: SharpSums = { gradient: 0, laplacian: 0 };
  return (data, places, gradient, laplacian) => {
    gradient.fill(0);
    laplacian.fill(0);
    judged.fill(0);
    for (let y = 1; y + 1 < height; y += judgedStep) {
      const cellRow = Math.floor(y / cell_px);
      if (cellRow >= cellRows) break;
      const on = ((y - 1) / judgedStep) * places.judgedStride;
      if (judgedStep === 1 && y > 1) {
        [rows.above, rows.here, rows.below] = [rows.here, rows.below, rows.above];
      } else {
        lightRow(data, ((y - 1) / step) * places.stride, table, rows.above);
        lightRow(data, places.second + on, table, rows.here);
      }
      lightRow(data, places.third + on, table, rows.below);
      const tileRow = rowOf[cellRow]! * columns;
      for (let column = 0; column < columns; column += 1) {
        const from = Math.max(1, columnEdges[column]! * cell_px);
        const to = Math.min(width - 1, columnEdges[column + 1]! * cell_px);
        if (to <= from) continue;
        sumSharpness(rows, from, to, sums);
        gradient[tileRow + column]! += sums.gradient;
        laplacian[tileRow + column]! += sums.laplacian;
        judged[tileRow + column]! += to - from;
      }
    }
    for (let tile = 0; tile < judged.length; tile += 1) {
      const share = judged[tile]! > 0 ? 1 / judged[tile]! : 0;
      gradient[tile]! *= share;
      laplacian[tile]! *= share;
    }
  };
}
