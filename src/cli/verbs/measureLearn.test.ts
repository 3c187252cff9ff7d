import { createHash } from 'node:crypto';
import { cpSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { captureCommand } from '../../../test/captureCommand.ts';
import { clipFolder, noFfmpeg, writeClip } from '../../../test/footage/clips.ts';
import { synthetic, type Scene } from '../../../test/footage/synthetic.ts';
import { readMeasuredWaveform } from '../../laws/flicker/measured.ts';
import { measureWorker } from '../../../test/measureWorker.ts';
import { MeasureReply } from '../../turnover/measureSchema.ts';
import { measureVerb } from './measure.ts';

const folder = clipFolder();
const worker = measureWorker();
const at = (name: string) => join(folder, name);
const SHOOT = at('shoot.yaml');

async function* nothing(): AsyncGenerator<Uint8Array> {}

const run = (args: readonly string[]) =>
  captureCommand(['measure', ...args], [{ name: 'measure', says: 'measure', load: () => Promise.resolve(measureVerb(nothing(), false, worker.entry())) }]); // prettier-ignore

const RATE_fps = 1000;
const SCENE: Scene = {
  width: 96,
  height: 54,
  rate_fps: RATE_fps,
  frames: 120,
  exposure_s: 1 / 2000,
  seed: 3,
  lamps: [{ light: { kind: 'steady' } }],
};

/** Clips of a rig that is fired, and of a card. SYNTHETIC: worked out, not filmed. */
function write(): void {
  cpSync('demo/shoot.yaml', SHOOT);
  for (const [i, latency_s] of [0.03, 0.0322, 0.0287, 0.0311].entries()) {
    const on_s = 0.0303 + 0.0007 * i;
    const scene: Scene = {
      ...SCENE,
      seed: 20 + i,
      drop: { radius_px: 4, bright: 0.9, x_px: () => 40, y_px: (t_s) => 12 + 700 * Math.max(0, t_s - on_s - latency_s) },
      signal: { x_px: 88, y_px: 46, radius_px: 2, bright: 0.8, on_s },
    }; // prettier-ignore
    writeClip(at(`SYNTHETIC take ${i + 1}.mkv`), synthetic('take', scene));
  }
  const card: Scene = { ...SCENE, width: 48, height: 32, frames: 600, rate_fps: 1070, blobs: 0, lamps: [{ light: { kind: 'ripple', f_Hz: 100, depth: 0.12 } }] }; // prettier-ignore
  writeClip(at('SYNTHETIC card.mkv'), synthetic('card', card));
}

const TAKES = [1, 2, 3, 4].map((i) => at(`SYNTHETIC take ${i}.mkv`));
const LIKE = ['--curve', 'linear', '--black', '64', '--shot', `${SHOOT}#crown`];
const learntOf = (out: string) => MeasureReply.parse(JSON.parse(out)).learnt!;

describe.skipIf(noFfmpeg)('what clips teach', () => {
  test('of a rig: latency and jitter, in words and as a patch, and the shoot is left as it was', async () => {
    write();
    const before = readFileSync(SHOOT, 'utf8');
    const { code, out } = await run([...TAKES, ...LIKE, '--rate', '1000fps', '--learn', 'rig=trap']);
    expect(code).toBe(0);
    const said = out.slice(out.indexOf('What the clips teach')).replaceAll(/\s+/g, ' ');
    expect(said).toMatch(
      /Latency of Trapdoor over the slate: 3\d(?:\.\d+)? ms ± \d(?:\.\d+)? ms, the middle of 4 takes/,
    );
    expect(said).toContain('4 takes are few');
    expect(said).toContain('SYNTHETIC clips: worked out, not filmed.');
    expect(said).toContain('Take care: A rig moves: stand clear');
    expect(said).toMatch(/in place of 38 ms ± 4 ms \(as written\)/);
    expect(said).toContain('"/kit/rigs/trap/measured"');
    expect(readFileSync(SHOOT, 'utf8')).toBe(before);
  });

  test('of a lamp: its light as a file that lies beside the shoot, by the hash that the patch names', async () => {
    const csv = at('panel.csv');
    const args = [at('SYNTHETIC card.mkv'), ...LIKE, '--rate', '1070fps', '--shutter', '1/2000s', '--level', '100 %', '--supply', 'grid', '--learn', 'lamp=soft-90', '--out', csv, '--json']; // prettier-ignore
    const { code, out } = await run(args);
    expect(code).toBe(0);
    const learnt = learntOf(out);
    expect(learnt.refusal).toBeUndefined();
    const text = readFileSync(csv, 'utf8');
    const read = readMeasuredWaveform(text);
    expect(read.ok && 1 / read.waveform.period_s).toBeCloseTo(100, 2);
    const file = learnt.patch.find(({ path }) => path === '/files/light-1')!['value'];
    expect(file).toMatchObject({ name: 'panel.csv', sha256: createHash('sha256').update(text).digest('hex'), size: `${Buffer.byteLength(text)} B` }); // prettier-ignore
    expect(learnt.patch.at(-1)).toMatchObject({ path: '/kit/lamps/soft-90/measured/measured-1', value: { level: '100 %', supply: 'grid' } }); // prettier-ignore
    expect(learnt.says[0]).toMatch(/pulses at 100\.0\d? Hz by 1[12]\.?\d* %, give or take/);
  });

  test('of an event: what was measured well, and why the rest was not', async () => {
    const { code, out } = await run([...TAKES, ...LIKE, '--rate', '1000fps', '--learn', 'event', '--json']);
    expect(code).toBe(0);
    const learnt = learntOf(out);
    expect(learnt.changes.map(({ path }) => path)).toContain('/shots/crown/action/speed');
    expect(learnt.notices.join('\n')).toContain('Duration of the action is not taken from');
    expect(learnt.limits.length).toBeGreaterThan(0);
  });

  test('where they teach nothing: why, what to do, and 2', async () => {
    const { code, out, err } = await run([TAKES[0]!, ...LIKE, '--rate', '1000fps', '--learn', 'rig=trap', '--json']);
    expect(code).toBe(2);
    expect(learntOf(out)).toMatchObject({ patch: [], refusal: { code: 'rig.few-takes' } });
    expect(err).toMatch(/Not done: 1 of 1 clip tells when the rig was fired/);
    const card = await run([at('SYNTHETIC card.mkv'), ...LIKE, '--rate', '1070fps', '--shutter', '1/50s', '--learn', 'lamp=soft-90', '--out', at('none.csv')]); // prettier-ignore
    expect(card.code).toBe(2);
    expect(card.err).toContain('does not fit into a frame');
    expect(existsSync(at('none.csv'))).toBe(false);
  });
});

describe('what is refused before anything is measured, with 2 and in words', () => {
  writeFileSync(at('a.mov'), '');
  test.each([
    ['nothing that can be learnt', ['--learn', 'weather'], /event, rig=ID or lamp=ID/],
    ['a rig without its id', ['--learn', 'rig='], /event, rig=ID or lamp=ID/],
    ['no shoot to put it in', ['--learn', 'event'], /Name a shot of it/],
    ['a look at a few stretches', ['--learn', 'event', '--shot', 'demo/shoot.yaml#crown', '--quick'], /Leave out --quick/],
    ['two cards', [at('b.mov'), '--learn', 'lamp=soft-90', '--shot', 'demo/shoot.yaml#crown'], /one clip of a grey card/],
    ['a file for what is no lamp', ['--learn', 'event', '--shot', 'demo/shoot.yaml#crown', '--out', 'a.csv'], /Give --learn lamp=ID/],
    ['a shutter that is none', ['--shutter', 'short'], /--shutter takes an exposure time/],
    ['a ripple that is none', ['--ripple', '0 Hz'], /--ripple takes a rate/],
  ])('%s', async (_, args, says) => {
    const { code, out, err } = await run([at('a.mov'), ...args]);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(says);
  });
}); // prettier-ignore
