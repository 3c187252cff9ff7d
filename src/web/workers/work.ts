/** The page's worker: only dispatches. */
import type { ToWorker } from '../../base/worker.ts';
import { readShoot } from '../../document/read.ts';
import { waysFor } from '../../plan/ways/ways.ts';
import type { WorkCalls } from './calls.ts';
import { createDispatcher } from './dispatch.ts';

const receive = createDispatcher<WorkCalls>({
  handlers: {
    ways: ({ written, shotId, limit }, { report, isStale }) =>
      waysFor(readShoot(written).shoot, written, shotId, limit, {
        onProgress: (done, total) => report({ done, total, unit: 'changes' }),
        isCancelled: isStale,
      }),
  },
  post: (message) => self.postMessage(message),
  later: (run) => void setTimeout(run, 0),
});

self.addEventListener('message', ({ data }: MessageEvent<ToWorker>) => receive(data));
