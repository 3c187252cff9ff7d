/** The server as a function of requests over a store of its own, with clients of it. */
import { createClient, type Client, type Send } from '../src/api/client.ts';
import type { FaultReply } from '../src/api/replies.ts';
import type { FootageDesk } from '../src/jobs/types.ts';
import { createApp } from '../src/server/app.ts';
import type { ShootStore } from '../src/store/types.ts';
import { SMALL_SHOOT, steppingClock, tempFolder, tempStore } from './tempStore.ts';

export interface TempServer {
  readonly app: ReturnType<typeof createApp>;
  readonly store: ShootStore;
  /** Stacks of our own failures, of which there should be none. */
  readonly log: readonly string[];
  readonly client: (client: string, name?: string) => Client;
  readonly request: (path: string, init?: RequestInit) => Promise<Response>;
}

export interface TempParts {
  readonly store?: ShootStore;
  readonly text?: string;
  readonly footage?: FootageDesk;
  readonly closing?: AbortSignal;
}

/** With one shoot, under the id `s`. */
export async function tempServer({ store, text = SMALL_SHOOT, footage, closing }: TempParts = {}): Promise<TempServer> {
  const kept = store ?? (await tempStore());
  if (!store) kept.bringIn({ editId: 'import-0001', at: '2027-03-09T07:00:00.000Z', text, id: 's' });
  const log: string[] = [];
  const more = { ...(footage && { footage }), ...(closing && { closing }) };
  const app = createApp({ store: kept, webFolder: tempFolder(), clock: steppingClock(), log: (line) => log.push(line), ...more });
  const request = async (path: string, init?: RequestInit) => app.request(path, init);
  const send: Send = async ({ method, path, headers, body }) => {
    const answer = await request(path, { method, headers: { ...headers }, ...(body === undefined ? {} : { body }) });
    return { status: answer.status, text: await answer.text() };
  };
  return {
    app,
    store: kept,
    log,
    request,
    client: (client, name) => createClient({ send, client, ...(name === undefined ? {} : { name: () => name }) }),
  };
} // prettier-ignore

/** What an answer refuses with. */
export async function faultIn(answer: Response): Promise<FaultReply & { readonly status: number }> {
  return { status: answer.status, ...((await answer.json()) as FaultReply) };
}
