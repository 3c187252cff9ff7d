/**
 * Whether two clips show one scene from one place, by how bright and how detailed their tiles are; and what can only be
 * compared where they do.
 */
import { bulkSpreadOf, medianOf } from '../base/median.ts';
import type { Measurement } from '../measure/types.ts';

export type Pair<Of> = readonly [first: Of, second: Of];

/** Fewest tiles that say anything, and how far they must stand out from their neighbours for a pattern to be one. */
const FEWEST_TILES = 12;
const LEAST_SPREAD_stops = 0.02;
/** From here on patterns are one; below that they are another scene, or the same from elsewhere. */
const SAME = 0.9;
const OTHER = 0.6;
/** Livelier tiles than this share of them are left out: what moves is never the same. */
const STILL_SHARE = 0.6;
const DARKEST = 1e-4;

/** Tiles that stand still in both, as far as that is known. */
function stillTiles(clips: Pair<Measurement>): readonly number[] | undefined {
  const [a, b] = clips;
  if (a.width !== b.width || a.height !== b.height || !a.tiles || !b.tiles) return undefined;
  const [before, after] = [a.tiles, b.tiles];
  const lively = before.activity.map((of, i) => Math.max(of, after.activity[i]!));
  const most = [...lively].sort((x, y) => x - y)[Math.floor(STILL_SHARE * (lively.length - 1))]!;
  const isLit = (i: number) => Math.min(before.light[i]!, after.light[i]!) > DARKEST;
  return [...lively.keys()].filter((i) => lively[i]! <= most && isLit(i));
}

/** How two lists go together, −1 to 1; undefined where either is flat. */
function together(a: Float64Array, b: Float64Array): number | undefined {
  if (a.length < FEWEST_TILES || Math.min(bulkSpreadOf(a), bulkSpreadOf(b)) < LEAST_SPREAD_stops) return undefined;
  const mean = (of: Float64Array) => of.reduce((sum, value) => sum + value, 0) / of.length;
  const [x, y] = [mean(a), mean(b)];
  let [xx, yy, xy] = [0, 0, 0];
  for (let i = 0; i < a.length; i += 1) {
    xx += (a[i]! - x) ** 2;
    yy += (b[i]! - y) ** 2;
    xy += (a[i]! - x) * (b[i]! - y);
  }
  return xy / Math.sqrt(xx * yy);
}

const logs = (values: Float64Array, at: readonly number[]): Float64Array =>
  Float64Array.from(at, (i) => Math.log2(Math.max(values[i]!, 1e-12)));

/** Each tile against those about it: a lens darkens the corners of every scene, and one lamp lights many from one side. */
function standingOut(values: Float64Array, at: readonly number[], columns: number): Float64Array {
  const own = logs(values, at);
  const index = new Map(at.map((tile, i) => [tile, i]));
  return own.map((value, i) => {
    const [column, row] = [at[i]! % columns, Math.floor(at[i]! / columns)];
    let [sum, count] = [0, 0];
    for (let y = row - 1; y <= row + 1; y += 1)
      for (let x = Math.max(0, column - 1); x <= Math.min(columns - 1, column + 1); x += 1) {
        const near = index.get(y * columns + x);
        if (near === undefined) continue;
        sum += own[near]!;
        count += 1;
      }
    return value - sum / count;
  });
}

type TileValues = (of: Measurement) => Float64Array | undefined;

function togetherBy([a, b]: Pair<Measurement>, still: readonly number[], of: TileValues): number | undefined {
  const [before, after] = [of(a), of(b)];
  const standing = (values: Float64Array) => standingOut(values, still, a.tileColumns);
  return before && after && together(standing(before), standing(after));
}

export type SceneVerdict = 'same' | 'other' | 'cannot tell';

/** Whether both show one scene from one place. */
export function sceneOf(clips: Pair<Measurement>): SceneVerdict {
  const still = stillTiles(clips);
  if (!still) return 'cannot tell';
  // Detail is a pattern too, but one that a blur changes: it is asked only where the light is flat.
  const told = togetherBy(clips, still, ({ tiles }) => tiles?.light) ?? togetherBy(clips, still, ({ focus }) => (focus.verdict === 'cannot tell' ? undefined : focus.tileDetail)); // prettier-ignore
  if (told === undefined) return 'cannot tell';
  return told >= SAME ? 'same' : told < OTHER ? 'other' : 'cannot tell';
}

/** Of one scene: light of the second over that of the first, by the tiles that stand still. */
export function lightRatio_stops(clips: Pair<Measurement>): number | undefined {
  const still = stillTiles(clips);
  if (!still || still.length === 0 || sceneOf(clips) !== 'same') return undefined;
  const [a, b] = [logs(clips[0].tiles!.light, still), logs(clips[1].tiles!.light, still)];
  return medianOf(b.map((value, i) => value - a[i]!));
}

/** Share of the most detailed tiles that sharpness is compared by. */
const DETAILED = 0.5;

/**
 * Of one scene: detail of the second over that of the first, by the tiles that stand still and have most of it; undefined
 * of other scenes, of which the one with more to see is not the sharper, and where either has too little to judge by.
 */
export function detailRatio(clips: Pair<Measurement>): number | undefined {
  const still = stillTiles(clips);
  const [a, b] = clips;
  if (!still || !a.focus.tileDetail || !b.focus.tileDetail || sceneOf(clips) !== 'same') return undefined;
  if (a.focus.verdict === 'cannot tell' && b.focus.verdict === 'cannot tell') return undefined;
  const [before, after] = [a.focus.tileDetail, b.focus.tileDetail];
  const most = (i: number) => Math.max(before[i]!, after[i]!);
  const least = [...still].map(most).sort((x, y) => x - y)[Math.floor(DETAILED * (still.length - 1))]!;
  const judged = still.filter((i) => most(i) >= least && before[i]! > 0 && after[i]! > 0);
  return judged.length < FEWEST_TILES / 2 ? undefined : 2 ** medianOf(judged.map((i) => Math.log2(after[i]! / before[i]!))); // prettier-ignore
}
