import { useEffect, useState } from 'react';
import type { DayPlan } from '../../plan/day/types.ts';
import type { Plan } from '../../plan/types.ts';
import { isDropped } from '../workers/connect.ts';
import type { OpenShoot } from './contract.ts';
import { dayWorker } from './page.ts';

export interface DayAsked {
  /** The newest that is known: of the plan on the screen, or of one before it while that is worked out. */
  readonly day?: DayPlan;
  /** It is of an earlier plan, and the day is being drawn anew. */
  readonly isUpdating: boolean;
  readonly failed?: string;
}

/** While a person types the plan changes with every key; the day is drawn once the typing rests. */
const REST_ms = 150;
/** Few days first, for an answer that follows an edit; then many, for one that hardly depends on the draw. */
const DAYS = [200, 2000] as const;

interface Known {
  readonly plan: Plan;
  readonly day: DayPlan;
}

const newest = new Map<string, Known>();

/** The day of the open shoot, drawn in a worker whenever the plan changes; the last result stays until the next. */
export function useDay({ id, plan, written }: Pick<OpenShoot, 'id' | 'plan' | 'written'>): DayAsked {
  const [known, setKnown] = useState(() => newest.get(id));
  const [failed, setFailed] = useState<string>();
  useEffect(() => {
    let cancel: (() => void) | undefined;
    const ask = ([dayCount, ...more]: readonly number[]): void => {
      if (dayCount === undefined) return;
      const called = dayWorker.call('day', { written, dayCount });
      cancel = called.cancel;
      called.answer.then(
        (day) => {
          newest.set(id, { plan, day });
          setKnown({ plan, day });
          setFailed(undefined);
          ask(more);
        },
        (error: unknown) => {
          if (!isDropped(error)) setFailed(error instanceof Error ? error.message : String(error));
        },
      );
    };
    const before = newest.get(id);
    const counts = before?.plan === plan ? DAYS.filter((count) => count > before.day.dayCount) : DAYS;
    const rest = setTimeout(() => ask(counts), before ? REST_ms : 0);
    return () => {
      clearTimeout(rest);
      cancel?.();
    };
  }, [id, plan, written]);
  return {
    ...(known ? { day: known.day } : {}),
    isUpdating: known?.plan !== plan,
    ...(failed === undefined ? {} : { failed }),
  };
}
