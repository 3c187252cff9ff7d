/** What the parts of a shot's timing are told from. */
import type { Prepared, Worked } from '../prepared.ts';
import type { TimingStructure } from './structure.ts';
import type { CueTiming, TriggerTiming } from './types.ts';

/** A shot ready to be told: a number of its model by name, or undefined where it is not known. */
export interface Telling {
  readonly prepared: Prepared;
  readonly worked: Worked;
  readonly timing: TimingStructure;
  readonly number: (name: string) => number | undefined;
}

/** What has been told before the memory is, and what can never be. */
export interface Told {
  readonly action_s: number;
  readonly handle_s: number;
  readonly captureRate_fps: number;
  readonly cues: readonly CueTiming[];
  readonly trigger: TriggerTiming | undefined;
}
