/**
 * How sharp a clip is, tile by tile and frame by frame, against itself: the same scene, exposure and place.
 *
 *     sharpness = (mean of gx² + gy² − 24·σ²) / L²        of a Laplacian (mean of its square − 20·σ²) / L²
 *
 * σ noise at the tile's light L, whose share in the gradient is known from the weights of the operators: without taking it
 * off, noise passes for detail. Divided by L², a change of the light is no change of sharpness.
 *
 * @source focus-measures
 */
import { medianOf, quantileInPlace } from '../base/median.ts';

export interface FocusGiven {
  readonly tiles: number;
  /** Of each tile, frame after frame. */
  readonly gradient: Float32Array;
  readonly laplacian: Float32Array;
  readonly light: Float32Array;
  readonly activity: Float32Array;
  /** Variance of the noise of a pixel at this light. */
  readonly noiseVariance: (light: number) => number;
  /** Of each frame: 0 where it is missing. */
  readonly weights: Float64Array;
}

export interface Focus {
  /** Of each frame, over the sharpest; by the gradient and by the Laplacian, which is surer of fine detail. */
  readonly sharpness: Float64Array;
  readonly fineSharpness: Float64Array;
  readonly sharpestFrame: number;
  /** Of each tile over the sharpest tile, in the middle of the clip. */
  readonly tileSharpness: Float64Array;
  /** The same, over nothing, so that clips of one scene can be held against each other; absent from older measurements. */
  readonly tileDetail?: Float64Array;
  /** steady, or it changes one way, or back and forth; 'cannot tell' where there is no detail that stands still. */
  readonly verdict: 'steady' | 'changes' | 'hunts' | 'cannot tell';
  /** Sharpness of the last tenth over the first. */
  readonly changeRatio: number;
  /** Turns back and forth by more than a tenth. */
  readonly reversals: number;
}

const GRADIENT_NOISE = 24;
const LAPLACIAN_NOISE = 20;
/** Detail must lie this far above its noise to count. */
const CLEAR = 2;
/** That many frames may be out of focus altogether. */
const SHARP_SHARE = 0.8;
/** A change by more than this share is one. */
const CHANGE = 0.1;
/** Tiles in the livelier half are left out where so many stand still. */
const STILL_SHARE = 0.5;

function stillTiles({ tiles, activity, weights }: FocusGiven): readonly number[] {
  const sums = new Float64Array(tiles);
  for (let frame = 0; frame < weights.length; frame += 1)
    for (let tile = 0; tile < tiles; tile += 1) sums[tile]! += activity[frame * tiles + tile]!;
  const middle = medianOf(sums);
  const still = [...sums.keys()].filter((tile) => sums[tile]! <= middle);
  return still.length >= STILL_SHARE * tiles ? still : [...sums.keys()];
}

/** Running mean over a stretch about each frame. */
function smooth(values: Float64Array, reach: number): Float64Array {
  return values.map((_, i) => {
    const part = values.subarray(Math.max(0, i - reach), i + reach + 1);
    return part.reduce((sum, value) => sum + value, 0) / part.length;
  });
}

/** How often a series turns back by more than a share of itself. */
function reversalsOf(values: Float64Array): number {
  let [turns, direction, least, most] = [0, 0, values[0] ?? 0, values[0] ?? 0];
  for (const value of values) {
    least = Math.min(least, value);
    most = Math.max(most, value);
    const isFalling = direction >= 0 && value < most * (1 - CHANGE);
    const isRising = direction <= 0 && value > least * (1 + CHANGE);
    if (!isFalling && !isRising) continue;
    if (direction !== 0) turns += 1;
    direction = isFalling ? -1 : 1;
    [least, most] = [value, value];
  }
  return turns;
}

const overMost = (values: Float64Array): Float64Array => {
  const most = values.reduce((a, b) => Math.max(a, b), 0);
  return most > 0 ? values.map((value) => value / most) : values;
};

/** The focus of a clip. */
export function focusOf(given: FocusGiven): Focus {
  const { tiles, gradient, laplacian, light, noiseVariance, weights } = given;
  const frames = weights.length;
  const still = stillTiles(given);
  const sharpness = new Float64Array(frames);
  const fineSharpness = new Float64Array(frames);
  const clear = new Float64Array(frames);
  const byTile = Array.from({ length: tiles }, () => new Float64Array(frames));
  for (let frame = 0; frame < frames; frame += 1) {
    let [detail, fine, raw, whole] = [0, 0, 0, 0];
    for (let tile = 0; tile < tiles; tile += 1) {
      const at = frame * tiles + tile;
      const here = Math.max(light[at]!, 1e-6);
      const noise = noiseVariance(here);
      byTile[tile]![frame] = Math.max(0, gradient[at]! - GRADIENT_NOISE * noise) / here ** 2;
    }
    for (const tile of still) {
      const at = frame * tiles + tile;
      const noise = noiseVariance(light[at]!);
      detail += gradient[at]! - GRADIENT_NOISE * noise;
      fine += laplacian[at]! - LAPLACIAN_NOISE * noise;
      raw += GRADIENT_NOISE * noise;
      whole += light[at]! ** 2;
    }
    sharpness[frame] = whole > 0 ? Math.max(0, detail) / whole : 0;
    fineSharpness[frame] = whole > 0 ? Math.max(0, fine) / whole : 0;
    clear[frame] = raw > 0 ? detail / raw : detail > 0 ? Infinity : 0;
  }
  const counted = weights.reduce((sum, weight) => sum + (weight > 0 ? 1 : 0), 0);
  const path = smooth(sharpness, Math.max(1, Math.floor(frames / 40)));
  let sharpestFrame = 0;
  for (let frame = 0; frame < frames; frame += 1)
    if (weights[frame]! > 0 && path[frame]! > path[sharpestFrame]!) sharpestFrame = frame;
  const tileDetail = Float64Array.from(byTile, medianOf);
  const tenth = Math.max(1, Math.floor(frames / 10));
  const mean = (part: Float64Array): number => part.reduce((sum, value) => sum + value, 0) / part.length;
  const [head, tail] = [mean(path.subarray(0, tenth)), mean(path.subarray(-tenth))];
  const reversals = reversalsOf(path);
  const changeRatio = head > 0 ? tail / head : 1;
  const most = path.reduce((a, b) => Math.max(a, b), 0);
  const least = path.reduce((a, b) => Math.min(a, b), Infinity);
  // Where focus is pulled through, most frames may show no detail: those that are sharp must.
  const isClear = counted > 1 && quantileInPlace(clear, SHARP_SHARE) > CLEAR;
  return {
    sharpness: overMost(sharpness),
    fineSharpness: overMost(fineSharpness),
    sharpestFrame,
    tileSharpness: overMost(tileDetail),
    tileDetail,
    verdict: !isClear ? 'cannot tell' : reversals > 1 ? 'hunts' : least < (1 - 2 * CHANGE) * most ? 'changes' : 'steady',
    changeRatio,
    reversals,
  };
} // prettier-ignore
