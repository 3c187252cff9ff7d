import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, test, vi } from 'vitest';
import { clipFolder, noFfmpeg, writeClip } from '../../test/footage/clips.ts';
import { synthetic, type Scene } from '../../test/footage/synthetic.ts';
import { measureWorker } from '../../test/measureWorker.ts';
import { Fault } from '../base/fault.ts';
import { measureClip, type ClipMeasured } from './measureClip.ts';
import { measureInWorker, type MeasureInWorkerGiven } from './measureInWorker.ts';

const folder = clipFolder();
const at = (name: string) => join(folder, name);
const worker = measureWorker();

const SCENE: Scene = {
  width: 48,
  height: 32,
  rate_fps: 1000,
  frames: 240,
  exposure_s: 1 / 2000,
  seed: 9,
  lamps: [{ light: { kind: 'ripple', f_Hz: 100, depth: 0.1 } }],
  drop: { radius_px: 4, bright: 0.9, x_px: () => 25, y_px: (t_s) => -8 + 1000 * Math.max(0, t_s - 0.02) },
};
const OPTIONS = { captureRate_fps: 1000, curve: { kind: 'linear' }, isFirstLook: false } as const;

const run = (name: string, more: Partial<MeasureInWorkerGiven> = {}): Promise<ClipMeasured> =>
  measureInWorker({ ...OPTIONS, name, entry: worker.entry(), ...more });

/** Programs for footage that this process, any of its threads, left running. */
function toolsLeft(): readonly string[] {
  return readdirSync('/proc').filter((pid) => {
    if (!/^\d+$/.test(pid)) return false;
    try {
      const [, rest = ''] = /\) (.*)/.exec(readFileSync(`/proc/${pid}/stat`, 'utf8')) ?? [];
      const [state, parent] = rest.split(' ');
      return state !== 'Z' && parent === String(process.pid) && /ffmpeg|ffprobe|sleep/.test(readFileSync(`/proc/${pid}/cmdline`, 'utf8')); // prettier-ignore
    } catch {
      return false;
    }
  });
}

/** One that is killed takes a moment. */
const nothingLeft = () => vi.waitFor(() => expect(toolsLeft()).toEqual([]), { timeout: 20_000, interval: 10 });

async function faultOf(act: Promise<unknown>): Promise<Fault> {
  const error: unknown = await act.then(
    () => undefined,
    (cause: unknown) => cause,
  );
  expect(error).toBeInstanceOf(Fault);
  return error as Fault;
}

/** Stopped once something was put away of at least so many frames, or at its end where that comes first: what was put away last. */
async function stoppedAt(name: string, frames: number, saved?: Uint8Array) {
  const stop = new AbortController();
  let last: { readonly done: number; readonly bytes: Uint8Array<ArrayBuffer> } | undefined;
  await run(name, {
    signal: stop.signal,
    saved,
    checkpointAfter_ms: 0,
    onCheckpoint: (done, bytes) => {
      last = { done, bytes };
      if (done >= frames) stop.abort(new Error('enough'));
    },
  }).catch((error: unknown) => expect(error).toEqual(new Error('enough')));
  return last;
}

describe.skipIf(noFfmpeg)('a clip measured on a thread of its own', () => {
  const clip = at('SYNTHETIC drop.mkv');
  let inOneGo: ClipMeasured;

  test('comes to what it does here, and tells how far it is', async () => {
    writeClip(clip, synthetic('drop', SCENE));
    const seen: (readonly [number, number | undefined])[] = [];
    const measured = await run(clip, { onProgress: (done, total) => seen.push([done, total]) });
    inOneGo = await measureClip({ ...OPTIONS, name: clip });
    expect(measured).toEqual(inOneGo);
    expect(seen.length).toBeGreaterThan(0);
    await nothingLeft();
  });

  test('stopped anywhere and gone on with, once or again and again, comes to the same', async () => {
    const once = (await stoppedAt(clip, 30))!;
    expect(once.done).toBeLessThan(SCENE.frames);
    expect(await run(clip, { saved: once.bytes })).toEqual(inOneGo);

    let saved: Uint8Array | undefined;
    const stops: number[] = [];
    for (const frames of [1, 25, 26]) {
      const at = await stoppedAt(clip, frames, saved);
      if (!at) break;
      stops.push(at.done);
      saved = at.bytes;
    }
    expect(stops.length).toBeGreaterThan(0);
    expect(stops).toEqual([...stops].sort((a, b) => a - b));
    expect(await run(clip, { saved })).toEqual(inOneGo);
  });

  test.each<readonly [string, (bytes: Uint8Array) => Uint8Array, { readonly captureRate_fps?: number }]>([
    ['of another clip', (bytes) => bytes, { captureRate_fps: 999 }],
    ['that cannot be read', (bytes) => bytes.slice(0, 2000), {}],
  ])('what was put away %s is not gone on from', async (_, spoil, more) => {
    const { bytes } = (await stoppedAt(clip, 30))!;
    const { measurement, notes } = await run(clip, { saved: spoil(bytes), ...more });
    expect(measurement).toEqual((await measureClip({ ...OPTIONS, ...more, name: clip })).measurement);
    if (more.captureRate_fps) expect(notes.join(' ')).toContain('begun anew');
  });

  test('whose file was written to meanwhile is measured anew, and said to be', async () => {
    const other = at('other.mkv');
    writeClip(other, synthetic('before', SCENE));
    const { bytes } = (await stoppedAt(other, 30))!;
    writeClip(other, synthetic('after', { ...SCENE, seed: 10 }));
    const { measurement, notes } = await run(other, { saved: bytes });
    expect(measurement).toEqual((await measureClip({ ...OPTIONS, name: other })).measurement);
    expect(notes).toContain('Measuring was stopped, and could not be gone on with: it was begun anew.');
  });

  test('that is long is looked at first, after each of three stretches', async () => {
    const long = at('long.mkv');
    writeClip(long, synthetic('long', { ...SCENE, width: 32, height: 24, frames: 724 }));
    const looks: ClipMeasured[] = [];
    const { isWhole } = await run(long, { onFirstLook: (look) => looks.push(look) });
    expect(isWhole).toBe(true);
    expect(looks.map((look) => [look.isWhole, look.measurement.frameCount])).toEqual([[false, 120], [false, 120], [false, 120]]); // prettier-ignore
  });

  test('that cannot be read is refused as it is here', async () => {
    writeFileSync(at('broken.mov'), 'nothing of the kind');
    expect(await faultOf(run(at('broken.mov')))).toMatchObject({ code: 'media.not-a-movie' });
    await nothingLeft();
  });

  test('nobody wants any more leaves nothing running, whether stopped at once or before', async () => {
    const stop = new AbortController();
    const measuring = run(clip, { signal: stop.signal, onProgress: () => stop.abort(new Error('no more')) });
    await expect(measuring).rejects.toThrow('no more');
    await nothingLeft();
    await expect(run(clip, { signal: AbortSignal.abort(new Error('never')) })).rejects.toThrow('never');
  });

  test('is let go when whoever is told of it fails', async () => {
    const measuring = run(clip, { checkpointAfter_ms: 0, onCheckpoint: () => { throw new Error('the disk is full'); } }); // prettier-ignore
    await expect(measuring).rejects.toThrow('the disk is full');
    await nothingLeft();
  });
});

describe('a thread that dies', () => {
  const dying = (name: string, how: string): URL => {
    const file = at(name);
    writeFileSync(file, `
      import { spawn } from 'node:child_process';
      import { parentPort } from 'node:worker_threads';
      parentPort.on('message', ({ id }) => {
        const { pid } = spawn('sleep', ['60'], { stdio: 'ignore' });
        parentPort.postMessage({ id, told: { tool: { pid, isRunning: true } } });
        setTimeout(() => { ${how} }, 50);
      });
    `); // prettier-ignore
    return pathToFileURL(file);
  };
  test.each([
    ['of an error', 'throw new Error("out of luck")', /out of luck/],
    ['without a word', 'process.exit(3)', /ended/],
  ])('%s is a fault, and what it had started ends', async (name, how, says) => {
    const entry = dying(`${name}.mjs`, how);
    const fault = await faultOf(measureInWorker({ ...OPTIONS, name: 'pour.mov', entry }));
    expect(fault).toMatchObject({ code: 'measure.broke-off', where: 'pour.mov', retry: true });
    expect(fault.what).toMatch(says);
    await nothingLeft();
  });
});
