import { expect, test } from 'vitest';
import { applyPatch } from '../../../document/patch.ts';
import type { Written } from '../../../document/written.ts';
import { addLamp, addSetup, duplicateSetup, placeLamp, readingPatch, removeSetup, switchLamps } from './lightEdits.ts';

const SHOOT: Written = {
  lighting: {
    top: { title: 'Top', lamps: { key: { lamp: 'spot', at: '1 m, 0 m, 1 m' }, fill: { lamp: 'spot' } }, illuminance: '40 klx', reading: 'metered' },
  },
  defaults: { lighting: 'top' },
  shots: { one: { title: 'One', lighting: 'top' }, two: { lighting: 'other' } },
}; // prettier-ignore

const after = (patch: Parameters<typeof applyPatch>[1], written = SHOOT) =>
  applyPatch(written, patch) as Record<string, Written>;

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
  expect(placeLamp('top', 'key', 'aim', { right_m: 0.123, away_m: -1.2, up_m: 0 })).toEqual([
    { op: 'add', path: '/lighting/top/lamps/key/aim', value: '120 mm, -1.2 m, 0 m' },
  ]);
});

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
