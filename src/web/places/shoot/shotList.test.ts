import { describe, expect, test } from 'vitest';
import { applyPatch, withParents } from '../../../document/patch.ts';
import { readShoot } from '../../../document/read.ts';
import type { Written } from '../../../document/written.ts';
import { shotOrder } from '../../../plan/plan.ts';
import type { PatchOperation } from '../../../plan/types.ts';
import { copyShot, moved, movePatch, newShot, removePatch } from './shotList.ts';

const SHOOT: Written = {
  longsecond: 1,
  shots: { pour: { title: 'Pour', stop: 'T8' }, crown: { title: 'Crown', after: ['pour'] }, honey: { title: 'Honey' } },
};

const done = (written: Written, patch: readonly PatchOperation[]) => applyPatch(written, withParents(written, patch));
const orderOf = (written: Written) => shotOrder(readShoot(written).shoot);
const problemsOf = (written: Written) => readShoot(written).problems;

describe('moving a shot', () => {
  test('changes places with its neighbour, and stops at either end', () => {
    expect(moved(['a', 'b', 'c'], 'b', -1)).toEqual(['b', 'a', 'c']);
    expect(moved(['a', 'b', 'c'], 'b', 1)).toEqual(['a', 'c', 'b']);
    expect(moved(['a', 'b', 'c'], 'a', -1)).toBeUndefined();
    expect(moved(['a', 'b', 'c'], 'c', 1)).toBeUndefined();
  });

  test('states the whole order, which then is the order of the list', () => {
    const after = done(SHOOT, movePatch(orderOf(SHOOT), 'honey', -1));
    expect(orderOf(after)).toEqual(['pour', 'honey', 'crown']);
    expect(problemsOf(after)).toEqual([]);
  });
});

describe('a new shot', () => {
  test('comes last, whether or not an order is stated', () => {
    const first = newShot(SHOOT, orderOf(SHOOT));
    const after = done(SHOOT, first.patch);
    expect(orderOf(after)).toEqual(['pour', 'crown', 'honey', first.shotId]);
    const ordered = done(after, movePatch(orderOf(after), 'honey', -1));
    const second = newShot(ordered, orderOf(ordered));
    expect(second.shotId).not.toBe(first.shotId);
    expect(orderOf(done(ordered, second.patch)).at(-1)).toBe(second.shotId);
  });

  test('is the first of an empty shoot', () => {
    const empty: Written = { longsecond: 1 };
    const { shotId, patch } = newShot(empty, []);
    expect(orderOf(done(empty, patch))).toEqual([shotId]);
  });
});

test('a copy stands right after what it was copied from, with all that was written there', () => {
  const { shotId, patch } = copyShot(SHOOT, orderOf(SHOOT), 'pour', 'Pour');
  const after = done(SHOOT, patch);
  expect(orderOf(after)).toEqual(['pour', shotId, 'crown', 'honey']);
  expect(readShoot(after).shoot.shots[shotId]).toMatchObject({ title: 'Pour, again', stop: 2 ** 3 });
});

test('removing a shot leaves no mention of it behind', () => {
  const ordered = done(SHOOT, movePatch(orderOf(SHOOT), 'honey', -1));
  const after = done(ordered, removePatch(ordered, 'pour'));
  expect(orderOf(after)).toEqual(['honey', 'crown']);
  expect(problemsOf(after)).toEqual([]);
  expect(JSON.stringify(after)).not.toContain('pour');
});
