/** Clips in files of their own, made by ffmpeg for tests of what reads them. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import { findFfmpeg } from '../../tools/system.mjs';
import type { Scene, SyntheticClip } from './synthetic.ts';

/** Why tests of footage are left out; where CI runs them, nothing is. */
export const noFfmpeg: string | false =
  findFfmpeg() === undefined && !process.env['CI'] ? 'ffmpeg is not installed' : false;

/** A folder that is gone after the tests of the file. */
export function clipFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'longsecond-clips-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Runs ffmpeg and fails the test with what it said. */
export function ffmpeg(args: readonly string[], input?: Uint8Array): void {
  const { status, stderr } = spawnSync('ffmpeg', ['-hide_banner', '-v', 'error', '-y', ...args], {
    ...(input && { input }),
    maxBuffer: 1e9,
  });
  if (status !== 0) throw new Error(`ffmpeg ${args.join(' ')}\n${String(stderr)}`);
}

/** Writes code values as a movie whose pixels are those, at a playback rate; lossless unless the arguments say otherwise. */
export function writeClip(
  path: string,
  { planes, scene }: { readonly planes: SyntheticClip['planes']; readonly scene: Pick<Scene, 'width' | 'height'> },
  { rate = '25', pixels = 'gray12le', as = ['-c:v', 'ffv1'] }: { readonly rate?: string; readonly pixels?: string; readonly as?: readonly string[] } = {},
): void {
  const bytes = Buffer.concat(planes.map((plane) => Buffer.from(plane.buffer, plane.byteOffset, plane.byteLength)));
  const size = `${scene.width}x${scene.height}`;
  ffmpeg(['-f', 'rawvideo', '-pix_fmt', pixels, '-s', size, '-r', rate, '-i', 'pipe:0', ...as, `file:${path}`], bytes);
} // prettier-ignore

/** Asks whoever shows a movie of QuickTime or MP4 to turn it by a quarter, as a camera on its side does. */
export function askTurned(path: string): void {
  const bytes = readFileSync(path);
  const matrix = bytes.indexOf('tkhd') + 44;
  for (const [i, cell] of [0, 0x10000, 0, -0x10000, 0, 0, 0, 0, 0x40000000].entries())
    bytes.writeInt32BE(cell, matrix + 4 * i);
  writeFileSync(path, bytes);
}

/** A moving test card, written in any form that ffmpeg has. */
export function testCard(
  path: string,
  { size = '64x48', rate = '25', seconds = 1, as }: { readonly size?: string; readonly rate?: string; readonly seconds?: number; readonly as: readonly string[] },
): void {
  ffmpeg(['-f', 'lavfi', '-i', `testsrc2=s=${size}:r=${rate}:d=${seconds}`, ...as, `file:${path}`]);
} // prettier-ignore
