/** What clips teach, for eyes: in sentences, old beside new, the limits that change, and the patch that would take it. */
import { onOneLine, wrapped, type Ink } from '../lines.ts';
import type { LearntChange, Learning } from './learnt.ts';
import { marginChangeWords } from './marginsChanged.ts';

const MOST_LIMITS = 12;

function changeWords({ title, before, after, says }: LearntChange): string {
  const from = before === '' ? 'nothing' : before;
  return `${title}: ${after}, in place of ${from}${says === '' ? '' : ` (${says})`}.`;
}

const sentences = (all: readonly string[], dress: (line: string) => string): readonly string[] =>
  all.flatMap((says) => wrapped(onOneLine(says), 2, 4).map(dress));

const asItIs = (line: string): string => line;

/** What was learnt, or why nothing was, in lines. */
export function learnLines(learning: Learning, ink: Ink): readonly string[] {
  const head = ink.strong('What the clips teach');
  if (!learning.ok) return [head, ...sentences(['Nothing that the shoot could take.'], asItIs), ...sentences(learning.notices, ink.faint)]; // prettier-ignore
  const { says, notices, cautions, changes, margins, patch } = learning.learnt;
  const more = margins.length - MOST_LIMITS;
  return [
    head,
    ...sentences(says, asItIs),
    ...sentences(notices, ink.faint),
    ...sentences(cautions.map((words) => `Take care: ${words}`), ink.tight),
    '  In the shoot it would be:',
    ...changes.flatMap((change) => wrapped(onOneLine(changeWords(change)), 4, 6)),
    margins.length === 0 ? '  No limit changes by it.' : '  And so:',
    ...margins.slice(0, MOST_LIMITS).flatMap((margin) => wrapped(onOneLine(marginChangeWords(margin)), 4, 6).map((line) => (margin.isOther && margin.after?.state === 'short' ? ink.short(line) : line))),
    ...(more > 0 ? [`    and ${more} more.`] : []),
    '  As a JSON Patch; nothing has been changed:',
    ...JSON.stringify(patch, null, 2).split('\n').map((line) => `  ${onOneLine(line) === line ? line : line.replaceAll(/\p{Cc}/gu, ' ')}`),
  ];
} // prettier-ignore
