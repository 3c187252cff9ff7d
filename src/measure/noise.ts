/**
 * Noise of a clip by how bright it is, from how a fixed sample of pixels changes from frame to frame; and pixels that
 * stand out from all about them in every frame looked at.
 *
 *     σ = median |I_k − g·I_{k−1}| / (0.67449·√2)
 *
 * I code value        g mean of the sample above black over that of the frame before,
 * so that flicker is no noise
 *
 * Things that move change some pixels a lot and leave the median alone while fewer than half of them do.
 *
 * @source motion-activity noise of a difference, from its median
 */
import type { Plane } from './frameReader.ts';
import type { Coding } from './transfer.ts';

export interface NoiseLevel {
  /** Middle of the pixels' values it was judged from. */
  readonly code: number;
  readonly deviation_codes: number;
  readonly pixels: number;
}

/** What it has counted, and the frame before. */
export interface NoiseState {
  readonly counts: readonly Float64Array[];
  readonly before: Uint16Array;
  readonly meanBefore: number;
  readonly isFirst: boolean;
}

export interface NoiseMeter {
  /** A frame's sample; repeated frames must be left out. */
  readonly next: (sample: Uint16Array) => void;
  readonly levels: () => readonly NoiseLevel[];
  readonly state: () => NoiseState;
}

const LEVELS = 16;
/** Differences are counted in steps of a 4096th of the whole range, up to a sixteenth of it. */
const STEPS = 4096;
const COUNTED = STEPS / 16;
const MEDIAN = 0.67449 * Math.SQRT2;
/** Fewest differences that make a level worth telling. */
const FEWEST = 2000;

/** A meter for samples of as many pixels, from the first frame or from where it was saved. */
export function createNoiseMeter({ bitDepth, blackCode }: Coding, count: number, saved?: NoiseState): NoiseMeter {
  const range = 2 ** bitDepth;
  const perStep = Math.max(1, range / STEPS);
  const perLevel = LEVELS / range;
  const all = new Float64Array(LEVELS * (COUNTED + 1));
  const counts = Array.from({ length: LEVELS }, (_, level) =>
    all.subarray(level * (COUNTED + 1), (level + 1) * (COUNTED + 1)),
  );
  const before = new Uint16Array(count);
  let meanBefore = saved?.meanBefore ?? 0;
  let isFirst = saved?.isFirst ?? true;
  if (saved) before.set(saved.before);
  saved?.counts.forEach((of, level) => counts[level]!.set(of));
  const next = (sample: Uint16Array): void => {
    let sum = 0;
    for (let i = 0; i < count; i += 1) sum += sample[i]! - blackCode;
    const gain = meanBefore > 0 ? sum / meanBefore : 1;
    if (!isFirst)
      for (let i = 0; i < count; i += 1) {
        const was = before[i]!;
        const difference = Math.abs(sample[i]! - blackCode - gain * (was - blackCode)) / perStep;
        const level = was < range ? (was * perLevel) | 0 : LEVELS - 1;
        all[level * (COUNTED + 1) + (difference < COUNTED ? difference | 0 : COUNTED)]! += 1;
      }
    before.set(sample);
    meanBefore = sum;
    isFirst = false;
  };
  const levels = (): readonly NoiseLevel[] =>
    counts.flatMap((of, level): readonly NoiseLevel[] => {
      const pixels = of.reduce((sum, value) => sum + value, 0);
      if (pixels < FEWEST) return [];
      let [below, step] = [0, 0];
      while (below + of[step]! < pixels / 2) {
        below += of[step]!;
        step += 1;
      }
      // More changed by a sixteenth of the range than not: something moves all over, and noise cannot be told.
      if (step >= COUNTED) return [];
      const median = (step + (pixels / 2 - below) / of[step]!) * perStep;
      return [{ code: ((level + 0.5) * range) / LEVELS, deviation_codes: median / MEDIAN, pixels }];
    });
  return { next, levels, state: () => ({ counts, before, meanBefore, isFirst }) };
}

/** A pixel that stays out of line with its neighbours. */
export interface FixedPixel {
  readonly x: number;
  readonly y: number;
  readonly kind: 'bright' | 'dark';
}

/** Those that may be, after so many looks. */
export interface FixedPixelState {
  readonly places: readonly { readonly at: number; readonly sign: number }[];
  readonly looks: number;
  readonly width: number;
}

export interface FixedPixelFinder {
  /** Looks at a frame; a few, far apart, are enough. */
  readonly look: (plane: Plane) => void;
  /** Those that stood out in every frame looked at; none before three were. */
  readonly found: () => readonly FixedPixel[];
  readonly state: () => FixedPixelState;
}

/** Times the spread of its neighbours that a pixel must lie beyond them, at first and after. */
const OUT_FIRST = 3;
const OUT_AFTER = 1.5;
/** And at least this share of the whole range. */
const LEAST_OUT = 0.01;
const MOST_FOUND = 1000;
const FEWEST_LOOKS = 3;

/** How far a pixel lies beyond its eight neighbours, brighter above 0 and darker below; 0 where not so many times their spread. */
function beyond({ data, width }: Plane, at: number, times: number): number {
  let least = data[at - 1]!;
  let most = least;
  for (let row = at - width; row <= at + width; row += width)
    for (let i = row - 1; i <= row + 1; i += 1) {
      if (i === at) continue;
      const value = data[i]!;
      if (value < least) least = value;
      if (value > most) most = value;
    }
  const here = data[at]!;
  const spread = times * (most - least);
  if (here > most) return here - most > spread ? here - most : 0;
  return here < least && least - here > spread ? here - least : 0;
}

/** Takes the pixels of a row that are out of line. */
function findInRow(plane: Plane, y: number, least: number, into: FixedPixelState['places'][number][]): void {
  const { data, width } = plane;
  const end = (y + 1) * width - 1;
  let west = data[y * width]!;
  let here = data[y * width + 1]!;
  for (let at = y * width + 1; at < end; at += 1) {
    const east = data[at + 1]!;
    const isBright = here >= west + least && here >= east + least;
    const isDark = here <= west - least && here <= east - least;
    // Most pixels lie within their neighbours to the sides, or those above and below, and are dismissed by these alone.
    if (isBright || isDark) {
      const above = data[at - width]!;
      const below = data[at + width]!;
      if (isBright ? here >= above + least && here >= below + least : here <= above - least && here <= below - least)
        if (Math.abs(beyond(plane, at, OUT_FIRST)) >= least) into.push({ at, sign: isBright ? 1 : -1 });
    }
    west = here;
    here = east;
  }
}

/** A finder of pixels that are always out of line, from the first look or from where it was saved. */
export function createFixedPixelFinder(bitDepth: number, saved?: FixedPixelState): FixedPixelFinder {
  const least = Math.ceil(Math.max(2, LEAST_OUT * 2 ** bitDepth));
  let places = [...(saved?.places ?? [])];
  let { looks, width } = saved ?? { looks: 0, width: 0 };
  const look = (plane: Plane): void => {
    const { height } = plane;
    if (looks === 0) {
      width = plane.width;
      for (let y = 1; y + 1 < height && places.length < MOST_FOUND; y += 1) findInRow(plane, y, least, places);
    } else {
      places = places.filter(({ at, sign }) => sign * beyond(plane, at, OUT_AFTER) >= least / 2);
    }
    looks += 1;
  };
  const found = (): readonly FixedPixel[] =>
    looks < FEWEST_LOOKS
      ? []
      : places.map(({ at, sign }) => ({ x: at % width, y: Math.floor(at / width), kind: sign > 0 ? 'bright' : 'dark' }));
  return { look, found, state: () => ({ places, looks, width }) };
} // prettier-ignore
