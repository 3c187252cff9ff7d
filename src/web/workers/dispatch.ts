/** The worker's end of the protocol in base/worker.ts: takes messages in, runs one call at a time, answers each once. */
import { Fault, type FaultDetails } from '../../base/fault.ts';
import type { Calls, FromWorker, Progress, ToWorker } from '../../base/worker.ts';

export interface Running {
  readonly report: (progress: Progress) => void;
  /** Whether nobody waits for the answer any more: a long call asks between its steps. */
  readonly isStale: () => boolean;
}

export type Handlers<C extends Calls<C>> = {
  readonly [Name in keyof C]: (
    input: C[Name]['input'],
    running: Running,
  ) => C[Name]['output'] | Promise<C[Name]['output']>;
};

interface Waiting {
  readonly id: number;
  readonly call: string;
  readonly input: unknown;
  stale: FaultDetails | undefined;
}

const superseded = (call: string): FaultDetails => ({
  code: 'worker.superseded',
  what: `A newer call of ${call} came in`,
  where: call,
  mend: 'Use the answer of the newer call.',
});

const cancelled = (call: string): FaultDetails => ({
  code: 'worker.cancelled',
  what: `The call of ${call} was cancelled`,
  where: call,
  mend: 'Ask again if the answer is still wanted.',
});

function faultOf(error: unknown, call: string): FaultDetails {
  if (error instanceof Fault) return error.toJSON();
  return {
    code: 'worker.failed',
    what: error instanceof Error ? error.message : String(error),
    where: call,
    mend: 'This is a fault of the program: reload the page, and report it if it stays.',
  };
}

/**
 * Makes the function that takes a worker's messages. `later` starts the next call in a later turn of the event loop, so
 * that all messages already sent are seen first and only the newest of each call is worked out.
 */
export function createDispatcher<C extends Calls<C>>({
  handlers,
  post,
  later,
  keep = () => undefined,
}: {
  readonly handlers: Handlers<C>;
  readonly post: (message: FromWorker) => void;
  readonly later: (run: () => void) => void;
  /** Takes what is sent once for all calls to come, under a name. */
  readonly keep?: (name: string, value: unknown) => void;
}): (message: ToWorker) => void {
  const queue: Waiting[] = [];
  let running: Waiting | undefined;
  let isStarting = false;

  const answer = (waiting: Waiting, message: { readonly ok: unknown } | { readonly fault: FaultDetails }) => {
    post({ id: waiting.id, ...(waiting.stale ? { fault: waiting.stale } : message) });
  };

  const drop = (isDropped: (waiting: Waiting) => boolean, why: (call: string) => FaultDetails) => {
    for (const waiting of queue.filter(isDropped)) {
      queue.splice(queue.indexOf(waiting), 1);
      waiting.stale = why(waiting.call);
      answer(waiting, { fault: waiting.stale });
    }
    if (running && isDropped(running)) running.stale ??= why(running.call);
  };

  const start = () => {
    if (isStarting || running || queue.length === 0) return;
    isStarting = true;
    later(() => {
      isStarting = false;
      void run();
    });
  };

  const run = async () => {
    const waiting = queue.shift();
    if (!waiting) return;
    running = waiting;
    try {
      const name = waiting.call as keyof C & string;
      const handler = Object.hasOwn(handlers, name) ? handlers[name] : undefined;
      if (!handler) throw new RangeError(`this worker answers no call named ${waiting.call}`);
      const ok = await handler(waiting.input, {
        report: (progress) => {
          if (!waiting.stale) post({ id: waiting.id, progress });
        },
        isStale: () => waiting.stale !== undefined,
      });
      answer(waiting, { ok });
    } catch (error) {
      answer(waiting, { fault: faultOf(error, waiting.call) });
    }
    running = undefined;
    start();
  };

  return (message) => {
    if ('keep' in message) {
      keep(message.keep, message.value);
      return;
    }
    if ('cancel' in message) {
      drop(({ id }) => id === message.id, cancelled);
      return;
    }
    drop(({ id, call }) => call === message.call && id < message.id, superseded);
    queue.push({ id: message.id, call: message.call, input: message.input, stale: undefined });
    start();
  };
}
