import { expect, test } from 'vitest';
import { applyPatch, invertPatch, withParents } from '../../../document/patch.ts';
import type { Written } from '../../../document/written.ts';
import type { PatchOperation } from '../../../plan/types.ts';
import { dropFilePatch, filesOfOthers, giveFilePatch, takeFilePatch } from './photometryEdits.ts';

const SENT = { name: 'flood.ies', sha256: 'a'.repeat(64), size_B: 1234, kind: 'application/octet-stream' } as const;

const BARE: Written = { kit: { lamps: { spot: { title: 'Spot' }, soft: { title: 'Soft' } } } };
const made = (written: Written, patch: readonly PatchOperation[]): Written => {
  const whole = withParents(written, patch);
  const after = applyPatch(written, whole);
  expect(applyPatch(after, invertPatch(written, whole))).toEqual(written);
  return after;
};

test('a file that was sent is named and given to the lamp in one edit', () => {
  expect(made(BARE, takeFilePatch(BARE, 'spot', SENT))).toEqual({
    kit: { lamps: { spot: { title: 'Spot', file: 'photometry-1' }, soft: { title: 'Soft' } } },
    files: { 'photometry-1': { name: 'flood.ies', sha256: SENT.sha256, size: '1234 B', kind: SENT.kind } },
  });
});

test('the same bytes for two lamps are one file, which stays until the last of them lets it go', () => {
  const one = made(BARE, takeFilePatch(BARE, 'spot', SENT));
  const both = made(one, takeFilePatch(one, 'soft', SENT));
  expect(Object.keys((both as { files: object }).files)).toHaveLength(1);
  const left = made(both, dropFilePatch(both, 'spot'));
  expect(Object.keys((left as { files: object }).files)).toHaveLength(1);
  expect(made(left, dropFilePatch(left, 'soft'))).toEqual({ ...(BARE as object), files: {} });
});

test('another file takes the place of the one before, which goes with it', () => {
  const one = made(BARE, takeFilePatch(BARE, 'spot', SENT));
  const other = made(one, takeFilePatch(one, 'spot', { ...SENT, name: 'spot.ldt', sha256: 'b'.repeat(64) }));
  expect(Object.values((other as { files: Record<string, { name: string }> }).files).map(({ name }) => name)).toEqual([
    'spot.ldt',
  ]);
});

test('a lamp may have the file of another, and having it already is no edit', () => {
  const one = made(BARE, takeFilePatch(BARE, 'spot', SENT));
  expect(filesOfOthers(one, 'soft')).toEqual([{ fileId: 'photometry-1', name: 'flood.ies', lamps: ['Spot'] }]);
  expect(filesOfOthers(one, 'spot')).toEqual([]);
  const both = made(one, giveFilePatch(one, 'soft', 'photometry-1'));
  expect(giveFilePatch(both, 'soft', 'photometry-1')).toEqual([]);
  expect(filesOfOthers(both, 'soft')).toEqual([]);
});

test('a lamp without a file lets go of none', () => {
  expect(dropFilePatch(BARE, 'spot')).toEqual([]);
});
