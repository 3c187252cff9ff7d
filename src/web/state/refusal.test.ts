import { expect, test } from 'vitest';
import { Fault } from '../../base/fault.ts';
import { sayRefusal } from './refusal.ts';

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

const edit = { kind: 'edit', summary: 'Depth 5 mm' } as const;

test('a refusal names what was done, who was first, and both values', () => {
  expect(sayRefusal(edit, fault(conflict), 'tablet')).toBe(
    '“Depth 5 mm” was not kept: desk did “Depth 4 mm” first. Yours: 5 mm. There now: 4 mm. Look again.',
  );
});

test('names that browsers give themselves are not shown', () => {
  expect(sayRefusal(edit, fault({ ...conflict, who: 'browser-4b4a' }), 'browser-1111')).toContain('somebody else did');
  expect(sayRefusal(edit, fault({ ...conflict, who: 'browser-1111' }), 'browser-1111')).toContain(
    'another window here',
  );
});

test('a value that is gone is said to be nothing, and a long one is cut', () => {
  const { theirs: _gone, ...rest } = conflict;
  const said = sayRefusal(edit, fault({ ...rest, yours: ['a'.repeat(200)] }), 'tablet');
  expect(said).toContain('There now: nothing.');
  expect(said.length).toBeLessThan(250);
});

test('any other refusal is told in the words of the server', () => {
  expect(sayRefusal({ kind: 'undo', summary: 'Depth' }, fault(), 'tablet')).toBe(
    '“Depth” could not be taken back. Somebody was first. Look again.',
  );
});
