/** A client of the routes without a way to send: the browser and the command each bring their own. */
import { Fault } from '../base/fault.ts';
import { plainName } from './name.ts';
import type { Conflict, Duplicate, Edit, EditReply, FaultReply, FileReply, Import, ImportZipReply, JournalReply, Presence, PresenceReply, Restore, ShootAtReply, ShootEntry, ShootListReply, ShootReply, Standing, Step } from './replies.ts'; // prettier-ignore
import { atPath, CLIENT_HEADER, duplicatePath, editsPath, FILE_NAME_HEADER, filesPath, historyPath, importZipPath, journalPath, NAME_HEADER, presencePath, redoPath, restorePath, shootPath, SHOOTS, standingPath, textPath, undoPath } from './routes.ts'; // prettier-ignore

export type Bytes = Uint8Array<ArrayBuffer>;

export interface Sending {
  readonly method: 'GET' | 'POST';
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body?: string | Bytes;
}

/** Sends and waits; rejects only where there is no answer at all. */
export type Send = (sending: Sending) => Promise<Answer>;

export interface Client {
  readonly list: () => Promise<ShootListReply>;
  readonly open: (shootId: string) => Promise<ShootReply>;
  /** The text as it now is, or byte for byte as it was at a revision. */
  readonly text: (shootId: string, revision?: number) => Promise<string>;
  /** The shoot as it was at a revision. */
  readonly at: (shootId: string, revision: number) => Promise<ShootAtReply>;
  /** Rows after a number, oldest first. */
  readonly journal: (shootId: string, after?: number) => Promise<JournalReply>;
  /** Rows before a number, or from the newest there is, newest first. */
  readonly history: (shootId: string, page?: { readonly before?: number | undefined; readonly limit?: number | undefined }) => Promise<JournalReply>;
  readonly bringIn: (shoot: Import) => Promise<ShootReply>;
  readonly edit: (shootId: string, edit: Edit) => Promise<EditReply>;
  readonly undo: (shootId: string, step: Step) => Promise<EditReply>;
  readonly redo: (shootId: string, step: Step) => Promise<EditReply>;
  readonly restore: (shootId: string, restore: Restore) => Promise<EditReply>;
  /** Says where the person is; said again within 60 s, or they count as gone. */
  readonly present: (shootId: string, presence: Presence) => Promise<PresenceReply>;
  readonly setStanding: (shootId: string, standing: Standing) => Promise<ShootEntry>;
  readonly duplicate: (shootId: string, duplicate: Duplicate) => Promise<ShootReply>;
  /** Sends a file; an edit of the shoot then names it under `files`. */
  readonly upload: (shootId: string, file: { readonly name: string; readonly type: string; readonly bytes: Bytes }) => Promise<FileReply>;
  readonly bringInZip: (zip: { readonly editId: string; readonly bytes: Bytes }) => Promise<ImportZipReply>;
} // prettier-ignore

interface Answer {
  readonly status: number;
  readonly text: string;
}

const strange = ({ status }: Answer, path: string) =>
  new Fault({
    code: 'server.strange',
    what: `The answer has status ${status} and is not one of ours`,
    where: path,
    mend: 'Check that the address is that of a running Longsecond.',
    retry: status >= 500,
  });

function readJson(answer: Answer, path: string): unknown {
  try {
    return JSON.parse(answer.text);
  } catch {
    // Something other than our server answered, such as a page of a proxy.
    throw strange(answer, path);
  }
}

function faultOf(answer: Answer, path: string): Fault {
  const reply = readJson(answer, path);
  const { code, what, where, mend, retry, conflict } = (reply ?? {}) as Partial<FaultReply>;
  if (code === undefined || what === undefined || where === undefined || mend === undefined)
    return strange(answer, path);
  return new Fault({ code, what, where, mend, retry: retry ?? false, cause: conflict });
}

/** What a refused edit ran into, where a fault from this client says so. */
export function conflictOf(fault: Fault): Conflict | undefined {
  const { cause } = fault;
  return typeof cause === 'object' && cause !== null && 'path' in cause && 'number' in cause
    ? (cause as Conflict)
    : undefined;
}

export interface ClientParts {
  readonly send: Send;
  readonly client: string;
  /** What the person calls themself, asked at every request. */
  readonly name?: () => string | undefined;
}

export interface Calls {
  readonly getText: (path: string) => Promise<string>;
  readonly get: <Reply>(path: string) => Promise<Reply>;
  readonly post: <Reply>(path: string, body: unknown) => Promise<Reply>;
  readonly postBytes: <Reply>(path: string, headers: Readonly<Record<string, string>>, body: Bytes) => Promise<Reply>;
}

/** Calls of any route: each rejects with the server's own Fault where it refuses, and with whatever `send` rejects with. */
export function callsOf({ send, client, name }: ClientParts): Calls {
  const ask = async (sending: Sending): Promise<Answer> => {
    const called = plainName(name?.());
    const answer = await send({
      ...sending,
      headers: {
        ...sending.headers,
        [CLIENT_HEADER]: client,
        ...(called === undefined ? {} : { [NAME_HEADER]: encodeURIComponent(called) }),
      },
    });
    if (answer.status < 200 || answer.status > 299) throw faultOf(answer, sending.path);
    return answer;
  };
  const getText = async (path: string) => (await ask({ method: 'GET', path, headers: {} })).text;
  return {
    getText,
    get: async <Reply>(path: string) => readJson(await ask({ method: 'GET', path, headers: {} }), path) as Reply,
    post: async <Reply>(path: string, body: unknown) => {
      const headers = { 'content-type': 'application/json' };
      return readJson(await ask({ method: 'POST', path, headers, body: JSON.stringify(body) }), path) as Reply;
    },
    postBytes: async <Reply>(path: string, headers: Readonly<Record<string, string>>, body: Bytes) =>
      readJson(await ask({ method: 'POST', path, headers, body }), path) as Reply,
  };
}

/** Every call rejects with the server's own Fault where it refuses, and with whatever `send` rejects with. */
export function createClient(parts: ClientParts): Client {
  const { getText, get, post, postBytes } = callsOf(parts);
  return {
    list: () => get(SHOOTS),
    open: (shootId) => get(shootPath(shootId)),
    text: (shootId, revision) => getText(textPath(shootId, revision)),
    at: (shootId, revision) => get(atPath(shootId, revision)),
    journal: (shootId, after) => get(journalPath(shootId, after)),
    history: (shootId, { before, limit } = {}) => get(historyPath(shootId, before, limit)),
    bringIn: (shoot) => post(SHOOTS, shoot),
    edit: (shootId, edit) => post(editsPath(shootId), edit),
    undo: (shootId, step) => post(undoPath(shootId), step),
    redo: (shootId, step) => post(redoPath(shootId), step),
    restore: (shootId, restore) => post(restorePath(shootId), restore),
    present: (shootId, presence) => post(presencePath(shootId), presence),
    setStanding: (shootId, standing) => post(standingPath(shootId), { standing }),
    duplicate: (shootId, duplicate) => post(duplicatePath(shootId), duplicate),
    upload: (shootId, { name: fileName, type, bytes }) =>
      postBytes(
        filesPath(shootId),
        {
          'content-type': type === '' ? 'application/octet-stream' : type,
          [FILE_NAME_HEADER]: encodeURIComponent(fileName.replace(/\p{Surrogate}/gu, '')),
        },
        bytes,
      ),
    bringInZip: ({ editId, bytes }) => postBytes(importZipPath(editId), { 'content-type': 'application/zip' }, bytes),
  };
}
