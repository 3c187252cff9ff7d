/** The worker that finds light: apart from the page's other worker, as its solver is large and may take its time. */
import type { ToWorker } from '../../base/worker.ts';
import { readShoot } from '../../document/read.ts';
import { findLight } from '../../solve/findLight.ts';
import type { FindCalls } from './calls.ts';
import { createDispatcher } from './dispatch.ts';
import { loadHighs } from './highs.ts';

const receive = createDispatcher<FindCalls>({
  handlers: {
    light: ({ written, setupId, wish }, { report, isStale }) =>
      findLight({
        shoot: readShoot(written).shoot,
        written,
        setupId,
        wish,
        loadHighs,
        onProgress: (done, total) => report({ done, total, unit: 'steps' }),
        isCancelled: isStale,
      }),
  },
  post: (message) => self.postMessage(message),
  later: (run) => void setTimeout(run, 0),
});

self.addEventListener('message', ({ data }: MessageEvent<ToWorker>) => receive(data));
