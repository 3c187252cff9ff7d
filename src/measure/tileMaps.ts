/** What each tile of the picture shows over the whole clip. */

export interface TileMaps {
  /** Mean over the frames that count, row by row. */
  readonly activity: Float64Array;
  /** Largest share of pixels at white or above in any frame. */
  readonly clippedFraction: Float64Array;
  /** Mean over the frames that count, white being 1. */
  readonly light: Float64Array;
}

export interface TileMapsGiven {
  readonly tiles: number;
  /** Of each tile, frame after frame. */
  readonly activity: Float32Array;
  readonly light: Float32Array;
  /** Of each tile, the most in any frame. */
  readonly clippedMost: Float32Array;
  /** Of each frame: 0 where it is missing or repeated. */
  readonly weights: Float64Array;
}

function meansOf(values: Float32Array, tiles: number, weights: Float64Array): Float64Array {
  const sums = new Float64Array(tiles);
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  for (let frame = 0; frame < weights.length; frame += 1) {
    const weight = weights[frame]!;
    if (weight > 0) for (let tile = 0; tile < tiles; tile += 1) sums[tile]! += weight * values[frame * tiles + tile]!;
  }
  return whole > 0 ? sums.map((sum) => sum / whole) : sums;
}

export function tileMapsOf({ tiles, activity, light, clippedMost, weights }: TileMapsGiven): TileMaps {
  return {
    activity: meansOf(activity, tiles, weights),
    clippedFraction: Float64Array.from(clippedMost),
    light: meansOf(light, tiles, weights),
  };
}
