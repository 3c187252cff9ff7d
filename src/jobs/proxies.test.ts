import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { clipFolder, noFfmpeg, testCard } from '../../test/footage/clips.ts';
import { numbersIn, NUMBERED_FORMS } from '../../test/footage/numbered.ts';
import { createProxies } from './proxies.ts';
import type { ProxyInput } from './types.ts';

const folder = clipFolder();
const at = (name: string) => join(folder, name);
const FORMS = NUMBERED_FORMS;
const H264 = ['-c:v', 'libx264', '-pix_fmt', 'yuv420p'];

const inputOf = (path: string, more: Partial<ProxyInput> = {}): ProxyInput => {
  const { size, mtimeMs } = statSync(path);
  return { path, file: { size_B: size, modified_ms: mtimeMs }, ...more };
};
const QUIET = { signal: new AbortController().signal, onProgress: () => undefined };

function asked(path: string, entries: string): string {
  const { stdout } = spawnSync('ffprobe', ['-v', 'error', '-select_streams', 'v:0', '-show_entries', entries, '-of', 'csv=p=0', `file:${path}`]); // prettier-ignore
  return String(stdout).trim();
}

/** When each frame of a movie comes, s, and whether it stands by itself. */
const framesOf = (path: string) => asked(path, 'frame=pts_time,key_frame').split('\n').filter((line) => line !== '').map((line) => line.split(',').map(Number) as [number, number]).map(([isKey, time_s]) => ({ isKey: isKey === 1, time_s })); // prettier-ignore

describe.skipIf(noFfmpeg).each(FORMS)('a copy of $says', ({ name, make, at: numberAt, count }) => {
  test.each([undefined, 24_000 / 1001])('played at %s shows each frame in its place, and lasts as long as all', async (playback_fps) => {
    const path = at(name);
    if (!existsSync(path)) make(path);
    const proxies = createProxies({ folder: at('copies') });
    const copy = await proxies.make(inputOf(path, playback_fps === undefined ? {} : { playback_fps }), QUIET);
    const frames = framesOf(copy);
    const numbers = numbersIn({ path: copy });
    expect(numbers).toHaveLength(frames.length);
    const duration_s = Number(asked(copy, 'stream=duration'));
    const rate_fps = count / duration_s;
    if (playback_fps !== undefined) expect(rate_fps / playback_fps).toBeCloseTo(1, 3);
    // As a player has it: the frame that came last before the middle of a frame's time.
    for (let place = 0; place < count; place += 1) {
      const shown = frames.findLastIndex(({ time_s }) => time_s <= (place + 0.5) / rate_fps);
      expect([place, numbers[shown]]).toEqual([place, numberAt(place)]);
    }
    const keys = frames.flatMap(({ isKey }, i) => (isKey ? [i] : []));
    expect(Math.max(...keys.map((key, i) => key - (keys[i - 1] ?? 0)))).toBeLessThanOrEqual(12);
  });
}); // prettier-ignore

describe.skipIf(noFfmpeg)('copies', () => {
  const card = (name: string, more: Partial<Parameters<typeof testCard>[1]> = {}): string => {
    testCard(at(name), { as: H264, seconds: 1, ...more });
    return at(name);
  };

  test('are at most 960 wide and of even sizes, and begin with what a browser reads first', async () => {
    const proxies = createProxies({ folder: at('sizes') });
    const sizes = [['1929x1085', '960,538'], ['65x49', '64,48'], ['33x1081', '32,1048'], ['1x1', '2,2']] as const; // prettier-ignore
    for (const [size, expected] of sizes) {
      const copy = await proxies.make(inputOf(card(`${size}.mkv`, { seconds: 0.2, as: ['-vf', `scale=${size.replace('x', ':')}`, '-c:v', 'ffv1', '-pix_fmt', 'yuv444p'] })), QUIET); // prettier-ignore
      expect(asked(copy, 'stream=width,height')).toBe(expected);
      expect(asked(copy, 'stream=codec_name,pix_fmt')).toBe('h264,yuv420p');
      const bytes = readFileSync(copy).toString('latin1');
      expect(bytes.indexOf('moov')).toBeLessThan(bytes.indexOf('mdat'));
    }
  });

  test('of a file that says to play at 1000 play at 25, and of pictures at 24', async () => {
    const proxies = createProxies({ folder: at('rates') });
    const fast = card('fast.mkv', { rate: '1000', seconds: 0.05 });
    expect(asked(await proxies.make(inputOf(fast), QUIET), 'stream=duration')).toBe('2.000000');
    mkdirSync(at('pics'));
    testCard(at('pics/%02d.png'), { as: [], seconds: 0.48 });
    expect(asked(await proxies.make(inputOf(at('pics/01.png')), QUIET), 'stream=duration')).toBe('0.500000');
  });

  test.each([
    ['vp8', 'vp8', '.webm'],
    ['mpeg4', 'mpeg4', '.mpeg4.mp4'],
  ] as const)('are written as %s where nothing better is there', async (form, codec, ending) => {
    const proxies = createProxies({ folder: at(form), form });
    const input = inputOf(card('plain.mp4', { seconds: 0.4 }));
    const copy = await proxies.make(input, QUIET);
    expect(asked(copy, 'stream=codec_name')).toBe(codec);
    expect(copy.endsWith(ending)).toBe(true);
    expect(framesOf(copy)).toHaveLength(10);
    expect(await proxies.find(input)).toBe(copy);
  });

  test('are made once, found again, and made anew of a file that was written to', async () => {
    const proxies = createProxies({ folder: at('once') });
    const input = inputOf(card('once.mp4'));
    expect(await proxies.find(input)).toBeUndefined();
    const told: (readonly [number, number | undefined])[] = [];
    const copy = await proxies.make(input, { ...QUIET, onProgress: (done, total) => told.push([done, total]) });
    expect(told.at(-1)).toEqual([25, 25]);
    const { mtimeMs, ino } = statSync(copy);
    expect(await proxies.make(input, QUIET)).toBe(copy);
    expect(statSync(copy).ino).toBe(ino);
    expect(statSync(copy).mtimeMs).toBeGreaterThanOrEqual(mtimeMs);
    expect(await createProxies({ folder: at('once') }).find(input)).toBe(copy);
    const { file } = input;
    expect(await proxies.find({ ...input, file: { ...file, modified_ms: file.modified_ms + 1 } })).toBeUndefined();
  });

  test('are kept to a size: those asked for longest ago go, never the newest', async () => {
    const inputs = ['a.mp4', 'b.mp4', 'c.mp4'].map((name) => inputOf(card(name, { seconds: 0.4 })));
    const size_B = statSync(await createProxies({ folder: at('size') }).make(inputs[0]!, QUIET)).size;
    const proxies = createProxies({ folder: at('kept'), most_B: 2.5 * size_B });
    for (const input of inputs.slice(0, 2)) await proxies.make(input, QUIET);
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(await proxies.find(inputs[0]!)).toBeDefined();
    await proxies.make(inputs[2]!, QUIET);
    expect(await Promise.all(inputs.map((input) => proxies.find(input).then((found) => found !== undefined)))).toEqual([true, false, true]); // prettier-ignore
    const tiny = createProxies({ folder: at('tiny'), most_B: 1 });
    expect(existsSync(await tiny.make(inputs[0]!, QUIET))).toBe(true);
  });

  test('that nobody wants any more, or that cannot be made, leave nothing behind', async () => {
    const proxies = createProxies({ folder: at('none') });
    const stop = new AbortController();
    const long = inputOf(card('long.mkv', { size: '320x180', seconds: 8 }));
    const making = proxies.make(long, { signal: stop.signal, onProgress: () => stop.abort(new Error('no more')) });
    await expect(making).rejects.toThrow('no more');
    writeFileSync(at('broken.mov'), 'nothing of the kind');
    await expect(proxies.make(inputOf(at('broken.mov')), QUIET)).rejects.toMatchObject({ code: 'media.not-a-movie' });
    expect(readdirSync(at('none'))).toEqual([]);
  });

  test('that a program that was killed had begun are cleared away', async () => {
    mkdirSync(at('left'));
    writeFileSync(at('left/0123.mp4.1.part'), 'half a movie');
    const proxies = createProxies({ folder: at('left') });
    const copy = await proxies.make(inputOf(card('small.mp4', { seconds: 0.2 })), QUIET);
    expect(readdirSync(at('left')).map((name) => at(`left/${name}`))).toEqual([copy]);
  });

  test('of clips named as commands and options are made like any other', async () => {
    const proxies = createProxies({ folder: at('names') });
    for (const name of ['-y; touch pwned.mp4', `it's "so" $(touch pwned) %03d.mp4`, 'concat:a|b.mp4'])
      expect(framesOf(await proxies.make(inputOf(card(name, { seconds: 0.2 })), QUIET))).toHaveLength(5);
  });
});
