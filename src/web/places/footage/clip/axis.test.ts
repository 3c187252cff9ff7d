import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  about,
  FEWEST_SHOWN,
  frameAt,
  movedBy,
  pinched,
  placeOf,
  rulerOf,
  showing,
  wholeOf,
  zoomed,
  type View,
} from './axis.ts';

const COUNT = 2000;
const frames = fc.integer({ min: 1, max: 30_000 });
const views = fc.tuple(frames, fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })).map(
  ([frameCount, a, b]): { readonly view: View; readonly frameCount: number } => {
    const [from, to] = [Math.min(a, b) * frameCount, Math.max(a, b) * frameCount];
    return { view: movedBy({ from, to }, 0, frameCount), frameCount };
  },
); // prettier-ignore

describe('a view of a clip', () => {
  test('never leaves it, nor gets closer than can be seen, however it is moved and zoomed', () => {
    const steps = fc.array(fc.tuple(fc.double({ min: 0.01, max: 100, noNaN: true }), fc.double({ min: -1e5, max: 1e5, noNaN: true })), { maxLength: 6 }); // prettier-ignore
    fc.assert(
      fc.property(views, steps, ({ view, frameCount }, moves) => {
        let now = view;
        for (const [factor, by] of moves) now = movedBy(zoomed(now, { factor, about: by, frameCount }), by, frameCount);
        expect(now.from).toBeGreaterThanOrEqual(0);
        expect(now.to).toBeLessThanOrEqual(frameCount * (1 + 1e-9));
        expect(now.to - now.from).toBeGreaterThan(Math.min(FEWEST_SHOWN, frameCount) - 1e-6);
      }),
    );
  });

  test('held by two fingers keeps the frames under them, wherever they go', () => {
    const view = { from: 400, to: 1400 };
    const held = [0.3, 0.5] as const;
    for (const now of [
      [0.2, 0.8],
      [0.5, 0.3],
      [0.6, 0.8],
    ] as const) {
      const after = pinched(view, { held, now, frameCount: COUNT });
      const under = ({ from, to }: View, at: number) => from + at * (to - from);
      expect(under(after, Math.min(...now))).toBeCloseTo(under(view, 0.3), 9);
      expect(under(after, Math.max(...now))).toBeCloseTo(under(view, 0.5), 9);
    }
  });

  test('held by two fingers never leaves the clip, nor gets closer than can be seen', () => {
    const share = fc.double({ min: -0.5, max: 1.5, noNaN: true });
    fc.assert(
      fc.property(views, fc.tuple(share, share), fc.tuple(share, share), ({ view, frameCount }, held, now) => {
        const { from, to } = pinched(view, { held, now, frameCount });
        expect(from).toBeGreaterThanOrEqual(-1e-6);
        expect(to).toBeLessThanOrEqual(frameCount + 1e-6);
        expect(to - from).toBeGreaterThanOrEqual(Math.min(FEWEST_SHOWN, frameCount) - 1e-6);
      }),
    );
  });

  test('zoomed about a frame keeps it in its place', () => {
    const view = { from: 400, to: 1200 };
    const closer = zoomed(view, { factor: 2, about: 600, frameCount: COUNT });
    expect(closer.to - closer.from).toBeCloseTo(400, 9);
    expect(placeOf(600, closer)).toBeCloseTo(placeOf(600, view), 9);
    expect(zoomed(closer, { factor: 0.5, about: 600, frameCount: COUNT })).toEqual(view);
  });

  test('goes no further than the whole clip', () => {
    expect(zoomed({ from: 400, to: 1200 }, { factor: 0.01, about: 600, frameCount: COUNT })).toEqual(wholeOf(COUNT));
  });

  test('of a stretch has it in sight with room on both sides', () => {
    const { from, to } = about(500, 899, COUNT);
    expect([from, to]).toEqual([484, 916]);
    expect(about(0, COUNT - 1, COUNT)).toEqual(wholeOf(COUNT));
  });

  test('follows a frame only when that would be out of sight', () => {
    const view = { from: 100, to: 200 };
    expect(showing(view, 150, COUNT)).toBe(view);
    expect(showing(view, 199, COUNT)).toBe(view);
    for (const frame of [0, 99, 200, 1999]) {
      const moved = showing(view, frame, COUNT);
      expect(placeOf(frame, moved)).toBeGreaterThanOrEqual(0);
      expect(placeOf(frame + 1, moved)).toBeLessThanOrEqual(100);
      expect(moved.to - moved.from).toBeCloseTo(100, 9);
    }
  });
});

test('the frame at the place of a frame is that frame', () => {
  fc.assert(
    fc.property(views, fc.double({ min: 0, max: 1, noNaN: true }), ({ view, frameCount }, share) => {
      const frame = frameAt(share, view, frameCount);
      expect(frame).toBeGreaterThanOrEqual(0);
      expect(frame).toBeLessThan(frameCount);
      expect(frameAt((placeOf(frame, view) + placeOf(frame + 1, view)) / 200, view, frameCount)).toBe(frame);
    }),
  );
});

describe('the two rulers', () => {
  const view = { from: 0, to: 240 };
  test('have round times of their own at the places of their frames', () => {
    const real = rulerOf({ view, rate_fps: 1000, mostCount: 6 });
    expect(real.map(({ says }) => says)).toEqual(['0 ms', '50 ms', '100 ms', '150 ms', '200 ms']);
    expect(real[2]!.at).toBeCloseTo((100 * 100) / 240, 9);
    const screen = rulerOf({ view, rate_fps: 25, mostCount: 6 });
    expect(screen.map(({ says }) => says)).toEqual(['0 s', '2 s', '4 s', '6 s', '8 s']);
    expect(screen[1]!.at).toBeCloseTo((100 * 50) / 240, 9);
  });

  test('say finer times the closer one looks', () => {
    expect(rulerOf({ view: { from: 100, to: 110 }, rate_fps: 20_000, mostCount: 5 })[1]!.says).toBe('5.1 ms');
  });
});
