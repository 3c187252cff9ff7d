import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { exposureTimeOfAngle_s, longestExposure_s, shutterAngle_deg } from './shutter.ts';

const at24 = (over: number) => ({ exposureTime_s: 1 / over, frameRate_fps: 24 });
const overOne = (given: { readonly shutterAngle_deg: number; readonly frameRate_fps: number }) =>
  1 / exposureTimeOfAngle_s(given);

describe('published values', () => {
  published('shutter angle', shutterAngle_deg, [
    { source: 'shutter-formula', at: '1/50 s', given: at24(50), expected: '172.8' },
    { source: 'shutter-formula', at: '1/60 s', given: at24(60), expected: '144' },
    { source: 'shutter-angle-table', at: '1/32 s', given: at24(32), expected: '270' },
    { source: 'shutter-angle-table', at: '1/96 s', given: at24(96), expected: '90' },
    { source: 'shutter-angle-table', at: '1/120 s', given: at24(120), expected: '72' },
  ]);
  published('one over the exposure time', overOne, [
    { source: 'shutter-formula', at: '180°', given: { shutterAngle_deg: 180, frameRate_fps: 24 }, expected: '48' },
    { source: 'shutter-thread', at: '6 fps', given: { shutterAngle_deg: 45, frameRate_fps: 6 }, expected: '48' },
    { source: 'ramp-thread', at: '24 fps', given: { shutterAngle_deg: 45, frameRate_fps: 24 }, expected: '192' },
    { source: 'ramp-thread', at: '96 fps', given: { shutterAngle_deg: 180, frameRate_fps: 96 }, expected: '192' },
  ]);
});

describe('true at every rate', () => {
  const rate_fps = fc.double({ min: 1, max: 1e6, noNaN: true });
  const angle_deg = fc.double({ min: 0.01, max: 360, noNaN: true });

  test('an angle comes back from the time it stands for', () => {
    fc.assert(
      fc.property(angle_deg, rate_fps, (wanted_deg, frameRate_fps) => {
        const exposureTime_s = exposureTimeOfAngle_s({ shutterAngle_deg: wanted_deg, frameRate_fps });
        expect(shutterAngle_deg({ exposureTime_s, frameRate_fps }) / wanted_deg).toBeCloseTo(1, 12);
      }),
    );
  });

  test('a whole frame of any rate is 360 degrees and no more', () => {
    fc.assert(
      fc.property(rate_fps, (frameRate_fps) => {
        const angle = shutterAngle_deg({ exposureTime_s: 1 / frameRate_fps, frameRate_fps });
        expect(angle).toBeLessThanOrEqual(360);
        expect(angle).toBeCloseTo(360, 9);
      }),
    );
  });

  test('the longest exposure and the dead time make up the frame', () => {
    fc.assert(
      fc.property(rate_fps, fc.double({ min: 0, max: 0.99, noNaN: true }), (frameRate_fps, share) => {
        const deadTime_s = share / frameRate_fps;
        const whole = (longestExposure_s({ frameRate_fps, deadTime_s }) + deadTime_s) * frameRate_fps;
        expect(whole).toBeCloseTo(1, 12);
      }),
    );
  });
});

describe('what no shutter does is refused', () => {
  test('an exposure longer than its frame', () => {
    expect(() => shutterAngle_deg({ exposureTime_s: 1 / 500, frameRate_fps: 1000 })).toThrow(
      'exposureTime_s must be at most one frame of 0.001 s, got 0.002',
    );
  });

  test('an angle of more than a turn', () => {
    expect(() => exposureTimeOfAngle_s({ shutterAngle_deg: 361, frameRate_fps: 24 })).toThrow(
      'shutterAngle_deg must be from 0 to 360, got 361',
    );
  });

  test('a closed shutter, a rate of nothing', () => {
    expect(() => exposureTimeOfAngle_s({ shutterAngle_deg: 0, frameRate_fps: 24 })).toThrow('shutterAngle_deg must be');
    expect(() => exposureTimeOfAngle_s({ shutterAngle_deg: 90, frameRate_fps: 0 })).toThrow('frameRate_fps must be');
    expect(() => shutterAngle_deg({ exposureTime_s: 0, frameRate_fps: 24 })).toThrow('exposureTime_s must be');
  });

  test('a dead time that takes the whole frame, or is negative', () => {
    expect(() => longestExposure_s({ frameRate_fps: 1000, deadTime_s: 0.001 })).toThrow(
      'deadTime_s must be shorter than one frame of 0.001 s, got 0.001',
    );
    expect(() => longestExposure_s({ frameRate_fps: 1000, deadTime_s: -1e-6 })).toThrow('deadTime_s must be');
  });
});
