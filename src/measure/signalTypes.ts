/** The light that shows when something was fired, and what it is found from. */

export interface Signal {
  /** First frame in which it is lit, if only for a part of the exposure. */
  readonly frame: number;
  /** Last frame before it is out again; absent where it stays lit. */
  readonly lastFrame?: number;
  /** Tile, row by row, and how much brighter it becomes there. */
  readonly tile: number;
  readonly rise_stops: number;
  /** Share of its light that the first frame has, 1 for all of it. Told too high where it burns out. */
  readonly litFraction: number;
  /** First frame after it in which anything moves; absent where nothing does, or little was seen before it. */
  readonly movement?: number;
}

export interface SignalGiven {
  readonly columns: number;
  readonly rows: number;
  /** Light of the brightest cell of each tile, light of each tile, and its activity, frame after frame. */
  readonly brightest: Float32Array;
  readonly light: Float32Array;
  readonly activity: Float32Array;
  /** Of each frame: 0 where it is missing or repeated. */
  readonly weights: Float64Array;
}
