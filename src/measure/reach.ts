/**
 * How much of the picture the action touched: the box about all places that changed from one frame to the next by more
 * than noise, or the light of the lamps, makes them change.
 *
 *     changed = min(|r − g·r′|, |r − r′|) > 8·σ        in two frames at least, and so did two of its neighbours
 * *
 * r root of light, r′ that of the frame before        g light of the tile over that before        σ noise of r − r′, over √2
 *
 * The first of the two stays small where only the lamps change, the second where something bright comes into a tile of
 * which the rest stays as it is.
 */
import type { Grid } from './grid.ts';

/** Edges of a box, px from the left and from the top. */
export interface Reach {
  readonly left_px: number;
  readonly top_px: number;
  readonly right_px: number;
  readonly bottom_px: number;
}

/** What it remembers of the frame before, and in how many frames each cell changed. */
export interface ReachState {
  readonly before: Float32Array;
  readonly changes: Uint16Array;
  readonly isFirst: boolean;
}

export interface ReachMeter {
  /** Roots of light of a frame, how far they differ once the change of their tile's light is taken out, and their noise. */
  readonly next: (roots: Float32Array, differences: Float32Array, noise: number) => void;
  /** The box, leaving out tiles about some; undefined where nothing changed. */
  readonly found: (without: readonly number[]) => Reach | undefined;
  readonly state: () => ReachState;
}

const TIMES_NOISE = 8;
/** Less than this, of the root of white and of white, is how a clip was coded. */
const LEAST = 0.01;
const LEAST_LIGHT = 0.004;
const FEWEST_FRAMES = 2;
const FEWEST_NEIGHBOURS = 2;
const MOST = 65_535;

/** A meter that is given every frame in turn, from the first or from where it was saved. */
export function createReachMeter(grid: Grid, saved?: ReachState): ReachMeter {
  const { width, height, cell_px, cellColumns, cellRows, columns, columnOf, rowOf } = grid;
  const before = saved?.before.slice() ?? new Float32Array(cellColumns * cellRows);
  const changes = saved?.changes.slice() ?? new Uint16Array(cellColumns * cellRows);
  let isFirst = saved?.isFirst ?? true;

  const next: ReachMeter['next'] = (roots, differences, noise) => {
    const least = Math.max(LEAST, TIMES_NOISE * noise);
    if (!isFirst)
      for (let i = 0; i < roots.length; i += 1) {
        const alone = Math.abs(differences[i]!);
        const change = Math.abs(roots[i]! - before[i]!);
        // In the dark a root shakes with noise far more than light does.
        const isLight = change * (roots[i]! + before[i]!) > LEAST_LIGHT;
        if (isLight && alone > least && change > least && changes[i]! < MOST) changes[i]! += 1;
      }
    before.set(roots);
    isFirst = false;
  };

  const isAbout = (tile: number, x: number, y: number): boolean =>
    Math.abs(columnOf[x]! - (tile % columns)) <= 1 && Math.abs(rowOf[y]! - Math.floor(tile / columns)) <= 1;

  const neighboursOf = (x: number, y: number): number => {
    let count = -1;
    for (let row = Math.max(0, y - 1); row <= Math.min(cellRows - 1, y + 1); row += 1)
      for (let column = Math.max(0, x - 1); column <= Math.min(cellColumns - 1, x + 1); column += 1)
        if (changes[row * cellColumns + column]! >= FEWEST_FRAMES) count += 1;
    return count;
  };

  const found: ReachMeter['found'] = (without) => {
    let [left, top, right, bottom] = [cellColumns, cellRows, -1, -1];
    for (let y = 0, i = 0; y < cellRows; y += 1)
      for (let x = 0; x < cellColumns; x += 1, i += 1) {
        if (changes[i]! < FEWEST_FRAMES || without.some((tile) => isAbout(tile, x, y))) continue;
        if (neighboursOf(x, y) < FEWEST_NEIGHBOURS) continue;
        [left, top] = [Math.min(left, x), Math.min(top, y)];
        [right, bottom] = [Math.max(right, x), Math.max(bottom, y)];
      }
    if (right < 0) return undefined;
    // Pixels beyond the last whole cell belong to it.
    const edge = (cell: number, cells: number, pixels: number) => (cell + 1 === cells ? pixels : (cell + 1) * cell_px);
    return {
      left_px: left * cell_px,
      top_px: top * cell_px,
      right_px: edge(right, cellColumns, width),
      bottom_px: edge(bottom, cellRows, height),
    };
  };
  return { next, found, state: () => ({ before, changes, isFirst }) };
}
