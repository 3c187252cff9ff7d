import { expect, test } from 'vitest';
import { applyPatch } from '../../../document/patch.ts';
import { readShoot } from '../../../document/read.ts';
import type { Written } from '../../../document/written.ts';
import { itemAt } from './kitEdits.ts';
import { kindNamed } from './kinds.ts';
import { copyItem, newerThere, readOrigin, takePatch, writeOrigin } from './library.ts';

const lenses = kindNamed('lenses')!;
const FROM = {
  id: 'day-1',
  revision: 7,
  written: { kit: { lenses: { macro: { title: 'Macro', widest: 'T2.8', closeFocus: '275 mm' } } } },
};
const OURS: Written = { longsecond: 1, kit: { lenses: { macro: { title: 'Another macro' } } } };

test('an origin is read as it was written, and a person’s own words are left to them', () => {
  const origin = { shootId: 'day-1', kindKey: 'lenses', itemId: 'macro', revision: 7 };
  expect(writeOrigin(origin)).toBe('day-1/lenses/macro@7');
  expect(readOrigin('day-1/lenses/macro@7')).toEqual(origin);
  for (const text of ['the rental house', 'a/b', 'day-1/lenses/macro', undefined, 12]) expect(readOrigin(text)).toBeUndefined();
}); // prettier-ignore

test('a copy keeps its id where that is free, and takes another where it is not', () => {
  const blank: Written = { longsecond: 1, kit: { lenses: {} } };
  expect(copyItem(blank, { kind: lenses, from: FROM, itemId: 'macro' }).id).toBe('macro');
  const { id, patch } = copyItem(OURS, { kind: lenses, from: FROM, itemId: 'macro' });
  expect(id).toBe('macro-1');
  const after = applyPatch(OURS, patch);
  expect(itemAt(after, 'lenses', id)).toEqual({ ...FROM.written.kit.lenses.macro, origin: 'day-1/lenses/macro@7' });
  expect(readShoot(after).problems).toEqual([]);
});

const since = (patches: Parameters<typeof newerThere>[0]['patches'], ours = {}) =>
  newerThere({
    ours: { title: 'Macro', widest: 'T2.8', closeFocus: '275 mm', ...ours },
    theirs: { title: 'Macro', widest: 'T3', closeFocus: '280 mm' },
    origin: readOrigin('day-1/lenses/macro@7')!,
    patches,
  });

test('only what the other shoot changed since is newer', () => {
  expect(since([])).toEqual([]);
  const widest = { op: 'replace', path: '/kit/lenses/macro/widest', value: 'T3' } as const;
  expect(since([[widest]]).map(({ keys }) => keys)).toEqual([['widest']]);
  const whole = { op: 'add', path: '/kit/lenses/macro', value: {} } as const;
  expect(since([[whole]]).map(({ keys }) => keys)).toEqual([['widest'], ['closeFocus']]);
  expect(since([[{ op: 'replace', path: '/kit/lenses/other/widest', value: 'T3' }]])).toEqual([]);
});

test('what belongs to the shoot and not to the lens is never newer elsewhere', () => {
  const found = since([[{ op: 'add', path: '/kit/lenses/macro/availability', value: 'here' }]], { availability: 'hire' });
  expect(found).toEqual([]);
}); // prettier-ignore

test('taking the newer version writes what differs and the revision it is of', () => {
  const path = '/kit/lenses/macro';
  const differences = [
    { keys: ['widest'], ours: 'T2.8', theirs: 'T3' },
    { keys: ['modes', 'half'], ours: {}, theirs: undefined },
  ];
  expect(takePatch(path, differences, { shootId: 'day-1', kindKey: 'lenses', itemId: 'macro', revision: 9 })).toEqual([
    { op: 'add', path: `${path}/widest`, value: 'T3' },
    { op: 'remove', path: `${path}/modes/half` },
    { op: 'add', path: `${path}/origin`, value: 'day-1/lenses/macro@9' },
  ]);
});
