/** The page's end of the protocol in base/worker.ts. */
import { Fault } from '../../base/fault.ts';
import type { Calls, FromWorker, Progress, ToWorker } from '../../base/worker.ts';

/** What of a Worker is used, so that tests can stand in for one. */
export interface Port {
  postMessage(message: ToWorker): void;
  terminate(): void;
  onmessage: ((event: { readonly data: FromWorker }) => void) | null;
  onerror: ((event: { readonly message?: string }) => void) | null;
}

export interface Called<Output> {
  /** Rejects with the Fault that ended the call: `worker.superseded`, `worker.cancelled`, or what went wrong. */
  readonly answer: Promise<Output>;
  readonly cancel: () => void;
}

export interface Caller<C extends Calls<C>> {
  readonly call: <Name extends keyof C & string>(
    name: Name,
    input: C[Name]['input'],
    onProgress?: (progress: Progress) => void,
  ) => Called<C[Name]['output']>;
  /** Sends something once, under a name, for all calls to come; a worker started later gets it as well. */
  readonly keep: (name: string, value: unknown) => void;
}

interface Asked {
  readonly name: string;
  readonly input: unknown;
  readonly onProgress: ((progress: Progress) => void) | undefined;
  readonly resolve: (value: unknown) => void;
  readonly reject: (fault: Fault) => void;
}

const cancelledFault = (name: string) =>
  new Fault({
    code: 'worker.cancelled',
    what: `The call of ${name} was cancelled`,
    where: name,
    mend: 'Ask again if the answer is still wanted.',
  });

/** Whether a call ended because nobody wanted its answer any more, rather than because something went wrong. */
export function isDropped(error: unknown): boolean {
  return error instanceof Fault && (error.code === 'worker.cancelled' || error.code === 'worker.superseded');
}

export interface ConnectOptions {
  /**
   * Whether the call that is being worked out ends only with its worker, because nothing in it can be interrupted:
   * cancelling it then ends the worker, and calls that wait behind it go to a new one.
   */
  readonly endsWorker?: boolean;
}

/** Speaks to one worker, which `open` starts at the first call and again after it broke or was ended. */
export function connectWorker<C extends Calls<C>>(
  open: () => Port,
  { endsWorker = false }: ConnectOptions = {},
): Caller<C> {
  const asked = new Map<number, Asked>();
  const kept = new Map<string, unknown>();
  let port: Port | undefined;
  let lastId = 0;

  const settle = (id: number): Asked | undefined => {
    const found = asked.get(id);
    asked.delete(id);
    return found;
  };

  const broke = (message: string | undefined) => {
    port = undefined;
    for (const id of [...asked.keys()]) {
      const { name, reject } = settle(id)!;
      reject(
        new Fault({
          code: 'worker.failed',
          what: message ?? 'The worker stopped',
          where: name,
          mend: 'Try again; reload the page if it stays.',
          retry: true,
        }),
      );
    }
  };

  const opened = (): Port => {
    if (port) return port;
    const next = open();
    next.onmessage = ({ data }) => {
      if ('progress' in data) asked.get(data.id)?.onProgress?.(data.progress);
      else if ('ok' in data) settle(data.id)?.resolve(data.ok);
      else settle(data.id)?.reject(new Fault(data.fault));
    };
    next.onerror = ({ message }) => {
      if (port === next) broke(message);
    };
    port = next;
    for (const [name, value] of kept) next.postMessage({ keep: name, value });
    return next;
  };

  /** Ends the worker, and sends what still waits to a new one. */
  const startAnew = () => {
    port?.terminate();
    port = undefined;
    for (const [id, { name, input }] of asked) opened().postMessage({ id, call: name, input });
  };

  return {
    call: <Name extends keyof C & string>(
      name: Name,
      input: C[Name]['input'],
      onProgress?: (progress: Progress) => void,
    ): Called<C[Name]['output']> => {
      lastId += 1;
      const id = lastId;
      const answer = new Promise<unknown>((resolve, reject) => {
        asked.set(id, { name, input, onProgress, resolve, reject });
      });
      opened().postMessage({ id, call: name, input });
      return {
        answer,
        cancel: () => {
          const [oldest] = asked.keys();
          const found = settle(id);
          if (!found) return;
          // One call is worked out at a time, the oldest first; one that only waits is dropped where it waits.
          if (endsWorker && id === oldest) startAnew();
          else port?.postMessage({ id, cancel: true });
          found.reject(cancelledFault(name));
        },
      };
    },
    keep: (name, value) => {
      if (kept.get(name) === value) return;
      kept.set(name, value);
      port?.postMessage({ keep: name, value });
    },
  };
}
