import { expect, test } from 'vitest';
import { applyPatch, invertPatch } from '../../../document/patch.ts';
import { readShoot } from '../../../document/read.ts';
import type { Written } from '../../../document/written.ts';
import {
  addMode,
  cellPatch,
  cellProblem,
  changesOf,
  changesPatch,
  freshModeId,
  modesOf,
  sayChanges,
} from './modeEdits.ts';
import { readPasted } from './pasteModes.ts';

const WRITTEN: Written = {
  longsecond: 1,
  kit: {
    cameras: {
      heron: {
        modes: {
          full: { title: 'Full', pixels: '4096 x 2304', rate: '1062 fps', bits: 12 },
          half: { pixels: '2048x1152', rate: '2079 fps' },
          binned: { pixels: '2048x1152', rate: '2079 fps', binning: 2 },
        },
      },
    },
  },
};

const changes = (text: string, onto?: number) =>
  changesOf({
    modes: modesOf(WRITTEN, 'heron'),
    rows: readPasted(text, undefined).rows,
    ...(onto === undefined ? {} : { onto }),
  });

test('modes are read in their order, cells as they are written', () => {
  expect(modesOf(WRITTEN, 'heron').map(({ id }) => id)).toEqual(['full', 'half', 'binned']);
  expect(modesOf(WRITTEN, 'heron')[0]!.cells).toEqual({
    title: 'Full',
    pixels: '4096 x 2304',
    rate: '1062 fps',
    binning: '',
    bits: '12',
  });
  expect(modesOf(WRITTEN, 'nobody')).toEqual([]);
});

test('a pasted row changes the mode of its title, or the only one of its pixels and binning; others are added', () => {
  const found = changes('Title\tPixels\tfps\tBinning\nfull\t\t1070\t\n\t2048 × 1152\t2079\t\n\t2048 x 1152\t2100\t2x2\nNew\t2048 x 1152\t2100\t');
  expect(found.map(({ kind, id }) => [kind, id])).toEqual([
    ['changed', 'full'],
    ['same', 'half'],
    ['changed', 'binned'],
    ['added', 'mode-2048x1152'],
  ]);
  expect(found[0]!.before).toEqual({ rate: '1062 fps' });
  expect(sayChanges(found)).toBe('1 added, 2 changed, 1 as it is');
}); // prettier-ignore

test('laid onto a row of the grid, rows go one under another, and beyond the last are added', () => {
  const found = changes('Pixels\tfps\n2048x1152\t2000\n1920x1080\t2212\n1280x720\t3000', 1);
  expect(found.map(({ kind, id }) => [kind, id])).toEqual([
    ['changed', 'half'],
    ['changed', 'binned'],
    ['added', 'mode-1280x720'],
  ]);
});

test('a whole table is one patch, which gives modes without problems and can be taken back', () => {
  const patch = changesPatch('heron', changes('Pixels\tfps\tBits\n4096x2304\t1062\t12\n1280x720\t3,246\t12\n1280x720\t3000\t10'));
  const after = applyPatch(WRITTEN, patch);
  expect(readShoot(after).problems).toEqual([]);
  expect(readShoot(after).shoot.kit.cameras['heron']!.modes['mode-1280x720']).toEqual({
    pixels: { widthCount: 1280, heightCount: 720 },
    maxRate_fps: 3246,
    bitDepthCount: 12,
  });
  expect(Object.keys(readShoot(after).shoot.kit.cameras['heron']!.modes)).toContain('mode-1280x720-2');
  expect(applyPatch(after, invertPatch(WRITTEN, patch))).toEqual(WRITTEN);
}); // prettier-ignore

test('wrong cells are told, and written as they were typed', () => {
  const found = changes('Pixels\tfps\tBits\nwide\tfast\t99');
  expect(found[0]!.problems.pixels).toContain('pixels across and down');
  expect(found[0]!.problems.rate).toContain('a rate is written');
  expect(found[0]!.problems.bits).toContain('at most 32');
  const after = applyPatch(WRITTEN, changesPatch('heron', found));
  expect(modesOf(after, 'heron').at(-1)!.cells).toMatchObject({ pixels: 'wide', rate: 'fast', bits: '99' });
});

test('a cell is written, or taken away when emptied', () => {
  const path = '/kit/cameras/heron/modes/full';
  expect(cellPatch(WRITTEN, path, 'bits', ' 10 ')).toEqual([{ op: 'add', path: `${path}/bits`, value: 10 }]);
  expect(cellPatch(WRITTEN, path, 'bits', '')).toEqual([{ op: 'remove', path: `${path}/bits` }]);
  expect(cellPatch(WRITTEN, path, 'binning', '')).toEqual([]);
  expect(cellProblem('binning', '')).toBeUndefined();
});

test('a new mode has an id nobody has', () => {
  expect(freshModeId(new Set(['mode-1920x1080']), '1920 × 1080')).toBe('mode-1920x1080-2');
  expect(freshModeId(new Set(['mode-1']), 'wide')).toBe('mode-2');
  expect(addMode(WRITTEN, 'heron', { pixels: '1280 x 720', rate: '3000 fps' })).toEqual({
    id: 'mode-1280x720',
    patch: [{ op: 'add', path: '/kit/cameras/heron/modes/mode-1280x720', value: { pixels: '1280 x 720', rate: '3000 fps' } }],
  });
}); // prettier-ignore
