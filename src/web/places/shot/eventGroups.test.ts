import { expect, test } from 'vitest';
import { EVENTS } from '../../../laws/events/catalogue.ts';
import { EVENT_GROUPS, findEvents } from './eventGroups.ts';

const idsOf = (search: string) => findEvents(search).flatMap(({ events }) => events.map(({ id }) => id));

test('every event of the library stands in exactly one named group', () => {
  const ids = EVENT_GROUPS.flatMap(({ events }) => events.map(({ id }) => id));
  expect([...ids].sort()).toEqual(EVENTS.map(({ id }) => id).sort());
  expect(EVENT_GROUPS.map(({ title }) => title)).not.toContain('Others');
});

test('an event is found by its title, by a word of the trade and by its sentence', () => {
  expect(idsOf('crown')).toContain('crown');
  expect(idsOf('worthington')).toEqual(['cavity-and-jet']);
  expect(idsOf('sheds drops')).toEqual(['crown']);
});

test('every word must be spoken of, in any case', () => {
  expect(idsOf('GLASS fly')).toContain('glass-shards');
  expect(idsOf('glass fly')).not.toContain('crown');
  expect(idsOf('no such happening')).toEqual([]);
});

test('an empty search shows all, in their groups', () => {
  expect(idsOf('  ')).toHaveLength(EVENTS.length);
});
