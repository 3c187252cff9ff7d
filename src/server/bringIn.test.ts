import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { SMALL_SHOOT, steppingClock, tempFolder, tempStore } from '../../test/tempStore.ts';
import { bringInDemo, bringInFile } from './bringIn.ts';

function fileWith(bytes: string | Uint8Array, name = 'Milk & Thunder.yaml'): string {
  const file = join(tempFolder(), name);
  writeFileSync(file, bytes);
  return file;
}

const bringing = async (file: string) => ({ store: await tempStore(), clock: steppingClock(), file });

describe('the demo', () => {
  test('is brought in where there are no shoots', async () => {
    const from = await bringing(fileWith(SMALL_SHOOT));
    expect(bringInDemo(from)).toEqual({ id: 'demo', isNew: true });
    expect(from.store.open('demo').text).toBe(SMALL_SHOOT);
  });

  test('is not brought in beside other shoots, nor a second time', async () => {
    const from = await bringing(fileWith(SMALL_SHOOT));
    bringInDemo(from);
    expect(bringInDemo(from)).toBeUndefined();
    expect(from.store.list()).toHaveLength(1);
  });

  test('that is not there is passed over', async () => {
    const from = await bringing(join(tempFolder(), 'none.yaml'));
    expect(bringInDemo(from)).toBeUndefined();
    expect(from.store.list()).toEqual([]);
  });
});

describe('a file', () => {
  test('is brought in under its name', async () => {
    expect(bringInFile(await bringing(fileWith(SMALL_SHOOT)))).toEqual({ id: 'milk-thunder', isNew: true });
  });

  test('brought in again leaves the edits made since', async () => {
    const from = await bringing(fileWith(SMALL_SHOOT));
    bringInFile(from);
    const patch = [{ op: 'replace', path: '/shoot/seed', value: 8 }] as const;
    const at = '2027-03-09T07:30:00.000Z';
    from.store.edit('milk-thunder', { editId: 'edit-00001', who: 'ada', at, revision: 0, patch, summary: 'Seed' });
    expect(bringInFile(from)).toEqual({ id: 'milk-thunder', isNew: false });
    expect(from.store.open('milk-thunder').revision).toBe(1);
  });

  test.each([
    ['that is not there', () => join(tempFolder(), 'none.yaml'), 'shoot.unreadable-file'],
    ['that is a folder', () => tempFolder(), 'shoot.unreadable-file'],
    ['that is no text', () => fileWith(Uint8Array.of(0xff, 0xfe, 0x00)), 'shoot.not-text'],
    ['that is no shoot', () => fileWith('a: 1\n'), 'document.not-a-shoot'],
  ])('%s is refused', async (_, file, code) => {
    const from = await bringing(file());
    expect(() => bringInFile(from)).toThrow(expect.objectContaining({ code }) as Error);
    expect(from.store.list()).toEqual([]);
  });
});
