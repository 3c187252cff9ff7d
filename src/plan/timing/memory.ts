/** What the memory holds of a shot, what is saved of it, and whether the next roll waits for that. */
import { gathering } from '../day/usual.ts';
import { resetMoments, resetOf } from '../day/resetJobs.ts';
import type { Telling, Told } from './telling.ts';
import type { MemoryTiming } from './types.ts';

/** Frames are whole: what is nearer to one than this is it. */
const HAIR = 1e-6;

/** The memory at these settings; absent where it is not known how much it holds. */
export function memoryOf({ prepared, number }: Telling, told: Told): MemoryTiming | undefined {
  const { action_s, handle_s, captureRate_fps, trigger } = told;
  const [recordTime_s, frameSize_B] = [number('recordTime_s'), number('frameSize_B')];
  const partitionCount = number('partitionCount');
  if (recordTime_s === undefined || frameSize_B === undefined || partitionCount === undefined) return undefined;
  const [trimFrom_s, trimTo_s] = [-handle_s, action_s + handle_s];
  const trimmedFrameCount = Math.ceil((trimTo_s - trimFrom_s) * captureRate_fps - HAIR);
  const trimmedSize_B = trimmedFrameCount * frameSize_B;
  const rate = number('saveRate_B_per_s');
  const saveTime_s = rate === undefined ? undefined : trimmedSize_B / rate;
  const gathered = gathering();
  const reset_s = resetMoments(resetOf(prepared.shoot, prepared.shotId, gathered).jobs).mean_s;
  // With a partition free the camera can roll while it saves.
  const waits_s = saveTime_s === undefined ? undefined : partitionCount > 1 ? 0 : Math.max(0, saveTime_s - reset_s);
  return {
    recordTime_s,
    frameCount: Math.floor(recordTime_s * captureRate_fps + HAIR),
    partitionCount,
    trimFrom_s,
    trimTo_s,
    trimmedFrameCount,
    trimmedSize_B,
    ...(saveTime_s === undefined ? {} : { saveTime_s }),
    reset_s,
    ...(waits_s === undefined ? {} : { waits_s }),
    rollsBeforeSaving: partitionCount,
    marks: marksOf(told, trigger?.keepsFrom_s ?? trimFrom_s, trigger?.keepsTo_s ?? trimTo_s),
    assumed: [...gathered.assumed.values()],
  };
}

/** What happens within what is kept, in its order: each signal and arrival, the trigger, start and end of the action. */
function marksOf({ action_s, captureRate_fps, cues, trigger }: Told, from_s: number, to_s: number): MemoryTiming['marks'] {
  const at = (title: string, at_s: number | undefined) => (at_s === undefined ? [] : [{ title, at_s }]);
  const all = [
    ...cues.flatMap(({ title, fire_s, arrives_s }) => [...at(`Signal: ${title}`, fire_s), ...at(`Arrives: ${title}`, arrives_s)]),
    ...at('Trigger', trigger?.comes_s),
    ...at('Action starts', 0),
    ...at('Action ends', action_s),
  ];
  return all
    .filter(({ at_s }) => at_s >= from_s - HAIR && at_s <= to_s + HAIR)
    .sort((a, b) => a.at_s - b.at_s)
    .map(({ title, at_s }) => ({ title, at_s, frame: Math.floor((at_s - from_s) * captureRate_fps + HAIR) }));
} // prettier-ignore
