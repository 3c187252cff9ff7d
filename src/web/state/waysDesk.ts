/** Ways asked for by the screens: worked out one at a time in a worker, thrown away when the plan changes. */
import type { Shoot } from '../../document/schema.ts';
import type { Written } from '../../document/written.ts';
import type { LimitId, Plan, Way } from '../../plan/types.ts';
import { lampSetupOf } from '../../plan/ways/lampSetup.ts';
import { isDropped, type Called, type Caller } from '../workers/connect.ts';
import type { FindCalls, WorkCalls } from '../workers/calls.ts';
import type { Waiting } from './contract.ts';

interface Shown {
  readonly written: Written;
  readonly shoot: Shoot;
  readonly plan: Plan;
}

export interface WaysDesk {
  /** What the screens show from now on. */
  readonly settle: (shown: Shown) => void;
  /** Answers at once with what is known so far, and has the rest worked out. May be called while rendering. */
  readonly ask: (shotId: string, limit: LimitId) => Waiting;
  readonly close: () => void;
}

interface Entry {
  readonly plan: Plan;
  readonly waiting: Waiting;
}

/** While a person types the plan changes with every key; ways are worked out once the typing rests. */
const REST_ms = 120;

/** A search among the lamps takes seconds, and ending it takes a new worker: it begins once nothing changed for so long. */
const SEARCH_REST_ms = 600;

/** What was found and is not among the plan's own. */
function others(found: readonly Way[], own: readonly Way[]): readonly Way[] {
  const known = new Set(own.map(({ patch }) => JSON.stringify(patch)));
  return found.filter(({ patch }) => !known.has(JSON.stringify(patch)));
}

export function openWaysDesk({
  caller,
  finder,
  after,
  changed,
}: {
  readonly caller: Caller<WorkCalls>;
  /** Asked as well where light is short and comes from lamps. */
  readonly finder: Caller<FindCalls>;
  readonly after: (wait_ms: number, run: () => void) => () => void;
  readonly changed: () => void;
}): WaysDesk {
  const entries = new Map<string, Entry>();
  let shown: Shown | undefined;
  let queue: string[] = [];
  let running: { readonly key: string; readonly called: Called<unknown> } | undefined;
  let cancelStart: (() => void) | undefined;
  let searching: { readonly key: string; readonly end: () => void } | undefined;

  const set = (key: string, plan: Plan, waiting: Waiting) => {
    entries.set(key, { plan, waiting });
    changed();
  };

  const start = (wait_ms: number) => {
    if (running || cancelStart || queue.length === 0) return;
    cancelStart = after(wait_ms, () => {
      cancelStart = undefined;
      next();
    });
  };

  const next = () => {
    const key = queue.shift();
    const entry = key === undefined ? undefined : entries.get(key);
    if (key === undefined || !entry || !shown) return;
    const { plan, waiting } = entry;
    const { shotId, limit } = waiting;
    const isCurrent = () => entries.get(key)?.plan === plan && shown?.plan === plan;
    const called = caller.call('ways', { written: shown.written, shotId, limit }, ({ done, total }) => {
      if (isCurrent()) set(key, plan, { ...entries.get(key)!.waiting, done, total });
    });
    running = { key, called };
    called.answer
      .then(
        (ways) => {
          const { total } = entries.get(key)!.waiting;
          if (!isCurrent()) return;
          const done: Waiting = { shotId, limit, state: 'done', done: total, total, ways };
          const isSearched = limit === 'light' && lampSetupOf(shown!.shoot, shotId) !== undefined;
          set(key, plan, isSearched ? { ...done, search: 'working' } : done);
          if (isSearched) searchLater(key, plan, done);
        },
        (error: unknown) => {
          if (!isDropped(error) && isCurrent()) set(key, plan, { ...waiting, state: 'failed', ways: [] });
        },
      )
      .finally(() => {
        if (running?.called === called) running = undefined;
        start(0);
      });
  };

  const stopSearch = () => {
    searching?.end();
    searching = undefined;
  };

  /** Adds what a search among the lamps finds to the plan's own ways. One search at a time: the newest is looked at. */
  const searchLater = (key: string, plan: Plan, own: Waiting) => {
    // What was searched for another shot is begun anew when that one is looked at again.
    if (searching && searching.key !== key) entries.delete(searching.key);
    stopSearch();
    const isCurrent = () => entries.get(key)?.plan === plan && shown?.plan === plan;
    const begin = () => {
      if (!isCurrent()) return;
      const called = finder.call('lampWays', { written: shown!.written, shotId: own.shotId });
      searching = { key, end: called.cancel };
      called.answer.then(
        (found) => isCurrent() && set(key, plan, { ...own, ways: [...own.ways, ...others(found, own.ways)] }),
        (error: unknown) => !isDropped(error) && isCurrent() && set(key, plan, { ...own, search: 'failed' }),
      );
    };
    searching = { key, end: after(SEARCH_REST_ms, begin) };
  };

  const stop = () => {
    cancelStart?.();
    cancelStart = undefined;
    stopSearch();
    queue = [];
    const was = running;
    running = undefined;
    was?.called.cancel();
  };

  return {
    settle: (next) => {
      if (shown?.plan === next.plan) return;
      shown = next;
      stop();
    },
    ask: (shotId, limit) => {
      const key = `${shotId} ${limit}`;
      const known = entries.get(key);
      if (known && known.plan === shown?.plan) return known.waiting;
      const { ways = [] } = known?.waiting ?? {};
      const waiting: Waiting = { shotId, limit, state: 'working', done: 0, total: 0, ways };
      if (!shown) return waiting;
      entries.set(key, { plan: shown.plan, waiting });
      queue.push(key);
      start(known ? REST_ms : 0);
      return waiting;
    },
    close: () => {
      stop();
      entries.clear();
    },
  };
}
