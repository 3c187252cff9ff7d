import { expect, test } from 'vitest';
import { applyPatch, withParents } from '../../../document/patch.ts';
import { readShoot } from '../../../document/read.ts';
import type { Written } from '../../../document/written.ts';
import { addItem, duplicateItem, itemPath, itemsOf, removeEntry, sayUses, usesOf, usesOfMode } from './kitEdits.ts';
import { kindNamed } from './kinds.ts';

const WRITTEN: Written = {
  longsecond: 1,
  kit: {
    cameras: { heron: { title: 'Heron', modes: { full: { pixels: '4096 x 2304' } } } },
    lenses: { macro: { title: 'Macro' }, wide: {} },
    attachments: { glass: {}, nd: {} },
  },
  defaults: { attachments: ['glass'] },
  shots: {
    one: { title: 'One drop', lens: 'macro', mode: 'full', attachments: ['nd', 'glass'] },
    two: { lens: 'macro' },
    three: { lens: 'wide', camera: 'other', mode: 'full' },
  },
};

const lenses = kindNamed('lenses')!;

test('a new piece has an id of its own, also where the kit is not written yet', () => {
  const { id, patch } = addItem(WRITTEN, lenses, { title: 'New lens' });
  expect(id).toBe('lens-1');
  expect(itemsOf(applyPatch(WRITTEN, patch), 'lenses').map(([each]) => each)).toEqual(['macro', 'wide', 'lens-1']);
  const blank: Written = { longsecond: 1 };
  const first = addItem(blank, lenses, {});
  expect(applyPatch(blank, withParents(blank, first.patch))).toEqual({ longsecond: 1, kit: { lenses: { 'lens-1': {} } } });
}); // prettier-ignore

test('a duplicate says of itself that it is one', () => {
  const { id, patch } = duplicateItem(WRITTEN, lenses, 'macro');
  expect(id).toBe('macro-1');
  expect(patch).toEqual([{ op: 'add', path: '/kit/lenses/macro-1', value: { title: 'Macro, again' } }]);
});

test('whoever refers to a piece is named, by title where there is one', () => {
  expect(usesOf(WRITTEN, 'lenses', 'macro')).toEqual([
    { path: '/shots/one/lens', where: 'One drop' },
    { path: '/shots/two/lens', where: 'two' },
  ]);
  expect(sayUses(usesOf(WRITTEN, 'attachments', 'glass'))).toBe('the defaults of shots and One drop');
  expect(usesOf(WRITTEN, 'lenses', 'heron')).toEqual([]);
});

test('a mode is in use where a shot fixes it on that camera, or fixes no camera', () => {
  expect(usesOfMode(WRITTEN, 'heron', 'full').map(({ path }) => path)).toEqual(['/shots/one/mode']);
  expect(usesOfMode(WRITTEN, 'other', 'full').map(({ path }) => path)).toEqual([
    '/shots/one/mode',
    '/shots/three/mode',
  ]);
});

test('taking a piece out takes every mention along, and leaves a shoot without problems', () => {
  const patch = removeEntry(WRITTEN, itemPath('attachments', 'glass'), usesOf(WRITTEN, 'attachments', 'glass'));
  const after = applyPatch(WRITTEN, patch);
  expect(readShoot(after).problems.filter(({ path }) => path.includes('attachments'))).toEqual([]);
  expect(readShoot(after).shoot.shots['one']!.attachments).toEqual(['nd']);
  expect(usesOf(after, 'attachments', 'glass')).toEqual([]);
  const without = applyPatch(WRITTEN, removeEntry(WRITTEN, itemPath('lenses', 'macro'), usesOf(WRITTEN, 'lenses', 'macro')));
  expect(readShoot(without).shoot.shots['one']!.lens).toBeUndefined();
}); // prettier-ignore
