/** Synthetic clips handed to the measurer, whole or for their flicker alone. */
import { createFrameReader } from '../../src/measure/frameReader.ts';
import { flickerOf } from '../../src/measure/flicker/flicker.ts';
import { gridOf } from '../../src/measure/grid.ts';
import { createMeasurer } from '../../src/measure/measurer.ts';
import { lightTable } from '../../src/measure/transfer.ts';
import type { FlickerReading, Measurement } from '../../src/measure/types.ts';
import { BLACK_CODE, WHITE_CODE, type SyntheticClip } from './synthetic.ts';

const CODING = { bitDepth: 12, blackCode: BLACK_CODE, whiteCode: WHITE_CODE };
const PLAYBACK_fps = 25;

/** Everything of a clip. Frames may have places other than one after the other. */
export function measured(
  { scene, planes }: SyntheticClip,
  placeOf: (frame: number) => number = (frame) => frame,
): Measurement {
  const { width, height, rate_fps: frameRate_fps } = scene;
  const measurer = createMeasurer({
    width,
    height,
    coding: CODING,
    curve: { kind: 'linear' },
    frameRate_fps,
    playback_fps: PLAYBACK_fps,
  });
  planes.forEach((data, frame) => measurer.addFrame({ data, width, height }, placeOf(frame)));
  return measurer.finish();
}

/** Flicker alone, for tests that take many clips. */
export function flickerIn({ scene, planes }: SyntheticClip): FlickerReading {
  const { width, height, rate_fps: frameRate_fps } = scene;
  const grid = gridOf(width, height);
  const tiles = grid.columns * grid.rows;
  const table = lightTable({ kind: 'linear' }, CODING);
  const reader = createFrameReader({ grid, table, clippedFrom: WHITE_CODE, crushedTo: 0 });
  const light = new Float32Array(tiles * planes.length);
  const lostFraction = new Float32Array(tiles);
  planes.forEach((data, frame) => {
    const reading = reader.read({ data, width, height });
    light.set(reading.light, frame * tiles);
    reading.clipped.forEach((share, tile) => {
      lostFraction[tile] = Math.max(lostFraction[tile]!, share);
    });
  });
  const frameWeights = new Float64Array(planes.length).fill(1);
  return flickerOf({ columns: grid.columns, rows: grid.rows, frameRate_fps, light, frameWeights, lostFraction });
}
