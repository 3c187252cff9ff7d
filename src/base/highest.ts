/**
 * The highest point of a curve that has one top within a stretch, by Brent's method: parabolas through the three best
 * points, and golden sections where a parabola leads nowhere. Each look may be costly, so they are few: about ten for what
 * golden sections alone take thirty-five.
 *
 * @source brent-minimum
 */
import { requirePositive } from './domain.ts';

/** A look at the curve; whatever else it tells is handed on. */
export interface Look {
  readonly x: number;
  readonly height: number;
}

export interface Stretch {
  readonly low: number;
  readonly high: number;
  /** Where to look first, within the stretch: the nearer to the top, the fewer looks. */
  readonly first: number;
  /** How near to the top is near enough; half of all digits is all that heights can tell. */
  readonly enough: number;
}

/** Share by which a golden section cuts. */
const GOLDEN = (3 - Math.sqrt(5)) / 2;
/** Golden sections alone would have come from one end of all numbers to the other. */
const MOST_LOOKS = 200;

/** How far a parabola through three looks puts its top from the first; undefined where it has none. */
function topOf(best: Look, second: Look, third: Look): number | undefined {
  const r = (best.x - second.x) * (third.height - best.height);
  const q = (best.x - third.x) * (second.height - best.height);
  const below = 2 * (q - r);
  return below === 0 ? undefined : ((best.x - second.x) * r - (best.x - third.x) * q) / below;
}

/** The highest look. Throws RangeError unless `enough` is positive and low ≤ first ≤ high. */
export function highest<Of extends Look>(lookAt: (x: number) => Of, { low, high, first, enough }: Stretch): Of {
  requirePositive({ enough });
  if (!(low <= first && first <= high)) throw new RangeError(`first must lie from ${low} to ${high}, got ${first}`);
  let [from, to] = [low, high];
  let best = lookAt(first);
  let [second, third] = [best, best];
  let [step, stepBefore] = [0, 0];
  for (let looks = 1; looks < MOST_LOOKS; looks += 1) {
    const middle = (from + to) / 2;
    if (Math.abs(best.x - middle) <= 2 * enough - (to - from) / 2) break;
    const top = Math.abs(stepBefore) > enough ? topOf(best, second, third) : undefined;
    const isWithin = top !== undefined && best.x + top > from && best.x + top < to;
    // Steps must become shorter, by half in two, or parabolas get nowhere.
    if (isWithin && Math.abs(top) < Math.abs(stepBefore) / 2) {
      stepBefore = step;
      step = top;
      const isAtEnd = best.x + top - from < 2 * enough || to - best.x - top < 2 * enough;
      if (isAtEnd) step = best.x < middle ? enough : -enough;
    } else {
      stepBefore = best.x < middle ? to - best.x : from - best.x;
      step = GOLDEN * stepBefore;
    }
    const next = lookAt(best.x + (Math.abs(step) >= enough ? step : step > 0 ? enough : -enough));
    if (next.height >= best.height) {
      if (next.x < best.x) to = best.x;
      else from = best.x;
      [third, second, best] = [second, best, next];
    } else {
      if (next.x < best.x) from = next.x;
      else to = next.x;
      if (next.height >= second.height || second === best) [third, second] = [second, next];
      else if (next.height >= third.height || third === best || third === second) third = next;
    }
  }
  return best;
}
