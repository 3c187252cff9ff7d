/** The worker that draws days: apart from the page's other worker, so that ways do not wait for a day. */
import type { ToWorker } from '../../base/worker.ts';
import { planShoot } from '../../plan/plan.ts';
import { sampleShot, USUAL_SAMPLES, USUAL_SEED } from '../../plan/timing/sample.ts';
import { dayOf } from '../../solve/day.ts';
import type { DayCalls } from './calls.ts';
import { createDispatcher } from './dispatch.ts';
import { openKeptFiles } from './keptFiles.ts';

const files = openKeptFiles();

const receive = createDispatcher<DayCalls>({
  handlers: {
    day: ({ written, dayCount }) => {
      const shoot = files.read(written);
      return dayOf(shoot, planShoot(shoot), { dayCount });
    },
    sample: ({ written, shotId }) => {
      const shoot = files.read(written);
      const shot = planShoot(shoot).shots.find(({ id }) => id === shotId);
      const seed = shoot.shoot.seedCount ?? USUAL_SEED;
      return shot && sampleShot(shoot, shot, { sampleCount: USUAL_SAMPLES, seed });
    },
  },
  post: (message) => self.postMessage(message),
  later: (run) => void setTimeout(run, 0),
  keep: files.keep,
});

self.addEventListener('message', ({ data }: MessageEvent<ToWorker>) => receive(data));
