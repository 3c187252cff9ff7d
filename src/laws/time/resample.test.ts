import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Knot } from './profile.ts';
import { averagedShutterAngle_deg, boxWeights, framesAveraged, sourceWindow, wholeFramesOf } from './resample.ts';

const SHUTTER = { captureRate_fps: 1000, playRate_fps: 24, shutterAngle_deg: 180 };
const DIP: readonly Knot[] = [
  { screenTime_s: 0, speedFraction: 1 },
  { screenTime_s: 1, speedFraction: 1 / 40 },
  { screenTime_s: 4, speedFraction: 1 / 40 },
  { screenTime_s: 5, speedFraction: 1 },
];

test('1000 fps shown at real speed at 24 with 180° spans 20.8333 frames; 21 of them are 181.44°, worked by hand', () => {
  expect(framesAveraged(SHUTTER)).toBeCloseTo(20.8333, 4);
  expect(averagedShutterAngle_deg({ averagedCount: 21, captureRate_fps: 1000, playRate_fps: 24 })).toBeCloseTo(
    181.44,
    10,
  );
});

test('the window [10.25, 13.75) weighs four frames .214286, .285714, .285714, .214286, worked by hand', () => {
  const { firstFrame, weights } = boxWeights({ startFrame: 10.25, endFrame: 13.75 });
  expect(firstFrame).toBe(10);
  expect(weights.map((weight) => weight.toFixed(6))).toEqual(['0.214286', '0.285714', '0.285714', '0.214286']);
});

test.each([
  [0, 10.311, 20.622, 21],
  [24, 512.76, 0.521, 1],
  [96, 587.866, 0.732, 1],
])(
  'output frame %i of a linear dip from 1000 fps to 24 centres on %f, %f wide, %i whole, by an independent numpy reckoning',
  (frame, centre, width, whole) => {
    const window = sourceWindow({ ...SHUTTER, knots: DIP, shape: 'linear', screenTime_s: frame / 24 });
    expect((window.startFrame + window.endFrame) / 2).toBeCloseTo(centre, 3);
    expect(Math.abs(window.endFrame - window.startFrame - width)).toBeLessThanOrEqual(0.0005);
    expect(wholeFramesOf(window)).toBe(whole);
  },
);

test('past the last knot the last speed runs on', () => {
  const { startFrame, endFrame } = sourceWindow({ ...SHUTTER, knots: DIP, shape: 'linear', screenTime_s: 5 });
  expect(startFrame).toBeCloseTo(1100, 9);
  expect(endFrame - startFrame).toBeCloseTo(framesAveraged(SHUTTER), 9);
});

const start = fc.double({ min: 0, max: 1e4, noNaN: true });
const width = fc.double({ min: 1e-3, max: 200, noNaN: true });

test('weights sum to one, none is negative, and their centre is the window’s', () => {
  fc.assert(
    fc.property(start, width, (startFrame, wide) => {
      const endFrame = startFrame + wide;
      const { firstFrame, weights } = boxWeights({ startFrame, endFrame });
      expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 9);
      for (const weight of weights) expect(weight).toBeGreaterThanOrEqual(0);
      expect(firstFrame).toBeLessThanOrEqual(startFrame);
      expect(firstFrame + weights.length).toBeGreaterThanOrEqual(endFrame);
      expect(firstFrame + weights.length - 1).toBeLessThan(endFrame);
    }),
  );
});

test('the angle of a whole number of frames spans that number again', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 40 }), (averagedCount) => {
      const shutterAngle_deg = averagedShutterAngle_deg({ averagedCount, captureRate_fps: 1000, playRate_fps: 24 });
      expect(framesAveraged({ ...SHUTTER, shutterAngle_deg })).toBeCloseTo(averagedCount, 10);
    }),
  );
});

test('at a quarter of real speed the same frames are four times the angle', () => {
  const real = averagedShutterAngle_deg({ averagedCount: 3, captureRate_fps: 960, playRate_fps: 25 });
  const slowed = averagedShutterAngle_deg({
    averagedCount: 3,
    captureRate_fps: 960,
    playRate_fps: 25,
    speedFraction: 0.25,
  });
  expect(slowed / real).toBeCloseTo(4, 12);
});

test('faults are refused by name', () => {
  expect(() => framesAveraged({ ...SHUTTER, shutterAngle_deg: 361 })).toThrow('shutterAngle_deg must be from 0 to 360');
  expect(() => framesAveraged({ ...SHUTTER, captureRate_fps: NaN })).toThrow('captureRate_fps must be positive');
  expect(() => averagedShutterAngle_deg({ averagedCount: 0, captureRate_fps: 1000, playRate_fps: 24 })).toThrow(
    'averagedCount must be a whole number of at least 1',
  );
  expect(() => boxWeights({ startFrame: 3, endFrame: 3 })).toThrow('endFrame - startFrame must be positive');
  expect(() => boxWeights({ startFrame: 0, endFrame: 1e12 })).toThrow(
    'endFrame - startFrame must be from 0 to 1000000',
  );
  expect(() => boxWeights({ startFrame: -1, endFrame: 1 })).toThrow('startFrame must be zero or above');
  expect(() => wholeFramesOf({ startFrame: 0, endFrame: NaN })).toThrow('endFrame must be finite');
  expect(() => sourceWindow({ ...SHUTTER, knots: DIP, shape: 'linear', screenTime_s: 6 })).toThrow(
    'screenTime_s must be from 0 to 5',
  );
});
