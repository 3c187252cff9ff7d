import { expect, test } from 'vitest';
import { kitHref, kitHrefAt } from './hrefs.ts';

test('the kit, a kind and a piece each have an address', () => {
  expect(kitHref('day-1')).toBe('/day-1/kit');
  expect(kitHref('day-1', 'lenses')).toBe('/day-1/kit/lenses');
  expect(kitHref('day-1', 'lenses', 'macro')).toBe('/day-1/kit/lenses/macro');
});

test('a path into the kit leads to its field, and any other to nowhere', () => {
  expect(kitHrefAt('day-1', '/kit/lenses/macro/widest')).toBe('/day-1/kit/lenses/macro#at.kit.lenses.macro.widest');
  expect(kitHrefAt('day-1', '/kit/lenses')).toBe('/day-1/kit/lenses');
  expect(kitHrefAt('day-1', '/kit')).toBeUndefined();
  expect(kitHrefAt('day-1', '/shots/one/lens')).toBeUndefined();
});
