/** The desk with all that works for it: real clips, measured on a thread of their own, copied and looked at. */
import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { stringify } from 'yaml';
import { clipFolder, noFfmpeg, writeClip } from '../../test/footage/clips.ts';
import { synthetic } from '../../test/footage/synthetic.ts';
import { measureWorker } from '../../test/measureWorker.ts';
import { SMALL } from '../../test/shoots.ts';
import { tempFolder, tempStore } from '../../test/tempStore.ts';
import type { ClipEntry, FootageEvent } from '../record/footage.ts';
import type { ShootStore } from '../store/types.ts';
import { readKept } from '../turnover/keptMeasurement.ts';
import { openFolders } from './folders.ts';
import { openDesk } from './openDesk.ts';
import type { FootageDesk } from './types.ts';

const AT = '2027-03-09T07:30:00.000Z';
const CLIP = 'clip-00001';
const ADDED: FootageEvent = {
  kind: 'added',
  clipId: CLIP,
  folder: 'takes',
  path: 'SYNTHETIC drop 1.mkv',
  shotId: 'one',
};

const worker = measureWorker();
const outer = clipFolder();

async function shootStore(): Promise<ShootStore> {
  const store = await tempStore();
  const text = stringify(SMALL, { aliasDuplicateObjects: false });
  store.bringIn({ editId: 'import-0001', at: AT, text, id: 's' });
  return store;
}

function opened(store: ShootStore, folders: readonly string[], keepIn = tempFolder()): FootageDesk {
  const clock = { now: () => new Date(AT) };
  const desk = openDesk({ store, clock, folders: openFolders(folders), keepIn, worker: worker.entry() });
  onTestFinished(() => desk.close());
  return desk;
}

const happen = (desk: FootageDesk, event = ADDED) => desk.happen('s', { eventId: 'event-0001', who: 'ada', at: AT, event }); // prettier-ignore

/** Looks after every change until a clip is as it should be. */
function until(desk: FootageDesk, isSo: (clip: ClipEntry) => boolean): Promise<ClipEntry> {
  return new Promise((resolve, reject) => {
    const look = () => {
      desk.look('s').then(({ clips }) => {
        const clip = clips.find(({ id }) => id === CLIP);
        if (clip && isSo(clip)) {
          stop();
          resolve(clip);
        }
      }, reject);
    };
    const stop = desk.watch(look);
    look();
  });
}

describe.skipIf(noFfmpeg)('a clip that is added', () => {
  const scene = { width: 48, height: 32, rate_fps: 1000, frames: 60, exposure_s: 1 / 2000, seed: 9, lamps: [{ light: { kind: 'ripple', f_Hz: 100, depth: 0.1 } } as const] }; // prettier-ignore
  const folder = join(outer, 'takes');

  test('is measured whole, gives stills, and gets a small copy that is there for those who come later', async () => {
    mkdirSync(folder, { recursive: true });
    writeClip(join(folder, 'SYNTHETIC drop 1.mkv'), synthetic('ripple', scene));
    const [store, keepIn] = [await shootStore(), tempFolder()];
    const desk = opened(store, [folder], keepIn);
    await happen(desk);
    const { brief, measuring } = await until(desk, (clip) => clip.brief?.isWhole === true && clip.measuring?.state === 'done'); // prettier-ignore
    expect(brief).toMatchObject({ width: 48, height: 32, frameCount: 60, frameRateBasis: 'plan', flicker: 'flicker' });
    expect(brief).not.toHaveProperty('isStale');
    expect(measuring?.done).toBe(60);
    expect(readKept((await desk.measured('s', CLIP))!).measurement.frames.mean).toHaveLength(60);

    const still = await desk.still('s', { clipId: CLIP, frame: 59, width: 48 });
    expect([...still.subarray(0, 2)]).toEqual([0xff, 0xd8]);
    await expect(desk.still('s', { clipId: CLIP, frame: 60, width: 48 })).rejects.toMatchObject({ code: 'media.no-such-frame' }); // prettier-ignore

    await desk.makeProxy('s', CLIP);
    await until(desk, ({ proxy }) => proxy.state === 'ready');
    const copy = (await desk.proxyFile('s', CLIP))!;
    expect(copy.startsWith(keepIn)).toBe(true);
    expect(readFileSync(copy).subarray(4, 8).toString()).toBe('ftyp');
    await desk.close();

    const [later] = (await opened(store, [folder], keepIn).look('s')).clips;
    expect([later?.brief?.isWhole, later?.proxy.state, later?.brief?.isStale]).toEqual([true, 'ready', undefined]);
  }, 60_000);

  test('that was not measured when the desk closed is measured when it opens again', async () => {
    mkdirSync(folder, { recursive: true });
    writeClip(join(folder, 'SYNTHETIC drop 1.mkv'), synthetic('ripple', scene));
    const store = await shootStore();
    const first = opened(store, [folder]);
    await happen(first);
    await first.close();
    expect(store.footage.measurement('s', CLIP)).toBeUndefined();
    const { brief } = await until(opened(store, [folder]), (clip) => clip.measuring?.state === 'done');
    expect(brief).toMatchObject({ isWhole: true, frameCount: 60 });
  }, 60_000);

  test('nothing of a folder that is not open any more is read', async () => {
    mkdirSync(folder, { recursive: true });
    writeClip(join(folder, 'SYNTHETIC drop 1.mkv'), synthetic('ripple', scene));
    const store = await shootStore();
    const first = opened(store, [folder]);
    await happen(first);
    await first.close();
    const desk = opened(store, []);
    const { measuring, isHere } = await until(desk, (clip) => clip.measuring?.state === 'failed');
    expect([isHere, measuring?.fault?.code, measuring?.fault?.where]).toEqual([false, 'footage.path-refused', 'SYNTHETIC drop 1.mkv']); // prettier-ignore
    expect(store.footage.measurement('s', CLIP)).toBeUndefined();
    await desk.close();

    const again = opened(store, [folder]);
    await again.measure('s', CLIP, { isAnew: false });
    expect((await until(again, (clip) => clip.measuring?.state === 'done')).brief?.isWhole).toBe(true);
  }, 60_000);
});
