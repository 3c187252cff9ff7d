/** Clips measured for a store, closed and opened again at one point after the other: in the end it is as if never closed. */
import { statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { createQueue } from '../../src/jobs/queue.ts';
import type { Queue } from '../../src/jobs/queueTypes.ts';
import { createRunners } from '../../src/jobs/runners.ts';
import type { MeasureInput } from '../../src/jobs/types.ts';
import { clipFolder, noFfmpeg, writeClip } from '../footage/clips.ts';
import { synthetic } from '../footage/synthetic.ts';
import { measureWorker } from '../measureWorker.ts';
import { SMALL_SHOOT, tempStore } from '../tempStore.ts';

const folder = clipFolder();
const worker = measureWorker();
const FRAMES = 300;

const drop = { radius_px: 4, bright: 0.9, x_px: () => 25, y_px: (t_s: number) => -8 + 1000 * Math.max(0, t_s - 0.02) };

test.skipIf(noFfmpeg)(
  'a clip whose measuring is closed again and again comes to what it does in one go',
  async () => {
    const clips = ['one.mkv', 'two.mkv'].map((name) => join(folder, name));
    const scene = { width: 48, height: 32, rate_fps: 1000, exposure_s: 0.0005, lamps: [{ light: { kind: 'ripple', f_Hz: 100, depth: 0.1 } as const }], drop }; // prettier-ignore
    clips.forEach((path, i) => writeClip(path, synthetic('clip', { ...scene, frames: i === 0 ? 2.5 * FRAMES : FRAMES, seed: 5 + i }))); // prettier-ignore
    const [store, other] = [await tempStore(), await tempStore()];
    const [shoot, otherShoot] = ['s', 's'] as const;
    for (const of of [store, other]) of.bringIn({ editId: 'import-0001', at: '2030-01-01T00:00:00.000Z', text: SMALL_SHOOT, id: shoot }); // prettier-ignore

    const runners = createRunners({ proxies: { make: () => Promise.reject(new Error('none is asked for')) }, entry: worker.entry(), checkpointAfter_ms: 400 }); // prettier-ignore
    const open = (of: typeof store): Queue => createQueue({ shelf: of.footage, runners, clock: () => '2030-01-01T00:00:00.000Z', changed: () => undefined }); // prettier-ignore
    const ask = (queue: Queue, shootId: string) =>
      clips.forEach((path, i) => {
        const { size, mtimeMs } = statSync(path);
        const input: MeasureInput = { path, basis: { file: { size_B: size, modified_ms: mtimeMs }, captureRate_fps: 1000, rateFrom: 'given', curve: 'linear', blackCode: 64 } }; // prettier-ignore
        queue.ask({ shootId, clipId: `clip-000${i}`, kind: 'measure', input: JSON.stringify(input), isAnew: false });
      });
    const isDone = (queue: Queue, shootId: string) => queue.jobs(shootId).every(({ state }) => state === 'done');
    const whileNot = async (isSo: () => boolean) => {
      while (!isSo()) await new Promise((resolve) => setTimeout(resolve, 2));
    };

    const inOneGo = open(other);
    ask(inOneGo, otherShoot);
    await whileNot(() => isDone(inOneGo, otherShoot));
    await inOneGo.close();

    let queue = open(store);
    ask(queue, shoot);
    const stops: string[] = [];
    for (const done of [0, 500, 800]) {
      const reached = () => queue.jobs(shoot).reduce((sum, of) => sum + of.done, 0) >= done;
      await whileNot(() => reached() || isDone(queue, shoot));
      await queue.close();
      stops.push(store.footage.jobs(shoot).map(({ state, done: of }) => `${state} ${of}`).join(', ')); // prettier-ignore
      queue = open(store);
    }
    await whileNot(() => isDone(queue, shoot));
    await queue.close();

    expect(new Set(stops).size).toBeGreaterThan(1);
    for (const clip of ['clip-0000', 'clip-0001']) {
      expect(store.footage.measurement(shoot, clip)).toEqual(other.footage.measurement(otherShoot, clip));
      expect(store.footage.measurement(shoot, clip)).toMatchObject({ isWhole: true });
      expect(store.footage.checkpoint(`measure ${shoot} ${clip}`)).toBeUndefined();
    }
  },
  120_000,
);
