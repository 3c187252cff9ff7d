import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sayFrame, sayTime, timesOf } from './clipTimes.ts';

test('a frame is said with both its times', () => {
  expect(sayFrame(126, { frameRate_fps: 1000, playback_fps: 25 })).toBe('frame 126, 126 ms on the set, 5.04 s on the screen'); // prettier-ignore
  expect(sayFrame(10, { frameRate_fps: 1250, playback_fps: 24 })).toBe('frame 10, 8.0 ms on the set, 0.42 s on the screen'); // prettier-ignore
});

test.each([
  [0, 25_000, '0.00 ms'],
  [126 / 25_000, 25_000, '5.04 ms'],
  [3 / 2_000_000, 2_000_000, '1.5 µs'],
  [59.96, 25, '59.96 s'],
  [60, 25, '1 min 0.00 s'],
  [800.08, 25, '13 min 20.08 s'],
])('%d s at %d frames a second is %s', (time_s, rate_fps, says) => expect(sayTime(time_s, rate_fps)).toBe(says));

test('no two frames have the same time, whatever the rates', () => {
  const rate = fc.double({ min: 5, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 100_000 }), rate, rate, (frame, frameRate_fps, playback_fps) => {
      const [a, b] = [frame, frame + 1].map((of) => timesOf(of, { frameRate_fps, playback_fps }));
      expect(a!.real).not.toBe(b!.real);
      expect(a!.screen).not.toBe(b!.screen);
    }),
  );
});
