/** The only door to a day's plan: the order a person fixed, or else the one with the least time for changing over. */
import type { Shoot } from '../document/schema.ts';
import { changeBetween_s } from '../plan/day/dayStep.ts';
import { dayOrderOf, fixedOrder, isDone, rolledSoFar } from '../plan/day/dayOrder.ts';
import { planDay } from '../plan/day/planDay.ts';
import { shotPrecedence } from '../plan/day/precedence.ts';
import type { DayPlan } from '../plan/day/types.ts';
import { gathering } from '../plan/day/usual.ts';
import { shotOrder } from '../plan/plan.ts';
import type { Plan } from '../plan/types.ts';
import { bestOrder } from './dayOrder.ts';

/** Days drawn where nobody says how many: few enough to follow an edit. */
export const USUAL_DAYS = 200;

export interface DayOptions {
  readonly dayCount?: number;
  /** Left out, the shoot's own. */
  readonly seed?: number;
}

type Ordered = Pick<DayPlan, 'order' | 'orderBy'>;

/** The shots that are left in the order that takes least time to change over in, after what is done or in hand. */
export function orderOf(shoot: Shoot, plan: Plan): Ordered {
  const plans = new Map(plan.shots.map((shot) => [shot.id, shot]));
  const begun = dayOrderOf(shoot, shotOrder(shoot)).filter((id) => plans.has(id));
  const left = begun.filter((id) => !isDone(shoot, id));
  const inHand = left[0] !== undefined && rolledSoFar(shoot, left[0]) > 0 ? left.shift() : undefined;
  const settled = begun.filter((id) => !left.includes(id));
  const from = inHand ?? settled.at(-1);
  const gathered = gathering();
  const count = left.length;
  const time = (to: string, before: string | undefined): number =>
    changeBetween_s(shoot, plans.get(to)!, before === undefined ? undefined : (plans.get(before)), gathered);
  const costs = new Float64Array(count * count);
  left.forEach((before, i) => left.forEach((to, j) => (costs[i * count + j] = i === j ? 0 : time(to, before))));
  const starts = Float64Array.from(left, (to) => time(to, from));
  const { order, isProven } = bestOrder({ count, costs, starts, pairs: shotPrecedence(shoot, left).pairs });
  return { order: [...settled, ...order.map((i) => left[i]!)], orderBy: isProven ? 'proven' : 'found' };
} // prettier-ignore

/** The day of a shoot, drawn many times. Never throws for what somebody wrote. */
export function dayOf(shoot: Shoot, plan: Plan, { dayCount = USUAL_DAYS, seed = shoot.shoot.seedCount ?? 0 }: DayOptions = {}): DayPlan {
  const fixed = fixedOrder(shoot);
  const best = orderOf(shoot, plan);
  if (!fixed) return planDay(shoot, plan, { ...best, dayCount, seed });
  const found = best.orderBy === 'proven' ? 'the order with the least time for changing over' : 'the best order found';
  const title = 'Shoot in another order';
  const says = `In ${found}: ${best.order.filter((id) => !isDone(shoot, id)).map((id) => shoot.shots[id]!.title ?? id).join(', ')}.`;
  return planDay(shoot, plan, { order: fixed, orderBy: 'fixed', dayCount, seed, otherOrders: [{ title, says, order: best.order }] });
} // prettier-ignore
