/** A way of the plan as its card. */
import type { LimitId, Way } from '../../../plan/types.ts';
import { FOUND_BY_SEARCH, LAMP_SEARCH } from '../../../plan/ways/move.ts';
import { wayOutcome } from '../../../turnover/words.ts';
import type { WayCardProps } from '../../parts/WayCard.tsx';

/** What a way leaves its limit at; one that breaks a hard limit for it leaves the shot short all the same. */
const standingAfter = ({ closes, breaks, margins }: Way, limit: LimitId) =>
  closes && breaks.length === 0 ? (margins.find(({ id }) => id === limit)?.state ?? 'spare') : 'short';

export function wayCardOf(
  way: Way,
  limit: LimitId,
): Pick<WayCardProps, 'title' | 'says' | 'source' | 'gain' | 'after' | 'effects' | 'warning'> {
  const { move, title, says, gain_stops, effects, touchesFixed } = way;
  return {
    title,
    says: says === '' && effects.length === 0 ? 'nothing else moves' : says,
    ...(move === LAMP_SEARCH ? { source: FOUND_BY_SEARCH } : {}),
    gain: gain_stops,
    after: { standing: standingAfter(way, limit), word: wayOutcome(way) },
    effects: effects.map((effect) => ({
      title: effect.title.toLowerCase(),
      change: effect.change_stops,
      standing: effect.state,
    })),
    ...(touchesFixed ? { warning: 'changes what you fixed' } : {}),
  };
}
