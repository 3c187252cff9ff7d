/** Clips that people filmed, read for tests: what they are, and their frames as they were decoded. */
import { join } from 'node:path';
import { hasRealClips, REAL_CLIPS } from '../../tools/realClips.mjs';
import { createFrameReader } from '../../src/measure/frameReader.ts';
import type { TileLight } from '../../src/measure/flicker/tiles.ts';
import { gridOf } from '../../src/measure/grid.ts';
import { createMeasurer } from '../../src/measure/measurer.ts';
import { lightTable } from '../../src/measure/transfer.ts';
import type { Measurement } from '../../src/measure/types.ts';
import { openClipFile } from '../../src/media/clipFile.ts';
import { decodeFrames } from '../../src/media/decode.ts';
import { probeClip, type Clip } from '../../src/media/probe.ts';
import { noFfmpeg } from './clips.ts';

/** Why tests of them are left out; where CI runs them, nothing is. */
export const noRealClips: string | false =
  noFfmpeg ||
  (!hasRealClips() && !process.env['CI'] ? `they are not in ${REAL_CLIPS}: run npm test as root on Debian` : false);

export type RealClipName = 'cup.mp4' | 'box.mp4' | 'tree.avi';
export const realClipPath = (name: RealClipName): string => join(REAL_CLIPS, name);

export interface RealFrames {
  readonly clip: Clip;
  readonly frames: readonly Uint8Array[];
  readonly places: readonly number[];
  readonly notes: readonly string[];
}

const read = new Map<string, Promise<RealFrames>>();

async function readAll(path: string): Promise<RealFrames> {
  const clip = await probeClip(await openClipFile(path));
  const [frames, places, notes]: [Uint8Array[], number[], string[]] = [[], [], []];
  for await (const { plane, place } of decodeFrames({ clip, onNote: (note) => notes.push(note) })) {
    frames.push(Uint8Array.from(plane.data));
    places.push(place);
  }
  return { clip, frames, places, notes };
}

/** All frames of a clip, read once. */
export function framesOf(path: string): Promise<RealFrames> {
  const found = read.get(path) ?? readAll(path);
  read.set(path, found);
  return found;
}

/** A rate that these clips are given to have been taken at: none of them was, and what is put into them is known by it. */
export const GIVEN_RATE_fps = 1000;

export interface TakenAs {
  readonly coding?: Clip['coding'];
  readonly places?: readonly number[];
  readonly frameRate_fps?: number;
}

/** The light of each tile of a clip, frame after frame, as it stands and times a gain that changes from frame to frame. */
export function tileLightOf({ clip, frames }: Pick<RealFrames, 'clip' | 'frames'>): (gain: (frame: number) => number) => TileLight {
  const { width, height, coding, curve } = clip;
  const grid = gridOf(width, height);
  const tiles = grid.columns * grid.rows;
  const reader = createFrameReader({ grid, table: lightTable(curve.curve, coding), clippedFrom: coding.whiteCode, crushedTo: coding.blackCode });
  const light = new Float32Array(tiles * frames.length);
  const lostFraction = new Float32Array(tiles);
  frames.forEach((data, frame) => {
    const reading = reader.read({ data, width, height });
    light.set(reading.light, frame * tiles);
    reading.clipped.forEach((share, tile) => { lostFraction[tile] = Math.max(lostFraction[tile]!, share); });
  });
  const frameWeights = new Float64Array(frames.length).fill(1);
  return (gain) => ({
    columns: grid.columns,
    rows: grid.rows,
    frameRate_fps: GIVEN_RATE_fps,
    light: light.map((value, i) => value * gain(Math.floor(i / tiles))),
    frameWeights,
    lostFraction,
  });
} // prettier-ignore

/** Measures frames of the size of a clip. */
export function measuredFrames(clip: Clip, frames: readonly (Uint8Array | Uint16Array)[], { coding = clip.coding, places, frameRate_fps = GIVEN_RATE_fps }: TakenAs = {}): Measurement {
  const { width, height, curve } = clip;
  const measurer = createMeasurer({ width, height, coding, curve: curve.curve, frameRate_fps, playback_fps: 25 });
  frames.forEach((data, frame) => measurer.addFrame({ data, width, height }, places?.[frame] ?? frame));
  return measurer.finish();
} // prettier-ignore
