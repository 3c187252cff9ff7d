/**
 * Light over a plane through the subject, each lamp's by itself and for a strength of one, so that moving one leaves
 * the others as they were worked out, and dimming one all of them.
 */
import type { Vec3 } from '../../../laws/light/area/polygon.ts';
import type { Door } from '../../../laws/light/placed/doors.ts';
import type { Flag } from '../../../laws/light/placed/flag.ts';
import { lightAt_lx, scaledSource, type LightSource } from '../../../laws/light/placed/source.ts';
import type { Grid } from '../reckoner/contour.ts';
import { spread, type Flat, type Projection } from './projection.ts';

/** What the light falls on: the level table, the picture plane, or a card turned to each lamp in turn. */
export type Surface = 'table' | 'picture' | 'cards';

export interface Sheet {
  readonly surface: Surface;
  readonly projection: Projection;
  /** Unit normal of the surface; cards have none of their own. */
  readonly normal: Vec3;
  /** Spots of the page at the first and the last grid point. */
  readonly from: Flat;
  readonly to: Flat;
  readonly columns: number;
  readonly rows: number;
}

/** The way a surface faces: the table up, the picture plane as the lit surface that counts does. */
export const normalOf = (surface: Surface, facing: Vec3): Vec3 => (surface === 'picture' ? facing : [0, 0, 1]);

/** Illuminance of one source at a point of a surface, in lux. */
export function sourceOn_lx(source: LightSource, surface: Surface, p: Vec3, n: Vec3): number {
  if (surface !== 'cards') return lightAt_lx(source, p[0], p[1], p[2], n[0], n[1], n[2]);
  const { at } = source;
  const [x, y, z] = [at[0] - p[0], at[1] - p[1], at[2] - p[2]];
  const length = Math.sqrt(x * x + y * y + z * z);
  return length > 0 ? lightAt_lx(source, p[0], p[1], p[2], x / length, y / length, z / length) : 0;
}

export const allOn_lx = (sources: readonly LightSource[], surface: Surface, p: Vec3, n: Vec3): number =>
  sources.reduce((sum, source) => sum + sourceOn_lx(source, surface, p, n), 0);

const gridIds = new WeakMap<object, number>();
let lastGridId = 0;

const flagNames = new WeakMap<readonly Flag[], string>();

/** Lamps of a set-up share their flags: they are named once. */
function flagsName(flags: readonly Flag[] | undefined): string {
  if (!flags) return '';
  let name = flagNames.get(flags);
  if (name === undefined) flagNames.set(flags, (name = flags.map(({ corners }) => corners.join()).join(' ')));
  return name;
}

const doorsName = (doors: readonly Door[] = []): string => doors.map(({ towards, cos, sin }) => `${towards.join()},${cos},${sin}`).join(' '); // prettier-ignore

/** How strong a source is; all it gives anywhere goes with it. */
function strengthOf(source: LightSource): number {
  return source.kind === 'beam' ? source.intensity_cd : source.kind === 'face' ? source.luminance_cd_per_m2 : source.share; // prettier-ignore
}

/** Sources of one name give the same light everywhere, but for their strength. */
function nameOf(source: LightSource): string {
  const common = `${source.kind} ${source.at.join()} ${source.axis.join()} ${flagsName(source.flags)}`;
  switch (source.kind) {
    case 'beam':
      return `${common} ${source.beamAngle_deg} ${source.exponent} ${doorsName(source.doors)}`;
    case 'face':
      return `${common} ${source.corners.length} ${source.corners.slice(0, 6).join()}`;
    case 'grid': {
      const id = gridIds.get(source.grid) ?? (lastGridId += 1);
      gridIds.set(source.grid, id);
      return `${common} ${id} ${doorsName(source.doors)}`;
    }
  }
}

const sheetName = ({ surface, projection, from, to, columns, rows }: Sheet): string =>
  [surface, projection.across.join(), projection.up.join(), from.x, from.y, to.x, to.y, columns, rows].join(' ');

/** Light of one source over a sheet, row after row. */
export function layerOf(source: LightSource, sheet: Sheet): Float64Array {
  const { surface, projection, normal, from, to, columns, rows } = sheet;
  const values = new Float64Array(columns * rows);
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      const x = from.x + ((to.x - from.x) * column) / (columns - 1);
      const y = from.y + ((to.y - from.y) * row) / (rows - 1);
      values[row * columns + column] = sourceOn_lx(source, surface, spread(projection, { x, y }), normal);
    }
  return values;
}

export interface MapWork {
  /** Works until a moment has come; true when the map is whole. */
  readonly work: (isLate: () => boolean) => boolean;
  /** The sum so far. */
  readonly grid: () => Grid;
}

/** Layers kept for sheets that are looked at now: a coarse and a fine one of each drawing. */
const MOST_SHEETS = 6;

export interface MapDesk {
  readonly start: (sources: readonly LightSource[], sheet: Sheet) => MapWork;
}

/** Keeps what was worked out for each lamp on each sheet. */
export function openMapDesk(): MapDesk {
  const sheets = new Map<string, Map<string, Float64Array>>();
  const layersOf = (sheet: Sheet) => {
    const name = sheetName(sheet);
    const layers = sheets.get(name) ?? new Map<string, Float64Array>();
    // The one used last stands last, and goes last.
    sheets.delete(name);
    sheets.set(name, layers);
    for (const old of sheets.keys()) if (sheets.size > MOST_SHEETS) sheets.delete(old);
    return layers;
  };
  return {
    start: (all, sheet) => {
      const sources = all.filter((source) => strengthOf(source) > 0);
      const layers = layersOf(sheet);
      const names = sources.map(nameOf);
      const strengths = sources.map(strengthOf);
      // A lamp that was dragged leaves a layer behind at every step.
      for (const old of layers.keys()) if (!names.includes(old)) layers.delete(old);
      let next = 0;
      return {
        work: (isLate) => {
          while (next < sources.length) {
            const name = names[next]!;
            const isKnown = layers.has(name);
            if (!isKnown) layers.set(name, layerOf(scaledSource(sources[next]!, 1 / strengths[next]!), sheet));
            next += 1;
            if (!isKnown && isLate()) break;
          }
          return next >= sources.length;
        },
        grid: () => {
          const values = new Float64Array(sheet.columns * sheet.rows);
          for (const [of, name] of names.entries()) {
            const layer = layers.get(name);
            const strength = strengths[of]!;
            if (layer) for (let i = 0; i < values.length; i += 1) values[i]! += strength * layer[i]!;
          }
          return { columns: sheet.columns, rows: sheet.rows, values };
        },
      };
    },
  };
}
