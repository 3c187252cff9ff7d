/** Maps that are laid over the picture of a clip: one figure of each tile, in a few steps that are told apart by pattern too. */
import { showNumber } from '../../../../base/quantity.ts';
import { gridOf } from '../../../../measure/grid.ts';
import type { Measurement } from '../../../../measure/types.ts';

export type MapId = 'flicker' | 'sharpness' | 'movement' | 'clipped';

export interface TileMap {
  readonly id: MapId;
  readonly title: string;
  /** What its figures are. */
  readonly unit: string;
  /** From which figure on each step is, rising. */
  readonly steps: readonly number[];
  /** Of each tile, row by row, as a share; NaN where it cannot be judged. */
  readonly values: Float64Array;
  readonly say: (value: number) => string;
}

const percent = (fraction: number): string => (Number.isNaN(fraction) ? 'not judged' : `${showNumber(100 * fraction, 2)} %`); // prettier-ignore

const EVEN = [0.1, 0.3, 0.5, 0.7, 0.9] as const;

function overMost(values: Float64Array): Float64Array {
  const most = values.reduce((a, b) => Math.max(a, b), 0);
  return most > 0 ? values.map((value) => value / most) : values;
}

/** Shares of the deepest, as round figures. */
function depthSteps(values: Float64Array): readonly number[] {
  const most = values.reduce((a, b) => (b > a ? b : a), 0);
  return [0.1, 0.3, 0.5, 0.7, 0.9].map((share) => Number((share * Math.max(most, 1e-4)).toPrecision(2)));
}

/** The maps that a clip has, of the flicker that of one of its lines. */
export function mapsOf({ flicker, focus, tiles }: Measurement, line: number): readonly TileMap[] {
  const of = flicker.lines[line];
  const depths = of && Float64Array.from(of.tileDepths, (depth) => (depth === 0 ? NaN : depth));
  const map = (rest: Omit<TileMap, 'say'>): TileMap => ({ ...rest, say: percent });
  return [
    ...(depths ? [map({ id: 'flicker', title: 'Flicker', unit: 'depth of the chosen line', steps: depthSteps(depths), values: depths })] : []),
    map({ id: 'sharpness', title: 'Sharpness', unit: 'of the sharpest tile', steps: EVEN, values: focus.tileSharpness }),
    ...(tiles
      ? [
          map({ id: 'movement', title: 'Movement', unit: 'of the liveliest tile', steps: [0.05, 0.15, 0.3, 0.5, 0.8], values: overMost(tiles.activity) }),
          map({ id: 'clipped', title: 'Burnt out', unit: 'of the tile, at the most', steps: [0.001, 0.01, 0.1, 0.3, 0.6], values: tiles.clippedFraction }),
        ]
      : []),
  ];
} // prettier-ignore

/** 0 for less than the first step and for what cannot be judged; else the step it has reached, from 1. */
export function levelOf({ steps }: Pick<TileMap, 'steps'>, value: number): number {
  return Number.isNaN(value) ? 0 : steps.filter((step) => value >= step).length;
}

export interface TilePlace {
  /** In hundredths of the picture. */
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Where the tiles of a clip lie in its picture, row by row. */
export function placesOf({ width, height, tileColumns, tileRows }: Pick<Measurement, 'width' | 'height' | 'tileColumns' | 'tileRows'>): readonly TilePlace[] {
  const { columns, rows, cell_px, columnEdges, rowEdges } = gridOf(width, height);
  // A clip that was measured by another grid has its tiles spread evenly.
  const isOurs = columns === tileColumns && rows === tileRows;
  const edges = (count: number, cells: Uint32Array, whole: number): readonly number[] =>
    Array.from({ length: count + 1 }, (_, i) => (isOurs ? (100 * cells[i]! * cell_px) / whole : (100 * i) / count));
  const [across, down] = [edges(tileColumns, columnEdges, width), edges(tileRows, rowEdges, height)];
  return Array.from({ length: tileColumns * tileRows }, (_, tile) => {
    const [column, row] = [tile % tileColumns, Math.floor(tile / tileColumns)];
    const [left, top] = [across[column]!, down[row]!];
    return { left, top, width: across[column + 1]! - left, height: down[row + 1]! - top };
  });
} // prettier-ignore
