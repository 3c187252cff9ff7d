/**
 * Measuring a clip, every figure in one pass, against ffmpeg decoding the same file to nothing, in one run: by codec, at
 * 1920 × 1080 and 4096 × 2304. Clips are a moving test card in noise. Without ffmpeg there is nothing to hold it against,
 * and the reason is printed. Memory is that of this process over a clip and one four times as long.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { measureClip } from '../src/cli/measureClip.ts';
import { runTool } from '../src/media/tools.ts';
import { bench, type Contest } from './harness.ts';

/** At least nine tenths of the frames a second that decoding alone reaches. */
const BUDGET_RATIO = 1 / 0.9;

const SIZES = [
  ['1080p', '1920x1080', 60],
  ['4K', '4096x2304', 14],
] as const;

const CODECS = [
  ['ProRes 422 HQ', 'mov', ['-c:v', 'prores_ks', '-profile:v', '3', '-pix_fmt', 'yuv422p10le']],
  ['H.264', 'mp4', ['-c:v', 'libx264', '-preset', 'veryfast', '-crf', '18', '-pix_fmt', 'yuv420p']],
  ['DNxHR HQX', 'mxf', ['-c:v', 'dnxhd', '-profile:v', 'dnxhr_hqx', '-pix_fmt', 'yuv422p10le']],
  ['FFV1 10 bit', 'mkv', ['-c:v', 'ffv1', '-slicecrc', '1', '-slices', '24', '-pix_fmt', 'yuv422p10le']],
] as const;

function make(path: string, size: string, frames: number, as: readonly string[]): void {
  const card = `testsrc2=s=${size}:r=25,noise=alls=6:allf=t`;
  const { status, stderr } = spawnSync('ffmpeg', ['-v', 'error', '-y', '-f', 'lavfi', '-i', card, '-frames:v', String(frames), ...as, path]); // prettier-ignore
  if (status !== 0) throw new Error(String(stderr));
}

const decode = (path: string) =>
  runTool({ tool: 'ffmpeg', args: ['-v', 'error', '-i', path, '-f', 'null', '-'], where: path, timeout_ms: 600_000 });

const measure = async (name: string) =>
  (await measureClip({ name, captureRate_fps: 1000, isFirstLook: false })).measurement.frameCount;

async function memory(folder: string): Promise<string> {
  const size_MB = async (frames: number): Promise<number> => {
    const path = join(folder, `long${frames}.mp4`);
    make(path, '640x360', frames, CODECS[1][2]);
    let most_B = 0;
    const timer = setInterval(() => (most_B = Math.max(most_B, process.memoryUsage().rss)), 20);
    await measure(path);
    clearInterval(timer);
    return most_B / 1e6;
  };
  const [short_MB, long_MB] = [await size_MB(400), await size_MB(1600)];
  return `memory at most: ${short_MB.toFixed(0)} MB over 400 frames, ${long_MB.toFixed(0)} MB over 1,600\n`;
}

async function againstFfmpeg(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'longsecond-bench-'));
  try {
    const contests: Contest[] = [];
    const isQuick = process.argv.includes('--quick');
    for (const [title, size, frames] of SIZES)
      for (const [codec, ending, as] of isQuick ? CODECS.slice(0, 1) : CODECS) {
        const path = join(folder, `${title}-${codec.replaceAll(' ', '')}.${ending}`);
        make(path, size, frames, as);
        contests.push({
          title: `${codec}, ${title}, ${frames} frames`,
          a: { name: 'measure', run: () => measure(path) },
          b: { name: 'ffmpeg to nothing', run: () => decode(path).then(({ code }) => code) },
          budgetRatio: BUDGET_RATIO,
        });
      }
    await bench(contests);
    process.stdout.write(await memory(folder));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const found = spawnSync('ffmpeg', ['-version']);
if (found.status === 0) await againstFfmpeg();
else process.stdout.write('Skipped: ffmpeg is not there, so there is nothing to hold measuring against.\n');
