import { describe, expect, test } from 'vitest';
import type { Patch } from '../document/patch.ts';
import { findMeeting, standing } from './meeting.ts';

const row = (number: number, patch: Patch, undoes?: number) => ({
  number,
  who: `client-${number}`,
  at: '2027-03-09T07:30:00.000Z',
  summary: `Edit ${number}`,
  patch,
  ...(undoes === undefined ? {} : { undoes }),
});

const written = {
  shoot: { title: 'near' },
  kit: { lenses: { near: { title: 'Near' }, far: {} } },
  shots: { a: { lens: 'far', after: ['b'] }, b: {}, 'a/b': {} },
};

describe('what stands of a history', () => {
  const numbers = (rows: Parameters<typeof standing>[0]) => standing(rows).map(({ number }) => number);

  test('an edit and its undo cancel', () => {
    expect(numbers([row(1, []), row(2, []), row(3, [], 1)])).toEqual([2]);
  });

  test('what was made again stands', () => {
    expect(numbers([row(1, []), row(2, [], 1), row(3, [], 2)])).toEqual([1]);
  });

  test('made again and taken back once more, nothing stands', () => {
    expect(numbers([row(1, []), row(2, [], 1), row(3, [], 2), row(4, [], 3)])).toEqual([]);
  });

  test('an undo of something before these stands', () => {
    expect(numbers([row(5, [], 2), row(6, [])])).toEqual([5, 6]);
  });
});

describe('meeting', () => {
  const meets = (yours: Patch, theirs: Patch) => findMeeting({ patch: yours, since: [row(1, theirs)], written });

  test.each<readonly [string, Patch, Patch]>([
    ['neighbours under one parent', [{ op: 'replace', path: '/shots/a/lens', value: 'near' }], [{ op: 'add', path: '/shots/a/title', value: 'A' }]],
    ['keys of which one begins with the other', [{ op: 'remove', path: '/shots/b' }], [{ op: 'add', path: '/shots/bb', value: {} }]],
    ['an escaped slash and a step down', [{ op: 'remove', path: '/shots/a~1b' }], [{ op: 'replace', path: '/shots/a/lens', value: 'near' }]],
    ['a removed lens and a title of the same word', [{ op: 'remove', path: '/kit/lenses/near' }], [{ op: 'replace', path: '/shoot/title', value: 'near' }]],
    ['a removed lens and a reference to another', [{ op: 'remove', path: '/kit/lenses/near' }], [{ op: 'replace', path: '/shots/a/lens', value: 'far' }]],
    ['a lens whose title changes and a reference to it', [{ op: 'replace', path: '/kit/lenses/near/title', value: 'N' }], [{ op: 'replace', path: '/shots/a/lens', value: 'near' }]],
    ['a lens that stays under a replaced map and a reference to it', [{ op: 'replace', path: '/kit/lenses', value: { near: {} } }], [{ op: 'replace', path: '/shots/a/lens', value: 'near' }]],
  ])('%s do not meet', (_, yours, theirs) => {
    expect(meets(yours, theirs)).toBeUndefined();
    expect(meets(theirs, yours)).toBeUndefined();
  }); // prettier-ignore

  test.each<readonly [string, Patch, Patch]>([
    ['one place', [{ op: 'remove', path: '/shots/a/lens' }], [{ op: 'add', path: '/shots/a/lens', value: 'near' }]],
    ['a list of references and what it names', [{ op: 'remove', path: '/shots/b' }], [{ op: 'replace', path: '/shots/a/after', value: ['b'] }]],
    ['one place of a list of references and what it names', [{ op: 'remove', path: '/shots/b' }], [{ op: 'replace', path: '/shots/a/after/0', value: 'b' }]],
    ['a whole section that refers and what it refers to', [{ op: 'remove', path: '/kit' }], [{ op: 'add', path: '/shots/c', value: { hero: { product: 'quince' } } }]],
    ['defaults that refer and what they refer to', [{ op: 'remove', path: '/kit/lenses/near' }], [{ op: 'add', path: '/defaults', value: { lens: 'near' } }]],
    ['two places of one list', [{ op: 'add', path: '/shots/a/after/0', value: 'c' }], [{ op: 'add', path: '/shots/a/after/-', value: 'd' }]],
  ])('%s meet', (_, yours, theirs) => {
    expect(meets(yours, theirs)).toMatchObject({ number: 1 });
    expect(meets(theirs, yours)).toMatchObject({ number: 1 });
  }); // prettier-ignore

  test('of several edits met, the newest is told, as its value is the one there', () => {
    const patch: Patch = [{ op: 'replace', path: '/shots/a/lens', value: 'near' }];
    const since = [row(1, patch), row(2, patch), row(3, [{ op: 'remove', path: '/shots/b' }])];
    expect(findMeeting({ patch, since, written })).toEqual({
      path: '/shots/a/lens',
      yours: 'near',
      theirs: 'far',
      number: 2,
      who: 'client-2',
      at: '2027-03-09T07:30:00.000Z',
      summary: 'Edit 2',
    });
  });

  test('a removal that is refused has no value of its own, and a place that is empty none of theirs', () => {
    const gone: Patch = [{ op: 'remove', path: '/shots/gone' }];
    expect(meets(gone, gone)).not.toHaveProperty('yours');
    expect(meets(gone, gone)).not.toHaveProperty('theirs');
  });
});
