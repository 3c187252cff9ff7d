/** Ways asked for by the screens: worked out one at a time in a worker, thrown away when the plan changes. */
import type { LimitId, Plan } from '../../plan/types.ts';
import type { Written } from '../../document/written.ts';
import { isDropped, type Called, type Caller } from '../workers/connect.ts';
import type { WorkCalls } from '../workers/calls.ts';
import type { Waiting } from './contract.ts';

interface Shown {
  readonly written: Written;
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

export function openWaysDesk({
  caller,
  after,
  changed,
}: {
  readonly caller: Caller<WorkCalls>;
  readonly after: (wait_ms: number, run: () => void) => () => void;
  readonly changed: () => void;
}): WaysDesk {
  const entries = new Map<string, Entry>();
  let shown: Shown | undefined;
  let queue: string[] = [];
  let running: { readonly key: string; readonly called: Called<unknown> } | undefined;
  let cancelStart: (() => void) | undefined;

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
          if (isCurrent()) set(key, plan, { shotId, limit, state: 'done', done: total, total, ways });
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

  const stop = () => {
    cancelStart?.();
    cancelStart = undefined;
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
