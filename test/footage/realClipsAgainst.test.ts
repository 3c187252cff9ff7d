/**
 * Clips that people filmed, measured here and by other programs: ffmpeg's own filters, run in the test; OpenCV, numpy and
 * scipy, whose figures are kept beside the script that worked them out.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { measureClip } from '../../src/jobs/measureClip.ts';
import { basisOf, faded, waveAt, withoutTrend } from '../../src/measure/lines/basis.ts';
import { amplitudeOf } from '../../src/measure/lines/fit.ts';
import { createMeasurer } from '../../src/measure/measurer.ts';
import { createCorrelator, type Shift } from '../../src/measure/phaseCorrelation.ts';
import type { Measurement } from '../../src/measure/types.ts';
import { clipFolder, ffmpeg } from './clips.ts';
import {
  framesOf,
  measuredFrames,
  noRealClips,
  realClipPath,
  type RealClipName,
  type RealFrames,
} from './realClips.ts';

const folder = clipFolder();
const PLANES = { 'cup.mp4': 'y', 'box.mp4': 'y', 'tree.avi': 'g' } as const;
const NAMES = Object.keys(PLANES) as readonly RealClipName[];
const real = (name: RealClipName): Promise<RealFrames> => framesOf(realClipPath(name));

/** What ffmpeg prints while a clip runs through filters, nothing kept of it. */
function filtered(path: string, filters: string): string {
  const args = ['-hide_banner', '-v', 'debug', '-i', `file:${path}`, '-vf', filters, '-fps_mode', 'passthrough', '-f', 'null', '-'];
  const { stdout, stderr } = spawnSync('ffmpeg', args, { encoding: 'utf8', maxBuffer: 1e9 });
  return `${stdout}${stderr}`;
} // prettier-ignore

const numbersIn = (text: string, pattern: RegExp): readonly number[] => [...text.matchAll(pattern)].map(([, value]) => Number(value)); // prettier-ignore

/** Measured with code values taken for light, so that a mean of light is a mean of codes. */
function inCodes({ clip, frames }: RealFrames): Measurement {
  const { width, height } = clip;
  const coding = { bitDepth: 8, blackCode: 0, whiteCode: 255 };
  const measurer = createMeasurer({ width, height, coding, curve: { kind: 'linear' }, frameRate_fps: 1000, playback_fps: 25 }); // prettier-ignore
  for (const data of frames) measurer.addFrame({ data, width, height });
  return measurer.finish();
}

describe.skipIf(noRealClips)('ffmpeg', () => {
  const taken = new Map<RealClipName, Promise<Measurement>>();
  const codes = (name: RealClipName) => {
    const found = taken.get(name) ?? real(name).then(inCodes);
    taken.set(name, found);
    return found;
  };

  test.each(NAMES)('(signalstats) has the mean of each frame of %s, and its darkest and brightest codes lie outside ours', async (name) => {
    const said = filtered(realClipPath(name), `extractplanes=${PLANES[name]},signalstats,metadata=print:file=-`);
    const of = (what: string) => numbersIn(said, new RegExp(`signalstats\\.${what}=([\\d.]+)`, 'g'));
    const [means, least, most] = [of('YAVG'), of('YMIN'), of('YMAX')];
    const { frames } = await codes(name);
    expect(means).toHaveLength(frames.mean.length);
    // Ours is the mean of tiles, of which some are a cell larger than others: to a thousandth of the whole range.
    means.forEach((mean, i) => expect(Math.abs(255 * frames.mean[i]! - mean)).toBeLessThan(0.26));
    for (let i = 0; i < least.length; i += 1) {
      expect(Math.round(255 * frames.darkest[i]!)).toBeGreaterThanOrEqual(least[i]!);
      expect(Math.round(255 * frames.brightest[i]!)).toBeLessThanOrEqual(most[i]!);
    }
  }); // prettier-ignore

  test.each(NAMES)('(blackframe) counts as many pixels of %s below our percentiles as they say', async (name) => {
    const { frames } = await codes(name);
    const percentOf = (code: number) => numbersIn(filtered(realClipPath(name), `extractplanes=${PLANES[name]},blackframe=amount=0:threshold=${code}`), / pblack:(\d+) /g); // prettier-ignore
    const middle = frames.middle.map((light) => Math.round(255 * light));
    const [at, frame] = [middle[30]!, 30];
    // Whole per cents, of every pixel; ours are of a sample of them.
    expect(percentOf(at)[frame]!).toBeLessThanOrEqual(51);
    expect(percentOf(at + 1)[frame]!).toBeGreaterThanOrEqual(48);
    const clipped = percentOf(255);
    clipped.forEach((percent, i) => expect(Math.abs(100 * (1 - frames.clippedFraction[i]!) - percent)).toBeLessThan(1.6)); // prettier-ignore
  });

  test('(blackdetect) sees black as long as we do', async () => {
    const path = `${folder}/black.nut`;
    ffmpeg(['-i', realClipPath('cup.mp4'), '-vf', 'extractplanes=y,settb=1/1000,setpts=40*N,fps=25,tpad=start=12:color=black', '-c:v', 'ffv1', '-pix_fmt', 'gray', path]); // prettier-ignore
    const [duration_s] = numbersIn(filtered(path, 'blackdetect=d=0.1:pix_th=0.02'), /black_duration:([\d.]+)/g);
    const { measurement } = await measureClip({ name: path, isFirstLook: false });
    const black = [...measurement.frames.brightest].filter((light) => light < 0.01).length;
    expect(black / 25).toBeCloseTo(duration_s!, 6);
  });

  test('(mpdecimate, freezedetect) finds the same frames again and no others', async () => {
    const path = `${folder}/again.nut`;
    ffmpeg(['-i', realClipPath('cup.mp4'), '-vf', 'extractplanes=y,loop=loop=3:size=1:start=50,setpts=N/25/TB', '-r', '25', '-fps_mode', 'passthrough', '-c:v', 'ffv1', '-pix_fmt', 'gray', path]); // prettier-ignore
    const { repeatedFrames, frameCount } = (await measureClip({ name: path, isFirstLook: false })).measurement;
    const kept = [...filtered(path, 'mpdecimate=hi=1:lo=1:frac=1').matchAll(/mpdecimate[^\n]* (keep|drop) pts/g)].map(([, what]) => what); // prettier-ignore
    expect(kept).toHaveLength(frameCount);
    expect(repeatedFrames).toEqual(kept.flatMap((what, frame) => (what === 'drop' ? [frame] : [])));
    expect(repeatedFrames).toHaveLength(3);
    const [start_s] = numbersIn(filtered(path, 'freezedetect=n=0:d=0.1'), /freeze_start: ([\d.]+)/g);
    expect(Math.round(25 * start_s!)).toBe(repeatedFrames[0]! - 1);
  });

  test('(select) leaves out frames that are missed, each at its place', async () => {
    const path = `${folder}/gone.nut`;
    ffmpeg(['-i', realClipPath('cup.mp4'), '-vf', "extractplanes=y,select='not(eq(n,77)+between(n,120,122))'", '-fps_mode', 'passthrough', '-c:v', 'ffv1', '-pix_fmt', 'gray', path]); // prettier-ignore
    const { missingFrames, frameCount } = (await measureClip({ name: path, isFirstLook: false })).measurement;
    expect(missingFrames).toEqual([77, 120, 121, 122]);
    expect(frameCount).toBe(217);
  });
});

interface Figures {
  readonly shifts: readonly {
    readonly clip: RealClipName;
    readonly left: number;
    readonly top: number;
    readonly side: number;
    readonly shifts: readonly { readonly from: number; readonly to: number; readonly x: number; readonly y: number }[];
  }[];
  readonly way: readonly { readonly frame: number; readonly x: number; readonly y: number }[];
  readonly depths: readonly {
    readonly clip: RealClipName;
    readonly means: readonly number[];
    readonly waves: readonly { readonly rate_Hz: number; readonly amplitude: number }[];
    readonly top_Hz: number;
  }[];
}
const figures = JSON.parse(readFileSync(new URL('realClipsCheck.json', import.meta.url), 'utf8')) as Figures;

describe.skipIf(noRealClips)('OpenCV', () => {
  test.each(figures.shifts)('(phaseCorrelate) finds the shifts of a window of $clip that we find', async ({ clip: name, left, top, side, shifts }) => {
    const { clip, frames } = await real(name);
    const correlator = createCorrelator(side);
    const cut = (frame: number) => ({ values: Float32Array.from(frames[frame]!), stride: clip.width });
    for (const { from, to, x, y } of shifts) {
      const found: Shift = correlator.shift(cut(from), cut(to), [{ left, top }]);
      expect(found.peak).toBeGreaterThan(correlator.leastPeak);
      // It whitens every rate alike, the noise of the finest too, and takes the centroid of five by five points: they agree to
      // a part of a pixel.
      expect(Math.hypot(found.x - x, found.y - y)).toBeLessThan(0.45);
    }
  }); // prettier-ignore

  test('(matchTemplate) follows marks on the wall behind a hand as the whole picture is followed here', async () => {
    const { clip, frames } = await real('cup.mp4');
    const { x_px, y_px } = measuredFrames(clip, frames).frames;
    // The marks lie at the edge of a picture that grows as the lens is focused: to within a few pixels of its middle.
    for (const { frame, x, y } of figures.way) expect(Math.hypot(x_px[frame]! - x, y_px[frame]! - y)).toBeLessThan(5);
  });
});

describe.skipIf(noRealClips)('numpy and scipy', () => {
  test.each(figures.depths)('have waves as deep as ours in the light of $clip, where the same is fitted', async ({ clip: name, means, waves, top_Hz }) => {
    const { frames } = await real(name);
    const series = Float64Array.from(frames, (frame) => Math.log(frame.reduce((sum, code) => sum + code, 0) / frame.length));
    means.forEach((mean, i) => expect(series[i]!).toBeCloseTo(mean, 9));
    const basis = basisOf({ frameRate_fps: 1000, weights: faded(new Float64Array(series.length).fill(1)), degree: 4 });
    const rest = withoutTrend(basis, series);
    for (const { rate_Hz, amplitude } of waves) expect(amplitudeOf(waveAt(basis, rest, rate_Hz)) / amplitude).toBeCloseTo(1, 6);
    // The periodogram's top is where a wave takes up most, to a bin and a half.
    const powers = Array.from({ length: 3900 }, (_, i) => waveAt(basis, rest, 10 + i * 0.125).power);
    expect(Math.abs(10 + 0.125 * powers.indexOf(Math.max(...powers)) - Math.max(10, top_Hz))).toBeLessThan(1500 / series.length);
  }); // prettier-ignore
});
