import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applySplices, undoSplices, type Splice } from './splice.ts';

/** A text with splices that fit it. */
const spliced = fc
  .tuple(
    fc.string({ unit: 'grapheme', maxLength: 40 }),
    fc.array(fc.tuple(fc.nat({ max: 6 }), fc.nat({ max: 4 }), fc.string({ maxLength: 5 }))),
  ) // prettier-ignore
  .map(([text, draws]) => {
    const splices: Splice[] = [];
    let at = 0;
    for (const [skip, length, inserted] of draws) {
      at += skip;
      if (at > text.length) break;
      const removed = text.slice(at, at + length);
      splices.push({ at, removed, inserted });
      at += removed.length;
    }
    return { text, splices };
  });

describe('splices', () => {
  test('each takes out and puts in at its place in the text before', () => {
    const splices = [
      { at: 0, removed: '', inserted: '> ' },
      { at: 4, removed: 'b', inserted: 'BBB' },
      { at: 7, removed: '', inserted: '!' },
    ];
    expect(applySplices('aaa b c', splices)).toBe('> aaa BBB c!');
  });

  test('no splices leave the text as it is', () => {
    expect(applySplices('text', [])).toBe('text');
  });

  test('whatever they do, undoing them gives the text back', () => {
    fc.assert(
      fc.property(spliced, ({ text, splices }) => {
        expect(applySplices(applySplices(text, splices), undoSplices(splices))).toBe(text);
      }),
    );
  });

  test('undoing the undoing does them again', () => {
    fc.assert(
      fc.property(spliced, ({ splices }) => {
        expect(undoSplices(undoSplices(splices))).toEqual(splices);
      }),
    );
  });

  test.each<[title: string, splices: readonly Splice[]]>([
    ['a text that has something else there', [{ at: 0, removed: 'x', inserted: '' }]],
    ['a place beyond the end', [{ at: 9, removed: '', inserted: 'x' }]],
    ['splices out of order', [{ at: 2, removed: '', inserted: 'x' }, { at: 1, removed: '', inserted: 'y' }]],
    ['splices over one another', [{ at: 0, removed: 'te', inserted: 'x' }, { at: 1, removed: 'e', inserted: 'y' }]],
  ])('%s is refused', (_title, splices) => {
    expect(() => applySplices('text', splices)).toThrow(expect.objectContaining({ code: 'splice.text-differs' }));
  }); // prettier-ignore
});
