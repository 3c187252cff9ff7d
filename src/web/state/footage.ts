/**
 * The footage of one shoot as this page has it: what the server last said, with what was done here and not sent yet put
 * in. What was done lies in the browser until the server has it, and is sent in order, each under an id of its own.
 */
import type { FootageClient } from '../../api/footageClient.ts';
import { Fault } from '../../base/fault.ts';
import { clipAfter, type ClipEntry, type FootageEvent, type FootageState } from '../../record/footage.ts';
import type { FootageKeep, UnsentHappening } from './keepFootage.ts';

export interface FootageNow {
  /** Absent until it was first read. */
  readonly state?: FootageState;
  /** Why nothing newer is told; what was told before stays. */
  readonly failed?: string;
  /** What the server would not do last, until that is put away. */
  readonly refused?: string;
  /** Things done here that the server has not heard of. */
  readonly unsentCount: number;
}

export interface FootageStore {
  readonly subscribe: (changed: () => void) => () => void;
  readonly current: () => FootageNow;
  readonly happen: (event: FootageEvent) => void;
  readonly measure: (clipId: string, isAnew: boolean) => void;
  readonly stop: (clipId: string) => void;
  readonly makeProxy: (clipId: string) => void;
  readonly dismiss: () => void;
  /** Tries again what could not be sent or read. */
  readonly wake: () => void;
}

export interface FootageNeeds {
  readonly shootId: string;
  readonly client: FootageClient;
  readonly keep: FootageKeep;
  /** Tells every state until the function returned is called. */
  readonly listen: (told: { readonly onState: (state: FootageState) => void; readonly onLive: (isLive: boolean) => void }) => () => void;
  readonly makeId: () => string;
  /** ISO 8601, UTC. */
  readonly now: () => string;
  readonly after: (wait_ms: number, run: () => void) => () => void;
} // prettier-ignore

const RETRY_ms = 3000;
/** Going from place to place lets go for a moment: the stream stays open that long. */
const REST_ms = 5000;

const AWAY = 'The server cannot be reached. What it last told is shown; it is tried again by itself.';

const isAway = (error: unknown): boolean => !(error instanceof Fault) || error.retry;
const sayFault = (error: unknown): string => (error instanceof Fault ? `${error.what}. ${error.mend}` : AWAY);

/** A clip that the server has not heard of yet. */
const newEntry = (entry: ClipEntry): ClipEntry => ({
  ...entry,
  name: entry.path.slice(entry.path.lastIndexOf('/') + 1),
  isHere: true,
  isUnsent: true,
  proxy: { state: 'none' },
});

/** What the server said with things put in that it has not heard of. */
export function withUnsent(state: FootageState, unsent: readonly UnsentHappening[]): FootageState {
  if (unsent.length === 0) return state;
  const clips = new Map(state.clips.map((clip) => [clip.id, clip]));
  for (const { event, at } of unsent) {
    const before = clips.get(event.clipId);
    // What is known of a clip besides its record goes through as it is.
    const next = clipAfter(before, { event, at }) as ClipEntry | undefined;
    if (next) clips.set(next.id, before ? next : newEntry(next));
  }
  return { ...state, clips: [...clips.values()] };
}

export function openFootage({ shootId, client, keep, listen, makeId, now, after }: FootageNeeds): FootageStore {
  const listeners = new Set<() => void>();
  let told: FootageState | undefined;
  let failed: string | undefined;
  let refused: string | undefined;
  let unsent = keep.unsent(shootId);
  let isSending = false;
  let shown: FootageNow = { unsentCount: unsent.length };
  let end: (() => void) | undefined;
  let cancelRest: (() => void) | undefined;
  let cancelRetry: (() => void) | undefined;

  const change = () => {
    shown = {
      ...(told && { state: withUnsent(told, unsent) }),
      ...(failed !== undefined && { failed }),
      ...(refused !== undefined && { refused }),
      unsentCount: unsent.length,
    };
    for (const listener of [...listeners]) listener();
  };
  const take = (state: FootageState) => {
    told = state;
    failed = undefined;
    change();
  };
  const look = () => {
    client.look(shootId).then(take, (error: unknown) => {
      failed = isAway(error) ? AWAY : sayFault(error);
      change();
    });
  };

  const settle = ({ eventId }: UnsentHappening) => {
    keep.drop(shootId, eventId);
    unsent = unsent.filter((item) => item.eventId !== eventId);
  };
  const send = () => {
    const [first] = unsent;
    if (!first || isSending) return;
    isSending = true;
    cancelRetry?.();
    client.happen(shootId, { eventId: first.eventId, event: first.event }).then(
      (state) => {
        isSending = false;
        settle(first);
        take(state);
        send();
      },
      (error: unknown) => {
        isSending = false;
        if (isAway(error)) {
          failed = AWAY;
          cancelRetry = after(RETRY_ms, send);
        } else {
          settle(first);
          refused = sayFault(error);
        }
        change();
        if (!isAway(error)) send();
      },
    );
  };
  const ask = (answer: Promise<FootageState>) => {
    answer.then(take, (error: unknown) => {
      refused = isAway(error) ? 'The server cannot be reached: that was not done. Try again.' : sayFault(error);
      change();
    });
  };

  const begin = () => {
    cancelRest?.();
    cancelRest = undefined;
    if (end) return;
    let wasAway = false;
    end = listen({
      onState: take,
      onLive: (isLive) => {
        if (isLive && wasAway) look();
        wasAway = !isLive;
        if (isLive) send();
        else if (failed === undefined) {
          failed = AWAY;
          change();
        }
      },
    });
    look();
    send();
  };
  const rest = () => {
    cancelRest = after(REST_ms, () => {
      end?.();
      end = undefined;
    });
  };

  return {
    subscribe: (listener) => {
      listeners.add(listener);
      begin();
      return () => {
        listeners.delete(listener);
        if (listeners.size === 0) rest();
      };
    },
    current: () => shown,
    happen: (event) => {
      const item = { eventId: makeId(), event, at: now(), sequence: (unsent.at(-1)?.sequence ?? 0) + 1 };
      keep.put(shootId, item);
      unsent = [...unsent, item];
      change();
      send();
    },
    measure: (clipId, isAnew) => ask(client.measure(shootId, clipId, { isAnew })),
    stop: (clipId) => ask(client.stop(shootId, clipId)),
    makeProxy: (clipId) => ask(client.makeProxy(shootId, clipId)),
    dismiss: () => {
      refused = undefined;
      change();
    },
    wake: () => {
      if (!end) return;
      look();
      send();
    },
  };
}
