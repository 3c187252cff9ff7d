import { expect, test } from 'vitest';
import { initialsOf, sayWho, upperFirst } from './who.ts';

test('somebody is called by the name they gave, and oneself is you whatever the name', () => {
  expect(sayWho({ who: 'browser-1', name: 'Juno' }, 'browser-2')).toBe('Juno');
  expect(sayWho({ who: 'browser-2', name: 'Ada' }, 'browser-2')).toBe('you');
});

test('names that browsers give themselves are not shown, those that a person chose are', () => {
  expect(sayWho({ who: 'browser-1' }, 'browser-2')).toBe('somebody on another device');
  expect(sayWho({ who: 'unnamed' }, 'browser-2')).toBe('somebody on another device');
  expect(sayWho({ who: 'desk' }, 'browser-2')).toBe('desk');
});

test.each([
  [{ who: 'browser-1', name: 'Juno' }, 'Ju'],
  [{ who: 'browser-1', name: 'Ada Marsh' }, 'AM'],
  [{ who: 'browser-1', name: 'øre' }, 'Ør'],
  [{ who: 'browser-1' }, '?'],
  [{ who: 'desk' }, 'De'],
  [{ who: 'browser-1', name: '𝒜' }, '𝒜'],
])('%j has the initials %s', (somebody, initials) => {
  expect(initialsOf(somebody)).toBe(initials);
});

test('a sentence that begins with somebody begins with a capital', () => {
  expect(upperFirst('somebody on another device')).toBe('Somebody on another device');
  expect(upperFirst('')).toBe('');
});
