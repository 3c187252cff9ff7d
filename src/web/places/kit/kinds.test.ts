import { expect, test } from 'vitest';
import { fieldsOf, KIT_KINDS, kindNamed, labelOf } from './kinds.ts';

test('every key that a piece of kit may have stands in one group of its form, or has a place of its own', () => {
  const elsewhere = ['title', 'availability', 'dayPrice', 'origin', 'note', 'modes', 'file', 'waveform', 'measured'];
  for (const { key, groups } of KIT_KINDS) {
    const shown = groups.flatMap(({ keys }) => keys);
    expect(new Set(shown).size, key).toBe(shown.length);
    expect([...shown].sort(), key).toEqual(
      Object.keys(fieldsOf(key))
        .filter((name) => !elsewhere.includes(name))
        .sort(),
    );
  }
});

test('kinds are the sections of the kit, and each says what goes there', () => {
  expect(KIT_KINDS.map(({ key }) => key)).toEqual(expect.arrayContaining(['cameras', 'lenses', 'rigs', 'drives']));
  for (const { says } of KIT_KINDS) expect(says).toMatch(/\.$/);
  expect(kindNamed('crew')).toBeUndefined();
});

test('a key without a label of its own is read as words', () => {
  expect(labelOf('focalLength')).toBe('Focal length');
  expect(labelOf('someNewKey')).toBe('Some new key');
});
