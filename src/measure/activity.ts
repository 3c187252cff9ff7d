/**
 * How much a frame differs from the one before, tile by tile, beyond what noise does: by what moves, and not by the light.
 *
 *     d = |r_k − g·r_{k−1}|        noise: E d = 2σ/√π, SD d = σ·√(2 − 4/π)        σ = median d / (0.67449·√2)
 *     activity = mean d of a tile − E d − 3·SD d/√n, none below 0
 *
 * r square root of light, in which the noise of photons is even        g light of the tile over that of the frame before, so
 * that flicker is no action        n cells of the tile
 *
 * @source motion-activity
 */
import { medianOf } from '../base/median.ts';
import { sumTiles, type Grid } from './grid.ts';

/** What it remembers of the frame before. */
export interface ActivityState {
  readonly before: Float32Array;
  readonly sumsBefore: Float64Array;
  readonly isFirst: boolean;
  readonly least: number;
}

export interface ActivityMeter {
  /** Of each cell against the frame before, the change of its tile's light taken out; all 0 for the first frame. */
  readonly differences: Float32Array;
  /** Activity of each tile against the frame before, in the same array every time; all 0 for the first frame. */
  readonly next: (roots: Float32Array) => Float32Array;
  /** Standard deviation that noise gave the mean activity of one tile in that frame, before anything was taken off. */
  readonly noise: () => number;
  readonly state: () => ActivityState;
}

const MEAN = 2 / Math.sqrt(Math.PI);
const DEVIATION = Math.sqrt(2 - 4 / Math.PI);
const MEDIAN = 0.67449 * Math.SQRT2;
const MARGIN = 3;
/** Cells whose median is taken for that of all. */
const SAMPLED = 1024;
/** While more than half of the picture moves, noise is taken for no more than this many times the least met so far. */
const MOST_OF_LEAST = 1.3;

/** Roots of light, dark noise below none counted as none. */
export function rootsOf(cells: Float32Array, into: Float32Array): void {
  for (let i = 0; i < cells.length; i += 1) into[i] = Math.sqrt(Math.max(0, cells[i]!));
}

/** A meter that is given every frame in turn, from the first or from where it was saved. */
export function createActivityMeter(grid: Grid, saved?: ActivityState): ActivityMeter {
  const { cellColumns, cellRows, columns, rows, columnEdges, columnOf, rowOf } = grid;
  const tiles = columns * rows;
  const count = new Float64Array(tiles);
  for (let y = 0; y < cellRows; y += 1)
    for (let x = 0; x < cellColumns; x += 1) count[rowOf[y]! * columns + columnOf[x]!]! += 1;
  const before = new Float32Array(cellColumns * cellRows);
  const differences = new Float32Array(before.length);
  const [sumsBefore, sums] = [new Float64Array(tiles), new Float64Array(tiles)];
  const [gains, changes] = [new Float64Array(tiles), new Float64Array(tiles)];
  const activity = new Float32Array(tiles);
  const step = Math.max(1, Math.floor(before.length / SAMPLED));
  const sampled = new Float64Array(Math.floor(before.length / step));
  let isFirst = saved?.isFirst ?? true;
  let least = saved?.least ?? Infinity;
  let deviation = 0;
  if (saved) before.set(saved.before);
  if (saved) sumsBefore.set(saved.sumsBefore);

  const next = (roots: Float32Array): Float32Array => {
    sumTiles(grid, roots, sums);
    activity.fill(0);
    if (!isFirst) {
      for (let tile = 0; tile < tiles; tile += 1)
        gains[tile] = sumsBefore[tile]! > 0 ? sums[tile]! / sumsBefore[tile]! : 1;
      changes.fill(0);
      for (let y = 0, i = 0; y < cellRows; y += 1)
        for (let column = 0, tile = rowOf[y]! * columns; column < columns; column += 1, tile += 1) {
          const gain = gains[tile]!;
          let change = 0;
          for (const end = y * cellColumns + columnEdges[column + 1]!; i < end; i += 1) {
            const difference = roots[i]! - gain * before[i]!;
            change += Math.abs(difference);
            differences[i] = difference;
          }
          changes[tile]! += change;
        }
      for (let i = 0; i < sampled.length; i += 1) sampled[i] = Math.abs(differences[i * step]!);
      const noise = medianOf(sampled) / MEDIAN;
      least = Math.min(least, noise);
      const taken = Math.min(noise, MOST_OF_LEAST * least);
      deviation = (taken * DEVIATION) / Math.sqrt(before.length / tiles);
      for (let tile = 0; tile < tiles; tile += 1) {
        const floor = taken * (MEAN + (MARGIN * DEVIATION) / Math.sqrt(count[tile]!));
        activity[tile] = Math.max(0, changes[tile]! / count[tile]! - floor);
      }
    }
    before.set(roots);
    sumsBefore.set(sums);
    isFirst = false;
    return activity;
  };
  const state = (): ActivityState => ({ before, sumsBefore, isFirst, least });
  return { next, differences, noise: () => deviation, state };
}
