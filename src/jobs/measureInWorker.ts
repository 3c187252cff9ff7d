/** Measures a clip on a thread of its own, so that whoever asked stays free: to answer others, and to have it stopped. */
import { Worker } from 'node:worker_threads';
import { Fault } from '../base/fault.ts';
import { adoptTool } from '../media/tools.ts';
import type { ClipMeasured, MeasureOptions } from './measureClip.ts';
import type { FromMeasureWorker, MeasureCalls, ToldMeanwhile } from './workers/measureCalls.ts';

export interface MeasureInWorkerGiven extends MeasureOptions {
  /** Once it goes off, measuring is ended where it can be gone on from. */
  readonly signal?: AbortSignal;
  readonly onFirstLook?: (look: ClipMeasured) => void;
  readonly onProgress?: (done: number, total: number | undefined) => void;
  /** What was told to `onCheckpoint` last, by an earlier run on the same clip with the same options. */
  readonly saved?: Uint8Array | undefined;
  readonly onCheckpoint?: (done: number, bytes: Uint8Array<ArrayBuffer>) => void;
  readonly checkpointAfter_ms?: number;
  /** The worker's program, where it is not the one built beside this file. */
  readonly entry?: URL;
}

const CHECKPOINT_ms = 5000;
/** What a worker has to end what it started by itself. */
const LEAVE_ms = 1000;

function broke(where: string, why: string): Fault {
  return new Fault({
    code: 'measure.broke-off',
    what: `Measuring broke off: ${why}`,
    where,
    mend: 'Measure it again; report it if it happens twice.',
    retry: true,
  });
}

/** Ends what a worker that died left running. */
function keepTools() {
  const left = new Map<number, () => void>();
  return {
    hear: ({ pid, isRunning }: { readonly pid: number; readonly isRunning: boolean }): void => {
      if (isRunning) return void left.set(pid, adoptTool(pid));
      left.get(pid)?.();
      left.delete(pid);
    },
    endAll: (): void => {
      for (const [pid, release] of left) {
        release();
        try {
          process.kill(pid, 'SIGKILL');
        } catch {
          // It ended by itself.
        }
      }
      left.clear();
    },
  };
}

/** Measures a clip. Rejects with what `measureClip` throws, with the signal's reason, and with a Fault where the thread dies. */
export async function measureInWorker(given: MeasureInWorkerGiven): Promise<ClipMeasured> {
  const { signal, onFirstLook, onProgress, onCheckpoint, saved, checkpointAfter_ms = CHECKPOINT_ms, entry, ...options } = given; // prettier-ignore
  signal?.throwIfAborted();
  const worker = new Worker(entry ?? new URL('./workers/measure.js', import.meta.url));
  const tools = keepTools();
  const input: MeasureCalls['measure']['input'] = { options, isLookedAtFirst: onFirstLook !== undefined, saved, checkpointAfter_ms: onCheckpoint && checkpointAfter_ms }; // prettier-ignore
  const cancel = (): void => worker.postMessage({ id: 1, cancel: true });
  const ended = new Promise<void>((resolve) => {
    worker.once('exit', resolve);
    worker.on('message', (message: FromMeasureWorker) => void (('ok' in message || 'fault' in message) && resolve()));
  });
  const told = (of: ToldMeanwhile): void => {
    if ('tool' in of) tools.hear(of.tool);
    else if ('firstLook' in of) onFirstLook?.(of.firstLook);
    else onCheckpoint?.(of.checkpoint.done, of.checkpoint.bytes);
  };
  try {
    return await new Promise<ClipMeasured>((resolve, reject) => {
      worker.on('message', (message: FromMeasureWorker) => {
        try {
          if ('told' in message) told(message.told);
          else if ('progress' in message) onProgress?.(message.progress.done, message.progress.total || undefined);
          else if ('ok' in message) {
            // What came to its end only as it was being stopped may have been cut off.
            signal?.throwIfAborted();
            resolve(message.ok as ClipMeasured);
          } else {
            if (message.fault.code === 'worker.cancelled') signal?.throwIfAborted();
            throw new Fault(message.fault);
          }
        } catch (error) {
          // Of the worker, or of whoever was told and could not take it: then nobody needs the rest.
          reject(error instanceof Error ? error : new Error(String(error)));
        }
      });
      worker.once('error', (error) => reject(broke(options.name, error.message)));
      worker.once('exit', () => reject(broke(options.name, 'its thread ended')));
      signal?.addEventListener('abort', cancel);
      worker.postMessage({ id: 1, call: 'measure', input });
    });
  } finally {
    signal?.removeEventListener('abort', cancel);
    cancel();
    await Promise.race([ended, new Promise((resolve) => setTimeout(resolve, LEAVE_ms).unref())]);
    await worker.terminate();
    tools.endAll();
  }
}
