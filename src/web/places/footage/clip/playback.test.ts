import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { copySpeed, frameAtTime, frameShown, seekTime_s, startOfPlay } from './playback.ts';

const copies = fc.record({ frameCount: fc.integer({ min: 1, max: 50_000 }), duration_s: fc.double({ min: 0.02, max: 2000, noNaN: true }) }); // prettier-ignore

describe('a frame and its time in the small copy', () => {
  test('belong together, whichever is asked for', () => {
    fc.assert(
      fc.property(copies, fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }), (copy, share) => {
        const frame = Math.floor(share * copy.frameCount);
        const begins_s = (frame * copy.duration_s) / copy.frameCount;
        expect(frameAtTime(seekTime_s(frame, copy), copy)).toBe(frame);
        expect(frameShown(begins_s, copy)).toBe(frame);
      }),
    );
  });

  test('do so though the copy says its length a little wrong', () => {
    const truth = { frameCount: 240, duration_s: 9.6 };
    const said = { ...truth, duration_s: 9.6 + 0.012 };
    for (let frame = 0; frame < 240; frame += 1) expect(frameAtTime(seekTime_s(frame, said), truth)).toBe(frame);
  });
});

describe('the speed of the copy', () => {
  test('is its own where it was made at the rate of the film', () => {
    expect(copySpeed({ frameCount: 250, duration_s: 10 }, 25)).toBeCloseTo(1, 12);
    expect(copySpeed({ frameCount: 250, duration_s: 10 }, 25 / 4)).toBeCloseTo(0.25, 12);
  });

  test('is another where the film has changed its rate since', () => {
    expect(copySpeed({ frameCount: 250, duration_s: 10 }, 50)).toBeCloseTo(2, 12);
  });

  test('stays within what browsers play', () => {
    expect(copySpeed({ frameCount: 250, duration_s: 10 }, 0.01)).toBe(1 / 16);
    expect(copySpeed({ frameCount: 250, duration_s: 10 }, 1e6)).toBe(16);
  });
});

test('playing goes on from where it is, and from the start once it has come to the end', () => {
  const kept = { first: 40, last: 90 };
  expect([50, 40, 90, 95, 10].map((frame) => startOfPlay(frame, kept))).toEqual([50, 40, 40, 40, 40]);
});
