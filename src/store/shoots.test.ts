import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { SMALL_SHOOT, steppingClock, tempStore } from '../../test/tempStore.ts';
import { Fault } from '../base/fault.ts';
import type { ShootStore } from './types.ts';

const AT = '2027-03-09T07:30:00.000Z';
const clock = steppingClock();

async function storeWithShoot(text = SMALL_SHOOT): Promise<ShootStore> {
  const store = await tempStore();
  store.bringIn({ editId: 'import-0001', at: AT, text, id: 's' });
  return store;
}

function codeOf(run: () => unknown): string {
  try {
    run();
  } catch (error) {
    if (error instanceof Fault) return error.code;
    throw error;
  }
  throw new Error('nothing was refused');
}

const hashOf = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const PICTURE = Buffer.from('\x89PNG\r\n\x1a\n and the rest', 'latin1');
const picture = { name: 'frame.png', kind: 'image/png', bytes: PICTURE };

describe('what a shoot is in the list', () => {
  test('is current until it is made a template or archived, which changes nothing else', async () => {
    const store = await storeWithShoot();
    const before = store.open('s');
    expect(store.list()).toMatchObject([{ standing: 'current' }]);
    expect(store.setStanding('s', 'template')).toEqual({ ...store.list()[0], standing: 'template' });
    expect(store.setStanding('s', 'archived').updated).toBe(AT);
    expect(store.list()).toMatchObject([{ standing: 'archived', revision: 0 }]);
    expect(store.open('s')).toEqual(before);
    expect(codeOf(() => store.setStanding('gone', 'archived'))).toBe('shoot.unknown');
  });
});

describe('duplicating', () => {
  const as = (title: string, editId = 'copy-00001') => ({ editId, at: clock.now().toISOString(), title });

  test('makes a shoot of its own whose text differs only in the title', async () => {
    const store = await storeWithShoot();
    store.edit('s', { editId: 'edit-00001', who: 'ada', at: AT, revision: 0, patch: [{ op: 'replace', path: '/shoot/seed', value: 8 }], summary: 'Seed' }); // prettier-ignore
    const copy = store.duplicate('s', as('Cream: and "rain"'));
    expect(copy).toMatchObject({ id: 'cream-and-rain', title: 'Cream: and "rain"', revision: 0 });
    const text = SMALL_SHOOT.replace('seed: 7', 'seed: 8');
    const line = /^ {2}title: .* {3}# working title$/m;
    expect(copy.text.replace(line, '')).toBe(text.replace(line, ''));
    expect(store.journal(copy.id, { after: 0, limit: 10 }).rows).toEqual([]);
    expect(store.open('s')).toMatchObject({ title: 'Milk and thunder', revision: 1 });
  });

  test('sent twice, makes one', async () => {
    const store = await storeWithShoot();
    const first = store.duplicate('s', as('Cream'));
    expect(store.duplicate('s', as('Cream'))).toEqual(first);
    expect(store.list()).toHaveLength(2);
  });

  test('takes a title in where there was none', async () => {
    const store = await storeWithShoot('longsecond: 1\n# bare\n');
    expect(store.duplicate('s', as('Cream'))).toMatchObject({ title: 'Cream', written: { shoot: { title: 'Cream' } } });
  });

  test('shares the files by their hash', async () => {
    const store = await storeWithShoot();
    const sha256 = store.keepFile('s', picture);
    const { id } = store.duplicate('s', as('Cream'));
    expect(store.fileOf(id, sha256)).toMatchObject({ name: 'frame.png', bytes: PICTURE });
  });
});

describe('ids', () => {
  test.each(['shoots', 'reckoner', 'gallery', 'api', 'kit', 'paper', 'Kit'])('%s is refused', async (id) => {
    const store = await tempStore();
    const bring = () => store.bringIn({ editId: 'import-0002', at: AT, text: SMALL_SHOOT, id });
    expect(codeOf(bring)).toBe('shoot.id-reserved');
    expect(store.list()).toEqual([]);
  });

  test('a shoot that is called like another place gets an id of its own', async () => {
    const store = await storeWithShoot();
    expect(store.duplicate('s', { editId: 'copy-00001', at: AT, title: 'Paper' }).id).toBe('paper-2');
  });
});

describe('files', () => {
  const named = (sha256: string) =>
    `${SMALL_SHOOT}files:\n  f1: { name: board.png, sha256: "${sha256}", size: 12 B }\n`;

  test('are kept once by what they hold and given back whole', async () => {
    const store = await storeWithShoot();
    const sha256 = store.keepFile('s', picture);
    expect(sha256).toBe(hashOf(PICTURE));
    expect(store.keepFile('s', { ...picture, name: 'again.png' })).toBe(sha256);
    expect(store.fileOf('s', sha256)).toEqual({ name: 'again.png', kind: 'image/png', size_B: PICTURE.length, bytes: PICTURE }); // prettier-ignore
  });

  test('of another shoot are not to be had, unless this one names them too', async () => {
    const store = await storeWithShoot();
    const sha256 = store.keepFile('s', picture);
    const at = AT;
    store.bringIn({ editId: 'import-0002', at, text: SMALL_SHOOT, id: 'other' });
    expect(codeOf(() => store.fileOf('other', sha256))).toBe('file.unknown');
    store.bringIn({ editId: 'import-0003', at, text: named(sha256.toUpperCase()), id: 'knows' });
    expect(store.fileOf('knows', sha256)).toMatchObject({ name: 'board.png', bytes: PICTURE });
  });

  test('that a shoot names are told with their size where they are here', async () => {
    const sha256 = hashOf(PICTURE);
    const store = await storeWithShoot(`${named(sha256)}  odd: 7\n  none: { name: x }\n`);
    const all = () => store.filesOf('s').map(({ id, size_B }) => [id, size_B]);
    expect(all()).toEqual([['f1', undefined], ['odd', undefined], ['none', undefined]]); // prettier-ignore
    store.keepFile('s', picture);
    expect(all()[0]).toEqual(['f1', PICTURE.length]);
  });

  test('that come with a shoot are kept with it or not at all', async () => {
    const store = await tempStore();
    const failing = function* () {
      yield picture;
      throw new Fault({ code: 'zip.hash-differs', what: 'Differs', where: 'x', mend: 'Mend it.' });
    };
    const bring = () => store.bringIn({ editId: 'import-0001', at: AT, text: SMALL_SHOOT, id: 's', files: failing() });
    expect(codeOf(bring)).toBe('zip.hash-differs');
    expect(store.list()).toEqual([]);
    store.bringIn({ editId: 'import-0001', at: AT, text: named(hashOf(PICTURE)), id: 's' });
    expect(codeOf(() => store.fileOf('s', hashOf(PICTURE)))).toBe('file.unknown');
  });
});
