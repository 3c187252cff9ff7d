/**
 * /api/shoots/:shootId/events: what happens to a shoot, as it happens. The journal itself is the queue: each stream
 * reads on from the last row it told when its reader is ready for more, so a slow reader costs nothing.
 */
import { Hono } from 'hono';
import { parsed } from '../../api/parsed.ts';
import type { JournalRow, ReloadEvent } from '../../api/replies.ts';
import { EventsQuery, ShootId } from '../../api/schemas.ts';
import type { ShootStore } from '../../store/shootStore.ts';

/** Beyond either, opening the shoot anew is cheaper than being told. */
const LONG_GAP_ROWS = 500;
const LONG_GAP_B = 2_000_000;

const AT_ONCE_ROWS = 50;

/** Shows both ends that the other is still there. */
const HEARTBEAT_ms = 15_000;
const RECONNECT_ms = 1000;

const message = (event: string, id: number, data: unknown) =>
  `event: ${event}\nid: ${id}\ndata: ${JSON.stringify(data)}\n\n`;

interface Following {
  readonly store: ShootStore;
  readonly shootId: string;
  readonly after: number;
  readonly closing: AbortSignal;
}

function follow({ store, shootId, after, closing }: Following): ReadableStream<Uint8Array> {
  const bytes = new TextEncoder();
  let told = after;
  let isOver = false;
  let wake = () => {};
  let unwatch: (() => void) | undefined;

  const end = () => {
    isOver = true;
    unwatch?.();
    closing.removeEventListener('abort', end);
    wake();
  };

  /** Only once somebody reads: a HEAD request makes a stream that nobody reads, nor ever ends. */
  const begin = () => {
    unwatch = store.watch((changed) => {
      if (changed === shootId) wake();
    });
    closing.addEventListener('abort', end);
    if (closing.aborted) end();
  };

  const changeOrHeartbeat = () =>
    new Promise<'change' | 'heartbeat'>((resolve) => {
      const timer = setTimeout(() => resolve('heartbeat'), HEARTBEAT_ms);
      wake = () => {
        clearTimeout(timer);
        resolve('change');
      };
    });

  const news = (): string => {
    const { revision, rowCount, patch_B } = store.since(shootId, told);
    if (told > revision || rowCount > LONG_GAP_ROWS || patch_B > LONG_GAP_B) {
      told = revision;
      return message('reload', revision, { revision } satisfies ReloadEvent);
    }
    const rows: readonly JournalRow[] = store.journal(shootId, { after: told, limit: AT_ONCE_ROWS }).rows;
    told = rows.at(-1)?.number ?? told;
    return rows.map((row) => message('edit', row.number, row)).join('');
  };

  const next = async (): Promise<string | undefined> => {
    while (!isOver) {
      const text = news();
      if (text !== '') return text;
      if ((await changeOrHeartbeat()) === 'heartbeat') return ':\n\n';
    }
    return undefined;
  };

  return new ReadableStream<Uint8Array>({
    start: (controller) => controller.enqueue(bytes.encode(`retry: ${RECONNECT_ms}\n\n`)),
    pull: async (controller) => {
      if (!unwatch) begin();
      try {
        const text = await next();
        if (text === undefined) controller.close();
        else controller.enqueue(bytes.encode(text));
      } catch (error) {
        end();
        throw error;
      }
    },
    cancel: end,
  });
}

export function eventRoutes({ store, closing }: { readonly store: ShootStore; readonly closing: AbortSignal }) {
  return new Hono().get('/:shootId/events', (c) => {
    const shootId = parsed(ShootId, c.req.param('shootId'), 'the shoot id in the address');
    const { revision } = store.open(shootId);
    const last = c.req.header('last-event-id');
    const { after = revision } =
      last === undefined || last === ''
        ? parsed(EventsQuery, c.req.query(), 'the query')
        : parsed(EventsQuery, { after: last }, 'the header last-event-id');
    return c.body(follow({ store, shootId, after, closing }), 200, {
      'content-type': 'text/event-stream; charset=utf-8',
      'cache-control': 'no-store',
    });
  });
}
