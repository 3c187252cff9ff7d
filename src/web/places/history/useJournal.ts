import { useCallback, useEffect, useRef, useState } from 'react';
import type { JournalRow } from '../../../api/replies.ts';
import type { Written } from '../../../document/written.ts';
import { server } from '../../state/page.ts';
import { tell, type Told } from './journal.ts';

export interface Journal {
  /** The newest first. */
  readonly told: readonly Told[];
  /** Whether rows older than these are to be had. */
  readonly hasOlder: boolean;
  readonly state: 'loading' | 'ready' | 'failed';
  readonly older: () => void;
  readonly again: () => void;
}

const PAGE_COUNT = 50;

interface Held {
  readonly told: readonly Told[];
  /** The shoot after the newest of them. */
  readonly after: Written;
  /** The number before the oldest. */
  readonly from: number;
  readonly upTo: number;
}

async function pageBefore(shootId: string, before: number | undefined): Promise<Held> {
  const { revision, rows } = await server.history(shootId, { before, limit: PAGE_COUNT });
  const upTo = before === undefined ? revision : before - 1;
  const from = (rows.at(-1)?.number ?? upTo + 1) - 1;
  const { written } = await server.at(shootId, from);
  const { told, after } = tell(written, rows.toReversed());
  return { told: told.toReversed(), after, from, upTo };
}

async function withNewer(shootId: string, held: Held, revision: number): Promise<Held> {
  let now = held;
  while (now.upTo < revision) {
    const { rows } = await server.journal(shootId, now.upTo);
    const last: JournalRow | undefined = rows.at(-1);
    if (!last) return now;
    const { told, after } = tell(now.after, rows);
    now = { ...now, told: [...told.toReversed(), ...now.told], after, upTo: last.number };
  }
  return now;
}

/** The journal of a shoot, a page at a time from its newest row, and followed as new rows come. */
export function useJournal(shootId: string, revision: number): Journal {
  const [held, setHeld] = useState<Held>();
  const [state, setState] = useState<Journal['state']>('loading');
  const newest = useRef(held);
  /** One request after the other, so that rows come in order. */
  const queue = useRef<Promise<unknown>>(Promise.resolve());

  const run = useCallback((work: (now: Held | undefined) => Promise<Held>) => {
    queue.current = queue.current.then(async () => {
      try {
        newest.current = await work(newest.current);
        setHeld(newest.current);
        setState('ready');
      } catch {
        setState('failed');
      }
    });
  }, []);
  const follow = useCallback(
    () => run(async (now) => withNewer(shootId, now ?? (await pageBefore(shootId, undefined)), revision)),
    [run, shootId, revision],
  );
  useEffect(follow, [follow]);

  return {
    told: held?.told ?? [],
    hasOlder: (held?.from ?? 0) > 0,
    state,
    again: follow,
    older: () =>
      run(async (now) => {
        if (!now || now.from === 0) return now ?? pageBefore(shootId, undefined);
        const page = await pageBefore(shootId, now.from + 1);
        return { ...now, told: [...now.told, ...page.told], from: page.from };
      }),
  };
}
