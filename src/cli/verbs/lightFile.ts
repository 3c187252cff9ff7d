/** A photometric file as `longsecond light` tells of it: light, beam, opening, and what was odd about it. */
import type { UnitSystem } from '../../base/quantity.ts';
import { onOneLine, padded, wrapped, type Ink } from '../../turnover/lines.ts';
import { labelWords, photometryRows, sayNotice, type PhotometryFacts } from '../../turnover/photometryFacts.ts';

const LABEL_COLUMNS = 14;

/** Labels told; a file may have any number. */
const MOST_LABELS = 6;

/** The lines that describe a file for eyes. */
export function fileLines(facts: PhotometryFacts, ink: Ink, system: UnitSystem): readonly string[] {
  const rows = photometryRows(facts, system);
  const notices = facts.notices.flatMap((notice) => wrapped(onOneLine(`Note: ${sayNotice(notice)}`), 2, 4));
  return [
    `${ink.strong(onOneLine(facts.name))}  ${ink.faint(facts.format)}`,
    ...labelWords(facts).slice(0, MOST_LABELS).flatMap((words) => wrapped(onOneLine(words), 2, 4)),
    '',
    ...rows.flatMap(({ title, says }) => wrapped(`${padded(title, LABEL_COLUMNS)}${says}`, 2, 2 + LABEL_COLUMNS)),
    ...(notices.length > 0 ? ['', ...notices] : []),
  ];
} // prettier-ignore
