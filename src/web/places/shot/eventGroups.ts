/** The event library in the order a crew looks through it, and found by words of the trade. */
import { EVENTS, eventNamed } from '../../../laws/events/catalogue.ts';
import type { FilmedEvent } from '../../../laws/events/event.ts';

export interface EventGroup {
  readonly title: string;
  readonly events: readonly FilmedEvent[];
}

const GROUPS: readonly { readonly title: string; readonly ids: readonly string[] }[] = [
  { title: 'Falls', ids: ['fall', 'fall-through-air', 'fruit-into-tank'] },
  { title: 'Drops and splashes', ids: ['drop-impact', 'crown', 'cavity-and-jet'] },
  { title: 'Pours, bubbles and foam', ids: ['pour', 'viscous-coiling', 'egg', 'bubble-rise', 'carbonation', 'foam'] },
  { title: 'Bursts', ids: ['bubble-burst', 'film-burst', 'balloon-burst', 'water-balloon', 'popcorn', 'powder-burst', 'cork'] },
  { title: 'Breaking glass', ids: ['glass-shards', 'glass-crack'] },
  { title: 'Fire', ids: ['match-strike', 'flame'] },
  { title: 'Thrown by a rig', ids: ['spring-launch', 'air-launch', 'projectile'] },
  { title: 'Camera moves', ids: ['rail-travel', 'arc-travel'] },
]; // prettier-ignore

/** Every event of the library, once; one that no group names stands at the end. */
export const EVENT_GROUPS: readonly EventGroup[] = [
  ...GROUPS.map(({ title, ids }) => ({ title, events: ids.flatMap((id) => eventNamed(id) ?? []) })),
  { title: 'Others', events: EVENTS.filter(({ id }) => !GROUPS.some(({ ids }) => ids.includes(id))) },
].filter(({ events }) => events.length > 0);

const textOf = ({ id, title, says, words }: FilmedEvent, group: string): string =>
  [id, title, says, group, ...words].join('\n').toLowerCase();

/** The groups with the events that speak of every word of a search; all of them for an empty one. */
export function findEvents(search: string): readonly EventGroup[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  return EVENT_GROUPS.map(({ title, events }) => ({
    title,
    events: events.filter((event) => words.every((word) => textOf(event, title).includes(word))),
  })).filter(({ events }) => events.length > 0);
}
