/** The map of light in sentences, for whoever hears it and for print. */
import type { UnitSystem } from '../../../base/quantity.ts';
import { extremesOf, inStops, shareAbove } from './bands.ts';
import type { Surface } from './lightMap.ts';
import { bothLights, placeSaid, stopsSaid } from './lightWords.ts';
import { spread, type Flat, type Projection } from './projection.ts';
import type { DrawnMap } from './useLightMap.ts';
import type { Reference } from './lightContext.ts';

export const SURFACES: Readonly<Record<Surface, { readonly name: string; readonly says: string }>> = {
  table: { name: 'the table', says: 'Light on a level surface through the subject, facing up' },
  picture: { name: 'the picture plane', says: 'Light across the frame and beyond, on surfaces that face' },
  cards: {
    name: 'cards to each lamp',
    says: 'Light on cards at the level of the subject, one turned to each lamp, added up',
  },
};

export const saySurface = (surface: Surface, facingSaid: string): string =>
  surface === 'picture' ? `${SURFACES[surface].says} ${facingSaid}` : SURFACES[surface].says;

export function spotSaid(projection: Projection, spot: Flat, system: UnitSystem): string {
  // To half a centimetre: nobody holds a meter more exactly.
  const [right_m, away_m, up_m] = spread(projection, spot).map((value) => Math.round(value * 200) / 200) as [
    number,
    number,
    number,
  ];
  return placeSaid({ right_m, away_m, up_m }, system);
}

/** "41 klx, 3810 fc, +0.4 stops". */
export function readingSaid(illuminance_lx: number, reference: Reference | undefined): string {
  const stops = reference && illuminance_lx > 0 ? `, ${stopsSaid(Math.log2(illuminance_lx / reference.value_lx))}` : '';
  return `${bothLights(illuminance_lx)}${stops}`;
}

export interface MapSay {
  readonly drawn: DrawnMap;
  readonly reference: Reference;
  readonly system: UnitSystem;
  readonly facingSaid: string;
}

export function sayMap({ drawn: { sheet, grid }, reference, system, facingSaid }: MapSay): string {
  const { columns, rows, from, to, projection, surface } = sheet;
  const { mostAt, most } = extremesOf(grid);
  if (!(most > 0)) return `${saySurface(surface, facingSaid)}: no lamp lights it.`;
  const spot = {
    x: from.x + ((to.x - from.x) * (mostAt % columns)) / (columns - 1),
    y: from.y + ((to.y - from.y) * Math.floor(mostAt / columns)) / (rows - 1),
  };
  const share = shareAbove(inStops(grid, reference.value_lx), 0);
  const held = reference.isNeed ? 'The need is met' : 'It is at least as bright as at the subject';
  const part = share === 0 ? (reference.isNeed ? 'The need is met nowhere' : 'It is nowhere brighter than at the subject') : `${held} over ${Math.max(1, Math.round(share * 100))} % of it`;
  return `${saySurface(surface, facingSaid)}. ${part}. Brightest ${spotSaid(projection, spot, system)}: ${readingSaid(most, reference)}.`;
} // prettier-ignore
