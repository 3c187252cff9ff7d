/** Clips in files: what is read of them to the last code value, and what is said of those that cannot be. */
import { spawnSync } from 'node:child_process';
import { appendFileSync, copyFileSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs'; // prettier-ignore
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { askTurned, clipFolder, ffmpeg, noFfmpeg, testCard, writeClip } from '../../test/footage/clips.ts';
import { synthetic } from '../../test/footage/synthetic.ts';
import { Fault } from '../base/fault.ts';
import { openClipFile } from './clipFile.ts';
import { decodeFrames, type DecodeGiven } from './decode.ts';
import { FLOAT_WHITE_CODE } from './pixels.ts';
import { probeClip } from './probe.ts';

const folder = clipFolder();
const at = (name: string) => join(folder, name);

async function read(path: string, more: Omit<DecodeGiven, 'clip'> = {}) {
  const clip = await probeClip(await openClipFile(path));
  const notes: string[] = [];
  const frames: { readonly data: Uint8Array | Uint16Array; readonly place: number }[] = [];
  for await (const { plane, place } of decodeFrames({ clip, onNote: (note) => notes.push(note), ...more }))
    frames.push({ data: plane.data.slice(), place });
  return { clip, notes, frames };
}

async function faultOf(act: () => Promise<unknown>): Promise<Fault> {
  const error: unknown = await act().then(
    () => undefined,
    (cause: unknown) => cause,
  );
  expect(error).toBeInstanceOf(Fault);
  return error as Fault;
}

/** The first plane of a clip as another program's own raw output has it, nothing converted. */
function rawOf(path: string, pixelFormat: string): Buffer {
  const { stdout } = spawnSync('ffmpeg', ['-v', 'error', '-i', `file:${path}`, '-f', 'rawvideo', '-pix_fmt', pixelFormat, 'pipe:1'], { maxBuffer: 1e9 }); // prettier-ignore
  return stdout;
}

const childrenOfUs = (): readonly string[] =>
  readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .filter((pid) => {
      try {
        const [, rest = ''] = /\) (.*)/.exec(readFileSync(`/proc/${pid}/stat`, 'utf8')) ?? [];
        return rest.split(' ')[1] === String(process.pid) && /ffmpeg|ffprobe/.test(readFileSync(`/proc/${pid}/cmdline`, 'utf8')); // prettier-ignore
      } catch {
        return false;
      }
    });

describe.skipIf(noFfmpeg)('code values', () => {
  const SIZE = 64 * 48;

  test.each([
    ['video of eight bits', 'a.mp4', ['-c:v', 'libx264', '-pix_fmt', 'yuv420p'], 'yuv420p', 1.5, 8, 16],
    ['video of eight bits, every colour whole', 'b.mkv', ['-c:v', 'ffv1', '-pix_fmt', 'yuv444p'], 'yuv444p', 3, 8, 16],
    ['video of ten bits', 'c.mov', ['-c:v', 'prores_ks', '-pix_fmt', 'yuv422p10le'], 'yuv422p10le', 2, 10, 64],
    ['video of twelve bits', 'd.mkv', ['-c:v', 'ffv1', '-pix_fmt', 'yuv444p12le'], 'yuv444p12le', 3, 12, 256],
    ['gray of sixteen bits', 'e.mkv', ['-c:v', 'ffv1', '-pix_fmt', 'gray16le'], 'gray16le', 1, 16, 0],
    ['video whose two halves lie side by side', 'f.nut', ['-c:v', 'rawvideo', '-pix_fmt', 'nv12'], 'nv12', 1.5, 8, 16],
    ['the whole range, said to be so', 'g.mp4', ['-c:v', 'libx264', '-vf', 'scale=out_range=pc', '-color_range', 'pc', '-pix_fmt', 'yuv420p'], 'yuvj420p', 1.5, 8, 0],
  ] as const)('of %s are those that the clip holds, with nothing stretched', async (_, name, as, pixels, planes, bits, black) => {
    testCard(at(name), { as, seconds: 0.2 });
    const { frames, clip } = await read(at(name));
    expect(frames).toHaveLength(5);
    expect([clip.coding.bitDepth, clip.coding.blackCode]).toEqual([bits, black]);
    const raw = rawOf(at(name), pixels);
    const each_B = bits > 8 ? 2 : 1;
    frames.forEach(({ data }, i) => {
      const plane = raw.subarray(i * SIZE * planes * each_B, (i * planes + 1) * SIZE * each_B);
      const expected = bits > 8 ? new Uint16Array(plane.buffer.slice(plane.byteOffset, plane.byteOffset + plane.byteLength)) : new Uint8Array(plane);
      expect(Buffer.compare(Buffer.from(data.buffer), Buffer.from(expected.buffer))).toBe(0);
    });
  }); // prettier-ignore

  test('asked for as gray would be stretched, which is why they are not', async () => {
    testCard(at('trap.mov'), { as: ['-c:v', 'prores_ks', '-pix_fmt', 'yuv422p10le'], seconds: 0.2 });
    const { frames } = await read(at('trap.mov'));
    const gray = rawOf(at('trap.mov'), 'gray10le');
    const mean = (values: ArrayLike<number>) =>
      Array.from(values).reduce((sum, value) => sum + value, 0) / values.length;
    const stretched = mean(new Uint16Array(gray.buffer.slice(gray.byteOffset, gray.byteOffset + SIZE * 2)));
    const ours = mean(frames[0]!.data);
    // 64 to 940 drawn out to 0 to 1023.
    expect(Math.abs(stretched - ((ours - 64) / 876) * 1023)).toBeLessThan(2);
    expect(Math.abs(stretched - ours)).toBeGreaterThan(5);
  });

  test('written as gray of twelve bits come back one for one', async () => {
    const clip = synthetic('codes', { width: 40, height: 30, rate_fps: 1000, frames: 9, exposure_s: 0.0005, seed: 1, lamps: [{ light: { kind: 'steady' } }] }); // prettier-ignore
    writeClip(at('codes.mkv'), clip);
    const { frames } = await read(at('codes.mkv'));
    expect(frames.map(({ data }) => data)).toEqual(clip.planes);
  });

  test.each([
    ['png', 'rgb48be', 16],
    ['tif', 'rgb48le', 16],
    ['dpx', 'gbrp10be', 10],
    ['png', 'rgb24', 8],
  ])('of numbered pictures (%s, %s) are those of green', async (ending, pixels, bits) => {
    mkdirSync(at(`${ending}${bits}`));
    const name = at(`${ending}${bits}/shot_%04d.${ending}`);
    ffmpeg(['-f', 'lavfi', '-i', 'testsrc2=s=64x48:r=25:d=0.2', '-pix_fmt', pixels, name]);
    const { frames, clip } = await read(at(`${ending}${bits}/shot_0001.${ending}`));
    expect(frames).toHaveLength(5);
    expect(clip.coding).toMatchObject({ bitDepth: bits, blackCode: 0, whiteCode: 2 ** bits - 1 });
    expect(clip.fileRate).toBeUndefined();
    expect(clip.notes.join(' ')).toContain('green is measured');
    // As the pictures hold them, in whatever order: nothing is converted, only picked out.
    const raw = rawOf(at(`${ending}${bits}/shot_0001.${ending}`), pixels);
    const green = Array.from({ length: SIZE }, (_, i) =>
      pixels.startsWith('gbrp') ? raw.readUInt16BE(2 * i) : bits === 8 ? raw[3 * i + 1] : pixels.endsWith('be') ? raw.readUInt16BE(6 * i + 2) : raw.readUInt16LE(6 * i + 2)); // prettier-ignore
    expect([...frames[0]!.data]).toEqual(green);
  });

  test('of light in floating point keep their ratios, over white too', async () => {
    ffmpeg(['-f', 'lavfi', '-i', 'color=c=gray:s=32x24:r=25:d=0.08,format=gbrpf32le,lut=', '-frames:v', '2', at('light_%02d.exr')].filter((arg) => arg !== '')); // prettier-ignore
    const { frames, clip } = await read(at('light_01.exr'));
    expect(clip).toMatchObject({ curve: { curve: { kind: 'gamma', exponent: 2 } }, coding: { whiteCode: FLOAT_WHITE_CODE } });
    const raw = rawOf(at('light_01.exr'), 'gbrpf32le');
    const light = raw.readFloatLE(0);
    expect((frames[0]!.data[0]! / FLOAT_WHITE_CODE) ** 2 / light).toBeCloseTo(1, 3);
  }); // prettier-ignore
});

describe.skipIf(noFfmpeg)('a clip', () => {
  test('has its rate as an exact ratio, its frames and its curve', async () => {
    testCard(at('rate.mp4'), { rate: '24000/1001', as: ['-c:v', 'libx264', '-pix_fmt', 'yuv420p', '-color_trc', 'bt709'] });
    const { clip } = await read(at('rate.mp4'));
    expect(clip).toMatchObject({
      fileRate: { num: 24000, den: 1001 },
      statedFrames: 24,
      width: 64,
      height: 48,
      curve: { basis: 'stated', curve: { kind: 'rec709' } },
    });
  }); // prettier-ignore

  test.each([
    ['smpte2084', 'pq'],
    ['arib-std-b67', 'hlg'],
  ])('that says %s is read by its curve', async (transfer, kind) => {
    testCard(at(`${kind}.mp4`), { as: ['-c:v', 'libx264', '-pix_fmt', 'yuv420p', '-color_trc', transfer] });
    const { clip } = await read(at(`${kind}.mp4`));
    expect(clip.curve).toMatchObject({ basis: 'stated', curve: { kind } });
  });

  test('that asks to be turned, or has pixels that are not square, is read as it is stored, and said to ask', async () => {
    testCard(at('plain.mp4'), { as: ['-c:v', 'libx264', '-pix_fmt', 'yuv420p', '-vf', 'setsar=2/1'] });
    const plain = await read(at('plain.mp4'));
    expect(plain.clip.notes.join(' ')).toContain('Its pixels are not square, 2 wide to 1 high');
    expect(plain.clip.notes.join(' ')).not.toContain('turned');
    copyFileSync(at('plain.mp4'), at('turned.mp4'));
    askTurned(at('turned.mp4'));
    const turned = await read(at('turned.mp4'));
    expect(turned.clip.notes.join(' ')).toContain('It asks to be shown turned by 90°');
    expect(turned.clip).toMatchObject({ width: 64, height: 48 });
    expect(turned.frames).toEqual(plain.frames);
  });

  test('with an odd rate is read, and said to have one', async () => {
    testCard(at('odd.mp4'), { rate: '26777/1000', as: ['-c:v', 'libx264', '-pix_fmt', 'yuv420p'] });
    const { clip, frames } = await read(at('odd.mp4'));
    expect(clip.notes.join(' ')).toContain('An odd rate: 26777/1000');
    expect(frames.map(({ place }) => place)).toEqual(frames.map((_, i) => i));
  });

  test('of which frames are missing keeps the place of each', async () => {
    ffmpeg(['-f', 'lavfi', '-i', 'testsrc2=s=64x48:r=25:d=1', '-vf', "select='not(between(n,7,9))'", '-fps_mode', 'passthrough', '-c:v', 'ffv1', '-pix_fmt', 'gray', at('gap.nut')]); // prettier-ignore
    const { frames } = await read(at('gap.nut'));
    expect(frames.map(({ place }) => place).slice(5, 9)).toEqual([5, 6, 10, 11]);
  });

  test('whose frames come at any time is counted, and said to vary', async () => {
    ffmpeg(['-f', 'lavfi', '-i', 'testsrc2=s=64x48:r=25:d=1', '-vf', "settb=1/1000,setpts='N*40+13*mod(N*N,5)'", '-fps_mode', 'passthrough', '-enc_time_base', '1/1000', '-c:v', 'ffv1', '-pix_fmt', 'gray', at('vary.nut')]); // prettier-ignore
    const { frames, notes, clip } = await read(at('vary.nut'));
    expect(frames).toHaveLength(25);
    expect([...clip.notes, ...notes].join(' ')).toMatch(/varying times|rate varies/);
  });

  test('is read in part, from a frame on and for so many', async () => {
    testCard(at('part.mp4'), { as: ['-c:v', 'libx264', '-pix_fmt', 'yuv420p', '-g', '10'], seconds: 2 });
    const whole = (await read(at('part.mp4'))).frames;
    const { frames } = await read(at('part.mp4'), { stretch: { firstFrame: 17, frameCount: 6 } });
    expect(frames.map(({ data }) => Buffer.from(data.buffer).toString('base64'))).toEqual(
      whole.slice(17, 23).map(({ data }) => Buffer.from(data.buffer).toString('base64')),
    );
  });

  test('in numbered pictures with some missing keeps the place of each, and begins with the one named', async () => {
    mkdirSync(at('gaps 100%'));
    ffmpeg(['-f', 'lavfi', '-i', 'testsrc2=s=64x48:r=25:d=0.4', '-pix_fmt', 'gray', join(at('gaps 100%%'), 'p%03d.png')]);
    rmSync(join(at('gaps 100%'), 'p004.png'));
    const { frames, clip } = await read(join(at('gaps 100%'), 'p002.png'));
    expect(frames.map(({ place }) => place)).toEqual([0, 1, 3, 4, 5, 6, 7, 8]);
    expect(clip.notes.join(' ')).toContain('1 picture is missing');
    const part = await read(join(at('gaps 100%'), 'p002.png'), { stretch: { firstFrame: 1, frameCount: 3 } });
    expect(part.frames.map(({ place }) => place)).toEqual([0, 2]);
  }); // prettier-ignore

  test.each([
    '-start with a dash.mp4',
    'a b  c.mp4',
    `it's "quoted".mp4`,
    'two\nlines.mp4',
    'пір’я 🎬.mp4',
    '$(touch pwned); echo.mp4',
    'a%03d.mp4',
    'concat:a|b.mp4',
    'http:--example.mp4',
  ])('named %j is a clip like any other', async (name) => {
    testCard(at('plain.mp4'), { as: ['-c:v', 'libx264', '-pix_fmt', 'yuv420p'], seconds: 0.2 });
    renameSync(at('plain.mp4'), at(name));
    expect((await read(at(name))).frames).toHaveLength(5);
  });

  test('of one picture, or one frame, is read', async () => {
    testCard(at('only.png'), { as: ['-frames:v', '1'] });
    expect((await read(at('only.png'))).frames).toHaveLength(1);
    testCard(at('single.mp4'), { as: ['-frames:v', '1', '-c:v', 'libx264', '-pix_fmt', 'yuv420p'] });
    expect((await read(at('single.mp4'))).frames).toHaveLength(1);
  });

  test('of one pixel is read', async () => {
    const planes = [0, 1, 2, 3, 4].map((code) => Uint16Array.of(code));
    writeClip(at('pixel.nut'), { planes, scene: { width: 1, height: 1 } }, { pixels: 'gray16le', as: ['-c:v', 'rawvideo'] });
    expect((await read(at('pixel.nut'))).frames.map(({ data }) => data[0])).toEqual([0, 1, 2, 3, 4]);
  }); // prettier-ignore

  test('cut short is read as far as it goes, and said to be cut', async () => {
    testCard(at('cut.mov'), { as: ['-c:v', 'prores_ks', '-movflags', '+faststart'], seconds: 2, size: '320x240' });
    truncateSync(at('cut.mov'), 200_000);
    const { frames, notes } = await read(at('cut.mov'));
    expect(frames.length).toBeGreaterThan(0);
    expect(frames.length).toBeLessThan(50);
    expect(notes.join(' ')).toMatch(/It says that it has 50 frames, and \d+ could be read/);
  });

  test('that grows while it is read is said to', async () => {
    testCard(at('grow.ts'), { as: ['-c:v', 'libx264', '-pix_fmt', 'yuv420p'], seconds: 0.4 });
    const clip = await probeClip(await openClipFile(at('grow.ts')));
    const notes: string[] = [];
    for await (const { place } of decodeFrames({ clip, onNote: (note) => notes.push(note) })) if (place === 0) appendFileSync(at('grow.ts'), Buffer.alloc(1880)); // prettier-ignore
    expect(notes.join(' ')).toContain('written to while it was read');
  });
});

describe.skipIf(noFfmpeg)('what cannot be measured is said so in a line, with what to do', () => {
  test.each<readonly [string, string, (path: string) => void, string]>([
    ['nothing there', 'nowhere.mov', () => undefined, 'media.no-file'],
    ['an empty file', 'empty.mov', (path) => writeFileSync(path, ''), 'media.empty'],
    ['text', 'text.mov', (path) => writeFileSync(path, 'hello '.repeat(999)), 'media.not-a-movie'],
    ['noise', 'noise.mp4', (path) => writeFileSync(path, Buffer.from(Array.from({ length: 9999 }, (_, i) => (i * i * 31) % 251))), 'media.not-a-movie'],
    ['sound alone', 'sound.wav', (path) => ffmpeg(['-f', 'lavfi', '-i', 'sine=d=0.2', `file:${path}`]), 'media.no-picture'],
    ['a folder', 'folder.mov', (path) => mkdirSync(path), 'media.not-a-file'],
    ['a pipe', 'pipe.mov', (path) => void spawnSync('mkfifo', [path]), 'media.not-a-file'],
    ['a device', 'zero.mov', (path) => symlinkSync('/dev/zero', path), 'media.not-a-file'],
    ['a movie cut before its index', 'noindex.mp4', (path) => { testCard(path, { as: ['-c:v', 'libx264', '-pix_fmt', 'yuv420p'] }); truncateSync(path, 900); }, 'media.cut-short'],
    ['a list of other files', 'list.m3u8', (path) => writeFileSync(path, '#EXTM3U\n#EXT-X-TARGETDURATION:1\n#EXTINF:1,\nhttp://127.0.0.1:9/a.ts\n#EXT-X-ENDLIST\n'), 'media.not-a-movie'],
  ])('%s', async (_, name, make, code) => {
    make(at(name));
    const fault = await faultOf(() => read(at(name)));
    expect(fault.code).toBe(code);
    expect(fault.where).toContain(name);
    expect(fault.what).not.toContain('\n');
    expect(fault.mend).toMatch(/\.$/);
  }); // prettier-ignore

  test('a picture that says it is larger than any camera takes', async () => {
    // The head of a PNG of 60,000 × 60,000, its check sum right, with nothing after it.
    const head = Buffer.from('89504e470d0a1a0a0000000d494844520000ea600000ea600800000000', 'hex');
    let sum = 0xffffffff;
    for (const byte of head.subarray(12)) {
      sum ^= byte;
      for (let bit = 0; bit < 8; bit += 1) sum = (sum >>> 1) ^ (sum & 1 ? 0xedb88320 : 0);
    }
    const check = Buffer.alloc(4);
    check.writeUInt32BE(~sum >>> 0);
    writeFileSync(at('bomb.png'), Buffer.concat([head, check]));
    const fault = await faultOf(() => read(at('bomb.png')));
    expect(['media.too-large-picture', 'media.not-a-movie']).toContain(fault.code);
  });

  test('a picture that changes its size midway, with the frame', async () => {
    for (const [name, size] of [['s1.h264', '64x48'], ['s2.h264', '96x64']] as const) testCard(at(name), { size, seconds: 0.4, as: ['-c:v', 'libx264', '-pix_fmt', 'yuv420p', '-f', 'h264'] }); // prettier-ignore
    writeFileSync(at('sizes.h264'), Buffer.concat([readFileSync(at('s1.h264')), readFileSync(at('s2.h264'))]));
    const fault = await faultOf(() => read(at('sizes.h264')));
    expect(fault).toMatchObject({ code: 'media.size-changes' });
    expect(fault.what).toBe('The picture is 96 × 64 from frame 10 on, 64 × 48 before');
  });

  test('no ffmpeg: says what to install', async () => {
    testCard(at('fine.mp4'), { as: ['-c:v', 'libx264', '-pix_fmt', 'yuv420p'], seconds: 0.2 });
    const clip = await probeClip(await openClipFile(at('fine.mp4')));
    const env = { ...process.env, LONGSECOND_FFMPEG: '/nowhere/ffmpeg' };
    const fault = await faultOf(async () => {
      for await (const frame of decodeFrames({ clip, env })) void frame;
    });
    expect(fault).toMatchObject({ code: 'media.no-ffmpeg', where: '/nowhere/ffmpeg' });
    expect(fault.mend).toMatch(/ffmpeg/);
  });
});

describe.skipIf(noFfmpeg)('nothing is left running', () => {
  const long = () => {
    testCard(at('long.mkv'), { size: '640x480', seconds: 20, as: ['-c:v', 'ffv1', '-pix_fmt', 'yuv420p'] });
    return openClipFile(at('long.mkv')).then((file) => probeClip(file));
  };

  test('when the reader leaves early, gives up, or is stopped', async () => {
    const clip = await long();
    for await (const { place } of decodeFrames({ clip })) if (place === 2) break;
    expect(childrenOfUs()).toEqual([]);

    const stop = new AbortController();
    const stopped = faultless(async () => {
      for await (const { place } of decodeFrames({ clip, signal: stop.signal })) if (place === 2) stop.abort(new Error('enough')); // prettier-ignore
    });
    await expect(stopped).rejects.toThrow('enough');
    expect(childrenOfUs()).toEqual([]);

    const thrown = faultless(async () => {
      for await (const { place } of decodeFrames({ clip })) if (place === 1) throw new Error('mine');
    });
    await expect(thrown).rejects.toThrow('mine');
    expect(childrenOfUs()).toEqual([]);
  });

  test('when nothing comes for too long', async () => {
    const clip = await long();
    const script = at('silent-ffmpeg');
    writeFileSync(script, '#!/bin/sh\nexec sleep 60\n', { mode: 0o755 });
    const env = { ...process.env, LONGSECOND_FFMPEG: script };
    const fault = await faultOf(async () => {
      for await (const frame of decodeFrames({ clip, env, timeout_ms: 300 })) void frame;
    });
    expect(fault).toMatchObject({ code: 'media.stalled', retry: true });
    expect(childrenOfUs()).toEqual([]);
  });

  test('when it was stopped before it began', async () => {
    const clip = await long();
    const signal = AbortSignal.abort(new Error('never'));
    await expect(faultless(async () => { for await (const frame of decodeFrames({ clip, signal })) void frame; })).rejects.toThrow('never'); // prettier-ignore
  });
});

const faultless = (act: () => Promise<void>): Promise<void> => act();
