/** The worker that reads light records and works out charts of flicker: only dispatches. */
import type { ToWorker } from '../../base/worker.ts';
import { flickerChart } from '../../plan/flickerChart.ts';
import { readLightRecord } from '../places/kit/lightRecord.ts';
import type { FlickerCalls } from './calls.ts';
import { createDispatcher } from './dispatch.ts';

const receive = createDispatcher<FlickerCalls>({
  handlers: {
    record: ({ text, options }) => readLightRecord(text, options),
    chart: ({ groups, given }) => flickerChart(groups, given),
  },
  post: (message) => self.postMessage(message),
  later: (run) => void setTimeout(run, 0),
});

self.addEventListener('message', ({ data }: MessageEvent<ToWorker>) => receive(data));
