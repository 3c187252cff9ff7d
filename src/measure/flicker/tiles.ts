/** The light of a clip tile by tile as logarithms, in which a lamp's change adds the same everywhere it shines. */
import { medianOf } from '../../base/median.ts';
import { basisOf, faded, spectrumGrid, withoutTrend, type SpectrumGrid } from '../lines/basis.ts';

/** Light of tiles, frame after frame, and what may be trusted of it. */
export interface TileLight {
  readonly columns: number;
  readonly rows: number;
  readonly frameRate_fps: number;
  /** Mean light of each tile, all tiles of a frame together. */
  readonly light: Float32Array;
  /** Of each frame: 0 where it is missing or repeated. */
  readonly frameWeights: Float64Array;
  /** Of each tile, what hides its light: the largest share clipped in any frame, or crushed in the mean. */
  readonly lostFraction: Float32Array;
  /** How much moves in each tile, of every frame; where it is left out, anything may. */
  readonly activity?: Float32Array;
}

export interface JudgedTile {
  readonly tile: number;
  readonly column: number;
  readonly row: number;
  readonly series: Float64Array;
  /** Mean power of its noise at one rate. */
  readonly noise: number;
}

/** Degree of the trend beside which waves are fitted. */
const DEGREE = 4;
/** A tile of which more than this is clipped or crushed in some frame hides what the light does. */
const MOST_LOST = 0.02;
/** Darker than this in most frames, over white, a tile is all noise. */
const DARKEST = 1e-4;
/** A frame darker than this share of a tile's own middle counts as this dark: black has no logarithm. */
const BLACKOUT = 0.01;

/** The grid of rates for a clip. */
export function gridOfClip({
  frameRate_fps,
  frameWeights,
}: Pick<TileLight, 'frameRate_fps' | 'frameWeights'>): SpectrumGrid {
  return spectrumGrid(basisOf({ frameRate_fps, weights: faded(frameWeights), degree: DEGREE }));
}

/** Logarithms of light, 0 in frames that weigh nothing; undefined where it is too dark to tell. Throws RangeError where no frame weighs anything. */
export function logLight(light: Float64Array, frameWeights: Float64Array): Float64Array | undefined {
  const middle = medianOf(light.filter((_, frame) => frameWeights[frame]! > 0));
  if (!(middle > DARKEST)) return undefined;
  return light.map((value, frame) => (frameWeights[frame] === 0 ? 0 : Math.log(Math.max(value, BLACKOUT * middle))));
}

function seriesOf({ light, columns, rows, frameWeights }: TileLight, tile: number): Float64Array | undefined {
  const tiles = columns * rows;
  return logLight(
    Float64Array.from(frameWeights, (_, frame) => light[frame * tiles + tile]!),
    frameWeights,
  );
}

/** The tiles whose light can be judged: lit, and neither clipped nor crushed. */
export function judgedTiles(clip: TileLight, grid: SpectrumGrid): readonly JudgedTile[] {
  const found: JudgedTile[] = [];
  for (let tile = 0; tile < clip.columns * clip.rows; tile += 1) {
    if (clip.lostFraction[tile]! > MOST_LOST) continue;
    const series = seriesOf(clip, tile);
    if (!series) continue;
    const power = grid.powerOf(withoutTrend(grid.basis, series));
    const noise = Math.max(medianOf(power) / Math.LN2, Number.EPSILON ** 2);
    found.push({ tile, column: tile % clip.columns, row: Math.floor(tile / clip.columns), series, noise });
  }
  return found;
}

/** Tiles together as one series, quiet ones weighing more, though none more than a few middling ones. */
export function together(tiles: readonly JudgedTile[]): Float64Array {
  const middle = 1 / medianOf(tiles.map(({ noise }) => noise));
  const weights = tiles.map(({ noise }) => Math.min(1 / noise, 4 * middle));
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  const sum = new Float64Array(tiles[0]!.series.length);
  tiles.forEach(({ series }, i) => {
    const share = weights[i]! / whole;
    for (let frame = 0; frame < sum.length; frame += 1) sum[frame] = sum[frame]! + share * series[frame]!;
  });
  return sum;
}

/** Tiles this many times as lively as the middle one are where the action is. */
const LIVELY = 4;

/** The tiles in which the action is; none where all move alike, or nothing does. */
export function livelyTiles({ activity, columns, rows, frameWeights }: TileLight): ReadonlySet<number> {
  if (!activity) return new Set();
  const tiles = columns * rows;
  const sums = new Float64Array(tiles);
  for (let frame = 0; frame < frameWeights.length; frame += 1)
    for (let tile = 0; tile < tiles; tile += 1) sums[tile]! += activity[frame * tiles + tile]!;
  const middle = medianOf(sums.slice());
  return new Set([...sums.keys()].filter((tile) => sums[tile]! > LIVELY * middle));
}
