/**
 * /api/shoots/:shootId/events: what happens to a shoot, as it happens, and who is there. The journal itself is the
 * queue: each stream reads on from the last row it told when its reader is ready for more, so a slow reader costs
 * nothing. Who is there is told whole, as it then is.
 */
import { Hono } from 'hono';
import { parsed } from '../../api/parsed.ts';
import type { JournalRow, PresenceReply, ReloadEvent } from '../../api/replies.ts';
import { EventsQuery } from '../../api/schemas.ts';
import type { ShootStore } from '../../store/types.ts';
import { shootIdOf } from '../asker.ts';
import { eventStream, HEARTBEAT, HEARTBEAT_ms } from '../eventStream.ts';
import type { PresenceDesk } from '../presence.ts';

/** Beyond either, opening the shoot anew is cheaper than being told. */
const LONG_GAP_ROWS = 500;
const LONG_GAP_B = 2_000_000;

const AT_ONCE_ROWS = 50;

/** Without an id a message leaves it as it was, where the reader goes on from. */
const message = (event: string, id: number | undefined, data: unknown) =>
  `event: ${event}\n${id === undefined ? '' : `id: ${id}\n`}data: ${JSON.stringify(data)}\n\n`;

interface Following {
  readonly store: ShootStore;
  readonly desk: PresenceDesk;
  readonly shootId: string;
  readonly after: number;
  readonly client: string | undefined;
  readonly closing: AbortSignal;
}

function follow({ store, desk, shootId, after, client, closing }: Following): ReadableStream<Uint8Array> {
  let told = after;
  let presenceTold: number | undefined;
  let isOver = false;
  let wake = () => {};
  let unwatch: (() => void) | undefined;
  let leave: (() => void) | undefined;

  const end = () => {
    isOver = true;
    unwatch?.();
    leave?.();
    closing.removeEventListener('abort', end);
    wake();
  };

  const begin = () => {
    unwatch = store.watch((changed) => {
      if (changed === shootId) wake();
    });
    leave = desk.join(shootId, { client, changed: () => wake() });
    closing.addEventListener('abort', end);
    if (closing.aborted) end();
  };

  const changeOrHeartbeat = () =>
    new Promise<'change' | 'heartbeat'>((resolve) => {
      const silence_ms = desk.endsIn_ms(shootId);
      // Somebody may fall silent before the next beat; looking again then finds them gone.
      const timer =
        silence_ms !== undefined && silence_ms <= HEARTBEAT_ms
          ? setTimeout(() => resolve('change'), Math.ceil(silence_ms))
          : setTimeout(() => resolve('heartbeat'), HEARTBEAT_ms);
      wake = () => {
        clearTimeout(timer);
        resolve('change');
      };
    });

  const presence = (): string => {
    const { version, present } = desk.look(shootId);
    if (version === presenceTold) return '';
    presenceTold = version;
    return message('presence', undefined, { present } satisfies PresenceReply);
  };

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
      const text = presence() + news();
      if (text !== '') return text;
      if ((await changeOrHeartbeat()) === 'heartbeat') return HEARTBEAT;
    }
    return undefined;
  };

  return eventStream({ begin, next, end });
}

export interface EventParts {
  readonly store: ShootStore;
  readonly desk: PresenceDesk;
  readonly closing: AbortSignal;
}

export function eventRoutes({ store, desk, closing }: EventParts) {
  return new Hono().get('/:shootId/events', (c) => {
    const shootId = shootIdOf(c);
    const { revision } = store.open(shootId);
    const asked = parsed(EventsQuery, c.req.query(), 'the query');
    const last = c.req.header('last-event-id');
    const { after = revision } =
      last === undefined || last === '' ? asked : parsed(EventsQuery, { after: last }, 'the header last-event-id');
    return c.body(follow({ store, desk, shootId, after, client: asked.client, closing }), 200, {
      'content-type': 'text/event-stream; charset=utf-8',
      'cache-control': 'no-store',
    });
  });
}
