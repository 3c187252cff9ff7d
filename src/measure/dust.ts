/**
 * Dust on the sensor or on the glass before it: small spots that stay where they are and take the same share of the light
 * whatever passes behind them. A spot of the set keeps its place too; so only those count behind which the picture changed.
 *
 *     share = 1 − light of the middle / light of the ring about it        told where the ring is even: its spread below share·light
 */
import type { Plane } from './frameReader.ts';

export interface DustSpot {
  readonly x: number;
  readonly y: number;
  /** Across, about. */
  readonly size_px: number;
  /** Share of the light that it takes. */
  readonly depthFraction: number;
}

/** Spots that may be dust: where, how wide, what share at first, and what was seen of each since. */
export interface DustState {
  readonly spots: readonly DustSeen[];
  readonly looks: number;
}

interface DustSeen {
  readonly column: number;
  readonly row: number;
  readonly reach: number;
  readonly share: number;
  /** At each look that showed it, the light of the ring about it: by itself, and over the whole picture's light. */
  readonly own: readonly number[];
  readonly shared: readonly number[];
}

export interface DustFinder {
  /** Looks at a whole picture; a few, far apart, are enough. */
  readonly look: (plane: Plane) => void;
  readonly found: () => readonly DustSpot[];
  readonly state: () => DustState;
}

/** Blocks along the longer side of the picture that spots are looked for in. */
const MOST_BLOCKS = 1024;
/** Half the side of a spot, in blocks, and how far its ring reaches, over that. */
const REACHES = [1, 2, 4] as const;
const RING = 2;
/** Least share of the light that a spot takes, and how far it may differ from look to look. */
const LEAST_SHARE = 0.02;
const SAME_SHARE = 0.2;
const SAME_AT_LEAST = 0.012;
const MOST_SPOTS = 300;
/** Looks that must show it before what is darker, and before what is brighter. */
const FEWEST_OF_EACH = 2;
/** Dust lies far from where the picture is sharp, and lets most of the light pass: what is darker is a thing of the set. */
const MOST_SHARE = 0.4;
/** How far the light behind must change. */
const CHANGED = 1.5;
const DARKEST = 0.01;

interface Blocks {
  readonly light: Float32Array;
  readonly columns: number;
  readonly rows: number;
  readonly mean: number;
}

function blocksOf({ data, width, height }: Plane, table: Float32Array, side: number): Blocks {
  const [columns, rows] = [Math.floor(width / side), Math.floor(height / side)];
  const light = new Float32Array(columns * rows);
  let whole = 0;
  for (let row = 0; row < rows; row += 1)
    for (let line = 0; line < side; line += 1) {
      let at = (row * side + line) * width;
      for (let column = 0; column < columns; column += 1) {
        let sum = 0;
        for (const end = at + side; at < end; at += 1) sum += table[data[at]!]!;
        light[row * columns + column]! += sum;
      }
    }
  for (let i = 0; i < light.length; i += 1) {
    light[i] = light[i]! / (side * side);
    whole += light[i]!;
  }
  return { light, columns, rows, mean: whole / Math.max(1, light.length) };
}

interface Around {
  readonly share: number;
  readonly ring: number;
  /** Whether the ring is even enough for a share to be told. */
  readonly isEven: boolean;
}

/** A spot against the ring about it. */
function around({ light, columns }: Blocks, column: number, row: number, reach: number): Around {
  const far = reach + 1 + RING * reach;
  let [middle, count, sum, squares, ringCount] = [0, 0, 0, 0, 0];
  for (let y = -far; y <= far; y += 1)
    for (let x = -far, i = (row + y) * columns + column - far; x <= far; x += 1, i += 1) {
      const off = Math.max(Math.abs(x), Math.abs(y));
      const value = light[i]!;
      if (off < reach) {
        middle += value;
        count += 1;
      } else if (off > reach + 1) {
        sum += value;
        squares += value * value;
        ringCount += 1;
      }
    }
  const ring = sum / ringCount;
  const spread = Math.sqrt(Math.max(0, squares / ringCount - ring * ring));
  const share = ring > 0 ? 1 - middle / count / ring : 0;
  return { share, ring, isEven: ring > DARKEST && spread < Math.max(share, LEAST_SHARE) * ring };
}

/** The darkest even spots of a picture, none within another. */
function spotsIn(blocks: Blocks): readonly DustSeen[] {
  const { light, columns, rows, mean } = blocks;
  const found: DustSeen[] = [];
  for (const reach of REACHES) {
    const far = reach + 1 + RING * reach;
    const step = Math.max(1, reach >> 1);
    for (let row = far; row + far < rows; row += step)
      for (let column = far; column + far < columns; column += step) {
        const i = row * columns + column;
        // Most places are no darker than what lies beside them, and are dismissed by that.
        const beside = reach + 2;
        const least = light[i]! / (1 - LEAST_SHARE / 2);
        if (light[i - beside]! < least || light[i + beside]! < least || light[i - beside * columns]! < least || light[i + beside * columns]! < least) continue; // prettier-ignore
        const { share, ring, isEven } = around(blocks, column, row, reach);
        if (isEven && share >= LEAST_SHARE && share <= MOST_SHARE) found.push({ column, row, reach, share, own: [ring], shared: [ring / mean] }); // prettier-ignore
      }
  }
  const apart: DustSeen[] = [];
  for (const spot of found.sort((a, b) => b.share * b.reach - a.share * a.reach)) {
    if (apart.length >= MOST_SPOTS) break;
    const isNew = apart.every(({ column, row, reach }) => Math.max(Math.abs(column - spot.column), Math.abs(row - spot.row)) > reach + spot.reach); // prettier-ignore
    if (isNew) apart.push(spot);
  }
  return apart;
}

/** Whether what was behind was bright at some looks and dim at others. */
function isWide(rings: readonly number[]): boolean {
  const inOrder = [...rings].sort((a, b) => a - b);
  const [dim, bright] = [inOrder[FEWEST_OF_EACH - 1], inOrder.at(-FEWEST_OF_EACH)];
  return dim !== undefined && bright !== undefined && bright > CHANGED * dim;
}

/** A finder of dust in pictures of this size and light, from the first or from where it was saved. */
export function createDustFinder({ width, height, table }: { readonly width: number; readonly height: number; readonly table: Float32Array }, saved?: DustState): DustFinder {
  const side = Math.max(1, Math.ceil(Math.max(width, height) / MOST_BLOCKS));
  let spots = saved?.spots ?? [];
  let looks = saved?.looks ?? 0;
  const look = (plane: Plane): void => {
    const blocks = blocksOf(plane, table, side);
    looks += 1;
    if (looks === 1) {
      spots = blocks.mean > DARKEST ? spotsIn(blocks) : [];
      return;
    }
    spots = spots.flatMap((spot): readonly DustSeen[] => {
      const { share, ring, isEven } = around(blocks, spot.column, spot.row, spot.reach);
      // Behind what has detail of its own, or is dark, nothing can be told of it.
      if (!isEven || blocks.mean <= DARKEST) return [spot];
      if (Math.abs(share - spot.share) > Math.max(SAME_SHARE * spot.share, SAME_AT_LEAST)) return [];
      return [{ ...spot, own: [...spot.own, ring], shared: [...spot.shared, ring / blocks.mean] }];
    });
  };
  const found = (): readonly DustSpot[] =>
    spots
      // A light that only changes with all the rest is no other thing behind; nor is one that stays while the rest changes.
      .filter(({ own, shared }) => isWide(own) && isWide(shared))
      .map(({ column, row, reach, share }) => ({ x: (column + 0.5) * side, y: (row + 0.5) * side, size_px: (2 * reach + 1) * side, depthFraction: share }));
  return { look, found, state: () => ({ spots, looks }) };
} // prettier-ignore
