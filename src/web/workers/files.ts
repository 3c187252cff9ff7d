/** The worker that reads files of lamps, as a large one takes seconds: only dispatches. */
import type { ToWorker } from '../../base/worker.ts';
import { readPhotometry } from '../../laws/light/photometry/read.ts';
import { readLampFile } from '../../plan/readLampFile.ts';
import type { FileCalls } from './calls.ts';
import { createDispatcher } from './dispatch.ts';

const receive = createDispatcher<FileCalls>({
  handlers: {
    lampFile: ({ file, bytes }) => readLampFile(file, bytes),
    photometry: ({ bytes }) => readPhotometry(bytes),
  },
  post: (message) => self.postMessage(message),
  later: (run) => void setTimeout(run, 0),
});

self.addEventListener('message', ({ data }: MessageEvent<ToWorker>) => receive(data));
