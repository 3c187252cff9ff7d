/** The server as the store sees it: the client of src/api, sent by fetch, and the live events of one shoot. */
import { createClient, type Client, type Send } from '../../api/client.ts';
import type { JournalRow, PresenceReply, Present } from '../../api/replies.ts';
import { eventsPath, filePath } from '../../api/routes.ts';
import { Fault } from '../../base/fault.ts';

export interface Listener {
  readonly onRow: (row: JournalRow) => void;
  /** Too much happened to tell it one by one. */
  readonly onReload: () => void;
  /** Everybody who is here, whenever that changes. */
  readonly onPresent: (present: readonly Present[]) => void;
  /** Whether events come in. */
  readonly onLive: (isLive: boolean) => void;
}

export interface Server extends Client {
  /** Tells what happens to a shoot after a revision until the function returned is called. */
  readonly listen: (shootId: string, after: number, listener: Listener) => () => void;
}

/** Browsers refuse a request that outlives its page above this size. */
const KEEPALIVE_B = 60_000;

export const send: Send = async ({ method, path, headers, body }) => {
  const answer = await fetch(path, {
    method,
    headers,
    ...(body === undefined ? {} : { body, keepalive: body.length * 3 < KEEPALIVE_B }),
  });
  return { status: answer.status, text: await answer.text() };
};

/** The bytes of a file of a shoot. Rejects with Fault `file.unknown` for one that is not here, `server.strange` for another answer. */
export async function fetchFile(shootId: string, sha256: string): Promise<Uint8Array> {
  const path = filePath(shootId, sha256);
  const answer = await fetch(path);
  if (answer.ok) return new Uint8Array(await answer.arrayBuffer());
  const isGone = answer.status >= 400 && answer.status < 500;
  throw new Fault({
    code: isGone ? 'file.unknown' : 'server.strange',
    what: isGone ? 'This shoot has no such file here' : `The answer has status ${answer.status}`,
    where: path,
    mend: isGone ? 'Send the file to this shoot again.' : 'Check that Longsecond is running, then try again.',
    retry: !isGone,
  });
}

const REOPEN_ms = 3000;

export interface Following {
  /** Asked whenever the stream is opened anew. */
  readonly path: () => string;
  readonly attach: (source: EventSource) => void;
  readonly onLive: (isLive: boolean) => void;
}

/** A browser keeps six connections to a server for all its windows: those that nobody sees let go of theirs. */
const UNSEEN_ms = 20_000;

/** Keeps a stream of events open, while the page is seen, until the function returned is called. */
export function follow({ path, attach, onLive }: Following): () => void {
  let source: EventSource | undefined;
  let again: ReturnType<typeof setTimeout> | undefined;
  let unseen: ReturnType<typeof setTimeout> | undefined;
  const shut = () => {
    clearTimeout(again);
    source?.close();
    source = undefined;
  };
  const open = () => {
    const next = new EventSource(path());
    source = next;
    next.addEventListener('open', () => onLive(true));
    attach(next);
    next.addEventListener('error', () => {
      onLive(false);
      // A lost network is tried again by the browser; an answer that is no stream closes the source for good.
      if (next.readyState === EventSource.CLOSED) again = setTimeout(open, REOPEN_ms);
    });
  };
  const rest = () => {
    shut();
    onLive(false);
  };
  const onSeen = () => {
    clearTimeout(unseen);
    if (document.visibilityState === 'hidden') unseen = setTimeout(rest, UNSEEN_ms);
    else if (!source) open();
  };
  document.addEventListener('visibilitychange', onSeen);
  open();
  onSeen();
  return () => {
    document.removeEventListener('visibilitychange', onSeen);
    clearTimeout(unseen);
    shut();
  };
}

interface Listening extends Listener {
  readonly client: string;
  readonly shootId: string;
  readonly after: number;
}

function listen({ client, shootId, after, onRow, onReload, onPresent, onLive }: Listening): () => void {
  let last = after;
  return follow({
    path: () => eventsPath(shootId, last, client),
    onLive,
    attach: (source) => {
      source.addEventListener('edit', ({ data }: MessageEvent<string>) => {
        const row = JSON.parse(data) as JournalRow;
        last = Math.max(last, row.number);
        onRow(row);
      });
      source.addEventListener('reload', () => onReload());
      source.addEventListener('presence', ({ data }: MessageEvent<string>) =>
        onPresent((JSON.parse(data) as PresenceReply).present),
      );
    },
  });
}

/** The server this page came from, for a browser of this name and a person who may have said theirs. */
export function pageServer(client: string, name: () => string | undefined): Server {
  return {
    ...createClient({ send, client, name }),
    listen: (shootId, after, listener) => listen({ ...listener, client, shootId, after }),
  };
}
