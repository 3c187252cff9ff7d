import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { framesSaid, stretchesOf } from './firstLook.ts';

const clip = (width: number, height: number, statedFrames?: number) => ({ width, height, ...(statedFrames !== undefined && { statedFrames }) }); // prettier-ignore

describe('a first look', () => {
  test.each([
    [1920, 1080, 120],
    [4096, 2304, 48],
    [2048, 1152, 120],
    [7680, 4320, 24],
    [64, 48, 120],
  ])('at pictures of %i × %i is three times so many frames: %i', (width, height, frameCount) => {
    const stretches = stretchesOf(clip(width, height, 100_000));
    expect(stretches.map((of) => of.frameCount)).toEqual([frameCount, frameCount, frameCount]);
  });

  test('lies within the clip, from its first frame to its last, no frame twice; of a short clip there is none', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 8192 }), fc.integer({ min: 1, max: 8192 }), fc.integer({ min: 1, max: 5000 }), (width, height, frames) => {
        const stretches = stretchesOf(clip(width, height, frames));
        if (stretches.length === 0) {
          expect(frames).toBeLessThan(720);
          return;
        }
        let end = 0;
        for (const { firstFrame, frameCount } of stretches) {
          expect(firstFrame).toBeGreaterThanOrEqual(end);
          end = firstFrame + frameCount;
        }
        expect([stretches[0]!.firstFrame, end]).toEqual([0, frames]);
      }),
    );
  }); // prettier-ignore

  test('is none of a clip that does not say how long it is', () => {
    expect(stretchesOf(clip(640, 360))).toEqual([]);
    expect(framesSaid({ duration_s: 2, fileRate: { num: 24_000, den: 1001 } })).toBe(48);
  });
});
