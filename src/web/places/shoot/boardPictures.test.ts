import { expect, test } from 'vitest';
import { applyPatch, withParents } from '../../../document/patch.ts';
import type { Written } from '../../../document/written.ts';
import { fitSize, framesOfPicturesPatch, givePicturePatch, isPicture, takePicturePatch, titleFromName } from './boardPictures.ts'; // prettier-ignore

const sent = (name: string, letter: string) =>
  ({ name, sha256: letter.repeat(64), size_B: 48_213, kind: 'image/webp' }) as const;

const laid = (written: Written, patch: Parameters<typeof withParents>[1]) =>
  applyPatch(written, withParents(written, patch));

const BOARD: Written = { board: { b1: { title: 'One' }, b2: { title: 'Two' } } };

test('a frame is given a picture, and the file is named with its hash, size and kind', () => {
  expect(laid(BOARD, givePicturePatch(BOARD, 'b1', sent('glass.webp', 'a')))).toEqual({
    board: { b1: { title: 'One', picture: 'picture-1' }, b2: { title: 'Two' } },
    files: { 'picture-1': { name: 'glass.webp', sha256: 'a'.repeat(64), size: '48213 B', kind: 'image/webp' } },
  });
});

test('another picture takes the place of the first, whose file goes with it', () => {
  const one = laid(BOARD, givePicturePatch(BOARD, 'b1', sent('a.webp', 'a')));
  const two = laid(one, givePicturePatch(one, 'b1', sent('b.webp', 'b')));
  expect(two).toMatchObject({ board: { b1: { picture: 'picture-2' } } });
  expect(Object.keys((two as { files: object }).files)).toEqual(['picture-2']);
});

test('the same picture in two frames is one file, and stays until neither shows it', () => {
  const one = laid(BOARD, givePicturePatch(BOARD, 'b1', sent('a.webp', 'a')));
  const both = laid(one, givePicturePatch(one, 'b2', sent('again.webp', 'a')));
  expect(both).toMatchObject({ board: { b1: { picture: 'picture-1' }, b2: { picture: 'picture-1' } } });
  const left = laid(both, takePicturePatch(both, 'b1'));
  expect(left).toMatchObject({ board: { b2: { picture: 'picture-1' } }, files: { 'picture-1': {} } });
  expect(laid(left, takePicturePatch(left, 'b2'))).toEqual({ ...(BOARD as object), files: {} });
});

test('taking a picture from a frame that has none changes nothing', () => {
  expect(takePicturePatch(BOARD, 'b1')).toEqual([]);
});

test('several pictures become frames in their order, behind those that are there', () => {
  const ordered: Written = { ...(BOARD as object), order: { board: ['b2', 'b1'] } };
  const files = [sent('tall_glass.png', 'a'), sent('crown.jpg', 'b'), sent('again.png', 'a')];
  expect(laid(ordered, framesOfPicturesPatch(ordered, ['b2', 'b1'], files))).toMatchObject({
    order: { board: ['b2', 'b1', 'frame-1', 'frame-2', 'frame-3'] },
    board: {
      'frame-1': { title: 'tall glass', picture: 'picture-1' },
      'frame-2': { title: 'crown', picture: 'picture-2' },
      'frame-3': { title: 'again', picture: 'picture-1' },
    },
  });
});

test('the long side is at most 1600 px, the shape is kept, and nothing is enlarged', () => {
  expect(fitSize({ width: 6000, height: 4000 })).toEqual({ width: 1600, height: 1067 });
  expect(fitSize({ width: 900, height: 3200 })).toEqual({ width: 450, height: 1600 });
  expect(fitSize({ width: 320, height: 200 })).toEqual({ width: 320, height: 200 });
  expect(fitSize({ width: 40_000, height: 2 })).toEqual({ width: 1600, height: 1 });
});

test('only pictures that a page may show are taken', () => {
  expect(['image/png', 'image/gif', 'image/svg+xml', 'application/pdf', ''].map((type) => isPicture({ type }))).toEqual([true, true, false, false, false]);
}); // prettier-ignore

test('a name becomes a title to begin with', () => {
  expect(titleFromName('tall_glass-pour 2.final.JPG')).toBe('tall glass-pour 2 final');
  expect(titleFromName('.png')).toBe('New frame');
});
