/** Shots that must be done before others. Reading leaves out what would go round in a circle, and names it. */
import type { Shoot } from '../../document/schema.ts';
import { withDefaults } from '../givens.ts';
import { inOrder, type Precedence } from './inOrder.ts';
import type { Warning } from './resetJobs.ts';

export function shotPrecedence(shoot: Shoot, ids: readonly string[]): Precedence {
  return inOrder(ids, (id) => withDefaults(shoot, id).shot.after.filter((before) => before !== id));
}

const titleIn = (shoot: Shoot, id: string): string => shoot.shots[id]!.title ?? id;

/** Shots that an order puts before what they must come after. */
export function orderWarnings(shoot: Shoot, ids: readonly string[], order: readonly string[], { pairs }: Precedence): readonly Warning[] {
  const placeOf = new Map(order.map((id, place) => [id, place]));
  return pairs.flatMap(([before, after]) => {
    const [first, second] = [ids[before]!, ids[after]!];
    const [firstPlace, secondPlace] = [placeOf.get(first), placeOf.get(second)];
    if (firstPlace === undefined || secondPlace === undefined || firstPlace < secondPlace) return [];
    return [{ says: `${titleIn(shoot, second)} must come after ${titleIn(shoot, first)}, and the order of the day puts it before: move one of them, or take the "after" away.`, path: '/order/day' }];
  });
} // prettier-ignore
