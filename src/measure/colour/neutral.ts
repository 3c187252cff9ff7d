/**
 * Which parts of a picture may be taken for neutral, to judge the light by: lit, not clipped in any channel, of one colour,
 * standing still, and nearly white as the clip is coded; of those, the ones that most others agree with.
 *
 * Nothing here knows a grey card. Whatever nearly white surface there is most of is taken, and what is told of it holds for
 * the light as far as that surface stays the same.
 *
 * @source colour-practice
 */
import { medianOf } from '../../base/median.ts';
import { apart, chromaticityOf, WHITE_CHROMATICITY, xyzMatrix, type Chromaticity } from './chromaticity.ts';
import { PER_TILE, type ColourSeen } from './meter.ts';

export interface NeutralTile {
  readonly tile: number;
  readonly chromaticity: Chromaticity;
  /** Of each sample kept: 1 where the tile stands still in it. */
  readonly isStill: Uint8Array;
}

export interface NeutralParts {
  readonly tiles: readonly NeutralTile[];
  /** What kept most of the picture from being taken, where too little is left. */
  readonly why?: string;
}

/** Light of the darkest that is judged, three stops below middle grey. */
const LEAST_LIGHT = 0.02;
/** Share of a tile that may be clipped in any sample. */
const MOST_CLIPPED = 0.05;
/** Share of the samples in which a tile must stand still. */
const LEAST_STILL = 0.6;
/** Places of a tile that lie farther from its colour than this, and the share of them that may. */
const PURE = 0.01;
const MOST_IMPURE = 0.1;
/** Farther from the coding's white than this is a colour: some 60 mired. */
const MOST_CHROMA = 0.03;
/** Tiles nearer than this are of one colour. */
const ONE_COLOUR = 0.006;
/** Share of the picture that is enough to judge by, and tiles. */
const LEAST_SHARE = 0.008;
const LEAST_TILES = 2;

/** Medians over the samples in which a tile stands still. */
function tileLight({ kept, places }: ColourSeen, tiles: number, tile: number, isStill: Uint8Array): readonly number[] {
  return [0, 1, 2].map((channel) => {
    const values: number[] = [];
    for (let i = 0; i < places.length; i += 1)
      if (isStill[i]! > 0) values.push(kept[(i * tiles + tile) * PER_TILE + channel]!);
    return medianOf(values);
  });
}

const stillOf = ({ kept, places }: ColourSeen, tiles: number, tile: number): Uint8Array =>
  Uint8Array.from(places, (_, i) => (kept[(i * tiles + tile) * PER_TILE + 3] === 0 ? 1 : 0));

/** Share of each tile's places whose colour over the clip is not the tile's. */
function impurityOf({ grid, sums, options }: ColourSeen, of: readonly (Chromaticity | undefined)[]): Float64Array {
  const { columns, columnOf, rowOf, cellColumns, cellRows } = grid;
  const matrix = xyzMatrix(options.primaries);
  const [off, all] = [new Float64Array(of.length), new Float64Array(of.length)];
  for (let y = 0, i = 0; y < cellRows; y += 1)
    for (let x = 0; x < cellColumns; x += 1, i += 1) {
      const tile = rowOf[y]! * columns + columnOf[x]!;
      const [here, whole] = [chromaticityOf(matrix, sums[3 * i]!, sums[3 * i + 1]!, sums[3 * i + 2]!), of[tile]];
      all[tile]! += 1;
      if (!here || !whole || apart(here, whole) > PURE) off[tile]! += 1;
    }
  return off.map((count, tile) => count / all[tile]!);
}

/** Of tiles nearly white, those about the colour that most of them have, the whiter counting for more. */
function ofOneColour(tiles: readonly NeutralTile[]): readonly NeutralTile[] {
  const about = (of: Chromaticity) => tiles.filter(({ chromaticity }) => apart(chromaticity, of) <= ONE_COLOUR);
  let [best, most]: [readonly NeutralTile[], number] = [[], 0];
  for (const { chromaticity } of tiles) {
    const near = about(chromaticity);
    const weight = near.length * (1 - (apart(chromaticity, WHITE_CHROMATICITY) / MOST_CHROMA) ** 2);
    if (weight > most) [best, most] = [near, weight];
  }
  if (best.length === 0) return best;
  const middle = (at: 'u' | 'v') => medianOf(best.map(({ chromaticity }) => chromaticity[at]));
  return about({ u: middle('u'), v: middle('v') });
}

/** The parts of a clip that its light may be judged by. */
export function neutralParts(seen: ColourSeen): NeutralParts {
  const { columns, rows } = seen.grid;
  const tiles = columns * rows;
  const matrix = xyzMatrix(seen.options.primaries);
  const still = Array.from({ length: tiles }, (_, tile) => stillOf(seen, tiles, tile));
  const left: Record<'moves' | 'is clipped or too dark' | 'is of several colours' | 'is coloured', number> = { moves: 0, 'is clipped or too dark': 0, 'is of several colours': 0, 'is coloured': 0 }; // prettier-ignore
  const colours = still.map((isStill, tile): Chromaticity | undefined => {
    const quiet = isStill.reduce((sum, of) => sum + of, 0) >= Math.max(1, LEAST_STILL * isStill.length);
    if (!quiet) left.moves += 1;
    if (!quiet) return undefined;
    const [red = 0, green = 0, blue = 0] = tileLight(seen, tiles, tile, isStill);
    const isLit = Math.min(red, green, blue) > LEAST_LIGHT / 4 && matrix[3] * red + matrix[4] * green + matrix[5] * blue >= LEAST_LIGHT; // prettier-ignore
    if (isLit && seen.clippedMost[tile]! <= MOST_CLIPPED) return chromaticityOf(matrix, red, green, blue);
    left['is clipped or too dark'] += 1;
    return undefined;
  });
  const impurity = impurityOf(seen, colours);
  const nearlyWhite = colours.flatMap((chromaticity, tile): readonly NeutralTile[] => {
    if (!chromaticity) return [];
    const isColour = apart(chromaticity, WHITE_CHROMATICITY) > MOST_CHROMA;
    const isMixed = impurity[tile]! > MOST_IMPURE;
    if (isColour || isMixed) left[isColour ? 'is coloured' : 'is of several colours'] += 1;
    return isColour || isMixed ? [] : [{ tile, chromaticity, isStill: still[tile]! }];
  });
  const found = ofOneColour(nearlyWhite);
  if (found.length >= Math.max(LEAST_TILES, LEAST_SHARE * tiles)) return { tiles: found };
  const [most] = Object.entries(left).sort(([, a], [, b]) => b - a);
  return { tiles: [], why: `No neutral part to judge by: the picture mostly ${most![0]}.` };
}
