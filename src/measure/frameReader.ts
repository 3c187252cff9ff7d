/**
 * One frame read once: from its code values to light, cell by cell and tile by tile, how much of it is clipped or
 * crushed, how sharp each tile is, and a fixed sample of its pixels for percentiles, noise and repeated frames.
 *
 *     sharpness: mean of gx² + gy² (Sobel) and of the square of the Laplacian [0 1 0; 1 −4 1; 0 1 0], on light
 *
 * @source focus-measures
 */
import type { Grid } from './grid.ts';

/** A picture's code values: rows from the top, without gaps. */
export interface Plane {
  readonly data: Uint8Array | Uint16Array;
  readonly width: number;
  readonly height: number;
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
const MOST_SAMPLED = 16_384;
/** Pixels whose sharpness is judged in a frame, about; of larger pictures only some rows are. */
const MOST_JUDGED = 100_000;
/** Rows of pixels read in a cell, about: of large cells that is enough, and not all. */
const ROWS_READ = 3;
/** Brighter than this, over white, counts as this; and the marks of clipped and of crushed pixels. */
const BRIGHTEST = 60;
const CLIPPED = 4096;
const CRUSHED = 2 ** 24;

/** Places spread over the picture without keeping step with its rows. */
function placesOf(pixels: number): Uint32Array {
  const count = Math.min(pixels, MOST_SAMPLED);
  return Uint32Array.from({ length: count }, (_, i) => Math.floor(((i + 0.5) * pixels) / count));
}

/** Every so many rows of a cell are read. */
const stepOf = (cell_px: number): number => Math.ceil(cell_px / ROWS_READ);
const rowsReadOf = (cell_px: number): number => Math.ceil(cell_px / stepOf(cell_px));

/**
 * Light of every code with a mark for clipped and one for crushed ones, far above any sum of light, so that one look-up and
 * one sum for a pixel tell all three.
 */
function packedTable({ table, clippedFrom, crushedTo }: ReaderGiven): Float64Array {
  return Float64Array.from(table, (light, code) =>
    Math.min(light, BRIGHTEST) + (code >= clippedFrom ? CLIPPED : 0) + (code <= crushedTo ? CRUSHED : 0));
} // prettier-ignore

function readCells(plane: Plane, grid: Grid, packed: Float64Array, into: FrameReading): void {
  const { cell_px, cellColumns, cellRows, columns, columnOf, rowOf } = grid;
  const { data, width } = plane;
  const { cells, clipped, crushed } = into;
  const step = stepOf(cell_px);
  const share = 1 / (cell_px * rowsReadOf(cell_px));
  for (let y = 0; y < cellRows; y += 1) {
    const row = y * cellColumns;
    const tileRow = rowOf[y]! * columns;
    for (let line = 0; line < cell_px; line += step) {
      let at = (y * cell_px + line) * width;
      for (let x = 0; x < cellColumns; x += 1) {
        let sum = 0;
        for (const end = at + cell_px; at < end; at += 1) sum += packed[data[at]!]!;
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

function readTiles({ cellColumns, cellRows, columns, columnOf, rowOf }: Grid, cells: Float32Array, light: Float32Array): void {
  light.fill(0);
  for (let y = 0; y < cellRows; y += 1) {
    const tileRow = rowOf[y]! * columns;
    for (let x = 0; x < cellColumns; x += 1) light[tileRow + columnOf[x]!]! += cells[y * cellColumns + x]!;
  }
} // prettier-ignore

/** Rows of light kept for the three that a gradient needs. */
function lightRow(plane: Plane, y: number, table: Float32Array, into: Float32Array): void {
  const { data, width } = plane;
  const from = y * width;
  for (let x = 0; x < width; x += 1) into[x] = table[data[from + x]!]!;
}

interface SharpRows {
  readonly above: Float32Array;
  readonly here: Float32Array;
  readonly below: Float32Array;
}

function readSharpness(plane: Plane, grid: Grid, table: Float32Array, rows: SharpRows, into: FrameReading): void {
  const { width, height, cell_px, columns, columnEdges, rowOf, cellRows } = grid;
  const { gradient, laplacian } = into;
  const judged = new Float64Array(gradient.length);
  const step = Math.max(1, Math.ceil((width * height) / MOST_JUDGED));
  let { above, here, below } = rows;
  let last = -2;
  for (let y = 1; y + 1 < height; y += step) {
    const cellRow = Math.floor(y / cell_px);
    if (cellRow >= cellRows) break;
    if (last === y - 1) {
      [above, here, below] = [here, below, above];
    } else {
      lightRow(plane, y - 1, table, above);
      lightRow(plane, y, table, here);
    }
    lightRow(plane, y + 1, table, below);
    last = y;
    const tileRow = rowOf[cellRow]! * columns;
    for (let column = 0; column < columns; column += 1) {
      const from = Math.max(1, columnEdges[column]! * cell_px);
      const to = Math.min(width - 1, columnEdges[column + 1]! * cell_px);
      let sumOfGradient = 0;
      let sumOfLaplacian = 0;
      for (let x = from; x < to; x += 1) {
        const north = above[x]!;
        const south = below[x]!;
        const west = here[x - 1]!;
        const east = here[x + 1]!;
        const falling = below[x + 1]! - above[x - 1]!;
        const rising = above[x + 1]! - below[x - 1]!;
        const across = falling + rising + 2 * (east - west);
        const down = falling - rising + 2 * (south - north);
        const curve = north + south + west + east - 4 * here[x]!;
        sumOfGradient += across * across + down * down;
        sumOfLaplacian += curve * curve;
      }
      gradient[tileRow + column]! += sumOfGradient;
      laplacian[tileRow + column]! += sumOfLaplacian;
      judged[tileRow + column]! += Math.max(0, to - from);
    }
  }
  for (let tile = 0; tile < judged.length; tile += 1) {
    gradient[tile] = judged[tile]! > 0 ? gradient[tile]! / judged[tile]! : 0;
    laplacian[tile] = judged[tile]! > 0 ? laplacian[tile]! / judged[tile]! : 0;
  }
}

/** A reader for frames of one size and coding. */
export function createFrameReader(given: ReaderGiven): FrameReader {
  const { grid, table } = given;
  const tiles = grid.columns * grid.rows;
  const places = placesOf(grid.width * grid.height);
  const packed = packedTable(given);
  const perTile = () => new Float32Array(tiles);
  const reading: FrameReading = {
    cells: new Float32Array(grid.cellColumns * grid.cellRows),
    light: perTile(),
    clipped: perTile(),
    crushed: perTile(),
    gradient: perTile(),
    laplacian: perTile(),
    sample: new Uint16Array(places.length),
  };
  const rowOfLight = () => new Float32Array(grid.width);
  const rows: SharpRows = { above: rowOfLight(), here: rowOfLight(), below: rowOfLight() };
  const cellsIn = Float32Array.from({ length: tiles }, (_, tile) => {
    const [column, row] = [tile % grid.columns, Math.floor(tile / grid.columns)];
    const across = grid.columnEdges[column + 1]! - grid.columnEdges[column]!;
    return across * (grid.rowEdges[row + 1]! - grid.rowEdges[row]!);
  });
  const read = (plane: Plane): FrameReading => {
    const { light, clipped, crushed, gradient, laplacian, sample } = reading;
    for (const values of [clipped, crushed, gradient, laplacian]) values.fill(0);
    readCells(plane, grid, packed, reading);
    readTiles(grid, reading.cells, light);
    readSharpness(plane, grid, table, rows, reading);
    for (let tile = 0; tile < tiles; tile += 1) {
      const pixels = cellsIn[tile]! * grid.cell_px * rowsReadOf(grid.cell_px);
      light[tile] = light[tile]! / cellsIn[tile]!;
      clipped[tile] = clipped[tile]! / pixels;
      crushed[tile] = crushed[tile]! / pixels;
    }
    for (let i = 0; i < places.length; i += 1) sample[i] = plane.data[places[i]!]!;
    return reading;
  };
  return { grid, places, read };
}
