import { expect, test } from 'vitest';
import { applyPatch, withParents } from '../../../document/patch.ts';
import { readShoot } from '../../../document/read.ts';
import type { Written } from '../../../document/written.ts';
import type { PatchOperation } from '../../../plan/types.ts';
import { moveFramePatch, newFrame, removeFramePatch, servePatch } from './board.ts';
import { boardOrder } from '../../../turnover/film.ts';

const SHOOT: Written = {
  longsecond: 1,
  board: { b1: { seconds: '2 s' }, b2: {} },
  shots: { pour: { board: ['b1', 'b2'] }, crown: { board: ['b1'] } },
};

const done = (written: Written, patch: readonly PatchOperation[]) => applyPatch(written, withParents(written, patch));
const read = (written: Written) => readShoot(written).shoot;

test('a new frame comes last, on a board that is ordered, one that is not, and none at all', () => {
  const first = newFrame(SHOOT, boardOrder(read(SHOOT)));
  const after = done(SHOOT, first.patch);
  expect(boardOrder(read(after))).toEqual(['b1', 'b2', first.frameId]);
  const ordered = done(after, moveFramePatch(boardOrder(read(after)), 'b2', -1));
  const second = newFrame(ordered, boardOrder(read(ordered)));
  expect(boardOrder(read(done(ordered, second.patch)))).toEqual(['b2', 'b1', first.frameId, second.frameId]);
  const bare: Written = { longsecond: 1 };
  const only = newFrame(bare, []);
  expect(boardOrder(read(done(bare, only.patch)))).toEqual([only.frameId]);
});

test('taking a frame off the board leaves no mention of it, and no problem', () => {
  const after = done(SHOOT, removeFramePatch(SHOOT, 'b1'));
  expect(readShoot(after).problems).toEqual([]);
  expect(read(after).shots['pour']!.board).toEqual(['b2']);
  expect(read(after).shots['crown']!.board).toEqual([]);
});

test('a shot serves a frame once, and no longer when that is taken back', () => {
  const served = done(done(SHOOT, servePatch(SHOOT, 'crown', 'b2', true)), servePatch(SHOOT, 'crown', 'b2', true));
  expect(read(served).shots['crown']!.board).toEqual(['b1', 'b2']);
  const freed = done(served, servePatch(served, 'crown', 'b1', false));
  expect(read(freed).shots['crown']!.board).toEqual(['b2']);
});
