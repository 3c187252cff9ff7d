/** The state of this page: its server and workers, the files it has read, and a store for each shoot on the screen. */
import { explain } from '../../plan/explain.ts';
import { connectWorker, type Port } from '../workers/connect.ts';
import type { DayCalls, FileCalls, FindCalls, WorkCalls } from '../workers/calls.ts';
import { after, clientName, makeId, openStorage } from './browser.ts';
import { deriveShoot } from './derive.ts';
import { keepIn } from './keep.ts';
import { openLampShelf } from './lampShelf.ts';
import { personNow, subscribePerson } from './person.ts';
import { openPresence, type PresenceDesk } from './presence.ts';
import { fetchFile, pageServer } from './server.ts';
import { openShootStore, type ShootStore } from './shootStore.ts';
import { openWaysDesk } from './waysDesk.ts';

const storage = openStorage();
/** This browser's name, as the server knows it. */
export const client = clientName(storage);
const keep = keepIn(storage);

export const server = pageServer(client, () => personNow().name);

const worker = connectWorker<WorkCalls>(
  () => new Worker(new URL('../workers/work.ts', import.meta.url), { type: 'module' }) as Port,
);

/** Finds light. Nothing can interrupt its solver, so that stopping it ends the worker. */
export const finder = connectWorker<FindCalls>(
  () => new Worker(new URL('../workers/find.ts', import.meta.url), { type: 'module' }) as Port,
  { endsWorker: true },
);

/** Reads files of lamps. */
export const fileReader = connectWorker<FileCalls>(
  () => new Worker(new URL('../workers/files.ts', import.meta.url), { type: 'module' }) as Port,
);

/** Draws days. */
export const dayWorker = connectWorker<DayCalls>(
  () => new Worker(new URL('../workers/day.ts', import.meta.url), { type: 'module' }) as Port,
);

/** Files of lamps that this page has read. */
export const lampShelf = openLampShelf({
  fetchBytes: fetchFile,
  read: (file, bytes) => fileReader.call('lampFile', { file, bytes }).answer,
  keep: (name, content) => {
    worker.keep(name, content);
    finder.keep(name, content);
    dayWorker.keep(name, content);
  },
  after,
});

function openStore(shootId: string, presence: PresenceDesk): ShootStore {
  return openShootStore({
    shootId,
    server,
    keep,
    client,
    derive: deriveShoot,
    explain: ({ shoot }, shotId, name) => explain(shoot, shotId, name),
    openFiles: (changed) => lampShelf.open(shootId, changed),
    openWays: (changed) => openWaysDesk({ caller: worker, finder, after, changed }),
    makeId,
    now: () => Date.now(),
    after,
    presence,
  });
}

interface Held {
  readonly store: ShootStore;
  readonly presence: PresenceDesk;
  userCount: number;
}

const held = new Map<string, Held>();

/** A store left alone is closed a little later: going from place to place lets go of it for a moment. */
const CLOSE_ms = 5000;

function hold(shootId: string): Held {
  let found = held.get(shootId);
  if (found) return found;
  const presence = openPresence({ client, tell: (where) => server.present(shootId, where), after });
  found = { store: openStore(shootId, presence), presence, userCount: 0 };
  held.set(shootId, found);
  return found;
}

/** The store of a shoot, opened at first use and shared by all of the page. */
export function shootStore(shootId: string): ShootStore {
  return hold(shootId).store;
}

/** Who else has a shoot open. */
export function shootPresence(shootId: string): PresenceDesk {
  return hold(shootId).presence;
}

/** Keeps a store open until the function returned is called. */
export function retainStore(shootId: string): () => void {
  const it = hold(shootId);
  it.userCount += 1;
  return () => {
    it.userCount -= 1;
    setTimeout(() => {
      if (it.userCount > 0 || held.get(shootId) !== it) return;
      held.delete(shootId);
      it.store.close();
      it.presence.close();
    }, CLOSE_ms);
  };
}

const each = (act: (store: ShootStore) => void) => {
  for (const { store } of held.values()) act(store);
};

subscribePerson(() => {
  for (const { presence } of held.values()) presence.again();
});
window.addEventListener('online', () => each((store) => store.wake()));
window.addEventListener('pagehide', () => each((store) => store.leave()));
document.addEventListener('visibilitychange', () => {
  if (document.visibilityState === 'hidden') each((store) => store.leave());
});
