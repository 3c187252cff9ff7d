/** How a whole shot stands, by its worst limit. */
import type { ShotPlan } from '../../../plan/types.ts';
import type { Standing } from '../../parts/StateWord.tsx';

const ORDER = ['short', 'tight', 'unknown', 'spare'] as const;

const WORDS: Readonly<Record<Standing, string>> = {
  short: 'short',
  tight: 'tight',
  unknown: 'not known',
  spare: 'to spare',
};

export interface ShotStanding {
  readonly standing: Standing;
  readonly word: string;
  /** How many limits stand in each way, worst first; ways that none stands in are left out. */
  readonly counts: readonly { readonly standing: Standing; readonly word: string }[];
}

export function standingOf({ margins, settings }: ShotPlan): ShotStanding {
  const counts = ORDER.flatMap((standing) => {
    const count = margins.filter(({ state }) => state === standing).length;
    return count === 0 ? [] : [{ standing, word: `${count} ${WORDS[standing]}` }];
  });
  const worst = counts[0]?.standing ?? 'unknown';
  if (!settings) return { standing: 'unknown', word: 'no answer yet', counts };
  return { standing: worst, word: worst === 'spare' ? 'all to spare' : (counts[0]?.word ?? 'nothing asked'), counts };
}
