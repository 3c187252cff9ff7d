/** The measuring worker: a thread that measures one clip and tells of it as it goes. */
import { deserialize, serialize } from 'node:v8';
import { parentPort } from 'node:worker_threads';
import { Fault, type FaultDetails } from '../../base/fault.ts';
import type { ToWorker } from '../../base/worker.ts';
import { hearOfTools } from '../../media/tools.ts';
import { measureClip, type MeasureSaved } from '../measureClip.ts';
import type { FromMeasureWorker, MeasureCalls, ToldMeanwhile } from './measureCalls.ts';

type Input = MeasureCalls['measure']['input'];

/** Progress is told no oftener than anybody can read it. */
const TELL_ms = 100;

const port = parentPort!;
const stop = new AbortController();

const post = (message: FromMeasureWorker, transfer: readonly ArrayBuffer[] = []): void => port.postMessage(message, [...transfer]); // prettier-ignore

/** A saved state that cannot be read is none: measuring begins anew. */
function savedIn(bytes: Uint8Array | undefined): MeasureSaved | undefined {
  if (!bytes) return undefined;
  try {
    return deserialize(bytes) as MeasureSaved;
  } catch {
    return undefined;
  }
}

function bytesOf(saved: MeasureSaved): Uint8Array<ArrayBuffer> {
  // In a buffer of its own, which can be handed over.
  return new Uint8Array(serialize(saved));
}

function faultOf(error: unknown, call: string): FaultDetails {
  if (error instanceof Fault) return error.toJSON();
  if (stop.signal.aborted) return { code: 'worker.cancelled', what: `The call of ${call} was cancelled`, where: call, mend: 'Ask again if the answer is still wanted.' }; // prettier-ignore
  const what = error instanceof Error ? (error.stack ?? error.message) : String(error);
  return { code: 'worker.failed', what, where: call, mend: 'This is a fault of the program: report it.' };
}

async function measure(id: number, { options, isLookedAtFirst, saved, checkpointAfter_ms }: Input): Promise<void> {
  const tell = (told: ToldMeanwhile, transfer?: readonly ArrayBuffer[]): void => post({ id, told }, transfer);
  hearOfTools((pid, isRunning) => tell({ tool: { pid, isRunning } }));
  const before = savedIn(saved);
  let toldAt_ms = -Infinity;
  try {
    const ok = await measureClip({
      ...options,
      signal: stop.signal,
      ...(before && { saved: before }),
      ...(isLookedAtFirst && { onFirstLook: (firstLook) => tell({ firstLook }) }),
      ...(checkpointAfter_ms !== undefined && {
        checkpointAfter_ms,
        onCheckpoint: (done, at) => {
          const bytes = bytesOf(at);
          tell({ checkpoint: { done, bytes } }, [bytes.buffer]);
        },
      }),
      onProgress: (done, total) => {
        if (performance.now() - toldAt_ms < TELL_ms) return;
        toldAt_ms = performance.now();
        post({ id, progress: { done, total: total ?? 0, unit: 'frames' } });
      },
    });
    post({ id, ok });
  } catch (error) {
    post({ id, fault: faultOf(error, 'measure') });
  }
}

port.on('message', (message: ToWorker) => {
  if ('cancel' in message) stop.abort();
  else if ('call' in message) void measure(message.id, message.input as Input);
});
