/**
 * How a picture is cut up for measuring: into cells, squares of pixels that are averaged so that a large picture takes no
 * longer to look at than a small one, and the cells into tiles, in each of which everything is measured apart.
 */
import { requireCount } from '../base/domain.ts';
import { powerOfTwoFrom } from '../base/fourier.ts';
import { judgedStepOf, type RowsRead } from './rowsRead.ts';

export interface Grid {
  readonly width: number;
  readonly height: number;
  /** Pixels along the side of a cell. Pixels beyond the last whole cell are left out. */
  readonly cell_px: number;
  readonly cellColumns: number;
  readonly cellRows: number;
  /** Of small pictures every row is read; of others two of each cell. */
  readonly rowsRead: RowsRead;
  readonly columns: number;
  readonly rows: number;
  /** First cell of each column and row of tiles, and past the last. */
  readonly columnEdges: Uint32Array;
  readonly rowEdges: Uint32Array;
  /** Tile column of each column of cells, and tile row of each row. */
  readonly columnOf: Uint32Array;
  readonly rowOf: Uint32Array;
}

/** Most cells across: enough to see a drop by, few enough to transform. */
const MOST_CELLS = 384;
/** Tiles along the longer side of a picture, and the fewest cells along the side of one. */
const MOST_TILES = 12;
const FEWEST_CELLS = 4;

function edges(cells: number, tiles: number): Uint32Array {
  return Uint32Array.from({ length: tiles + 1 }, (_, i) => Math.floor((i * cells) / tiles));
}

function tilesOf(bounds: Uint32Array): Uint32Array {
  const of = new Uint32Array(bounds.at(-1)!);
  for (let i = 0; i + 1 < bounds.length; i += 1) of.fill(i, bounds[i], bounds[i + 1]);
  return of;
}

/** A cell large enough, and of every so many rows one that is read: all cells have the same ones. */
function cellOf(width: number, height: number): { readonly cell_px: number; readonly step: number } {
  const least_px = Math.ceil(Math.max(width, height) / MOST_CELLS);
  const step = least_px > 2 ? powerOfTwoFrom(least_px) / 2 : 1;
  const cell_px = Math.ceil(least_px / step) * step;
  const shorter = Math.min(width, height);
  return cell_px <= shorter ? { cell_px, step } : { cell_px: Math.min(least_px, shorter), step: 1 };
}

/** Cuts up a picture, its tiles as square as they can be and so many along its longer side at most. Throws RangeError for a picture without pixels. */
export function gridOf(width: number, height: number, mostTiles = MOST_TILES): Grid {
  requireCount({ width, height }, 1);
  const { cell_px, step } = cellOf(width, height);
  const cellColumns = Math.floor(width / cell_px);
  const cellRows = Math.floor(height / cell_px);
  const side = Math.max(cellColumns, cellRows) / mostTiles;
  const tiles = (cells: number) =>
    Math.max(1, Math.min(mostTiles, Math.round(cells / side), Math.floor(cells / FEWEST_CELLS)));
  const [columns, rows] = [tiles(cellColumns), tiles(cellRows)];
  const [columnEdges, rowEdges] = [edges(cellColumns, columns), edges(cellRows, rows)];
  const [columnOf, rowOf] = [tilesOf(columnEdges), tilesOf(rowEdges)];
  const rowsRead = { step, judgedStep: judgedStepOf(width, height, step) };
  return {
    width,
    height,
    cell_px,
    cellColumns,
    cellRows,
    rowsRead,
    columns,
    rows,
    columnEdges,
    rowEdges,
    columnOf,
    rowOf,
  };
}

/** What the values of all cells of each tile add up to. */
export function sumTiles(grid: Grid, cells: Float32Array, into: Float32Array | Float64Array): void {
  const { cellColumns, cellRows, columns, columnEdges, rowOf } = grid;
  into.fill(0);
  for (let y = 0, i = 0; y < cellRows; y += 1)
    for (let column = 0, tile = rowOf[y]! * columns; column < columns; column += 1, tile += 1) {
      let sum = 0;
      for (const end = y * cellColumns + columnEdges[column + 1]!; i < end; i += 1) sum += cells[i]!;
      into[tile]! += sum;
    }
}
