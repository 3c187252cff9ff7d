import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { askTurned, clipFolder, noFfmpeg, testCard } from '../../test/footage/clips.ts';
import { openClipFile } from './clipFile.ts';
import { frameTimesOf } from './frameTimes.ts';
import { probeClip } from './probe.ts';
import { makeProxy, proxyForm, PROXY_FORMS } from './proxy.ts';

const folder = clipFolder();
const at = (name: string) => join(folder, name);

/** Each frame in a few grey pixels, as a player shows them: turned where the file asks for it. */
function shownPixels(path: string): { readonly size: string; readonly pixels: Buffer } {
  const { stdout, stderr } = spawnSync('ffmpeg', ['-i', `file:${path}`, '-vf', 'showinfo,scale=16:12:flags=area', '-fps_mode', 'passthrough', '-f', 'rawvideo', '-pix_fmt', 'gray', 'pipe:1'], { maxBuffer: 1e8 }); // prettier-ignore
  return { size: /\ss:(\d+x\d+)/.exec(String(stderr))?.[1] ?? '', pixels: stdout };
}

async function copyOf(name: string): Promise<string> {
  const form = await proxyForm();
  const path = at(`copy of ${name}.${PROXY_FORMS[form].ending}`);
  const clip = await probeClip(await openClipFile(at(name)));
  await makeProxy({ clip, times: await frameTimesOf(clip), playback_fps: 25, form, path, partPath: at('copy.part') });
  return path;
}

describe.skipIf(noFfmpeg)('a small copy', () => {
  test('is shown as its clip is stored, where that asks to be turned and stretched', async () => {
    const as = (filter: string) => ['-c:v', 'libx264', '-pix_fmt', 'yuv420p', '-vf', filter];
    testCard(at('plain.mp4'), { as: as('setsar=1') });
    testCard(at('asks.mp4'), { as: as('setsar=2/1') });
    askTurned(at('asks.mp4'));
    expect(shownPixels(at('asks.mp4')).size).toBe('48x64');
    const path = await copyOf('asks.mp4');
    const [copy, plain] = [shownPixels(path), shownPixels(await copyOf('plain.mp4'))];
    expect(copy.size).toBe('64x48');
    expect(plain.pixels.length).toBe(25 * 16 * 12);
    expect(copy.pixels.equals(plain.pixels)).toBe(true);
    const probed = await probeClip(await openClipFile(path));
    expect(probed.notes.join(' ')).not.toMatch(/square|turned/);
  });
});
