import { expect, test } from 'vitest';
import type { Presence, Present } from '../../api/replies.ts';
import { openPresence } from './presence.ts';

/** A desk on a clock that stands until it is moved on. */
function desk() {
  const told: Presence[] = [];
  const waits: { wait_ms: number; run: () => void }[] = [];
  const it = openPresence({
    client: 'tablet',
    tell: (where) => {
      told.push(where);
      return Promise.resolve({ present: [] });
    },
    after: (wait_ms, run) => {
      const wait = { wait_ms, run };
      waits.push(wait);
      return () => void (waits.includes(wait) && waits.splice(waits.indexOf(wait), 1));
    },
  });
  return { it, told, waits, pass: () => waits.shift()?.run() };
}

const somebody = (who: string, at = ''): Present => ({ who, at, since: '2030-01-01T10:00:00Z' });

test('others are told, oneself is not, and the same value is given until something changes', () => {
  const { it } = desk();
  let heard = 0;
  it.subscribe(() => (heard += 1));
  it.onPresent([somebody('tablet'), somebody('desk', '/shots/pour')]);
  expect(it.others().map(({ who }) => who)).toEqual(['desk']);
  const before = it.others();
  it.onPresent([somebody('desk', '/shots/pour'), somebody('tablet', '/shots/crown')]);
  expect(it.others()).toBe(before);
  expect(heard).toBe(1);
});

test('where one is is told once for many moves, and said again while one stays', () => {
  const { it, told, pass, waits } = desk();
  it.here({ at: '' });
  expect(waits).toHaveLength(0);
  it.onLive(true);
  pass();
  for (const key of ['stop', 'depth', 'blur']) it.here({ at: `/shots/pour/${key}` });
  expect(waits).toHaveLength(1);
  pass();
  expect(told).toEqual([{ at: '' }, { at: '/shots/pour/blur' }]);
  it.here({ at: '/shots/pour/blur' });
  expect(waits.map(({ wait_ms }) => wait_ms)).toEqual([25_000]);
  pass();
  expect(told).toHaveLength(3);
});

test('while the events are away nobody is known to be here, and one says where one is when they are back', () => {
  const { it, told, pass } = desk();
  it.here({ at: '/shots/pour' });
  it.onLive(true);
  pass();
  it.onPresent([somebody('desk')]);
  it.onLive(false);
  expect(it.others()).toEqual([]);
  pass();
  expect(told).toHaveLength(1);
  it.onLive(true);
  pass();
  expect(told).toHaveLength(2);
});

test('a desk that is closed tells no more', () => {
  const { it, told, pass } = desk();
  it.here({ at: '' });
  it.onLive(true);
  it.close();
  pass();
  expect(told).toEqual([]);
});
