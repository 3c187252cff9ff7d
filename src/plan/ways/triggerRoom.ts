/** What moves for the trigger reckon with: how often it would catch the action with another memory or other handles. */
import { bestTriggerSettingOf, triggerCatchOf, type Catch } from '../../laws/chance/triggerCatch.ts';
import { timingStructureOf } from '../timing/structure.ts';
import { keepingOf } from '../timing/timing.ts';
import type { MoveContext } from './move.ts';

type Keeping = NonNullable<ReturnType<typeof keepingOf>>;

/** The arguments of the laws of catching; undefined where one of them is not known. */
export function keepingIn({ effective, number }: MoveContext): Keeping | undefined {
  const timing = timingStructureOf(effective.shot);
  const known = (name: string) => (Number.isFinite(number(name)) ? number(name) : undefined);
  return timing.trigger === 'none' ? undefined : keepingOf({ timing, number: known });
}

/** The best setting, or the one that is fixed. */
export function catchWith({ effective }: MoveContext, keeping: Keeping): Catch & { readonly postTriggerFraction: number } {
  const { postTriggerFraction } = effective.shot.trigger;
  if (postTriggerFraction === undefined) return bestTriggerSettingOf(keeping);
  return { postTriggerFraction, ...triggerCatchOf({ ...keeping, postTriggerFraction }) };
} // prettier-ignore

/** Whether so many takes are kept as are wanted, false fire and no fire counted. */
export function catchesEnough(context: MoveContext, keeping: Keeping): boolean {
  const { number } = context;
  const fires = (1 - number('falseFireFraction')) * (1 - number('noFireFraction'));
  return catchWith(context, keeping).caughtFraction * fires >= number('catchWantedFraction');
}

/** The most that holds, from what does not up to what may: by bisection; undefined where not even the last does. */
export function closestThat(holds: (at: number) => boolean, from: number, upTo: number): number | undefined {
  if (!holds(upTo)) return undefined;
  let [fails, good] = [from, upTo];
  for (let step = 0; step < 30; step += 1) {
    const middle = (fails + good) / 2;
    if (holds(middle)) good = middle;
    else fails = middle;
  }
  return good;
}

/** More memory than this for a shot is no wish but another camera. */
const MOST_TIMES = 64;

/** How many times as long the memory must hold, for the buffer or for the trigger; undefined where no length would do. */
export function memoryTimes(context: MoveContext): number | undefined {
  const { margin, number } = context;
  if (margin.id === 'buffer') return number('recordedTime_s') / number('recordTime_s');
  const keeping = keepingIn(context);
  if (!keeping) return undefined;
  const holds = (times: number) => catchesEnough(context, { ...keeping, recordTime_s: keeping.recordTime_s * times });
  return closestThat(holds, 1, MOST_TIMES);
}
