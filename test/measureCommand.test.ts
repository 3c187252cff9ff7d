/** `longsecond measure` as its own process, its worker beside it as it is built, and somebody who presses Ctrl-C. */
import { spawn } from 'node:child_process';
import { copyFileSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { bundle, type Bundled } from './bundled.ts';
import { clipFolder, noFfmpeg, testCard } from './footage/clips.ts';

const folder = clipFolder();
const clip = join(folder, 'long.mkv');
let command: Bundled;
let worker: Bundled;

beforeAll(async () => {
  [command, worker] = [await bundle('src/cli/main.ts'), await bundle('src/jobs/workers/measure.ts')];
  // Parts of the bundle that are loaded later lie in a folder of their own, and look for it there.
  const beside = join(dirname(command.file), 'assets/workers');
  mkdirSync(beside, { recursive: true });
  copyFileSync(worker.file, join(beside, 'measure.js'));
}, 120_000);
afterAll(() => {
  command.remove();
  worker.remove();
});

/** Processes whose command line names our clip, apart from the command itself. */
function atOurClip(but: number): readonly string[] {
  return readdirSync('/proc').filter((pid) => {
    if (!/^\d+$/.test(pid) || Number(pid) === but) return false;
    try {
      return readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes(clip);
    } catch {
      return false;
    }
  });
}

const until = async (isSo: () => boolean): Promise<void> => {
  while (!isSo()) await new Promise((resolve) => setTimeout(resolve, 5));
};

function start(args: readonly string[]) {
  // A group of its own, as a terminal gives one, all of which hears of Ctrl-C.
  const child = spawn(process.execPath, [command.file, 'measure', ...args], { detached: true });
  let [out, err] = ['', ''];
  child.stdout.setEncoding('utf8').on('data', (text: string) => (out += text));
  child.stderr.setEncoding('utf8').on('data', (text: string) => (err += text));
  const ended = new Promise<number | null>((resolve) => child.once('close', resolve));
  return { pid: child.pid!, ended, said: () => ({ out, err }) };
}

describe.skipIf(noFfmpeg)('the command', () => {
  test('measures on its worker, and is done', async () => {
    testCard(clip, { as: ['-c:v', 'ffv1', '-pix_fmt', 'gray'], seconds: 2 });
    const { ended, said } = start([clip, '--rate', '1000fps', '--json']);
    expect([await ended, said().err]).toEqual([0, '']);
    expect(JSON.parse(said().out)).toMatchObject({ clips: [{ frameCount: 50, isWhole: true }], failed: [] });
  });

  test('stopped by Ctrl-C ends at once with 130, tells nothing half measured, and leaves nothing running', async () => {
    testCard(clip, { size: '640x360', as: ['-c:v', 'ffv1', '-pix_fmt', 'yuv420p'], seconds: 20 });
    const { pid, ended, said } = start([clip, clip, '--rate', '1000fps', '--json']);
    await until(() => atOurClip(pid).length > 0);
    process.kill(-pid, 'SIGINT');
    expect(await ended).toBe(130);
    expect(said()).toEqual({ out: '', err: 'Stopped.\n' });
    expect(atOurClip(pid)).toEqual([]);
  });
});
