/**
 * Who has a shoot open and where they are, kept in memory only. Somebody is here from the moment they say so until the
 * last of their live streams closes, or until they have said nothing for a minute.
 */
import type { Presence, Present } from '../api/replies.ts';
import { Fault } from '../base/fault.ts';
import type { Clock } from './clock.ts';

const SILENCE_ms = 60_000;

/** Beyond these somebody is not moving about but flooding. */
const BURST_COUNT = 20;
const REFILL_per_s = 5;

/** People in one shoot; a set has fewer. */
const MOST_PEOPLE = 200;

interface Person {
  readonly present: Present;
  readonly heard_ms: number;
  readonly tokenCount: number;
}

interface Room {
  readonly people: Map<string, Person>;
  /** Live streams by client. */
  readonly streams: Map<string, number>;
  readonly watchers: Set<() => void>;
  /** Counts up with every change that others should see. */
  version: number;
}

export interface PresenceDesk {
  /** Says where somebody is. Throws Fault `presence.too-often` or `presence.full`. */
  readonly tell: (shootId: string, who: { readonly who: string; readonly name: string | undefined }, presence: Presence) => readonly Present[];
  /** Who is here; the version differs whenever the list does. */
  readonly look: (shootId: string) => { readonly version: number; readonly present: readonly Present[] };
  /** How long until somebody counts as gone if all stay silent; undefined where nobody is here. */
  readonly endsIn_ms: (shootId: string) => number | undefined;
  /** A live stream opens; returns what to call when it closes. */
  readonly join: (shootId: string, stream: { readonly client: string | undefined; readonly changed: () => void }) => () => void;
} // prettier-ignore

function tooOften(shootId: string): Fault {
  return new Fault({
    code: 'presence.too-often',
    what: `This client says where it is more than ${REFILL_per_s} times a second`,
    where: shootId,
    mend: 'Wait a second, then say where you are now.',
    retry: true,
  });
}

function full(shootId: string): Fault {
  return new Fault({
    code: 'presence.full',
    what: `${MOST_PEOPLE} people are in this shoot already`,
    where: shootId,
    mend: 'Work on: edits are kept all the same; only who is where is not told for you.',
    retry: true,
  });
}

const isSamePlace = (a: Present, b: Present) => a.at === b.at && a.place === b.place && a.name === b.name;

/** `elapsed_ms` counts up evenly, whatever the time of day is set to. */
export function presenceDesk({ clock, elapsed_ms = () => performance.now() }: { readonly clock: Clock; readonly elapsed_ms?: () => number }): PresenceDesk {
  const rooms = new Map<string, Room>();

  const roomOf = (shootId: string): Room => {
    const known = rooms.get(shootId);
    if (known) return known;
    const room: Room = { people: new Map(), streams: new Map(), watchers: new Set(), version: 0 };
    rooms.set(shootId, room);
    return room;
  };

  const changed = (room: Room) => {
    room.version += 1;
    for (const wake of [...room.watchers]) wake();
  };

  /** Lets those go who fell silent, and a room that nobody is in or looks into. */
  const tidy = (shootId: string, room: Room) => {
    const silent = [...room.people].filter(([, { heard_ms }]) => elapsed_ms() - heard_ms >= SILENCE_ms);
    for (const [who] of silent) room.people.delete(who);
    if (silent.length > 0) changed(room);
    if (room.people.size === 0 && room.watchers.size === 0) rooms.delete(shootId);
  };

  const presentIn = (room: Room) => [...room.people.values()].map(({ present }) => present);

  return {
    tell: (shootId, { who, name }, { at, place }) => {
      const room = roomOf(shootId);
      tidy(shootId, room);
      rooms.set(shootId, room);
      const before = room.people.get(who);
      if (!before && room.people.size >= MOST_PEOPLE) throw full(shootId);
      const now_ms = elapsed_ms();
      const refilled = before ? before.tokenCount + ((now_ms - before.heard_ms) / 1000) * REFILL_per_s : BURST_COUNT;
      const tokenCount = Math.min(BURST_COUNT, refilled) - 1;
      if (tokenCount < 0) throw tooOften(shootId);
      const present: Present = {
        who,
        ...(name === undefined ? {} : { name }),
        at,
        ...(place === undefined ? {} : { place }),
        since: before?.present.since ?? clock.now().toISOString(),
      };
      room.people.set(who, { present, heard_ms: now_ms, tokenCount });
      if (!before || !isSamePlace(before.present, present)) changed(room);
      return presentIn(room);
    },

    look: (shootId) => {
      const room = rooms.get(shootId);
      if (!room) return { version: 0, present: [] };
      tidy(shootId, room);
      return { version: room.version, present: presentIn(room) };
    },

    endsIn_ms: (shootId) => {
      const heard = [...(rooms.get(shootId)?.people.values() ?? [])].map(({ heard_ms }) => heard_ms);
      return heard.length === 0 ? undefined : Math.max(0, Math.min(...heard) + SILENCE_ms - elapsed_ms());
    },

    join: (shootId, { client, changed: wake }) => {
      const room = roomOf(shootId);
      room.watchers.add(wake);
      if (client !== undefined) room.streams.set(client, (room.streams.get(client) ?? 0) + 1);
      return () => {
        if (!room.watchers.delete(wake)) return;
        const left = client === undefined ? 0 : (room.streams.get(client) ?? 1) - 1;
        if (client !== undefined && left > 0) room.streams.set(client, left);
        else if (client !== undefined) {
          room.streams.delete(client);
          if (room.people.delete(client)) changed(room);
        }
        tidy(shootId, room);
      };
    },
  };
} // prettier-ignore
