/** Measuring that is stopped and gone on from comes to what it would have in one go, to the last bit. */
import { describe, expect, test } from 'vitest';
import { BLACK_CODE, synthetic, WHITE_CODE, type Scene, type SyntheticClip } from '../../test/footage/synthetic.ts';
import { createMeasurer, type MeasurerOptions } from './measurer.ts';
import type { MeasurerState } from './measurerState.ts';
import type { Measurement } from './types.ts';

const SCENE: Scene = {
  width: 96,
  height: 64,
  rate_fps: 1000,
  frames: 70,
  exposure_s: 1 / 2000,
  seed: 8,
  lamps: [{ light: { kind: 'ripple', f_Hz: 100, depth: 0.1 } }],
  drop: { radius_px: 7, bright: 0.9, x_px: () => 50, y_px: (t_s) => -12 + 1500 * Math.max(0, t_s - 0.03) },
  shift_px: (frame) => [0.3 * frame, 0],
};

const optionsOf = ({ scene: { width, height, rate_fps } }: SyntheticClip): MeasurerOptions => ({
  width,
  height,
  coding: { bitDepth: 12, blackCode: BLACK_CODE, whiteCode: WHITE_CODE },
  curve: { kind: 'linear' },
  frameRate_fps: rate_fps,
  playback_fps: 25,
});

interface Course {
  readonly clip: SyntheticClip;
  readonly placeOf: (frame: number) => number;
  /** Frames before which it is stopped. */
  readonly stops: readonly number[];
}

function run({ clip, placeOf, stops }: Course): Measurement {
  const options = optionsOf(clip);
  const { width, height } = options;
  let measurer = createMeasurer(options);
  clip.planes.forEach((data, frame) => {
    if (stops.includes(frame)) {
      const saved = structuredClone(measurer.save());
      // What it was saved from goes on meanwhile: that must not reach what was put away.
      measurer.addFrame({ data: data.map((code) => WHITE_CODE - code), width, height });
      measurer = createMeasurer(options, saved);
    }
    measurer.addFrame({ data, width, height }, placeOf(frame));
  });
  return measurer.finish();
}

const oneByOne = (frame: number): number => frame;
const CLIPS = {
  'a drop under flicker, seen by a camera that moves': synthetic('drop', SCENE),
  'a picture too small for movement': synthetic('small', { ...SCENE, width: 12, height: 9 }),
};
const repeating = (clip: SyntheticClip): SyntheticClip => ({ ...clip, planes: clip.planes.map((plane, i) => (i % 9 === 4 ? clip.planes[i - 1]! : plane)) }); // prettier-ignore

describe.each(Object.entries(CLIPS))('%s', (_, clip) => {
  const whole = run({ clip, placeOf: oneByOne, stops: [] });
  test.each([0, 1, 2, 31, 32, 50, clip.planes.length - 1])('stopped before frame %i comes to the same', (stop) => {
    expect(run({ clip, placeOf: oneByOne, stops: [stop] })).toEqual(whole);
  });

  test('stopped before every frame comes to the same', () => {
    const few = { ...clip, planes: clip.planes.slice(30, 50) };
    expect(run({ clip: few, placeOf: oneByOne, stops: few.planes.map((_, i) => i) })).toEqual(run({ clip: few, placeOf: oneByOne, stops: [] })); // prettier-ignore
  });

  test('with frames missing about where it is stopped, and some repeated, comes to the same', () => {
    const placeOf = (frame: number) => frame + (frame >= 20 ? 3 : 0) + (frame >= 50 ? 40 : 0);
    const course = { clip: repeating(clip), placeOf };
    const gone = run({ ...course, stops: [] });
    expect(gone.missingFrames).toHaveLength(43);
    expect(gone.repeatedFrames.length).toBeGreaterThan(4);
    for (const stop of [20, 22, 49, 50]) expect(run({ ...course, stops: [stop] })).toEqual(gone);
  });
});

describe('what was saved by another measurer', () => {
  const clip = CLIPS['a picture too small for movement'];
  const options = optionsOf(clip);
  const savedBy = (more: Partial<MeasurerOptions>): MeasurerState => {
    const measurer = createMeasurer({ ...options, ...more });
    return structuredClone(measurer.save());
  };
  test.each<readonly [string, MeasurerState, string]>([
    ['of a larger picture', savedBy({ width: 96, height: 64 }), 'state.sampleBefore'],
    ['of an older form', { ...savedBy({}), form: 0 }, 'state.form'],
    ['that kept other values', { ...savedBy({}), keptNames: 'mean' }, 'state.keptNames'],
    ['that lacks a meter', { ...savedBy({}), meters: {} } as unknown as MeasurerState, 'state.meters'],
    ['that holds nothing', {} as MeasurerState, 'state'],
  ])('%s is refused, with where it differs', (_, saved, where) => {
    expect(() => createMeasurer(options, saved)).toThrow(expect.objectContaining({ code: 'measure.other-state', where }) as Error); // prettier-ignore
  });
});
