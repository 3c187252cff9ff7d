/** The calls that the measuring worker answers, and what it tells while it is at one besides its progress. */
import type { FromWorker } from '../../base/worker.ts';
import type { ClipMeasured, MeasureOptions } from '../measureClip.ts';

export interface MeasureCalls {
  readonly measure: {
    readonly input: {
      readonly options: MeasureOptions;
      /** Whether first looks are told of before the whole is measured. */
      readonly isLookedAtFirst: boolean;
      /** What an earlier call told as its last checkpoint. */
      readonly saved: Uint8Array | undefined;
      /** Left out, none are told; see `measureClip`. */
      readonly checkpointAfter_ms: number | undefined;
    };
    readonly output: ClipMeasured;
  };
}

export type ToldMeanwhile =
  | { readonly firstLook: ClipMeasured }
  | { readonly checkpoint: { readonly done: number; readonly bytes: Uint8Array<ArrayBuffer> } }
  /** A process that it started, or that ended: whoever started the worker ends those that outlive it. */
  | { readonly tool: { readonly pid: number; readonly isRunning: boolean } };

export type FromMeasureWorker = FromWorker | { readonly id: number; readonly told: ToldMeanwhile };
