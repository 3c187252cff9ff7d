/** Which shots of a day are done, which is in hand, and the order a person fixed. */
import type { Shoot } from '../../document/schema.ts';
import { keptTakes } from '../takes.ts';

/** Takes rolled of a shot by now. */
export const rolledSoFar = (shoot: Shoot, id: string): number => shoot.shots[id]!.soFar.rolledCount ?? 0;

/** Whether nothing more is shot of it. */
export function isDone(shoot: Shoot, id: string): boolean {
  const { isDone: isMarked, goodCount = 0 } = shoot.shots[id]!.soFar;
  const kept = keptTakes(shoot, id);
  return isMarked === true || (kept > 0 && goodCount >= kept);
}

/** Every shot once: what is done, then what is in hand, then the rest, each in the order given. */
export function dayOrderOf(shoot: Shoot, order: readonly string[]): readonly string[] {
  const ids = [...new Set([...order, ...Object.keys(shoot.shots)])].filter((id) => Object.hasOwn(shoot.shots, id));
  const done = ids.filter((id) => isDone(shoot, id));
  const left = ids.filter((id) => !isDone(shoot, id));
  const inHand = left.find((id) => rolledSoFar(shoot, id) > 0);
  return [...done, ...(inHand === undefined ? [] : [inHand]), ...left.filter((id) => id !== inHand)];
}

/** The order that a person fixed: as written, the shots it leaves out after it; undefined while nobody did. */
export function fixedOrder(shoot: Shoot): readonly string[] | undefined {
  const fixed = shoot.order.day.filter((id) => Object.hasOwn(shoot.shots, id));
  return fixed.length === 0
    ? undefined
    : [...new Set([...fixed, ...shoot.order.shots, ...Object.keys(shoot.shots)])].filter((id) =>
        Object.hasOwn(shoot.shots, id),
      );
}
