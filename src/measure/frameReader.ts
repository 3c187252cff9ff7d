/**
 * One frame read once: from its code values to light, cell by cell and tile by tile, how much of it is clipped or
 * crushed, how sharp each tile is, and a fixed sample of its pixels for percentiles, noise and repeated frames.
 */
import { sumTiles, type Grid } from './grid.ts';
import { placesInThinned, placesInWhole, rowCounts, type RowPlaces, type RowsRead } from './rowsRead.ts';
import { createSharpness } from './sharpness.ts';

/** A picture's code values: rows from the top, without gaps. */
export interface Plane {
  readonly data: Uint8Array | Uint16Array;
  readonly width: number;
  /** Of the picture, whichever rows are there. */
  readonly height: number;
  /** Only these rows are there, kind after kind; every row where left out. */
  readonly rowsRead?: RowsRead;
}

export interface FrameReading {
  /** Mean light of each cell. */
  readonly cells: Float32Array;
  /** Mean light of each tile, and shares of its pixels at white or above and at black or below. */
  readonly light: Float32Array;
  readonly clipped: Float32Array;
  readonly crushed: Float32Array;
  /** Mean squares of gradient and Laplacian of each tile, on light. */
  readonly gradient: Float32Array;
  readonly laplacian: Float32Array;
  /** Code values at the places of the sample. */
  readonly sample: Uint16Array;
}

export interface FrameReader {
  readonly grid: Grid;
  /** Where in the picture the sample is taken. */
  readonly places: Uint32Array;
  /** Reads a frame into the same reading every time. */
  readonly read: (plane: Plane) => FrameReading;
}

export interface ReaderGiven {
  readonly grid: Grid;
  readonly table: Float32Array;
  readonly clippedFrom: number;
  readonly crushedTo: number;
}

/** Pixels of the sample at most. */
const MOST_SAMPLED = 8192;
/** Brighter than this, over white, counts as this; and the marks of clipped and of crushed pixels. */
const BRIGHTEST = 60;
const CLIPPED = 4096;
const CRUSHED = 2 ** 24;

/** Places spread over so many pixels without keeping step with rows. */
function spreadOver(pixels: number): Uint32Array {
  const count = Math.min(pixels, MOST_SAMPLED);
  return Uint32Array.from({ length: count }, (_, i) => Math.floor(((i + 0.5) * pixels) / count));
}

/**
 * Light of every code with a mark for clipped and one for crushed ones, far above any sum of light, so that one look-up and
 * one sum for a pixel tell all three.
 */
function packedTable({ table, clippedFrom, crushedTo }: ReaderGiven): Float64Array {
  return Float64Array.from(table, (light, code) =>
    Math.min(light, BRIGHTEST) + (code >= clippedFrom ? CLIPPED : 0) + (code <= crushedTo ? CRUSHED : 0));
} // prettier-ignore

function readCells(data: Plane['data'], stride: number, grid: Grid, packed: Float64Array, into: FrameReading): void {
  const { cell_px, rowsRead, cellColumns, cellRows, columns, columnOf, rowOf } = grid;
  const { cells, clipped, crushed } = into;
  const lines = cell_px / rowsRead.step;
  const share = 1 / (cell_px * lines);
  for (let y = 0; y < cellRows; y += 1) {
    const row = y * cellColumns;
    const tileRow = rowOf[y]! * columns;
    for (let line = 0; line < lines; line += 1) {
      let at = (y * lines + line) * stride;
      for (let x = 0; x < cellColumns; x += 1) {
        let sum = 0;
        const end = at + cell_px;
        // Eight at a time, by sums that do not wait for each other: what most of the time goes into.
        for (; at + 7 < end; at += 8)
          sum +=
            packed[data[at]!]! + packed[data[at + 1]!]! + (packed[data[at + 2]!]! + packed[data[at + 3]!]!) +
            (packed[data[at + 4]!]! + packed[data[at + 5]!]! + (packed[data[at + 6]!]! + packed[data[at + 7]!]!)); // prettier-ignore
        for (; at < end; at += 1) sum += packed[data[at]!]!;
        if (sum >= CLIPPED / 2) {
          const low = Math.floor((sum + CLIPPED / 2) / CRUSHED);
          sum -= low * CRUSHED;
          const high = Math.floor((sum + CLIPPED / 2) / CLIPPED);
          sum -= high * CLIPPED;
          clipped[tileRow + columnOf[x]!]! += high;
          crushed[tileRow + columnOf[x]!]! += low;
        }
        cells[row + x] = line === 0 ? sum * share : cells[row + x]! + sum * share;
      }
    }
  }
}

/** How the rows lie in a plane, and where in its code values the sample is. */
interface Layout {
  readonly places: RowPlaces;
  readonly sampled: Uint32Array;
}

/** In the whole picture, and in what is left of it. */
function layoutsOf({ width, height, rowsRead }: Grid): { readonly whole: Layout; readonly thinned: Layout } {
  const thinned = spreadOver(width * rowCounts(rowsRead, height)[0]);
  const whole = thinned.map((at) => Math.floor(at / width) * rowsRead.step * width + (at % width));
  return {
    whole: { places: placesInWhole(rowsRead, width), sampled: whole },
    thinned: { places: placesInThinned(rowsRead, width, height), sampled: thinned },
  };
}

/** A reader for frames of one size and coding. */
export function createFrameReader(given: ReaderGiven): FrameReader {
  const { grid, table } = given;
  const tiles = grid.columns * grid.rows;
  const { whole, thinned } = layoutsOf(grid);
  const packed = packedTable(given);
  const perTile = () => new Float32Array(tiles);
  const reading: FrameReading = {
    cells: new Float32Array(grid.cellColumns * grid.cellRows),
    light: perTile(),
    clipped: perTile(),
    crushed: perTile(),
    gradient: perTile(),
    laplacian: perTile(),
    sample: new Uint16Array(whole.sampled.length),
  };
  const readSharpness = createSharpness(grid, table);
  const cellsIn = Float32Array.from({ length: tiles }, (_, tile) => {
    const [column, row] = [tile % grid.columns, Math.floor(tile / grid.columns)];
    const across = grid.columnEdges[column + 1]! - grid.columnEdges[column]!;
    return across * (grid.rowEdges[row + 1]! - grid.rowEdges[row]!);
  });
  const pixelsInCell = grid.cell_px * (grid.cell_px / grid.rowsRead.step);
  const read = ({ data, rowsRead }: Plane): FrameReading => {
    const { light, clipped, crushed, gradient, laplacian, sample } = reading;
    const { places, sampled } = rowsRead ? thinned : whole;
    clipped.fill(0);
    crushed.fill(0);
    readCells(data, places.stride, grid, packed, reading);
    sumTiles(grid, reading.cells, light);
    readSharpness(data, places, gradient, laplacian);
    for (let tile = 0; tile < tiles; tile += 1) {
      const pixels = cellsIn[tile]! * pixelsInCell;
      light[tile] = light[tile]! / cellsIn[tile]!;
      clipped[tile] = clipped[tile]! / pixels;
      crushed[tile] = crushed[tile]! / pixels;
    }
    for (let i = 0; i < sampled.length; i += 1) sample[i] = data[sampled[i]!]!;
    return reading;
  };
  return { grid, places: whole.sampled, read };
}
