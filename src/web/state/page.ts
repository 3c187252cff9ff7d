/** The state of this page: the server it came from, its one worker, and a store for each shoot that is on the screen. */
import { explain } from '../../plan/explain.ts';
import { connectWorker, type Port } from '../workers/connect.ts';
import type { WorkCalls } from '../workers/calls.ts';
import { after, clientName, makeId, openStorage } from './browser.ts';
import { deriveShoot } from './derive.ts';
import { keepIn } from './keep.ts';
import { personNow, subscribePerson } from './person.ts';
import { openPresence, type PresenceDesk } from './presence.ts';
import { pageServer } from './server.ts';
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

function openStore(shootId: string, presence: PresenceDesk): ShootStore {
  return openShootStore({
    shootId,
    server,
    keep,
    client,
    derive: deriveShoot,
    explain: ({ shoot }, shotId, name) => explain(shoot, shotId, name),
    openWays: (changed) => openWaysDesk({ caller: worker, after, changed }),
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
