import { describe, expect, test } from 'vitest';
import { accepted, madeBytes } from '../../../test/photometry/files.ts';
import { Fault } from '../../base/fault.ts';
import { applyPatch } from '../../document/patch.ts';
import type { Written } from '../../document/written.ts';
import { readPhotometry } from '../../laws/light/photometry/read.ts';
import { lightOfSetup } from '../../plan/lighting.ts';
import { photometryTold } from '../../plan/photometry.ts';
import { readLampFile } from '../../plan/readLampFile.ts';
import { deriveShoot } from './derive.ts';
import { openLampShelf } from './lampShelf.ts';

/** Hashes that stand in for real ones: each bench has its own, as plans are told of a hash for good. */
let count = 0;
const freshHash = () => String((count += 1)).padStart(64, '0');

const LAMBERT = madeBytes('lambert-1000cd.ies');
const BROKEN = new TextEncoder().encode('IESNA:LM-63-2002\nTILT=NONE\n1 1000 one 3 1 1 2 0 0 0\n');

const gone = new Fault({ code: 'file.unknown', what: 'No such file', where: 's', mend: 'Send it again.' });

function bench() {
  const sha256 = freshHash();
  const written: Written = {
    longsecond: 1,
    files: { matte: { name: 'matte.ies', sha256 } },
    kit: { lamps: { soft: { title: 'Soft', file: 'matte' } } },
    lighting: { key: { lamps: { left: { lamp: 'soft', at: '0 m, -2 m, 0 m' } } } },
    shots: { pour: { title: 'The pour', lighting: 'key' }, other: { title: 'Another' } },
  };
  const fetched: { readonly path: string; readonly answer: (with_: Uint8Array | Error) => void }[] = [];
  const kept: string[] = [];
  const waits: (() => void)[] = [];
  let changedCount = 0;
  const shelf = openLampShelf({
    fetchBytes: (shootId, hash) =>
      new Promise((resolve, reject) => {
        fetched.push({
          path: `${shootId} ${hash}`,
          answer: (given) => (given instanceof Error ? reject(given) : resolve(given)),
        });
      }),
    read: (file, bytes) => Promise.resolve(readLampFile(file, bytes)),
    keep: (name) => kept.push(name),
    after: (_wait_ms, run) => {
      waits.push(run);
      return () => undefined;
    },
  });
  const desk = shelf.open('s', () => (changedCount += 1));
  return {
    shelf,
    desk,
    sha256,
    written,
    fetched,
    kept,
    waits,
    changedCount: () => changedCount,
    derive: (of: Written = written) => deriveShoot(of, desk.tell),
    settle: async () => {
      for (let i = 0; i < 30; i += 1) await Promise.resolve();
    },
  };
}

const FRONT = { azimuth_deg: 0, elevation_deg: 0 };
const lackOf = ({ derive }: ReturnType<typeof bench>) => lightOfSetup(derive().shoot, 'key', FRONT).lacks[0]?.what;
const asked = ({ sha256 }: { readonly sha256: string }) => ({ kind: 'photometry', sha256, name: 'matte.ies' }) as const;

describe('a file that a lamp names', () => {
  test('is fetched once, says meanwhile that it is being read, and then lights', async () => {
    const it = bench();
    expect(lackOf(it)).toBe('matte.ies is being read');
    expect(lackOf(it)).toBe('matte.ies is being read');
    expect(it.fetched.map(({ path }) => path)).toEqual([`s ${it.sha256}`]);
    expect(it.changedCount()).toBe(0);
    it.fetched[0]!.answer(LAMBERT);
    await it.settle();
    expect(it.changedCount()).toBe(1);
    expect(it.kept).toEqual([`photometry ${it.sha256}`]);
    // 1000 cd at 2 m, facing the subject.
    expect(lightOfSetup(it.derive().shoot, 'key', FRONT).illuminance_lx).toBeCloseTo(250, 6);
    expect(it.fetched).toHaveLength(1);
  });

  test('makes a new plan of the shots it lights once it is read, and no other plan however often that is asked', async () => {
    const it = bench();
    const before = it.derive().plan;
    expect(it.derive().plan).toBe(before);
    it.fetched[0]!.answer(LAMBERT);
    await it.settle();
    const after = it.derive().plan;
    expect(after.shots.map((shot, i) => shot === before.shots[i])).toEqual([false, true]);
    expect(it.derive().plan).toBe(after);
    // A file more, such as a picture, is no reason to plan what the lamps light again.
    const more = applyPatch(it.written, [{ op: 'add', path: '/files/picture', value: { name: 'a.png', sha256: freshHash() } }]); // prettier-ignore
    expect(it.derive(more).plan.shots[0]).toBe(after.shots[0]);
  });

  test('that is broken says at which line and why, and is no business of the workers', async () => {
    const it = bench();
    it.derive();
    it.fetched[0]!.answer(BROKEN);
    await it.settle();
    expect(lackOf(it)).toMatch(/^matte\.ies, line 3: /);
    expect(it.kept).toEqual([]);
  });

  test('that the server does not have says so, and is not asked for again', async () => {
    const it = bench();
    it.derive();
    it.fetched[0]!.answer(gone);
    await it.settle();
    expect(lackOf(it)).toBe('matte.ies is not here: only its name was brought in');
    expect(it.waits).toHaveLength(0);
  });

  test('that could not be fetched is asked for again a little later', async () => {
    const it = bench();
    it.derive();
    it.fetched[0]!.answer(new TypeError('fetch failed'));
    await it.settle();
    expect(lackOf(it)).toContain('could not be fetched');
    it.waits[0]!();
    expect(lackOf(it)).toBe('matte.ies is being read');
    it.fetched[1]!.answer(LAMBERT);
    await it.settle();
    expect(lackOf(it)).toBeUndefined();
  });

  test('that was read for its preview is not fetched at all', () => {
    const it = bench();
    const photometry = accepted(readPhotometry(LAMBERT));
    it.shelf.put(asked(it), { kind: 'photometry', photometry });
    expect(lackOf(it)).toBeUndefined();
    expect(it.fetched).toHaveLength(0);
    expect(it.kept).toEqual([`photometry ${it.sha256}`]);
  });
});

test('a shoot that is only looked back at has what was read, and nothing is fetched for it', () => {
  const it = bench();
  const photometry = accepted(readPhotometry(LAMBERT));
  const look = () => lightOfSetup(deriveShoot(it.written, it.shelf.tell).shoot, 'key', FRONT).lacks;
  expect(look()[0]?.what).toContain('has not been read here');
  it.shelf.put(asked(it), { kind: 'photometry', photometry });
  expect(look()).toEqual([]);
  expect(it.fetched).toHaveLength(0);
});

test('files that come together are read one after the other, and one that fails holds up none behind it', async () => {
  const reading: { readonly name: string; readonly end: (error?: Error) => void }[] = [];
  const shelf = openLampShelf({
    fetchBytes: () => Promise.resolve(LAMBERT),
    read: ({ name }) =>
      new Promise((resolve, reject) => {
        reading.push({
          name,
          end: (error) => (error ? reject(error) : resolve({ kind: 'unread', says: `${name} read` })),
        });
      }),
    keep: () => undefined,
    after: () => () => undefined,
  });
  const files = { a: { name: 'a.ies', sha256: freshHash() }, b: { name: 'b.ies', sha256: freshHash() } };
  const { desk, settle } = { desk: shelf.open('s', () => undefined), settle: bench().settle };
  const { shoot } = deriveShoot({ files, kit: { lamps: { one: { file: 'a' }, two: { file: 'b' } } } }, desk.tell);
  await settle();
  expect(reading.map(({ name }) => name)).toEqual(['a.ies']);
  reading[0]!.end(new Error('out of memory'));
  await settle();
  expect(reading.map(({ name }) => name)).toEqual(['a.ies', 'b.ies']);
  reading[1]!.end();
  await settle();
  desk.tell(shoot);
  expect([...photometryTold(shoot)!.unread.values()]).toEqual(['a.ies could not be read: out of memory', 'b.ies read']);
});

test('a desk that is closed hears nothing more', async () => {
  const it = bench();
  it.derive();
  it.desk.close();
  it.fetched[0]!.answer(LAMBERT);
  await it.settle();
  expect(it.changedCount()).toBe(0);
});
