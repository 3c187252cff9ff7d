/**
 * The protocol between a page, or the server, and its workers. In: a call, the cancelling of one, or something to keep for
 * calls to come. Out: any number of progress messages, then exactly one answer, `ok` or `fault`. The newest id of a call
 * wins: an older one that has not ended is answered with the fault `worker.superseded`.
 */
import type { FaultDetails } from './fault.ts';

export interface Progress {
  readonly done: number;
  readonly total: number;
  /** What is counted, in the plural: `plans`, `frames`. */
  readonly unit: string;
}

export type ToWorker =
  | { readonly id: number; readonly call: string; readonly input: unknown }
  | { readonly id: number; readonly cancel: true }
  | { readonly keep: string; readonly value: unknown };

export type FromWorker =
  | { readonly id: number; readonly progress: Progress }
  | { readonly id: number; readonly ok: unknown }
  | { readonly id: number; readonly fault: FaultDetails };

/** The calls a worker answers, by name, each with what it takes and gives. */
export type Calls<C> = { readonly [Name in keyof C]: { readonly input: unknown; readonly output: unknown } };
