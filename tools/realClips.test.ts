import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { takeClips } from './realClips.mjs';

describe('clips taken out of a package', () => {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'longsecond-package-'));
    mkdirSync(join(folder, 'opened/usr/share/doc'), { recursive: true });
    mkdirSync(join(folder, 'taken'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));
  const take = () => takeClips(join(folder, 'opened'), join(folder, 'taken'));

  test('that lacks one say which', () => {
    expect(take()).toMatch(/holds no cup\.mp4/);
    expect(readdirSync(join(folder, 'taken'))).toEqual([]);
  });

  test('that holds another under its name say so, packed or not', () => {
    for (const [name, bytes] of [
      ['cup.mp4', Buffer.from('another')],
      ['cup.mp4.gz', gzipSync('another')],
    ] as const) {
      writeFileSync(join(folder, 'opened/usr/share/doc', name), bytes);
      expect(take()).toMatch(/cup\.mp4 of .* is another than the one the tests know/);
      rmSync(join(folder, 'opened/usr/share/doc', name));
    }
    expect(readdirSync(join(folder, 'taken'))).toEqual([]);
  });
});
