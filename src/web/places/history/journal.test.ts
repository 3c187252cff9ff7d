import { expect, test } from 'vitest';
import type { JournalRow } from '../../../api/replies.ts';
import { dateIn, daysOf, takenBack, tell, zoneOf } from './journal.ts';

const row = (number: number, more: Partial<JournalRow> = {}): JournalRow => ({
  number,
  editId: `edit-000${number}`,
  who: 'browser-1',
  at: `2027-03-09T10:0${number}:00.000Z`,
  kind: 'edit',
  patch: [{ op: 'add', path: '/shots/pour/stop', value: `T${number}` }],
  summary: `Stop T${number}`,
  ...more,
});

test('every row is told by what was there before it', () => {
  const { told, after } = tell({ shots: { pour: { stop: 'T0' } } }, [row(1), row(2)]);
  expect(told.map(({ changes }) => [changes[0]?.before, changes[0]?.after])).toEqual([
    ['T0', 'T1'],
    ['T1', 'T2'],
  ]);
  expect(after).toEqual({ shots: { pour: { stop: 'T2' } } });
});

const told = (...rows: readonly JournalRow[]) => rows.map((each) => ({ row: each, changes: [] }));

test('rows stand by day, and within one by each person’s run of edits', () => {
  const late = row(5, { at: '2027-03-09T23:30:00.000Z', who: 'browser-2', name: 'Juno' });
  const days = daysOf(told(late, row(4), row(3, { who: 'browser-2' }), row(2), row(1)), {
    timeZone: 'Europe/Helsinki',
    me: 'browser-1',
  });
  expect(days.map(({ date, runs }) => [date, runs.map(({ who, told: rows }) => [who, rows.length])])).toEqual([
    ['2027-03-10', [['Juno', 1]]],
    [
      '2027-03-09',
      [
        ['You', 1],
        ['Somebody on another device', 1],
        ['You', 2],
      ],
    ],
  ]);
});

test('a person who comes back after a while begins a new run', () => {
  const days = daysOf(told(row(2, { at: '2027-03-09T11:00:00.000Z' }), row(1)), { timeZone: 'UTC', me: 'browser-1' });
  expect(days[0]?.runs).toHaveLength(2);
});

test('the day of an instant is that of the zone', () => {
  expect(dateIn('2027-03-09T23:30:00.000Z', 'Asia/Tokyo')).toBe('2027-03-10');
  expect(dateIn('2027-03-09T23:30:00.000Z', 'UTC')).toBe('2027-03-09');
});

test('what was taken back and made again counts as done', () => {
  const undo = row(3, { kind: 'undo', undoes: 1 });
  expect([...takenBack([row(1), row(2), undo])]).toEqual([1]);
  expect(takenBack([row(1), row(2), undo, row(4, { kind: 'redo', undoes: 3 })]).has(1)).toBe(false);
});

test('a zone that nobody knows is left to the browser', () => {
  expect(zoneOf('Europe/Lisbon')).toBe('Europe/Lisbon');
  expect(zoneOf('Middle/Nowhere')).toBeUndefined();
  expect(zoneOf(undefined)).toBeUndefined();
});
