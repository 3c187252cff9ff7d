/**
 * The first frame in which anything moves after a light has come on. The frames before it tell what is no movement, tile by
 * tile; tiles in which it begins are added up; and it begins where a level line and then a rising one fit them best.
 *
 *     z = (activity − μ)/σ        Σ(y − y₀)² up to c, Σ(y − a − b·(n − c))² from c on: c where that is least
 *
 * μ, σ of a tile before the light came on        y sum of z over the tiles        y₀ its mean before        c first frame that moves
 */
import type { Signal, SignalGiven } from './signalTypes.ts';

/** Frames before the light that tell what is no movement; the first has nothing before it. */
const FEWEST_QUIET = 12;
/** Deviations above quiet, on average over so many frames, that make a tile one that moves. */
const MOVES = 3;
const OVER = 6;
/** Tiles that begin so many frames after the first count as beginning with it. */
const TOGETHER = 6;
/** Frames past the first tile's that are fitted. */
const FITTED = 12;
/** A tile's deviation is at least this share of the most that any comes to. */
const LEAST_OF_MOST = 0.05;
const FEWEST_TILES = 18;

/** Tiles away from that of a signal; of a picture of few, all but its own. */
export function tilesBeside({ columns, rows }: Pick<SignalGiven, 'columns' | 'rows'>, tile: number): readonly number[] {
  const reach = columns * rows >= FEWEST_TILES ? 1 : 0;
  const isBeside = (other: number): boolean =>
    Math.abs((other % columns) - (tile % columns)) <= reach &&
    Math.abs(Math.floor(other / columns) - Math.floor(tile / columns)) <= reach;
  return Array.from({ length: columns * rows }, (_, i) => i).filter((other) => !isBeside(other));
}

interface Moving {
  readonly z: Float64Array;
  /** First frame from which it moves, about. */
  readonly from: number;
}

/** A tile's activity at all frames, those that do not count being as the frame before. */
function seriesOf({ columns, rows, activity, weights }: SignalGiven, tile: number): Float64Array {
  const values = Float64Array.from(weights, (_, i) => activity[i * columns * rows + tile]!);
  for (let i = 1; i < values.length; i += 1) if (weights[i] === 0) values[i] = values[i - 1]!;
  return values;
}

/** In deviations above what it has while nothing can move yet. */
function overQuiet(values: Float64Array, frame: number, leastDeviation: number): Float64Array {
  const quiet = values.subarray(1, frame);
  const mean = quiet.reduce((sum, value) => sum + value, 0) / quiet.length;
  const squares = quiet.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const deviation = Math.max(Math.sqrt(squares / (quiet.length - 1)), leastDeviation, Number.MIN_VALUE);
  return values.map((value) => (value - mean) / deviation);
}

/** The frame from which a tile stays well above quiet; undefined where it never does. */
function movesFrom(z: Float64Array, frame: number): number | undefined {
  for (let i = frame + 1; i + OVER <= z.length; i += 1) {
    const mean = z.subarray(i, i + OVER).reduce((sum, value) => sum + value, 0) / OVER;
    if (mean > MOVES && z[i]! > MOVES / 2) return i;
  }
  return undefined;
}

/** Squares left about the best straight line over values, and about their mean. */
function squaresAbout(values: Float64Array): { readonly line: number; readonly mean: number } {
  const n = values.length;
  const middle = (n - 1) / 2;
  const mean = values.reduce((sum, value) => sum + value, 0) / Math.max(1, n);
  let [along, across, whole] = [0, 0, 0];
  for (let i = 0; i < n; i += 1) {
    along += (i - middle) ** 2;
    across += (i - middle) * (values[i]! - mean);
    whole += (values[i]! - mean) ** 2;
  }
  return { line: along > 0 ? whole - across ** 2 / along : 0, mean: whole };
}

/** The first frame after a signal in which anything moves; undefined where nothing does, or little was seen before it. */
export function movementAfter(given: SignalGiven, { frame, tile }: Pick<Signal, 'frame' | 'tile'>): number | undefined {
  if (frame - 1 < FEWEST_QUIET) return undefined;
  const beside = tilesBeside(given, tile).map((other) => seriesOf(given, other));
  const most = beside.reduce((all, values) => values.reduce((of, value) => Math.max(of, value), all), 0);
  const moving = beside.flatMap((values): readonly Moving[] => {
    const z = overQuiet(values, frame, LEAST_OF_MOST * most);
    const from = movesFrom(z, frame);
    return from === undefined ? [] : [{ z, from }];
  });
  if (moving.length === 0) return undefined;
  const first = Math.min(...moving.map(({ from }) => from));
  const together = moving.filter(({ from }) => from <= first + TOGETHER);
  const end = Math.min(given.weights.length, first + FITTED);
  const begin = Math.max(1, frame - FITTED);
  // As the signal comes on its light may lie on everything: those frames say nothing.
  const sum = Float64Array.from({ length: end - begin }, (_, i) =>
    Math.abs(begin + i - frame) <= 1 ? 0 : together.reduce((all, { z }) => all + z[begin + i]!, 0),
  );
  let best = { at: first, squares: Infinity };
  for (let at = frame + 2; at <= Math.min(first + TOGETHER, end - 2); at += 1) {
    const squares = squaresAbout(sum.subarray(0, at - begin)).mean + squaresAbout(sum.subarray(at - begin)).line;
    if (squares < best.squares) best = { at, squares };
  }
  return best.at;
}
