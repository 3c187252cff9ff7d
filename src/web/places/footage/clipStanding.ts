/** How a clip stands, in a shape, a word and the sentences that matter most. */
import type { ClipEntry } from '../../../record/footage.ts';
import { FLASHING_CAUTION } from '../../../turnover/measureReply.ts';
import type { Standing } from '../../parts/StateWord.tsx';

export interface ClipStanding {
  readonly standing: Standing;
  readonly word: string;
  /** What the word leaves open: why, and what to do about it. */
  readonly says?: string;
  /** What is to be done about it while the set still stands. */
  readonly asks?: 'look' | 'measure again' | 'find';
}

type Brief = NonNullable<ClipEntry['brief']>;

const FLICKER = { steady: 'steady', flicker: 'pulses', 'cannot tell': 'cannot tell yet' } as const;

const as = (standing: Standing, word: string, more: Pick<ClipStanding, 'says' | 'asks'> = {}): ClipStanding => ({ standing, word, ...more }); // prettier-ignore

const LOOK = { asks: 'look' } as const;

function wholeStanding({ flicker, against }: Brief): ClipStanding {
  const is = (state: Brief['against'][number]['state']) => against.some((held) => held.state === state);
  if (flicker === 'flicker' || is('worse')) return as('short', 'look at it', LOOK);
  if (flicker === 'cannot tell') return as('tight', 'cannot tell', LOOK);
  if (is('differs')) return as('tight', 'differs from the plan', LOOK);
  return as('spare', against.length > 0 ? 'as planned' : 'steady');
}

const WITHOUT = {
  waiting: 'waiting to be measured',
  running: 'being measured',
  stopped: 'stopped before anything was seen',
  done: 'not measured yet',
} as const;

export function standingOf({ isAside, isHere, folder, path, measuring, brief }: ClipEntry): ClipStanding {
  if (isAside) return as('unknown', 'set aside');
  if (measuring?.state === 'failed') {
    const { fault } = measuring;
    return as('short', 'could not be measured', { ...LOOK, ...(fault && { says: `${fault.what}. ${fault.mend}` }) });
  }
  if (!isHere) {
    const says = `It was ${path} in ${folder}. Bring the file back, or set the clip aside.`;
    return as('tight', 'not here any more', { says, asks: 'find' });
  }
  if (!brief) return as('unknown', WITHOUT[measuring?.state ?? 'done']);
  if (brief.isStale !== undefined) return as('tight', 'measure again', { says: brief.isStale, asks: 'measure again' });
  if (!brief.isWhole)
    return as(brief.flicker === 'flicker' ? 'tight' : 'unknown', `first look: ${FLICKER[brief.flicker]}`);
  return wholeStanding(brief);
}

const RANK: readonly Standing[] = ['short', 'tight', 'unknown', 'spare'];

/** The one that most needs somebody; the first of several alike. */
export function worstStanding(clips: readonly ClipEntry[]): ClipStanding | undefined {
  const all = clips.filter(({ isAside }) => !isAside).map(standingOf);
  return all.toSorted((a, b) => RANK.indexOf(a.standing) - RANK.indexOf(b.standing))[0];
}

const MOST_SENTENCES = 2;

/** What measuring came to, as far as a list has room; a caution is never left out. */
export function sentencesOf({ verdict }: Pick<Brief, 'verdict'>): readonly string[] {
  const first = verdict.slice(0, MOST_SENTENCES);
  return verdict.includes(FLASHING_CAUTION) && !first.includes(FLASHING_CAUTION) ? [...first, FLASHING_CAUTION] : first;
}

const isBusy = ({ measuring }: ClipEntry) => measuring?.state === 'waiting' || measuring?.state === 'running';
const clipCount = (count: number) => (count === 1 ? '1 clip' : `${count} clips`);

/** "5 clips, 1 to look at before the set is struck". */
export function summaryOf(clips: readonly ClipEntry[]): string {
  const shown = clips.filter(({ isAside }) => !isAside);
  const resting = shown.filter((clip) => !isBusy(clip));
  const counted = (asks: ClipStanding['asks']) => resting.filter((clip) => standingOf(clip).asks === asks).length;
  const unseen = resting.filter((clip) => !clip.brief && standingOf(clip).asks === undefined).length;
  const parts = ([
    [counted('look'), 'to look at before the set is struck'],
    [counted('measure again'), 'to measure again'],
    [shown.length - resting.length, 'being measured'],
    [unseen, 'not measured'],
    [counted('find'), 'not here any more'],
  ] as const).filter(([count]) => count > 0).map(([count, what]) => `${count} ${what}`);
  const asideCount = clips.length - shown.length;
  return [
    clipCount(shown.length),
    ...(parts.length === 0 && shown.length > 0 ? ['nothing found to look at'] : parts),
    ...(asideCount > 0 ? [`${asideCount} set aside`] : []),
  ].join(', ');
} // prettier-ignore
