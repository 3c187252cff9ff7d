import { after } from '../../../state/browser.ts';
import type { Clock } from './copyPlayer.ts';

/** The clock of the page that is shown. */
export const PAGE_CLOCK: Clock = {
  now_ms: () => performance.now(),
  after,
  nextPicture: (run) => {
    const asked = requestAnimationFrame(run);
    return () => cancelAnimationFrame(asked);
  },
};
