/** A client of the routes without a way to send: the browser and the command each bring their own. */
import { Fault } from '../base/fault.ts';
import type { Conflict, Edit, EditReply, FaultReply, Import, JournalReply, ShootListReply, ShootReply, Step } from './replies.ts'; // prettier-ignore
import { CLIENT_HEADER, editsPath, journalPath, redoPath, shootPath, SHOOTS, textPath, undoPath } from './routes.ts';

export interface Sending {
  readonly method: 'GET' | 'POST';
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body?: string;
}

/** Sends and waits; rejects only where there is no answer at all. */
export type Send = (sending: Sending) => Promise<Answer>;

export interface Client {
  readonly list: () => Promise<ShootListReply>;
  readonly open: (shootId: string) => Promise<ShootReply>;
  readonly text: (shootId: string) => Promise<string>;
  readonly journal: (shootId: string, after?: number) => Promise<JournalReply>;
  readonly bringIn: (shoot: Import) => Promise<ShootReply>;
  readonly edit: (shootId: string, edit: Edit) => Promise<EditReply>;
  readonly undo: (shootId: string, step: Step) => Promise<EditReply>;
  readonly redo: (shootId: string, step: Step) => Promise<EditReply>;
}

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

/** Every call rejects with the server's own Fault where it refuses, and with whatever `send` rejects with. */
export function createClient({ send, client }: { readonly send: Send; readonly client: string }): Client {
  const ask = async (sending: Sending): Promise<Answer> => {
    const answer = await send({ ...sending, headers: { ...sending.headers, [CLIENT_HEADER]: client } });
    if (answer.status < 200 || answer.status > 299) throw faultOf(answer, sending.path);
    return answer;
  };
  const get = async <Reply>(path: string) => readJson(await ask({ method: 'GET', path, headers: {} }), path) as Reply;
  const post = async <Reply>(path: string, body: unknown) => {
    const headers = { 'content-type': 'application/json' };
    return readJson(await ask({ method: 'POST', path, headers, body: JSON.stringify(body) }), path) as Reply;
  };
  return {
    list: () => get(SHOOTS),
    open: (shootId) => get(shootPath(shootId)),
    text: async (shootId) => (await ask({ method: 'GET', path: textPath(shootId), headers: {} })).text,
    journal: (shootId, after) => get(journalPath(shootId, after)),
    bringIn: (shoot) => post(SHOOTS, shoot),
    edit: (shootId, edit) => post(editsPath(shootId), edit),
    undo: (shootId, step) => post(undoPath(shootId), step),
    redo: (shootId, step) => post(redoPath(shootId), step),
  };
}
