import { expect, test } from 'vitest';
import { applyPatch, withParents } from '../../../document/patch.ts';
import { readShoot } from '../../../document/read.ts';
import type { Written } from '../../../document/written.ts';
import { addFlag, addLamp, addSetup, duplicateSetup, duplicateThing, placeThing, readingPatch, removeSetup, switchLamps, withThingAt } from './lightEdits.ts'; // prettier-ignore

const SHOOT: Written = {
  lighting: {
    top: { title: 'Top', lamps: { key: { lamp: 'spot', at: '1 m, 0 m, 1 m' }, fill: { lamp: 'spot' } }, illuminance: '40 klx', reading: 'metered' },
  },
  defaults: { lighting: 'top' },
  shots: { one: { title: 'One', lighting: 'top' }, two: { lighting: 'other' } },
}; // prettier-ignore

const after = (patch: Parameters<typeof applyPatch>[1], written = SHOOT) =>
  applyPatch(written, withParents(written, patch)) as Record<string, Written>;

test('a set-up taken out takes every mention of it along, and nothing else', () => {
  const { lighting, shots, defaults } = after(removeSetup(SHOOT, 'top'));
  expect(lighting).toEqual({});
  expect(shots).toEqual({ one: { title: 'One' }, two: { lighting: 'other' } });
  expect(defaults).toEqual({});
});

test('a copy has the lamps and not what the meter read of the first', () => {
  const { id, patch } = duplicateSetup(SHOOT, 'top', 'Top');
  const copy = (after(patch)['lighting'] as Record<string, Written>)[id];
  expect(copy).toEqual({ title: 'Top, again', lamps: { key: { lamp: 'spot', at: '1 m, 0 m, 1 m' }, fill: { lamp: 'spot' } } });
}); // prettier-ignore

test('new set-ups and lamps get ids that nobody has', () => {
  const first = addLamp(SHOOT, 'top', 'spot');
  const second = addLamp(after(first.patch), 'top', 'spot');
  expect([first.id, second.id]).toEqual(['spot-1', 'spot-2']);
  expect(addSetup(SHOOT).id).toBe('light-1');
});

test('a lamp put down is written to the centimetre', () => {
  expect(placeThing('top', { kind: 'lamp', id: 'key' }, 'aim', { right_m: 0.123, away_m: -1.2, up_m: 0 })).toEqual([
    { op: 'add', path: '/lighting/top/lamps/key/aim', value: '120 mm, -1.2 m, 0 m' },
  ]);
});

test('a flag comes with a place and a size, turned further round than the ones before, and moves like a lamp', () => {
  const first = addFlag(SHOOT, 'top');
  const written = after(first.patch);
  const second = addFlag(written, 'top');
  const { problems } = readShoot({ longsecond: 1, ...(after(second.patch, written) as object) });
  expect(problems.filter(({ path }) => path.includes('flags'))).toEqual([]);
  const { flags } = (after(second.patch, written)['lighting'] as Record<string, Record<string, Record<string, Written>>>)['top']!;
  expect(Object.keys(flags!)).toEqual(['flag-1', 'flag-2']);
  expect(flags!['flag-1']).not.toEqual(flags!['flag-2']);
  const place = { right_m: 0.123, away_m: -1.2, up_m: 0 };
  expect(placeThing('top', { kind: 'flag', id: 'flag-1' }, 'at', place)).toEqual([{ op: 'add', path: '/lighting/top/flags/flag-1/at', value: '120 mm, -1.2 m, 0 m' }]);
  expect(placeThing('top', { kind: 'flag', id: 'flag-1' }, 'aim', place)).toEqual([{ op: 'add', path: '/lighting/top/flags/flag-1/faces', value: '120 mm, -1.2 m, 0 m' }]);
  const again = duplicateThing(written, 'top', { kind: 'flag', id: 'flag-1' }, place);
  expect(again).toMatchObject({ id: 'flag-2', patch: [{ path: '/lighting/top/flags/flag-2', value: { width: '450 mm' } }] });
}); // prettier-ignore

test('what is dragged is drawn where it is, whether lamp or flag, and what is gone is not', () => {
  const place = { right_m: 1, away_m: 2, up_m: 3 };
  const setup = { lamps: { a: { modifiers: [], doors: {} } }, flags: { a: { flagWidth_m: 1 } } };
  expect(withThingAt(setup, { kind: 'flag', id: 'a' }, 'aim', place)).toEqual({ ...setup, flags: { a: { flagWidth_m: 1, faces: place } } });
  expect(withThingAt(setup, { kind: 'lamp', id: 'a' }, 'aim', place)).toEqual({ ...setup, lamps: { a: { modifiers: [], doors: {}, aim: place } } });
  expect(withThingAt(setup, { kind: 'flag', id: 'b' }, 'at', place)).toBe(setup);
}); // prettier-ignore

test('lamps are switched together, and a lamp that is lit has nothing written', () => {
  const off = after(switchLamps(SHOOT, 'top', ['key', 'fill'], true));
  expect(switchLamps(off, 'top', ['key', 'fill'], false)).toHaveLength(2);
  expect(after(switchLamps(off, 'top', ['key', 'fill'], false), off)).toEqual(SHOOT);
  expect(switchLamps(SHOOT, 'top', ['key'], false)).toEqual([]);
});

test('a first reading is marked as read on the set; the mark goes with the last one', () => {
  const none: Written = { lighting: { top: {} } };
  const read = after(readingPatch(none, 'top', 'illuminance', ' 41 klx '), none);
  expect(read['lighting']).toEqual({ top: { illuminance: '41 klx', reading: 'metered' } });
  expect(after(readingPatch(read, 'top', 'illuminance', ''), read)).toEqual(none);
  const stated: Written = { lighting: { top: { reading: 'stated' } } };
  expect(readingPatch(stated, 'top', 'luminance', '9 kcd/m²')).toHaveLength(1);
});
