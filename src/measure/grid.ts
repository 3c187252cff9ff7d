/**
 * How a picture is cut up for measuring: into cells, squares of pixels that are averaged so that a large picture takes no
 * longer to look at than a small one, and the cells into tiles, in each of which everything is measured apart.
 */
import { requireCount } from '../base/domain.ts';

export interface Grid {
  readonly width: number;
  readonly height: number;
  /** Pixels along the side of a cell. Pixels beyond the last whole cell are left out. */
  readonly cell_px: number;
  readonly cellColumns: number;
  readonly cellRows: number;
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

/** Cuts up a picture, its tiles as square as they can be. Throws RangeError for a picture without pixels. */
export function gridOf(width: number, height: number): Grid {
  requireCount({ width, height }, 1);
  const longer = Math.max(width, height);
  const cell_px = Math.min(Math.ceil(longer / MOST_CELLS), width, height);
  const cellColumns = Math.floor(width / cell_px);
  const cellRows = Math.floor(height / cell_px);
  const side = Math.max(cellColumns, cellRows) / MOST_TILES;
  const tiles = (cells: number) =>
    Math.max(1, Math.min(MOST_TILES, Math.round(cells / side), Math.floor(cells / FEWEST_CELLS)));
  const [columns, rows] = [tiles(cellColumns), tiles(cellRows)];
  const [columnEdges, rowEdges] = [edges(cellColumns, columns), edges(cellRows, rows)];
  const [columnOf, rowOf] = [tilesOf(columnEdges), tilesOf(rowEdges)];
  return { width, height, cell_px, cellColumns, cellRows, columns, rows, columnEdges, rowEdges, columnOf, rowOf };
}
