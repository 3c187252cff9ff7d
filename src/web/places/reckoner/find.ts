/** Laws found by words of the trade, those whose name says it first. */
import { nearestName } from '../../../base/nearest.ts';
import { CATALOGUE, speaksOf, SUBJECTS } from '../../../laws/catalogue.ts';
import type { AnyLaw } from '../../../laws/law.ts';

export interface Found {
  readonly law: AnyLaw;
  readonly subject: string;
}

const ALL: readonly Found[] = SUBJECTS.flatMap(({ title, laws }) => laws.map((law) => ({ law, subject: title })));

const wordsOf = (text: string): readonly string[] => text.toLowerCase().split(/\s+/).filter(Boolean);

const hasAll = (text: string, words: readonly string[]) => words.every((word) => text.toLowerCase().includes(word));

/** Smaller is nearer: the title or id says all the words, then the trade's words do, then anything else about it. */
function distance({ id, title, words = [] }: AnyLaw, search: readonly string[]): number {
  const whole = search.join(' ');
  if (title.toLowerCase().startsWith(whole) || id === whole) return 0;
  if (hasAll(`${title}\n${id}`, search)) return 1;
  return hasAll(`${title}\n${words.join('\n')}`, search) ? 2 : 3;
}

/** Every law that speaks of all the words, nearest first; all of them for no words. */
export function findLaws(search: string): readonly Found[] {
  const words = wordsOf(search);
  if (words.length === 0) return ALL;
  return ALL.filter(({ law }) => speaksOf(law, words.join(' ')))
    .map((found) => ({ found, far: distance(found.law, words) }))
    .sort((a, b) => a.far - b.far)
    .map(({ found }) => found);
}

/** Words to try where a search finds nothing; each finds something. */
export const WORDS_TO_TRY = ['footcandles', 'shutter', 'depth', 'blur', 'drop', 'buffer', 'timecode'] as const;

const WORDS: ReadonlySet<string> = new Set(
  CATALOGUE.flatMap(({ title, words = [] }) => wordsOf([title, ...words].join(' ').replace(/[^\p{L}\s-]/gu, ' '))),
);

/** The search with its unknown words replaced by the nearest known ones, where that finds something. */
export function meantBy(search: string): string | undefined {
  const words = wordsOf(search).map((word) =>
    CATALOGUE.some((law) => speaksOf(law, word)) ? word : nearestName(word, WORDS),
  );
  if (words.some((word) => word === undefined)) return undefined;
  const meant = words.join(' ');
  return meant !== '' && meant !== wordsOf(search).join(' ') && findLaws(meant).length > 0 ? meant : undefined;
}
