/** The page's worker: only dispatches. */
import type { ToWorker } from '../../base/worker.ts';
import { waysFor } from '../../plan/ways/ways.ts';
import type { WorkCalls } from './calls.ts';
import { createDispatcher } from './dispatch.ts';
import { openKeptFiles } from './keptFiles.ts';

const files = openKeptFiles();

const receive = createDispatcher<WorkCalls>({
  handlers: {
    ways: ({ written, shotId, limit }, { report, isStale }) =>
      waysFor(files.read(written), written, shotId, limit, {
        onProgress: (done, total) => report({ done, total, unit: 'changes' }),
        isCancelled: isStale,
      }),
  },
  post: (message) => self.postMessage(message),
  later: (run) => void setTimeout(run, 0),
  keep: files.keep,
});

self.addEventListener('message', ({ data }: MessageEvent<ToWorker>) => receive(data));
