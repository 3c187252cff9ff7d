import { execFileSync } from 'node:child_process';
import { mkdirSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { realpath } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { tempFolder } from '../../test/tempStore.ts';
import { Fault } from '../base/fault.ts';
import { findClip, isSameMark } from './clipMark.ts';
import { listFolder, sequencesIn } from './folderListing.ts';
import { nameFolders, openFolders } from './folders.ts';

const isPosix = process.platform !== 'win32';

function write(folder: string, ...names: readonly string[]): void {
  for (const name of names) writeFileSync(join(folder, name), 'footage');
}

/** A folder called `day` with a secret beside it. */
function opened() {
  const outer = tempFolder();
  const day = join(outer, 'day');
  mkdirSync(join(day, 'takes'), { recursive: true });
  write(outer, 'secret.mov');
  mkdirSync(join(outer, 'day-2'));
  write(join(outer, 'day-2'), 'secret.mov');
  write(day, 'a.mov');
  write(join(day, 'takes'), 'b.mov');
  return { outer, day, folders: openFolders([day]) };
}

async function refusal(act: Promise<unknown>): Promise<Fault> {
  const error: unknown = await act.then(
    () => undefined,
    (thrown: unknown) => thrown,
  );
  if (error instanceof Fault) return error;
  throw error instanceof Error ? error : new Error('nothing was refused');
}

describe('names of folders', () => {
  test('are the last part of their paths, and more of it where two would be alike', () => {
    const names = nameFolders(['/mnt/a/takes', '/mnt/b/takes/', '/mnt/b/stills', '/mnt/a/takes']);
    expect(names.map(({ name }) => name)).toEqual(['a/takes', 'b/takes', 'stills']);
    expect(nameFolders(['/x/c/takes', '/y/c/takes', '/takes']).map(({ name }) => name)).toEqual(['x/c/takes', 'y/c/takes', 'takes']); // prettier-ignore
  });

  test.runIf(isPosix)('do not depend on the order in which they are given, and the root has one too', () => {
    expect(nameFolders(['/b/takes', '/a/takes']).map(({ name }) => name)).toEqual(['b/takes', 'a/takes']);
    expect(nameFolders(['/'])).toEqual([{ name: '/', path: '/' }]);
  });
});

describe('finding a place', () => {
  test('a path below the folder is found, and the folder itself', async () => {
    const { folders, day } = opened();
    expect(await folders.find({ folder: 'day', path: 'takes/b.mov' })).toBe(
      await realpath(join(day, 'takes', 'b.mov')),
    );
    expect(await folders.find({ folder: 'day', path: '' })).toBe(await realpath(day));
  });

  test.each([
    ['..', 'footage.path-refused'],
    ['../secret.mov', 'footage.path-refused'],
    ['takes/../../secret.mov', 'footage.path-refused'],
    ['takes/../a.mov', 'footage.path-refused'],
    ['../day-2/secret.mov', 'footage.path-refused'],
    ['/etc/passwd', 'footage.path-refused'],
    ['//etc/passwd', 'footage.path-refused'],
    ['takes//b.mov', 'footage.path-refused'],
    ['takes/', 'footage.path-refused'],
    ['./a.mov', 'footage.path-refused'],
    ['.', 'footage.path-refused'],
    ['a.mov\0.txt', 'footage.path-refused'],
    ['\0', 'footage.path-refused'],
    ['-2/secret.mov', 'footage.path-unknown'],
    ['gone.mov', 'footage.path-unknown'],
    ['%2e%2e/secret.mov', 'footage.path-unknown'],
    ['..\\secret.mov', isPosix ? 'footage.path-unknown' : 'footage.path-refused'],
    ['C:\\secret.mov', isPosix ? 'footage.path-unknown' : 'footage.path-refused'],
    ['\ud83e', 'footage.path-unknown'],
    ['x'.repeat(300), 'footage.path-unknown'],
    ['a.mov/b', 'footage.not-a-folder'],
  ])('the path %j is refused', async (path, code) => {
    const { folders } = opened();
    const fault = await refusal(folders.find({ folder: 'day', path }));
    expect(fault.code).toBe(code);
    expect(fault.where).toMatch(/^day: /);
  });

  test.runIf(isPosix)('a link that leads out of the folder is refused, and one within it is followed', async () => {
    const { folders, day, outer } = opened();
    symlinkSync(join(outer, 'secret.mov'), join(day, 'out.mov'));
    symlinkSync(outer, join(day, 'up'));
    symlinkSync(join(outer, 'day-2'), join(day, 'neighbour'));
    symlinkSync('takes/b.mov', join(day, 'in.mov'));
    symlinkSync('round.mov', join(day, 'round.mov'));
    for (const path of ['out.mov', 'up', 'up/secret.mov', 'neighbour/secret.mov'])
      expect([path, (await refusal(folders.find({ folder: 'day', path }))).code]).toEqual([path, 'footage.path-refused']); // prettier-ignore
    // Out and in again is in.
    expect(await folders.find({ folder: 'day', path: 'up/day/a.mov' })).toBe(await realpath(join(day, 'a.mov')));
    expect(await folders.find({ folder: 'day', path: 'in.mov' })).toBe(await realpath(join(day, 'takes', 'b.mov')));
    expect((await refusal(folders.find({ folder: 'day', path: 'round.mov' }))).code).toBe('footage.path-unknown');
  }); // prettier-ignore

  test('a folder that was not opened is refused, whatever lies there', async () => {
    const { folders, outer } = opened();
    for (const folder of ['day-2', outer, '..', '', 'DAY'])
      expect((await refusal(folders.find({ folder, path: '' }))).code).toBe('footage.folder-unknown');
  });

  test('a folder that is not there yet is told, and found once it is', async () => {
    const outer = tempFolder();
    const folders = openFolders([join(outer, 'disk')]);
    expect(await folders.look()).toEqual([{ name: 'disk', isThere: false }]);
    expect(await refusal(folders.find({ folder: 'disk', path: '' }))).toMatchObject({ code: 'footage.folder-gone', retry: true }); // prettier-ignore
    mkdirSync(join(outer, 'disk'));
    expect(await folders.look()).toEqual([{ name: 'disk', isThere: true }]);
    expect(await listFolder(folders, { folder: 'disk', path: '' })).toMatchObject({ entries: [], more: 0 });
  });
});

describe('a path of this machine', () => {
  test.runIf(isPosix)('is inside an open folder or refused, wherever links lead', async () => {
    const { folders, day, outer } = opened();
    symlinkSync(join(outer, 'secret.mov'), join(day, 'out.mov'));
    symlinkSync(day, join(outer, 'also-day'));
    for (const path of [join(day, 'a.mov'), join(outer, 'also-day', 'a.mov')]) await folders.requireInside(path);
    for (const path of [
      join(outer, 'secret.mov'),
      join(outer, 'day-2', 'secret.mov'),
      join(day, 'out.mov'),
      join(day, 'gone.mov'),
    ])
      // prettier-ignore
      expect([path, (await refusal(folders.requireInside(path))).code]).toEqual([path, 'footage.path-refused']);
  });
});

describe('sequences', () => {
  const found = (...names: readonly string[]) => sequencesIn(names).map(({ name, pictures }) => [name, pictures]);

  test('are pictures that differ in their number alone, under the name of the first', () => {
    expect(found('f.0010.png', 'f.0009.png', 'f.0011.png', 'g.0001.png', 'g.0002.tif')).toEqual([['f.0009.png', 3]]);
  });

  test('are apart where numbers are written more widely, as ffmpeg reads them', () => {
    expect(found('f9.png', 'f10.png', 'f0010.png', 'f0011.png', 'f8.png')).toEqual([['f8.png', 3], ['f0010.png', 2]]); // prettier-ignore
  });

  test('are none of one picture, of pictures without a number, or of what is no picture', () => {
    expect(found('f1.png', 'cover.png', 'a1.mov', 'a2.mov', 'notes1.txt', 'notes2.txt')).toEqual([]);
  });
});

describe('listing a folder', () => {
  test('folders come first, then clips by number, hidden ones and what is no clip left out', async () => {
    const { folders, day } = opened();
    write(day, 'take 10.MOV', 'take 2.mov', 'notes.txt', '.hidden.mov', 'f.0001.png', 'f.0002.png', 'cover.jpg');
    mkdirSync(join(day, '.trash'));
    const { entries, more } = await listFolder(folders, { folder: 'day', path: '' });
    expect(entries.map(({ name, kind, pictures, size_B }) => [name, kind, pictures, size_B])).toEqual([
      ['takes', 'folder', undefined, undefined],
      ['a.mov', 'movie', undefined, 7],
      ['f.0001.png', 'sequence', 2, undefined],
      ['take 2.mov', 'movie', undefined, 7],
      ['take 10.MOV', 'movie', undefined, 7],
    ]);
    expect(entries.every(({ modified }) => /^\d{4}-\d\d-\d\dT.*Z$/.test(modified ?? ''))).toBe(true);
    expect(more).toBe(0);
    expect((await listFolder(folders, { folder: 'day', path: 'takes' })).entries.map(({ name }) => name)).toEqual(['b.mov']); // prettier-ignore
  });

  test('of more than 500 it says how many there are besides, and leaves out what was written to longest ago', async () => {
    const { folders, day } = opened();
    const takes = join(day, 'takes');
    write(takes, ...Array.from({ length: 520 }, (_, i) => `c${i}.mov`));
    for (let i = 0; i < 520; i += 1) utimesSync(join(takes, `c${i}.mov`), 2_000_000_000 + i, 2_000_000_000 + i);
    const { entries, more } = await listFolder(folders, { folder: 'day', path: 'takes' });
    expect([entries.length, more, entries[0]?.name, entries.at(-1)?.name]).toEqual([500, 21, 'c20.mov', 'c519.mov']);
  });

  test.runIf(isPosix)('names with anything in them come through, and can be found again', async () => {
    const { folders, day } = opened();
    const names = ['-i.mov', "it's \"fine\".mov", 'two\nlines.mov', 'splash 💥.mov', 'back\\slash.mov', '%2e%2e.mov', 'ä.mov', 'a\u0301.mov', 'file:x.mov', '$(touch x).mov', ' .mov']; // prettier-ignore
    write(day, ...names);
    const listed = (await listFolder(folders, { folder: 'day', path: '' })).entries.map(({ name }) => name);
    for (const name of names) {
      expect(listed).toContain(name);
      expect((await findClip(folders, { folder: 'day', path: name })).mark.size_B).toBe(7);
    }
  });

  test.runIf(process.platform === 'linux')('names that are no text are counted, not shown', async () => {
    const { folders, day } = opened();
    writeFileSync(Buffer.concat([Buffer.from(`${day}/caf`), Buffer.of(0xe9), Buffer.from('.mov')]), 'footage');
    const listing = await listFolder(folders, { folder: 'day', path: '' });
    expect(listing.entries.map(({ name }) => name)).toEqual(['takes', 'a.mov']);
    expect(listing.unnamed).toBe(1);
  });

  test.runIf(isPosix)(
    'pipes and links that lead out are left out, and links within are what they lead to',
    async () => {
      const { folders, day, outer } = opened();
      execFileSync('mkfifo', [join(day, 'pipe.mov')]);
      symlinkSync(join(outer, 'secret.mov'), join(day, 'out.mov'));
      symlinkSync(join(outer, 'day-2'), join(day, 'neighbour'));
      symlinkSync('/dev/zero', join(day, 'zero.mov'));
      symlinkSync('gone', join(day, 'broken.mov'));
      symlinkSync('takes', join(day, 'more'));
      symlinkSync('a.mov', join(day, 'same.mov'));
      const { entries } = await listFolder(folders, { folder: 'day', path: '' });
      expect(entries.map(({ name, kind }) => [name, kind])).toEqual([['more', 'folder'], ['takes', 'folder'], ['a.mov', 'movie'], ['same.mov', 'movie']]); // prettier-ignore
      expect((await refusal(findClip(folders, { folder: 'day', path: 'pipe.mov' }))).code).toBe('footage.not-a-clip');
      expect((await refusal(findClip(folders, { folder: 'day', path: 'zero.mov' }))).code).toBe('footage.path-refused');
    },
  );

  test('what is no folder is refused', async () => {
    const { folders } = opened();
    expect((await refusal(listFolder(folders, { folder: 'day', path: 'a.mov' }))).code).toBe('footage.not-a-folder');
  });
});

describe('finding a clip', () => {
  test('a folder is none', async () => {
    const { folders } = opened();
    expect((await refusal(findClip(folders, { folder: 'day', path: 'takes' }))).code).toBe('footage.not-a-clip');
  });

  test('a movie that is written to, and pictures that are added, are known not to be the same', async () => {
    const { folders, day } = opened();
    const look = async (path: string) => (await findClip(folders, { folder: 'day', path })).mark;
    const before = await look('a.mov');
    expect(isSameMark(before, await look('a.mov'))).toBe(true);
    writeFileSync(join(day, 'a.mov'), 'longer footage');
    expect(isSameMark(before, await look('a.mov'))).toBe(false);
    write(day, 'f.1.png', 'f.2.png');
    const two = await look('f.1.png');
    expect(two.pictures).toBe(2);
    write(day, 'f.3.png');
    expect(isSameMark(two, await look('f.1.png'))).toBe(false);
  });

  test('one that is still empty is there', async () => {
    const { folders, day } = opened();
    writeFileSync(join(day, 'coming.mov'), '');
    expect((await findClip(folders, { folder: 'day', path: 'coming.mov' })).mark).toMatchObject({ size_B: 0 });
  });

  test.runIf(isPosix)('pictures of a sequence that are links out of the folder are refused', async () => {
    const { folders, day, outer } = opened();
    write(outer, 'private.png');
    write(day, 'f.1.png', 'f.2.png');
    symlinkSync(join(outer, 'private.png'), join(day, 'f.3.png'));
    expect((await refusal(findClip(folders, { folder: 'day', path: 'f.1.png' }))).code).toBe('footage.path-refused');
  });
});
