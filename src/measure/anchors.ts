/**
 * How the picture lies against a frame before, window by window: a few windows, one in each part of the picture and there
 * where it has most detail both ways, each looked for by itself. How the whole lies is what most windows agree on, so that a
 * thing that moves through some of them, or hides them, does not count.
 *
 *     detail = less of the two eigenvalues of Σ [gx² gx·gy; gx·gy gy²]
 *
 * @source corner-detail
 */
import type { Grid } from './grid.ts';
import { createCorrelator, type Corner } from './phaseCorrelation.ts';

interface At {
  readonly x: number;
  readonly y: number;
}

/** The frame that the picture is held to, the one before, how it lay in each, and where its windows are. */
export interface AnchorState {
  readonly held: Float32Array;
  readonly last: Float32Array;
  readonly frames: number;
  readonly heldAt: At;
  readonly lastAt: At;
  /** Left and top of each window, in cells. */
  readonly corners: Uint16Array;
}

export interface Anchored {
  /** Of the whole picture; where it last was known to lie where that cannot be told. */
  readonly x_px: number;
  readonly y_px: number;
  readonly isHeld: boolean;
  /** Of each window where it lies across and down, px, and 1 where that could be told; the same array every time. */
  readonly windows: Float32Array;
}

export interface AnchorMeter {
  readonly next: (roots: Float32Array) => Anchored;
  readonly state: () => AnchorState;
}

/** Windows across and down at most, and what is kept of each. */
export const ANCHORS = 3;
export const KEPT_OF_WINDOW = 3;
/** Windows that lie within so many cells of each other agree. */
const AGREE = 0.75;
/** Share of the windows that must agree. */
const FEWEST_SHARE = 0.2;
const FEWEST = 2;

/** Parts of a picture that each have a window, from the left and from the top. */
export function anchorsOf({ cellColumns, cellRows }: Pick<Grid, 'cellColumns' | 'cellRows'>, side: number): readonly [across: number, down: number] {
  return [Math.min(ANCHORS, Math.floor(cellColumns / side)), Math.min(ANCHORS, Math.floor(cellRows / side))];
} // prettier-ignore

/** Detail of a window that runs both ways: a line alone says nothing of a shift along it. */
function detailOf(roots: Float32Array, stride: number, { left, top }: Corner, side: number): number {
  let [xx, xy, yy] = [0, 0, 0];
  for (let y = top; y + 1 < top + side; y += 1)
    for (let x = left, i = y * stride + left; x + 1 < left + side; x += 1, i += 1) {
      const [across, down] = [roots[i + 1]! - roots[i]!, roots[i + stride]! - roots[i]!];
      xx += across * across;
      xy += across * down;
      yy += down * down;
    }
  return (xx + yy) / 2 - Math.hypot((xx - yy) / 2, xy);
}

/** The window of most detail in each part of a picture. */
function cornersIn(roots: Float32Array, { cellColumns, cellRows }: Grid, side: number, into: Uint16Array): void {
  const [across, down] = anchorsOf({ cellColumns, cellRows }, side);
  const step = Math.max(1, side / 4);
  for (let window = 0; window < across * down; window += 1) {
    const [column, row] = [window % across, Math.floor(window / across)];
    const [fromX, toX] = [Math.floor((column * cellColumns) / across), Math.floor(((column + 1) * cellColumns) / across) - side]; // prettier-ignore
    const [fromY, toY] = [Math.floor((row * cellRows) / down), Math.floor(((row + 1) * cellRows) / down) - side];
    let most = -1;
    for (let top = fromY; top <= toY; top += step)
      for (let left = fromX; left <= toX; left += step) {
        const detail = detailOf(roots, cellColumns, { left, top }, side);
        if (detail <= most) continue;
        most = detail;
        into.set([left, top], 2 * window);
      }
  }
}

interface Found extends At {
  readonly peak: number;
}

/** What most windows agree on, nearest to where the picture last was; nothing where too few do. */
function agreedOn(found: readonly (Found | undefined)[], near: At): At | undefined {
  const told = found.filter((of) => of !== undefined);
  let [best, most]: [readonly Found[], number] = [[], 0];
  for (const middle of told) {
    const with_ = told.filter(({ x, y }) => Math.hypot(x - middle.x, y - middle.y) <= AGREE);
    const closeness = 1 / (1 + Math.hypot(middle.x - near.x, middle.y - near.y));
    if (with_.length + 0.9 * closeness > most) [best, most] = [with_, with_.length + 0.9 * closeness];
  }
  if (best.length < Math.min(found.length, Math.max(FEWEST, FEWEST_SHARE * found.length))) return undefined;
  const whole = best.reduce((sum, { peak }) => sum + peak * peak, 0);
  const mean = (of: (one: Found) => number) =>
    best.reduce((sum, one) => sum + one.peak * one.peak * of(one), 0) / whole;
  return { x: mean(({ x }) => x), y: mean(({ y }) => y) };
}

/** A meter that is given every frame in turn, from the first or from where it was saved; windows have this side, in cells. */
export function createAnchorMeter(grid: Grid, side: number, saved?: AnchorState): AnchorMeter {
  const { cellColumns: stride, cellRows, cell_px } = grid;
  const { shift, leastPeak } = createCorrelator(side);
  const [across, down] = anchorsOf(grid, side);
  const count = across * down;
  const corners = saved?.corners.slice() ?? new Uint16Array(2 * count);
  const held = saved?.held.slice() ?? new Float32Array(stride * cellRows);
  const last = saved?.last.slice() ?? new Float32Array(held.length);
  const windows = new Float32Array(KEPT_OF_WINDOW * count);
  let { frames, heldAt, lastAt } = saved ?? { frames: 0, heldAt: { x: 0, y: 0 }, lastAt: { x: 0, y: 0 } };

  const against = (values: Float32Array, roots: Float32Array): readonly (Found | undefined)[] =>
    Array.from({ length: count }, (_, window) => {
      const corner = { left: corners[2 * window]!, top: corners[2 * window + 1]! };
      const found = shift({ values, stride }, { values: roots, stride }, [corner]);
      return found.peak >= leastPeak && Math.max(Math.abs(found.x), Math.abs(found.y)) < side / 3 ? found : undefined;
    });

  const tell = (found: readonly (Found | undefined)[], from: At): void => {
    found.forEach((of, window) => {
      const at = KEPT_OF_WINDOW * window;
      if (of) windows.set([(from.x + of.x) * cell_px, (from.y + of.y) * cell_px, 1], at);
      else windows[at + 2] = 0;
    });
  };

  const next: AnchorMeter['next'] = (roots) => {
    if (frames === 0) {
      held.set(roots);
      cornersIn(roots, grid, side, corners);
    }
    const near = { x: lastAt.x - heldAt.x, y: lastAt.y - heldAt.y };
    let found = against(held, roots);
    let off = agreedOn(found, near);
    if (!off && Math.max(Math.abs(near.x), Math.abs(near.y)) > side / 8) {
      // It has moved so far that too little is left of what it was held to: from here on it is held to the frame before.
      cornersIn(last, grid, side, corners);
      found = against(last, roots);
      off = agreedOn(found, { x: 0, y: 0 });
      held.set(last);
      heldAt = lastAt;
    }
    tell(found, heldAt);
    const at = off ? { x: heldAt.x + off.x, y: heldAt.y + off.y } : lastAt;
    last.set(roots);
    lastAt = at;
    frames += 1;
    return { x_px: at.x * cell_px, y_px: at.y * cell_px, isHeld: off !== undefined, windows };
  };
  return { next, state: () => ({ held, last, frames, heldAt, lastAt, corners }) };
}
