/** Who else has the shoot open: where they are, and telling them where one is oneself. */
import type { Presence, PresenceReply, Present } from '../../api/replies.ts';

export interface PresenceDesk {
  readonly subscribe: (changed: () => void) => () => void;
  /** Everybody but this browser; the same value until something changes. */
  readonly others: () => readonly Present[];
  /** Says where one is; told a moment later, once for many moves. */
  readonly here: (where: Presence) => void;
  /** Says it again, such as under another name. */
  readonly again: () => void;
  /** Everybody who is here, as the server tells it. */
  readonly onPresent: (present: readonly Present[]) => void;
  /** Whether the server tells anything: while it does not, nobody knows who is here. */
  readonly onLive: (isLive: boolean) => void;
  readonly close: () => void;
}

export interface PresenceNeeds {
  /** This browser's name, as the server knows it. */
  readonly client: string;
  readonly tell: (where: Presence) => Promise<PresenceReply>;
  readonly after: (wait_ms: number, run: () => void) => () => void;
}

/** Somebody who goes through fields quickly is told of once they stay. */
const PAUSE_ms = 350;

/** The server takes whoever says nothing for a minute to be gone. */
const BEAT_ms = 25_000;

const NOBODY: readonly Present[] = [];

export function openPresence({ client, tell, after }: PresenceNeeds): PresenceDesk {
  const listeners = new Set<() => void>();
  let others = NOBODY;
  let where: Presence | undefined;
  let isLive = false;
  let isClosed = false;
  let cancelNext: (() => void) | undefined;

  const setOthers = (next: readonly Present[]) => {
    if (JSON.stringify(next) === JSON.stringify(others)) return;
    others = next;
    for (const listener of [...listeners]) listener();
  };

  const tellIn = (wait_ms: number) => {
    cancelNext?.();
    cancelNext = after(wait_ms, () => {
      cancelNext = undefined;
      if (isClosed || !isLive || !where) return;
      // Not being told of is no harm to anything that is edited: the next beat says it again.
      tell(where).catch(() => undefined);
      tellIn(BEAT_ms);
    });
  };

  return {
    subscribe: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    others: () => others,
    here: (next) => {
      if (where && where.at === next.at && where.place === next.place) return;
      where = next;
      if (isLive) tellIn(PAUSE_ms);
    },
    again: () => {
      if (isLive) tellIn(0);
    },
    onPresent: (present) => setOthers(present.filter(({ who }) => who !== client)),
    onLive: (next) => {
      if (next === isLive) return;
      isLive = next;
      if (isLive) tellIn(0);
      else setOthers(NOBODY);
    },
    close: () => {
      isClosed = true;
      cancelNext?.();
      listeners.clear();
    },
  };
}
