import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readSearch, writeSearch } from './searchText.ts';

test('an address stays legible: slashes stand, spaces are plus signs', () => {
  expect(writeSearch({ stop: 'T8', exposureTime: '1/2000 s' })).toBe('?stop=T8&exposureTime=1/2000+s');
});

test('numbers stay the text that was typed', () => {
  expect(readSearch('?isoSpeed=0800&ratio=1e3')).toEqual({ isoSpeed: '0800', ratio: '1e3' });
});

test('nothing to say is no question mark', () => {
  expect(writeSearch({})).toBe('');
  expect(writeSearch({ gone: undefined })).toBe('');
});

test('any text comes back as it was, and a browser leaves the address as written', () => {
  const name = fc.stringMatching(/^[a-z][A-Za-z_]{0,12}$/);
  fc.assert(
    fc.property(fc.dictionary(name, fc.string({ unit: 'grapheme' })), (values) => {
      const written = writeSearch(values);
      expect(readSearch(written)).toEqual({ ...values });
      expect(new URL(`http://localhost/reckoner${written}`).search).toBe(written);
    }),
  );
});
