/** Tells of changes at most so often: at once where it was quiet, else when the time is up, and never less than the last. */

export interface Throttle {
  readonly tell: (key: string) => void;
  /** Drops what is still to be told. */
  readonly stop: () => void;
}

interface Waiting {
  timer: ReturnType<typeof setTimeout>;
  isDue: boolean;
}

/** Calls `told` for each key apart. */
export function throttle({ every_ms, told }: { readonly every_ms: number; readonly told: (key: string) => void }): Throttle {
  const waiting = new Map<string, Waiting>();

  const quieten = (key: string): void => {
    const now = waiting.get(key);
    if (!now) return;
    waiting.delete(key);
    if (now.isDue) say(key);
  };

  const say = (key: string): void => {
    const timer = setTimeout(() => quieten(key), every_ms);
    // Nobody stays up to hear of a change.
    timer.unref();
    waiting.set(key, { timer, isDue: false });
    told(key);
  };

  return {
    tell: (key) => {
      const now = waiting.get(key);
      if (now) now.isDue = true;
      else say(key);
    },
    stop: () => {
      for (const { timer } of waiting.values()) clearTimeout(timer);
      waiting.clear();
    },
  };
} // prettier-ignore
