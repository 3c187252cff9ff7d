/** The worker that finds light: apart from the page's other worker, as its solver is large and may take its time. */
import type { ToWorker } from '../../base/worker.ts';
import { findLight } from '../../solve/findLight.ts';
import { lampWays } from '../../solve/lampWays.ts';
import type { FindCalls } from './calls.ts';
import { createDispatcher } from './dispatch.ts';
import { loadHighs } from './highs.ts';
import { openKeptFiles } from './keptFiles.ts';

const files = openKeptFiles();

const receive = createDispatcher<FindCalls>({
  handlers: {
    light: ({ written, setupId, wish }, { report, isStale }) =>
      findLight({
        shoot: files.read(written),
        written,
        setupId,
        wish,
        loadHighs,
        onProgress: (done, total) => report({ done, total, unit: 'steps' }),
        isCancelled: isStale,
      }),
    lampWays: ({ written, shotId }, { report, isStale }) =>
      lampWays({
        shoot: files.read(written),
        written,
        shotId,
        loadHighs,
        onProgress: (done, total) => report({ done, total, unit: 'steps' }),
        isCancelled: isStale,
      }),
  },
  post: (message) => self.postMessage(message),
  later: (run) => void setTimeout(run, 0),
  keep: files.keep,
});

self.addEventListener('message', ({ data }: MessageEvent<ToWorker>) => receive(data));
