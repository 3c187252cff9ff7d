/** The calls that the page's workers answer. */
import type { Written } from '../../document/read.ts';
import type { MeasuredOptions } from '../../laws/flicker/measured.ts';
import type { PhotometryRead } from '../../laws/light/photometry/refusal.ts';
import type { LightGroup } from '../../laws/flicker/mix.ts';
import type { FlickerChartGiven } from '../../plan/flickerChart.ts';
import type { LampFile, LampFileState } from '../../plan/lampFiles.ts';
import type { DayPlan } from '../../plan/day/types.ts';
import type { SampledTiming } from '../../plan/timing/types.ts';
import type { LimitId, Way } from '../../plan/types.ts';
import type { LightFound } from '../../solve/findLight.ts';
import type { Wish } from '../../solve/lampProgram.ts';
import type { LightRecord } from '../places/kit/lightRecord.ts';

export interface WorkCalls {
  readonly ways: {
    readonly input: { readonly written: Written; readonly shotId: string; readonly limit: LimitId };
    readonly output: readonly Way[];
  };
}

export interface FindCalls {
  readonly light: {
    readonly input: { readonly written: Written; readonly setupId: string; readonly wish: Wish };
    readonly output: LightFound;
  };
  /** Lamps that close a short light margin, as ways. */
  readonly lampWays: {
    readonly input: { readonly written: Written; readonly shotId: string };
    readonly output: readonly Way[];
  };
}

export interface DayCalls {
  /** The day drawn so many times. */
  readonly day: {
    readonly input: { readonly written: Written; readonly dayCount: number };
    readonly output: DayPlan;
  };
  /** One shot rolled many times; nothing where something it rests on is missing. */
  readonly sample: {
    readonly input: { readonly written: Written; readonly shotId: string };
    readonly output: SampledTiming | undefined;
  };
}

export interface FlickerCalls {
  /** A light record for its preview. */
  readonly record: {
    readonly input: { readonly text: string; readonly options: MeasuredOptions };
    readonly output: LightRecord;
  };
  /** Worst swing of the frames, as `flickerChart` gives it. */
  readonly chart: {
    readonly input: { readonly groups: readonly LightGroup[]; readonly given: FlickerChartGiven };
    readonly output: Float32Array;
  };
}

export interface FileCalls {
  /** A file of the shoot, by what a lamp names it for. */
  readonly lampFile: {
    readonly input: { readonly file: LampFile; readonly bytes: Uint8Array };
    readonly output: LampFileState;
  };
  /** A photometric file for its preview. */
  readonly photometry: {
    readonly input: { readonly bytes: Uint8Array };
    readonly output: PhotometryRead;
  };
}
