import { useEffect, useState } from 'react';
import type { ClipJob } from '../../../record/footage.ts';
import { seenNext, timeLeft_s, type Seen } from './timeLeft.ts';

/** Seconds that work on a clip goes on, by how fast it went on while this page watched; undefined until that is known. */
export function useTimeLeft(job: ClipJob | undefined): number | undefined {
  const done = job?.state === 'running' ? job.done : undefined;
  const [seen, setSeen] = useState<readonly Seen[]>([]);
  useEffect(() => {
    setSeen((before) => (done === undefined ? [] : seenNext(before, { at_s: performance.now() / 1000, done })));
  }, [done]);
  return timeLeft_s(seen, job?.total);
}
