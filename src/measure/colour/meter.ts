/**
 * The colour of a clip as small samples of some of its frames come by: of each the mean light of red, green and blue in
 * each tile, and whether it stood still, is kept; of each place of the sample only what it adds up to.
 *
 * Once more samples were kept than there is room for, every other one is dropped, and from there on only every other one
 * that comes is taken: a clip of any length takes the same room.
 */
import { createActivityMeter, type ActivityState } from '../activity.ts';
import { gridOf, type Grid } from '../grid.ts';
import { createGrowing } from '../growing.ts';
import { lightOf, type Coding, type TransferCurve } from '../transfer.ts';
import { signalsOf, type ColourForm } from './coding.ts';
import type { PrimariesName } from './chromaticity.ts';

/** Code values of a frame at places spread over it: three planes, rows from the top, without gaps. */
export interface ColourSample {
  /** The frame's place among all, missing ones counted. */
  readonly place: number;
  /** Red, green and blue, or brightness, Cb and Cr. */
  readonly planes: readonly [Samples, Samples, Samples];
}
type Samples = Uint8Array | Uint16Array;

export interface ColourOptions {
  /** Of a sample. */
  readonly width: number;
  readonly height: number;
  readonly form: ColourForm;
  /** Of brightness, or of red, green and blue. */
  readonly coding: Coding;
  readonly curve: TransferCurve;
  readonly primaries: PrimariesName;
}

/** All that is remembered between samples. */
export interface ColourState {
  readonly activity: ActivityState;
  readonly sums: Float64Array;
  readonly clippedMost: Float32Array;
  readonly kept: Float32Array;
  readonly places: Float32Array;
  /** Samples that came, and every how many of them one is taken. */
  readonly came: number;
  readonly every: number;
}

/** What a clip's samples come to, for `colourOf`. */
export interface ColourSeen {
  readonly grid: Grid;
  readonly options: ColourOptions;
  /** Of every sample kept: the frame's place, and row after row of `PER_TILE` numbers a tile. */
  readonly places: Float32Array;
  readonly kept: Float32Array;
  /** What light of red, of green and of blue at each place of the sample adds up to, those of dropped samples too. */
  readonly sums: Float64Array;
  /** Largest share of a tile at white in any channel, in any sample. */
  readonly clippedMost: Float32Array;
  /** Whether samples were dropped for want of room. */
  readonly isThinned: boolean;
}

export interface ColourMeter {
  /** The next sample. Throws RangeError for one of another size. */
  readonly add: (sample: ColourSample) => void;
  readonly seen: () => ColourSeen;
  readonly state: () => ColourState;
}

/** Light of red, green and blue, and how much stirs. */
export const PER_TILE = 4;
/** Tiles along the longer side: small enough for a grey card in a corner. */
const MOST_TILES = 24;
const MOST_KEPT = 600;
/** Signals from here on may have been more before they were clipped. */
const CLIPPED_SIGNAL = 0.985;

/** Steps of a signal between black and white, and how far beyond both it is followed. */
const STEPS = 8192;
const BEYOND = 0.25;

/** Light of every signal, in steps. */
function tableOf(curve: TransferCurve): Float64Array {
  const length = Math.round((1 + 2 * BEYOND) * STEPS) + 1;
  return Float64Array.from({ length }, (_, i) => lightOf(curve, i / STEPS - BEYOND));
}

/** A meter for samples of one size and coding. Throws RangeError for a size, a coding or a curve without meaning. */
export function createColourMeter(options: ColourOptions, saved?: ColourState): ColourMeter {
  const { width, height, form, coding, curve } = options;
  const grid = gridOf(width, height, MOST_TILES);
  const { columns, columnOf, rowOf } = grid;
  const tiles = columns * grid.rows;
  const count = width * height;
  const table = tableOf(curve);
  const toSignals = signalsOf(form, coding);
  const { blackCode, whiteCode } = coding;
  const clippedFrom = CLIPPED_SIGNAL * (((coding.clippedCode ?? whiteCode) - blackCode) / (whiteCode - blackCode));
  const tileOf = Uint32Array.from({ length: count }, (_, i) => rowOf[Math.floor(i / width)]! * columns + columnOf[i % width]!); // prettier-ignore
  const inTile = new Float64Array(tiles);
  for (const tile of tileOf) inTile[tile]! += 1;
  const activity = createActivityMeter(grid, saved?.activity);
  const sums = saved?.sums.slice() ?? new Float64Array(3 * count);
  const clippedMost = saved?.clippedMost.slice() ?? new Float32Array(tiles);
  let kept = createGrowing(PER_TILE * tiles, saved?.kept);
  let places = createGrowing(1, saved?.places);
  let { came, every } = saved ?? { came: 0, every: 1 };
  const [roots, signals] = [new Float32Array(count), new Float64Array(3)];
  const [row, clipped] = [new Float32Array(PER_TILE * tiles), new Float32Array(tiles)];

  const shares = inTile.map((pixels) => 1 / pixels);
  const lightAt = (signal: number): number => {
    const step = (signal + BEYOND) * STEPS + 0.5;
    return step < 0 ? table[0]! : step >= table.length ? table[table.length - 1]! : table[step | 0]!;
  };

  /** Every other sample, from the first on. */
  const thin = (): void => {
    const [of, at] = [kept.all(), places.all()];
    kept = createGrowing(PER_TILE * tiles, new Float32Array(0));
    places = createGrowing(1, new Float32Array(0));
    for (let i = 0; i < at.length; i += 2) {
      kept.add(of.subarray(i * PER_TILE * tiles, (i + 1) * PER_TILE * tiles));
      places.add([at[i]!]);
    }
    every *= 2;
  };

  const look = ([first, second, third]: ColourSample['planes']): void => {
    row.fill(0);
    clipped.fill(0);
    for (let i = 0; i < count; i += 1) {
      toSignals(first[i]!, second[i]!, third[i]!, signals);
      const tile = tileOf[i]!;
      const share = shares[tile]!;
      const red = lightAt(signals[0]!);
      const green = lightAt(signals[1]!);
      const blue = lightAt(signals[2]!);
      if (Math.max(signals[0]!, signals[1]!, signals[2]!) >= clippedFrom) clipped[tile]! += share;
      row[PER_TILE * tile]! += red * share;
      row[PER_TILE * tile + 1]! += green * share;
      row[PER_TILE * tile + 2]! += blue * share;
      sums[3 * i]! += red;
      sums[3 * i + 1]! += green;
      sums[3 * i + 2]! += blue;
      roots[i] = Math.sqrt(Math.max(0, red + green + blue));
    }
  };

  const add: ColourMeter['add'] = ({ place, planes }) => {
    if (planes.some((plane) => plane.length < count))
      throw new RangeError(`a sample of colour must have ${count} values a plane, got ${planes.map(({ length }) => length).join(', ')}`); // prettier-ignore
    came += 1;
    if ((came - 1) % every !== 0) return;
    look(planes);
    const lively = activity.next(roots);
    for (let tile = 0; tile < tiles; tile += 1) {
      row[PER_TILE * tile + 3] = lively[tile]!;
      clippedMost[tile] = Math.max(clippedMost[tile]!, clipped[tile]!);
    }
    kept.add(row);
    places.add([place]);
    if (places.all().length >= MOST_KEPT) thin();
  };

  return {
    add,
    seen: () => ({
      grid,
      options,
      places: places.all(),
      kept: kept.all(),
      sums,
      clippedMost,
      isThinned: every > 1,
    }),
    state: () => ({
      activity: activity.state(),
      sums,
      clippedMost,
      kept: kept.all(),
      places: places.all(),
      came,
      every,
    }),
  };
}
