import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { captureCommand } from '../../../test/captureCommand.ts';
import { clipFolder, noFfmpeg, testCard, writeClip } from '../../../test/footage/clips.ts';
import { writeColourClip } from '../../../test/footage/colour.ts';
import { GUIDE_SCENE } from '../../../test/footage/guideScene.ts';
import { synthetic, type Scene } from '../../../test/footage/synthetic.ts';
import { MeasureReply } from '../../turnover/measureSchema.ts';
import { measureWorker } from '../../../test/measureWorker.ts';
import { measureVerb } from './measure.ts';

const DEMO = 'demo/shoot.yaml';
const folder = clipFolder();
const worker = measureWorker();
const at = (name: string) => join(folder, name);

async function* nothing(): AsyncGenerator<Uint8Array> {}

const run = (args: readonly string[]) =>
  captureCommand(['measure', ...args], [{ name: 'measure', says: 'measure', load: () => Promise.resolve(measureVerb(nothing(), false, worker.entry())) }]); // prettier-ignore

const SCENE: Scene = {
  width: 96,
  height: 64,
  rate_fps: 1000,
  frames: 160,
  exposure_s: 1 / 2000,
  seed: 9,
  lamps: [{ light: { kind: 'ripple', f_Hz: 100, depth: 0.1 } }],
};
const TAKEN = ['--rate', '1000fps', '--curve', 'linear', '--black', '64'];

describe.skipIf(noFfmpeg)('a clip', () => {
  const clip = at('SYNTHETIC ripple.mkv');

  test('is told in sentences', async () => {
    writeClip(clip, synthetic('ripple', SCENE));
    const { code, out } = await run([clip, ...TAKEN]);
    expect(code).toBe(0);
    expect(out).toMatch(/^SYNTHETIC ripple\.mkv\n {2}ffv1, 96 × 64, 160 frames, taken at 1000 fps, shown at 25\.\n/);
    expect(out.replaceAll(/\s+/g, ' ')).toMatch(/Pulses (?:9\.9|10) % \(0\.29 stops\) at (?:99|100)[.\d]* Hz, all over the picture; 2\.5 Hz on the screen: as lamps on mains of 50 Hz do\./); // prettier-ignore
    expect(out).not.toContain('is not known: give --rate');
  });

  test('is told to programs in the form of its schema', async () => {
    const { out } = await run([clip, ...TAKEN, '--json']);
    const { clips, failed } = MeasureReply.parse(JSON.parse(out));
    expect(failed).toEqual([]);
    expect(clips[0]).toMatchObject({ frameCount: 160, frameRate_fps: 1000, frameRateBasis: 'given', curveBasis: 'given' });
    expect(clips[0]!.flicker.lines[0]!.depthFraction).toBeCloseTo(0.0996, 2);
  }); // prettier-ignore

  test('of unknown rate says that its rates are those of the screen', async () => {
    const { out } = await run([clip, '--curve', 'linear']);
    expect(out).toContain('give --rate or --shot');
    expect(out.replaceAll(/\s+/g, ' ')).toContain('at 2.5');
  });

  test('is held against a shot of the demo', async () => {
    const { code, out } = await run([clip, '--curve', 'linear', '--shot', `${DEMO}#crown`, '--json']);
    expect(code).toBe(0);
    const [reply] = MeasureReply.parse(JSON.parse(out)).clips;
    expect(reply).toMatchObject({ frameRateBasis: 'plan', shot: { id: 'crown' } });
    expect(reply!.against.map(({ what }) => what)).toContain('flicker');
  });

  test('gives every frame as a table', async () => {
    const { code } = await run([clip, ...TAKEN, '--csv', at('frames.csv')]);
    expect(code).toBe(0);
    expect(readFileSync(at('frames.csv'), 'utf8').split('\r\n')).toHaveLength(162);
  });

  test('that is long is looked at first, and with --quick only so', async () => {
    const long = at('long.mkv');
    writeClip(long, synthetic('long', { ...SCENE, width: 32, height: 24, frames: 760 }));
    const whole = await run([long, ...TAKEN]);
    expect(whole.err).toMatch(/^long\.mkv, at first look: Pulses .* at (?:99|100)/);
    expect(whole.out).toContain('760 frames, taken');
    const quick = await run([long, ...TAKEN, '--quick', '--json']);
    expect(MeasureReply.parse(JSON.parse(quick.out)).clips[0]).toMatchObject({ isWhole: false, frameCount: 120 });
  });

  test('and another are held against each other, the second against the first', async () => {
    const [cool, warm] = [at('cool.mkv'), at('warm.mkv')];
    const scene = { width: 96, height: 54, frames: 40, seed: 3, patches: [{ from: [0, 0], to: [0.4, 1], reflects: [0.1, 0.3, 0.5] }] } as const;
    writeColourClip(cool, { ...scene, light: () => [1, 1, 1] }, { pixels: 'yuv422p10le' });
    writeColourClip(warm, { ...scene, seed: 4, light: () => [1.08, 1, 0.9] }, { pixels: 'yuv422p10le' });
    const { code, out } = await run([cool, warm, '--rate', '1000fps', '--pair']);
    expect(code).toBe(0);
    expect(out).toMatch(/Colour: steady, judged by \d+ % of the picture that passes for grey/);
    expect(out).toMatch(/\nwarm\.mkv against cool\.mkv\n[^]*Colour of what is neutral: the second 1\d mired warmer\.\n/);
    const json = await run([cool, warm, '--rate', '1000fps', '--pair', '--json']);
    const { clips, pair } = MeasureReply.parse(JSON.parse(json.out));
    expect(clips.map(({ colour }) => colour!.verdict)).toEqual(['steady', 'steady']);
    expect(pair!.colour!.warmer_mired).toBeGreaterThan(10);
  }); // prettier-ignore

  test('that cannot be read is told of, the others are measured, and it ends with 2', async () => {
    writeFileSync(at('broken.mov'), 'nothing of the kind');
    const { code, out, err } = await run([at('broken.mov'), clip, ...TAKEN, '--json']);
    expect(code).toBe(2);
    const { clips, failed } = MeasureReply.parse(JSON.parse(out));
    expect(clips.map((of) => of.clip)).toEqual(['SYNTHETIC ripple.mkv']);
    expect(failed).toMatchObject([{ clip: 'broken.mov', code: 'media.not-a-movie' }]);
    expect(err).toMatch(/^Not done: ffmpeg cannot read it as footage/);
  });

  test('in pictures is measured from the one named', async () => {
    mkdirSync(at('stills'));
    testCard(at('stills/%04d.png'), { size: '32x24', as: ['-pix_fmt', 'gray'] });
    const { out } = await run([at('stills/0003.png'), '--rate', '500', '--play', '24000/1001', '--json']);
    expect(MeasureReply.parse(JSON.parse(out)).clips[0]).toMatchObject({ frameCount: 23, playback_fps: 23.976024 });
  });
});

describe.skipIf(noFfmpeg)('the guide', () => {
  const guide = readFileSync('docs/guide/footage.md', 'utf8');
  const [, args = '', shown = ''] = /\$ longsecond measure (.+)\n([^`]+)```/.exec(guide) ?? [];

  test('shows what its command prints', async () => {
    writeClip(at('SYNTHETIC-drop.mkv'), synthetic('drop', GUIDE_SCENE));
    const [clip = '', ...options] = args.split(' ');
    const { out } = await run([at(clip), ...options]);
    expect(out).toBe(shown);
  });
});

describe('what is refused, with 2 and in words', () => {
  test.each([
    ['no clip', [], /clip/],
    ['a clip that is not there', ['nowhere.mov'], /There is no such clip/],
    ['a pair of one', ['a.mov', '--pair'], /--pair takes two clips, and got 1/],
    ['a pair of three', ['a.mov', 'b.mov', 'c.mov', '--pair'], /--pair takes two clips, and got 3/],
    ['no rate', ['a.mov', '--rate', 'fast'], /--rate takes a frame rate/],
    ['a rate of none', ['a.mov', '--rate', '0'], /--rate takes a frame rate/],
    ['a rounded rate', ['a.mov', '--play', '23.976'], /24000\/1001/],
    ['a curve of no kind', ['a.mov', '--curve', 'curvy'], /There is no curve "curvy"/],
    ['a name every object has', ['a.mov', '--curve', 'constructor'], /There is no curve/],
    ['a log without its constants', ['a.mov', '--curve', 'log:1,2'], /takes 7 numbers/],
    ['a log that falls', ['a.mov', '--curve', 'log:1,0,-1,1,1,0,0'], /a, c and e lie above 0/],
    ['a gamma of none', ['a.mov', '--curve', 'gamma:0'], /lies above 0/],
    ['a black that is none', ['a.mov', '--black', 'deep'], /--black takes a code value/],
    ['a shot without its file', ['a.mov', '--shot', 'pour-1'], /named by its file and its id/],
    ['a shot that is not there', ['a.mov', '--shot', `${DEMO}#crwn`], /Did you mean crown\?/],
    ['a shoot that is not there', ['a.mov', '--shot', 'nowhere.yaml#a'], /There is no such file/],
    ['an unknown option', ['a.mov', '--jsno'], /Did you mean --json\?/],
  ])('%s', async (_, args, says) => {
    const { code, out, err } = await run(args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(says);
    expect(err).not.toMatch(/\n {4}at /);
  });

  test.skipIf(noFfmpeg)('a black above white, and a table that cannot be written', async () => {
    writeClip(at('small.mkv'), synthetic('small', { ...SCENE, frames: 30 }));
    expect(await run([at('small.mkv'), '--black', '5000'])).toMatchObject({ code: 2, out: '' });
    const { code, err } = await run([at('small.mkv'), '--csv', at('no/such/folder.csv')]);
    expect(code).toBe(2);
    expect(err).toContain('The table cannot be written');
  });
});

test('the help names every option', async () => {
  const { out } = await run(['--help']);
  for (const option of ['--shot', '--rate', '--play', '--curve', '--black', '--quick', '--pair', '--json', '--csv']) expect(out).toContain(option); // prettier-ignore
});
