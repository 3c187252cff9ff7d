/**
 * How fast things move in a clip: what changed from one frame to the next is looked for in what changed to the one after,
 * so that what stands still behind it does not count; and how the whole picture lies against a frame before.
 *
 *     v = s·p·R        smear = s·T·R
 *
 * s shift, px a frame        p size of a pixel at the subject, m        R frame rate        T exposure time
 *
 * @source motion-activity the peak that is asked for, and the check by differences
 */
import { quantileInPlace } from '../base/median.ts';
import { ANCHORS, anchorsOf, createAnchorMeter, type Anchored, type AnchorState } from './anchors.ts';
import type { Grid } from './grid.ts';
import { createCorrelator, type Corner, type Correlator, type Picture } from './phaseCorrelation.ts';

/** Motion of one frame, in pixels of the picture. */
export interface FrameMotion extends Anchored {
  /** What moves, from this frame to the next: the middle of the parts seen to move, the livelier counting more. */
  readonly across_px: number;
  readonly down_px: number;
  /** The fastest tenth of those parts. */
  readonly fastest_px: number;
  /** Parts whose movement could be told. */
  readonly votes: number;
}

/** What it remembers of the frames before; nothing of a picture too small for it. */
export type MotionState =
  { readonly anchor: AnchorState; readonly changedBefore: Float32Array; readonly frames: number } | undefined;

export interface MotionMeter {
  /** Roots of light, differences against the frame before, and each tile's activity, of every frame in turn. */
  readonly next: (roots: Float32Array, differences: Float32Array, activity: Float32Array) => FrameMotion;
  /** Windows across and down by which the picture is held. */
  readonly anchors: readonly [across: number, down: number];
  readonly state: () => MotionState;
}

/** Tiles looked at in one frame, the liveliest. */
const MOST_TILES = 8;
/**
 * A shift counts only where what changed then differs by less than this share of what it does without a shift. Noise alone
 * comes to √(2/3): the frame in the middle is in both changes, with opposite signs.
 */
const MATCH = 0.7;
/** Sides of the windows that are looked through, in cells. */
const SIDES = [32, 16] as const;

/** The largest window that a picture holds so many of, one above the other, if any fits. */
function sideFor({ cellColumns, cellRows }: Grid, times: number): number | undefined {
  const shorter = Math.min(cellColumns, cellRows);
  return SIDES.find((side) => side * times <= shorter) ?? SIDES.find((side) => side <= shorter);
}

/** How much a window differs from where a shift would have it, in the mean. */
function differenceAt(a: Picture, b: Picture, { left, top }: Corner, side: number, dx: number, dy: number): number {
  const rows = a.values.length / a.stride;
  let sum = 0;
  let count = 0;
  for (let y = 0; y < side; y += 1) {
    const row = top + y + dy;
    if (row < 0 || row >= rows) continue;
    for (let x = 0; x < side; x += 1) {
      const column = left + x + dx;
      if (column < 0 || column >= a.stride) continue;
      sum += Math.abs(b.values[row * a.stride + column]! - a.values[(top + y) * a.stride + left + x]!);
      count += 1;
    }
  }
  return count > 0 ? sum / count : Infinity;
}

interface Vote {
  readonly across: number;
  readonly down: number;
  readonly weight: number;
}

/** The value below which half of the weight lies. */
function weightedMiddle(votes: readonly Vote[], of: (vote: Vote) => number): number {
  const sorted = [...votes].sort((a, b) => of(a) - of(b));
  const whole = votes.reduce((sum, { weight }) => sum + weight, 0);
  let below = 0;
  for (const vote of sorted) {
    below += vote.weight;
    if (below >= whole / 2) return of(vote);
  }
  return 0;
}

interface TileLook {
  readonly correlator: Correlator;
  readonly side: number;
  /** Corners of the window of each tile. */
  readonly corners: readonly Corner[];
}

function tileLookOf(grid: Grid): TileLook | undefined {
  const side = sideFor(grid, 1.5);
  if (side === undefined) return undefined;
  const { columns, rows, columnEdges, rowEdges, cellColumns, cellRows } = grid;
  const corner = (edges: Uint32Array, i: number, cells: number): number =>
    Math.max(0, Math.min(cells - side, Math.round((edges[i]! + edges[i + 1]! - side) / 2)));
  const corners = Array.from({ length: columns * rows }, (_, tile) => {
    const [column, row] = [tile % columns, Math.floor(tile / columns)];
    return { left: corner(columnEdges, column, cellColumns), top: corner(rowEdges, row, cellRows) };
  });
  return { correlator: createCorrelator(side), side, corners };
}

/** Shifts of the liveliest tiles that can be told, in cells. */
function votesOf(look: TileLook, grid: Grid, before: Float32Array, now: Float32Array, activity: Float32Array): readonly Vote[] {
  const lively = Array.from(activity, (weight, tile) => ({ weight, tile }))
    .filter(({ weight }) => weight > 0)
    .sort((a, b) => b.weight - a.weight)
    .slice(0, MOST_TILES);
  const { correlator, side, corners } = look;
  const [a, b] = [before, now].map((values) => ({ values, stride: grid.cellColumns })) as [Picture, Picture];
  return lively.flatMap(({ weight, tile }): readonly Vote[] => {
    const corner = corners[tile]!;
    const { x, y, peak } = correlator.shift(a, b, [corner]);
    if (peak < correlator.leastPeak || Math.max(Math.abs(x), Math.abs(y)) > side / 2) return [];
    const [dx, dy] = [Math.round(x), Math.round(y)];
    const isMatch = (dx === 0 && dy === 0) || differenceAt(a, b, corner, side, dx, dy) < MATCH * differenceAt(a, b, corner, side, 0, 0);
    return isMatch ? [{ across: x, down: y, weight }] : [];
  });
} // prettier-ignore

const HELD_BACK: FrameMotion = {
  x_px: 0,
  y_px: 0,
  isHeld: false,
  windows: new Float32Array(0),
  across_px: 0,
  down_px: 0,
  fastest_px: 0,
  votes: 0,
};

/** A meter that is given every frame in turn, from the first or from where it was saved. */
export function createMotionMeter(grid: Grid, saved?: MotionState): MotionMeter {
  const { cellColumns, cellRows, cell_px } = grid;
  const look = tileLookOf(grid);
  const side = sideFor(grid, ANCHORS);
  if (!look || side === undefined) return { next: () => HELD_BACK, anchors: [0, 0], state: () => undefined };
  const anchor = createAnchorMeter(grid, side, saved?.anchor);
  const changedBefore = new Float32Array(cellColumns * cellRows);
  let frames = saved?.frames ?? 0;
  if (saved) changedBefore.set(saved.changedBefore);

  const next: MotionMeter['next'] = (roots, differences, activity) => {
    const common = anchor.next(roots);
    const votes = frames >= 2 ? votesOf(look, grid, changedBefore, differences, activity) : [];
    changedBefore.set(differences);
    frames += 1;
    if (votes.length === 0) return { ...HELD_BACK, ...common };
    const speeds = Float64Array.from(votes, (vote) => Math.hypot(vote.across, vote.down));
    return {
      ...common,
      across_px: weightedMiddle(votes, (vote) => vote.across) * cell_px,
      down_px: weightedMiddle(votes, (vote) => vote.down) * cell_px,
      fastest_px: quantileInPlace(speeds, 0.9) * cell_px,
      votes: votes.length,
    };
  };
  return { next, anchors: anchorsOf(grid, side), state: () => ({ anchor: anchor.state(), changedBefore, frames }) };
} // prettier-ignore

/** Speed of a shift from frame to frame over the subject. */
export function speed_m_per_s(shift_px: number, pixel_m: number, frameRate_fps: number): number {
  return shift_px * pixel_m * frameRate_fps;
}
