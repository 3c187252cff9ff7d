import { expect, test } from 'vitest';
import { Fault } from '../../base/fault.ts';
import { refusedOf, sayValue } from './refusal.ts';

const conflict = {
  path: '/shots/pour/depth',
  yours: '5 mm',
  theirs: '4 mm',
  number: 7,
  who: 'desk',
  at: '2030-01-01T10:00:00Z',
  summary: 'Depth 4 mm',
};

const fault = (cause?: unknown) =>
  new Fault({
    code: 'edit.conflict',
    what: 'Somebody was first',
    where: '/shots/pour/depth',
    mend: 'Look again.',
    cause,
  });

const depth = (value: string) => ({ op: 'add', path: '/shots/pour/depth', value }) as const;

const edit = { editId: 'edit-0001', kind: 'edit', summary: 'Depth 5 mm', patch: [depth('5 mm')], onTop: [] } as const;

test('a refusal names what was done, who was first, and both values', () => {
  expect(refusedOf(edit, fault(conflict), 'tablet')).toEqual({
    id: 'edit-0001',
    says: '“Depth 5 mm” was not kept: desk did “Depth 4 mm” first.',
    mend: 'Look again.',
    met: { path: '/shots/pour/depth', who: 'desk', yours: '5 mm', theirs: '4 mm', number: 7 },
    edit: { patch: edit.patch, summary: 'Depth 5 mm' },
  });
});

test('people are called by their names, and names that browsers give themselves are not shown', () => {
  const said = (who: string, name?: string) =>
    refusedOf(edit, fault({ ...conflict, who, ...(name === undefined ? {} : { name }) }), 'browser-1111').met?.who;
  expect(said('browser-4b4a', 'Juno')).toBe('Juno');
  expect(said('browser-4b4a')).toBe('somebody on another device');
  expect(said('browser-1111', 'Ada')).toBe('another window here');
});

test('what was made on top of a refused edit is kept with it, and its value is the one that is told', () => {
  const onTop = [{ patch: [depth('6 mm')], summary: 'Depth 6 mm' }];
  const { says, met, edit: kept } = refusedOf({ ...edit, onTop }, fault(conflict), 'tablet');
  expect(says).toContain('“Depth 6 mm” was not kept');
  expect(met?.yours).toBe('6 mm');
  expect(kept).toEqual({ patch: [depth('5 mm'), depth('6 mm')], summary: 'Depth 6 mm' });
});

test('a value that is gone is said to be nothing, a long one is cut, and a map is told by its title', () => {
  const { theirs: _gone, ...rest } = conflict;
  expect(refusedOf(edit, fault(rest), 'tablet').met?.theirs).toBe('nothing');
  expect(sayValue(['a'.repeat(200)])).toHaveLength(60);
  expect(sayValue({ title: 'The pour', stop: 'T8' })).toBe('The pour');
  expect(sayValue(['pour', 'crown'])).toBe('pour, crown');
  expect(sayValue([])).toBe('an empty list');
});

test('any other refusal is told in the words of the server, and an undo cannot be put in again', () => {
  expect(refusedOf({ ...edit, kind: 'undo', summary: 'Depth', patch: [] }, fault(), 'tablet')).toEqual({
    id: 'edit-0001',
    says: '“Depth” could not be taken back. Somebody was first.',
    mend: 'Look again.',
  });
});
