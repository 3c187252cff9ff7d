import { expect, test } from 'vitest';
import type { Present } from '../../../api/replies.ts';
import { hrefOfPresent, pathOfField, sayKey, sayMark, sayPresent } from './where.ts';

const WRITTEN = {
  shots: { crown: { title: 'One drop, the crown' }, bare: {} },
  board: { b1: { title: 'The glass fills' } },
  kit: { lenses: { long: { title: 'Long one' } } },
};

const juno = (at: string, place?: string): Present => ({
  who: 'browser-1',
  name: 'Juno',
  at,
  ...(place === undefined ? {} : { place }),
  since: '2030-01-01T10:00:00Z',
});

test.each([
  ['at.shots.crown.stop', '/shots/crown/stop'],
  ['written.shoot.day.call', '/shoot/day/call'],
  ['at.shots.crown.stop-note', '/shots/crown/stop-note'],
  ['place', undefined],
  ['at', undefined],
  ['atlas.shots', undefined],
])('the field %s writes at %s', (id, path) => {
  expect(pathOfField(id)).toBe(path);
});

test.each([
  [juno('/shots/crown/stop'), 'Juno is on One drop, the crown: stop'],
  [juno('/shots/crown'), 'Juno is on One drop, the crown'],
  [juno('/shots/crown/action/speed'), 'Juno is on One drop, the crown: action, speed'],
  [juno('/shots/bare/frameWidth'), 'Juno is on bare: frame width'],
  [juno('/board/b1/words'), 'Juno is on frame The glass fills: words'],
  [juno('/kit/lenses/long/closeFocus'), 'Juno is on Long one: close focus'],
  [juno('/shoot/day/call', 'the Shoot'), 'Juno is on the Shoot: day, call'],
  [juno('', 'the Reckoner'), 'Juno is on the Reckoner'],
  [juno(''), 'Juno is on this shoot'],
])('%j reads %s', (present, words) => {
  expect(sayPresent(present, WRITTEN, 'browser-2')).toBe(words);
});

test('a mark names everybody at or within a path, and nobody beside it', () => {
  const ada: Present = { who: 'browser-3', at: '/shots/crown/stop', since: '2030-01-01T10:00:00Z' };
  const others = [juno('/shots/crown/stop'), ada, juno('/shots/crown-2/stop')];
  expect(sayMark(others, '/shots/crown', 'browser-2')).toBe('Juno and Somebody on another device are here');
  expect(sayMark(others, '/shots/crown-2/stop', 'browser-2')).toBe('Juno is here');
  expect(sayMark(others, '/shots/crow', 'browser-2')).toBeUndefined();
});

test('whoever is on a shot or a piece of kit is found there, and everybody else on the shoot', () => {
  expect(hrefOfPresent(juno('/shots/crown/stop'), 's')).toBe('/s/shot/crown');
  expect(hrefOfPresent(juno('/kit/lenses/long/closeFocus'), 's')).toBe('/s/kit/lenses/long');
  expect(hrefOfPresent(juno('/shoot/day/call'), 's')).toBe('/s');
});

test('keys are read as words', () => {
  expect(sayKey('frameWidth')).toBe('frame width');
});
