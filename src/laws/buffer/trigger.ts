/**
 * Which part of a ring buffer to keep: how much room the action leaves, and where to set the trigger when its delay is
 * known.
 *
 *     W = B − (h + L + k)        p = (B + L + k − h) / 2B − R/B
 *
 * B record time, s        L length of the action, s        h, k handles kept before and after it, s        W room, s
 * p share of the buffer kept after the trigger        R delay from the start of the action to the trigger, s
 *
 * The trigger keeps from (1 − p)·B before it to p·B after it; this p puts the action and its handles in the middle of
 * that. Holds for a trigger that comes at a known moment: electrical, from a controller or a light gate. A person's delay
 * varies by more than the room there often is.
 *
 * @source frame-rate-practice what a ring buffer keeps
 */
import { requireFinite, requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

export interface Wanted {
  readonly recordTime_s: number;
  readonly action_s: number;
  readonly headHandle_s?: number;
  readonly tailHandle_s?: number;
}

/** Room that the action and its handles leave in the buffer, negative where they do not fit. Throws RangeError outside its domain. */
export function triggerRoom_s({ recordTime_s, action_s, headHandle_s = 0, tailHandle_s = 0 }: Wanted): number {
  requirePositive({ recordTime_s, action_s });
  requireNotNegative({ headHandle_s, tailHandle_s });
  return recordTime_s - (headHandle_s + action_s + tailHandle_s);
}

/**
 * Share of the buffer to keep after the trigger. Throws RangeError where the action does not fit or the delay leaves no
 * setting that holds it.
 */
export function postTriggerFraction(wanted: Wanted & { readonly delay_s: number }): number {
  const { recordTime_s, action_s, headHandle_s = 0, tailHandle_s = 0, delay_s } = wanted;
  requireFinite({ delay_s });
  const room_s = triggerRoom_s(wanted);
  if (room_s < 0)
    throw new RangeError(
      `recordTime_s must hold the action and its handles, ${recordTime_s - room_s} s, got ${recordTime_s}`,
    );
  const middled = (recordTime_s + action_s + tailHandle_s - headHandle_s) / (2 * recordTime_s) - delay_s / recordTime_s;
  const set = Math.min(1, Math.max(0, middled));
  const off_s = Math.abs(set - middled) * recordTime_s;
  if (off_s > room_s / 2 + 1e-9 * recordTime_s)
    throw new RangeError(`delay_s must let the buffer still hold the action, got ${delay_s}`);
  return set;
}

const WANTED = {
  recordTime_s: 'Record time',
  action_s: 'Length of the action',
  headHandle_s: { title: 'Kept before it', default: 0 },
  tailHandle_s: { title: 'Kept after it', default: 0 },
} as const;
const COMMON = {
  sources: ['frame-rate-practice'],
  words: ['trigger', 'pre-trigger', 'post-trigger', 'ring buffer', 'RAM', 'catch'],
};
const EXAMPLE = { recordTime_s: 4.8, action_s: 0.15, headHandle_s: 0.05, tailHandle_s: 0.1 };

export const triggerRoom = law(triggerRoom_s, {
  id: 'trigger-room',
  title: 'Room for the trigger',
  says: 'How late or early the trigger may be before part of the action is lost.',
  equation: 'W = B − (h + L + k)',
  takes: WANTED,
  gives: { room_s: 'Room' },
  holds: 'A buffer that records round and round; below zero the action fits at no setting.',
  example: EXAMPLE,
  ...COMMON,
});

export const triggerSetting = law(postTriggerFraction, {
  id: 'trigger-setting',
  title: 'Trigger setting for a known delay',
  says: 'How much of the buffer to keep after the trigger when it comes at a known moment.',
  equation: 'p = (B + L + k − h) / 2B − R/B',
  takes: { ...WANTED, delay_s: { title: 'Delay of the trigger', note: 'after the action begins; negative before it' } },
  gives: { postTriggerFraction: { title: 'Kept after the trigger', as: 'fraction' } },
  holds: 'Electrical triggers. A person varies; leave the room on the side they err to.',
  example: { ...EXAMPLE, delay_s: 0.002 },
  ...COMMON,
});
