/** A stream of server-sent events that tells the footage of a shoot whole, whenever anything of it changed. */
import type { FootageDesk } from '../jobs/types.ts';
import { eventStream, HEARTBEAT, HEARTBEAT_ms } from './eventStream.ts';

interface Following {
  readonly desk: FootageDesk;
  readonly shootId: string;
  readonly closing: AbortSignal;
}

/** A slow reader costs nothing: it is told what is so when it is ready for more, and never what was so in between. */
export function followFootage({ desk, shootId, closing }: Following): ReadableStream<Uint8Array> {
  let told: string | undefined;
  let hasNews = true;
  let isOver = false;
  let wake = () => {};
  let unwatch: (() => void) | undefined;

  const end = () => {
    isOver = true;
    unwatch?.();
    closing.removeEventListener('abort', end);
    wake();
  };

  const begin = () => {
    unwatch = desk.watch((changed) => {
      if (changed !== shootId) return;
      hasNews = true;
      wake();
    });
    closing.addEventListener('abort', end);
    if (closing.aborted) end();
  };

  /** At once where there is news already; files come and go without a word, and are looked for at each beat. */
  const newsOrHeartbeat = () =>
    new Promise<'news' | 'heartbeat'>((resolve) => {
      const timer = setTimeout(() => resolve('heartbeat'), HEARTBEAT_ms);
      wake = () => {
        clearTimeout(timer);
        resolve('news');
      };
      if (hasNews || isOver) wake();
    });

  const next = async (): Promise<string | undefined> => {
    for (;;) {
      const what = await newsOrHeartbeat();
      if (isOver) return undefined;
      hasNews = false;
      const data = JSON.stringify(await desk.look(shootId));
      if (data !== told) {
        told = data;
        return `event: footage\ndata: ${data}\n\n`;
      }
      if (what === 'heartbeat') return HEARTBEAT;
    }
  };

  return eventStream({ begin, next, end });
}
