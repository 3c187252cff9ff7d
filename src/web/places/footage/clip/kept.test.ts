import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { contactFrames, CONTACT_COUNT } from './contact.ts';
import { countOf, keptOf, sayKept, suggestedOf, withEnd, type Kept } from './kept.ts';

const action = { onset: 50, peak: 80, end: 120, in: 44, out: 126, isBegun: true, isEnded: true, confidence: 'clear' } as const; // prettier-ignore

describe('what is kept', () => {
  test('is the action with its handles until somebody says otherwise, or all of it', () => {
    expect(suggestedOf({ action, frameCount: 200 })).toEqual({ inFrame: 44, outFrame: 126 });
    expect(suggestedOf({ frameCount: 200 })).toEqual({ inFrame: 0, outFrame: 199 });
    expect(suggestedOf({ frameCount: 0 })).toEqual({ inFrame: 0, outFrame: 0 });
  });

  test('is what was said, as far as the clip has it', () => {
    const suggested = { inFrame: 44, outFrame: 126 };
    expect(keptOf(undefined, suggested, 200)).toBe(suggested);
    expect(keptOf({ inFrame: 10, outFrame: 900 }, suggested, 200)).toEqual({ inFrame: 10, outFrame: 199 });
    expect(keptOf({ inFrame: 500, outFrame: 900 }, suggested, 200)).toEqual({ inFrame: 199, outFrame: 199 });
  });

  test('has its ends in order and within the clip wherever they are dragged', () => {
    const move = fc.tuple(fc.constantFrom('in', 'out'), fc.integer({ min: -1e4, max: 1e4 }));
    fc.assert(
      fc.property(fc.array(move), fc.integer({ min: 1, max: 3000 }), (moves, frameCount) => {
        let kept: Kept = { inFrame: 0, outFrame: frameCount - 1 };
        for (const [end, frame] of moves) kept = withEnd(kept, end, frame, frameCount);
        expect(kept.inFrame).toBeGreaterThanOrEqual(0);
        expect(kept.outFrame).toBeLessThan(frameCount);
        expect(countOf(kept)).toBeGreaterThan(0);
      }),
    );
  });

  test('is said in frames and in both times', () => {
    expect(sayKept({ inFrame: 44, outFrame: 126 }, { frameRate_fps: 1000, playback_fps: 25 })).toEqual({ frames: '83 frames', real: '83 ms', screen: '3.32 s' }); // prettier-ignore
    expect(sayKept({ inFrame: 44, outFrame: 44 }, { frameRate_fps: 1000, playback_fps: 25 }).frames).toBe('1 frame');
  });
});

describe('the contact sheet', () => {
  const kept = { inFrame: 44, outFrame: 154 };
  test('runs evenly from the first to the last frame that is kept', () => {
    const frames = contactFrames('kept', { kept, peak: 80, frameCount: 200 });
    expect(frames).toEqual(Array.from({ length: CONTACT_COUNT }, (_, i) => 44 + 10 * i));
  });

  test('or lies closely about the peak', () => {
    const about = (peak: number) => contactFrames('peak', { kept, peak, frameCount: 200 });
    expect(about(80)).toEqual(Array.from({ length: CONTACT_COUNT }, (_, i) => 75 + i));
    for (const peak of [0, 2, 197, 199]) expect(about(peak)).toContain(peak);
    expect([about(2)[0], about(2).length, about(199).at(-1), about(199).length]).toEqual([0, 12, 199, 12]);
  });

  test('has no frame twice and none that is not there', () => {
    const any = fc.integer({ min: 1, max: 400 });
    fc.assert(
      fc.property(any, any, any, fc.constantFrom('kept', 'peak'), (frameCount, a, b, of) => {
        const at = (value: number) => value % frameCount;
        const frames = contactFrames(of, { kept: { inFrame: Math.min(at(a), at(b)), outFrame: Math.max(at(a), at(b)) }, peak: at(a), frameCount }); // prettier-ignore
        expect(new Set(frames).size).toBe(frames.length);
        expect([...frames].sort((x, y) => x - y)).toEqual(frames);
        expect(frames[0]).toBeGreaterThanOrEqual(0);
        expect(frames.at(-1)).toBeLessThan(frameCount);
      }),
    );
  });
});
