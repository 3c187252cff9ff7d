/** Watches over a process that may stop giving anything. */

export interface Watchdog {
  /** Something came. */
  readonly see: () => void;
  readonly hasStalled: () => boolean;
  readonly end: () => void;
}

/** Calls for a stop once nothing has been seen for so long. */
export function watchOver(timeout_ms: number, stop: () => void): Watchdog {
  let isSeen = true;
  let isStalled = false;
  const timer = setInterval(() => {
    if (!isSeen) {
      isStalled = true;
      stop();
    }
    isSeen = false;
  }, timeout_ms);
  return { see: () => (isSeen = true), hasStalled: () => isStalled, end: () => clearInterval(timer) };
}
