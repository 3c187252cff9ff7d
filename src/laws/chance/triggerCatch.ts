/**
 * Whether the buffer still holds the action when the trigger comes by chance: what a setting catches, and which setting
 * catches most.
 *
 *     caught when L + k − p·B ≤ c + R ≤ (1 − p)·B − h        head lost above, tail lost below
 *
 * B record time, s        L length of the action, s        h, k handles kept before and after it, s        p share of
 * the buffer kept after the trigger        c moment of what the trigger answers, from the start of the action, s
 * R delay of the trigger, s, spread as a person's or a device's
 *
 * The ring must have been filling for long enough before. A cue seen before the action has a negative moment.
 *
 * @source frame-rate-practice what a ring buffer keeps
 * @source reaction-practice a person's delay
 */
import { requireFinite, requirePositive, requireWithin } from '../../base/domain.ts';
import { triggerRoom_s, type Wanted } from '../buffer/trigger.ts';
import { law } from '../law.ts';
import { REACTION_TAKES, reactionShareFraction, type Reaction } from './reaction.ts';

export interface CatchGiven extends Wanted, Reaction {
  readonly cueAt_s?: number;
}

export interface Catch {
  readonly caughtFraction: number;
  readonly headLostFraction: number;
  readonly tailLostFraction: number;
}

/**
 * Chances that the setting holds the whole action, or loses its head or its tail; where the action does not fit, both
 * can be lost at once. Throws RangeError outside its domain.
 */
export function triggerCatchOf(given: CatchGiven & { readonly postTriggerFraction: number }): Catch {
  const { recordTime_s, action_s, headHandle_s = 0, tailHandle_s = 0, postTriggerFraction, cueAt_s = 0 } = given;
  triggerRoom_s(given);
  requireWithin(0, 1, { postTriggerFraction });
  requireFinite({ cueAt_s });
  const pressedBy = (delay_s: number) => reactionShareFraction({ ...given, delay_s });
  const earliest_s = action_s + tailHandle_s - postTriggerFraction * recordTime_s - cueAt_s;
  const latest_s = (1 - postTriggerFraction) * recordTime_s - headHandle_s - cueAt_s;
  const early = pressedBy(earliest_s);
  const notLate = pressedBy(latest_s);
  return {
    caughtFraction: Math.max(0, notLate - early),
    headLostFraction: 1 - notLate,
    tailLostFraction: early,
  };
}

/** Setting of those the camera has that catches the action most often. Throws RangeError outside its domain. */
export function bestTriggerSettingOf(
  given: CatchGiven & { readonly stepFraction?: number },
): Catch & { readonly postTriggerFraction: number } {
  const { stepFraction = 0.01 } = given;
  requirePositive({ stepFraction });
  requireWithin(0.0001, 1, { stepFraction });
  const settings = Math.floor(1 / stepFraction + 1e-9);
  let best = { postTriggerFraction: 0, ...triggerCatchOf({ ...given, postTriggerFraction: 0 }) };
  for (let step = 1; step <= settings; step += 1) {
    const postTriggerFraction = Math.min(1, step * stepFraction);
    const caught = triggerCatchOf({ ...given, postTriggerFraction });
    if (caught.caughtFraction > best.caughtFraction) best = { postTriggerFraction, ...caught };
  }
  return best;
}

const TAKES = {
  recordTime_s: 'Record time',
  action_s: 'Length of the action',
  headHandle_s: { title: 'Kept before it', default: 0 },
  tailHandle_s: { title: 'Kept after it', default: 0 },
  cueAt_s: {
    title: 'Moment of the cue',
    default: 0,
    note: 'what the trigger answers, after the action begins; negative where it is seen before',
  },
  ...REACTION_TAKES,
} as const;
const GIVES = {
  caughtFraction: { title: 'Whole action caught', as: 'fraction' },
  headLostFraction: { title: 'Head lost', as: 'fraction' },
  tailLostFraction: { title: 'Tail lost', as: 'fraction' },
} as const;
const COMMON = {
  holds: 'A buffer that records round and round and has been filling; each press as likely as the last.',
  sources: ['frame-rate-practice', 'reaction-study', 'reaction-practice'],
  words: ['trigger', 'post-trigger', 'pre-trigger', 'catch', 'missed it', 'reaction'],
};
const EXAMPLE = { recordTime_s: 0.5, action_s: 0.15, headHandle_s: 0.05, tailHandle_s: 0.1 };

export const triggerCatch = law(triggerCatchOf, {
  id: 'trigger-catch',
  title: 'Chance that the trigger catches it',
  says: 'How often a person’s or a device’s trigger leaves the whole action in the buffer.',
  equation: 'caught when L + k − p·B ≤ c + R ≤ (1 − p)·B − h',
  takes: { ...TAKES, postTriggerFraction: { title: 'Kept after the trigger', as: 'fraction' } },
  gives: GIVES,
  example: { ...EXAMPLE, postTriggerFraction: 0.5 },
  ...COMMON,
});

export const bestTriggerSetting = law(bestTriggerSettingOf, {
  id: 'best-trigger-setting',
  title: 'Trigger setting that catches most',
  says: 'How much of the buffer to keep after the trigger, so that it holds the action most often.',
  equation: 'p for the largest F((1 − p)·B − h − c) − F(L + k − p·B − c)',
  takes: {
    ...TAKES,
    stepFraction: { title: 'Steps of the setting', as: 'fraction', default: 0.01, note: 'as the camera offers' },
  },
  gives: { postTriggerFraction: { title: 'Kept after the trigger', as: 'fraction' }, ...GIVES },
  example: EXAMPLE,
  ...COMMON,
});
