/** Splices: the characters that an edit takes out of a text and puts in, so that it can be taken back exactly. */
import { Fault } from '../base/fault.ts';

export interface Splice {
  /** Where it begins in the text before the edit, in UTF-16 units. */
  readonly at: number;
  readonly removed: string;
  readonly inserted: string;
}

/**
 * The text after all splices, which stand in order and do not overlap. Throws a Fault (`splice.text-differs`) when the
 * text is not the one they were made for.
 */
export function applySplices(text: string, splices: readonly Splice[]): string {
  const parts: string[] = [];
  let from = 0;
  for (const { at, removed, inserted } of splices) {
    if (at < from || !text.startsWith(removed, at) || at > text.length)
      throw new Fault({
        code: 'splice.text-differs',
        what: `Expected ${JSON.stringify(removed.slice(0, 40))} at character ${at}, and the text has something else`,
        where: `character ${at}`,
        mend: 'Reload the document: it has changed since.',
      });
    parts.push(text.slice(from, at), inserted);
    from = at + removed.length;
  }
  parts.push(text.slice(from));
  return parts.join('');
}

/** The splices that take these back, for the text they made. */
export function undoSplices(splices: readonly Splice[]): readonly Splice[] {
  let shift = 0;
  return splices.map(({ at, removed, inserted }) => {
    const undone = { at: at + shift, removed: inserted, inserted: removed };
    shift += inserted.length - removed.length;
    return undone;
  });
}
