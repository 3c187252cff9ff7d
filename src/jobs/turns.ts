/** So many at once and no more: whoever comes then waits for a turn, in order. */

export interface Turns {
  /** Runs something when its turn comes. Rejects with the signal's reason where that goes off before. */
  readonly take: <T>(act: () => Promise<T>, signal?: AbortSignal) => Promise<T>;
}

export function createTurns(most: number): Turns {
  const waiting: (() => void)[] = [];
  let running = 0;

  const turn = (signal: AbortSignal | undefined): Promise<void> => {
    if (running < most) {
      running += 1;
      return Promise.resolve();
    }
    return new Promise((resolve, reject) => {
      const begin = (): void => {
        signal?.removeEventListener('abort', leave);
        resolve();
      };
      const leave = (): void => {
        waiting.splice(waiting.indexOf(begin), 1);
        reject(signal!.reason as Error);
      };
      waiting.push(begin);
      signal?.addEventListener('abort', leave, { once: true });
    });
  };

  return {
    take: async (act, signal) => {
      signal?.throwIfAborted();
      await turn(signal);
      try {
        return await act();
      } finally {
        // The turn is handed on, or given back.
        const next = waiting.shift();
        if (next) next();
        else running -= 1;
      }
    },
  };
}
