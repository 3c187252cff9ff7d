/**
 * Measuring a clip, every figure in one pass, against ffmpeg decoding the same file to nothing, in one run: by codec, at
 * 1920 × 1080 and 4096 × 2304. Clips are a moving test card in noise: all of it moves, so that all is looked for in every
 * frame. Without ffmpeg there is nothing to hold it against, and the reason is printed. Memory is that of this process over
 * a clip and one four times as long. `--only=ProRes` takes the contests that have it in their title.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { measureClip } from '../src/jobs/measureClip.ts';
import { runTool } from '../src/media/tools.ts';
import { bench, type Contest } from './harness.ts';

/** At least nine tenths of the frames a second that decoding alone reaches. */
const BUDGET_RATIO = 1 / 0.9;

const SIZES = [
  { title: '1080p', size: '1920x1080', share: 1 },
  { title: '4K', size: '4096x2304', share: 1 / 4 },
] as const;

/** How many frames at 1080p: takes are long, and starting counts for little in them, but some codecs are slow. */
const CODECS = [
  { title: 'ProRes 422 HQ', file: 'clip.mov', frames: 640, as: ['-c:v', 'prores_ks', '-profile:v', '3', '-pix_fmt', 'yuv422p10le'] },
  { title: 'H.264', file: 'clip.mp4', frames: 640, as: ['-c:v', 'libx264', '-preset', 'veryfast', '-crf', '18', '-pix_fmt', 'yuv420p'] },
  { title: 'DNxHR HQX', file: 'clip.mxf', frames: 640, as: ['-c:v', 'dnxhd', '-profile:v', 'dnxhr_hqx', '-pix_fmt', 'yuv422p10le'] },
  { title: 'FFV1 10 bit', file: 'clip.mkv', frames: 120, as: ['-c:v', 'ffv1', '-slicecrc', '1', '-slices', '24', '-pix_fmt', 'yuv422p10le'] },
  { title: 'H.265 10 bit', file: 'clip.mp4', frames: 240, as: ['-c:v', 'libx265', '-preset', 'ultrafast', '-crf', '20', '-pix_fmt', 'yuv420p10le', '-x265-params', 'log-level=none'] },
  { title: 'DPX 10 bit', file: 'clip.%04d.dpx', frames: 120, as: ['-c:v', 'dpx', '-pix_fmt', 'gbrp10be'] },
] as const; // prettier-ignore

/** A clip of so many frames; returns its first file. */
function make(path: string, size: string, frames: number, as: readonly string[]): string {
  mkdirSync(dirname(path), { recursive: true });
  const card = `testsrc2=s=${size}:r=25,noise=alls=6:allf=t`;
  const { status, stderr } = spawnSync('ffmpeg', ['-v', 'error', '-y', '-f', 'lavfi', '-i', card, '-frames:v', String(frames), ...as, path]); // prettier-ignore
  if (status !== 0) throw new Error(String(stderr));
  return path.replace('%04d', '0001');
}

const decode = (path: string) =>
  runTool({ tool: 'ffmpeg', args: ['-v', 'error', '-i', path, '-f', 'null', '-'], where: path, timeout_ms: 600_000 });

const measure = async (name: string) =>
  (await measureClip({ name, captureRate_fps: 1000, isFirstLook: false })).measurement.frameCount;

async function memory(folder: string): Promise<string> {
  const size_MB = async (frames: number): Promise<number> => {
    const path = make(join(folder, `long${frames}.mp4`), '1920x1080', frames, CODECS[1].as);
    let most_B = 0;
    const timer = setInterval(() => (most_B = Math.max(most_B, process.memoryUsage().rss)), 20);
    await measure(path);
    clearInterval(timer);
    return most_B / 1e6;
  };
  const [short_MB, long_MB] = [await size_MB(300), await size_MB(1200)];
  return `memory at most, 1080p: ${short_MB.toFixed(0)} MB over 300 frames, ${long_MB.toFixed(0)} MB over 1,200\n`;
}

async function againstFfmpeg(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'longsecond-bench-'));
  const isQuick = process.argv.includes('--quick');
  const only = process.argv.find((arg) => arg.startsWith('--only='))?.slice('--only='.length);
  try {
    const remembered = only === undefined ? await memory(folder) : '';
    for (const { title, size, share } of SIZES)
      for (const { title: codec, file, frames: all, as } of isQuick && only === undefined ? CODECS.slice(0, 1) : CODECS) {
        const frames = Math.round(all * share);
        const name = `${codec}, ${title}, ${frames} frames`;
        if (only !== undefined && !name.includes(only)) continue;
        const into = join(folder, 'clip');
        const path = join(into, file);
        const first = make(path, size, frames, as);
        const contest: Contest = {
          title: name,
          a: { name: 'measure', run: () => measure(first) },
          b: { name: 'ffmpeg to nothing', run: () => decode(path).then(({ code }) => code) },
          budgetRatio: BUDGET_RATIO,
        };
        await bench([contest]);
        // Clips are large: one at a time.
        rmSync(into, { recursive: true });
      }
    process.stdout.write(remembered);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
} // prettier-ignore

const found = spawnSync('ffmpeg', ['-version']);
if (found.status === 0) await againstFfmpeg();
else process.stdout.write('Skipped: ffmpeg is not there, so there is nothing to hold measuring against.\n');
