import fc from 'fast-check';
import { expect, test } from 'vitest';
import { rational, ratioOf } from '../../base/rational.ts';
import {
  captureRateAtSpeed_fps,
  captureRateWanted_fps,
  captureTime_s,
  exactExpansion,
  playbackSpeedFraction,
  screenTime_s,
  timeExpansion,
} from './expansion.ts';

const FILM = rational(24_000, 1001);
const VIDEO = rational(30_000, 1001);

test('1000 fps played at 24000/1001 expands by exactly 1001/24, 41.7083333, worked by hand', () => {
  const { expansion, playbackSpeed } = exactExpansion({ captureRate: rational(1000), playRate: FILM });
  expect(expansion).toEqual({ num: 1001, den: 24 });
  expect(playbackSpeed).toEqual({ num: 24, den: 1001 });
  expect(ratioOf(expansion)).toBeCloseTo(41.7083333, 7);
});

test('2000 fps played at 30000/1001 expands by 66.7333333, worked by hand', () => {
  expect(ratioOf(exactExpansion({ captureRate: rational(2000), playRate: VIDEO }).expansion)).toBeCloseTo(
    66.7333333,
    7,
  );
});

test('taking 24000/1001 for 24 shortens a film by a tenth of a per cent, a seventh of a frame in six seconds', () => {
  const expansion = exactExpansion({ captureRate: rational(1000), playRate: FILM }).expansion;
  const rounded = timeExpansion({ captureRate_fps: 1000, playRate_fps: 24 });
  expect(ratioOf(expansion) / rounded).toBeCloseTo(1.001, 12);
  expect(6 * 24 * (1.001 - 1)).toBeCloseTo(0.14, 2);
});

test('0.12 s that must last 6 s at 24 fps is taken at 1200 fps, worked by hand', () => {
  expect(captureRateWanted_fps({ screenTime_s: 6, captureTime_s: 0.12, playRate_fps: 24 })).toBeCloseTo(1200, 9);
});

test('5 % of real speed at 25 fps is 500 fps, worked by hand', () => {
  expect(captureRateAtSpeed_fps({ playbackSpeedFraction: 0.05, playRate_fps: 25 })).toBeCloseTo(500, 9);
});

const rate = fc.double({ min: 1, max: 100_000, noNaN: true });
const time = fc.double({ min: 1e-6, max: 1e4, noNaN: true });

test('time on the set comes back from the time on screen it makes', () => {
  fc.assert(
    fc.property(time, rate, rate, (real_s, captureRate_fps, playRate_fps) => {
      const onScreen_s = screenTime_s({ captureTime_s: real_s, captureRate_fps, playRate_fps });
      const back_s = captureTime_s({ screenTime_s: onScreen_s, captureRate_fps, playRate_fps });
      expect(back_s / real_s).toBeCloseTo(1, 12);
    }),
  );
});

test('the rate asked for makes the time on screen asked for', () => {
  fc.assert(
    fc.property(time, time, rate, (wanted_s, real_s, playRate_fps) => {
      const captureRate_fps = captureRateWanted_fps({ screenTime_s: wanted_s, captureTime_s: real_s, playRate_fps });
      expect(screenTime_s({ captureTime_s: real_s, captureRate_fps, playRate_fps }) / wanted_s).toBeCloseTo(1, 12);
    }),
  );
});

test('expansion and speed on screen multiply to one', () => {
  fc.assert(
    fc.property(rate, rate, (captureRate_fps, playRate_fps) => {
      const rates = { captureRate_fps, playRate_fps };
      expect(timeExpansion(rates) * playbackSpeedFraction(rates)).toBeCloseTo(1, 12);
    }),
  );
});

test('the exact expansion is the rounded one with nothing lost', () => {
  const whole = fc.integer({ min: 1, max: 100_000 });
  fc.assert(
    fc.property(whole, whole, (capture, play) => {
      const captureRate = rational(capture * 1000, 1001);
      const exact = exactExpansion({ captureRate, playRate: rational(play) }).expansion;
      const rounded = timeExpansion({ captureRate_fps: ratioOf(captureRate), playRate_fps: play });
      expect(ratioOf(exact) / rounded).toBeCloseTo(1, 12);
    }),
  );
});

test('faults are refused by name', () => {
  expect(() => timeExpansion({ captureRate_fps: 0, playRate_fps: 24 })).toThrow('captureRate_fps must be positive');
  expect(() => playbackSpeedFraction({ captureRate_fps: 24, playRate_fps: NaN })).toThrow(
    'playRate_fps must be positive',
  );
  expect(() => screenTime_s({ captureTime_s: -1, captureRate_fps: 100, playRate_fps: 24 })).toThrow(
    'captureTime_s must be zero or above',
  );
  expect(() => captureTime_s({ screenTime_s: NaN, captureRate_fps: 100, playRate_fps: 24 })).toThrow(
    'screenTime_s must be',
  );
  expect(() => captureRateWanted_fps({ screenTime_s: 6, captureTime_s: 0, playRate_fps: 24 })).toThrow(
    'captureTime_s must be positive',
  );
  expect(() => captureRateAtSpeed_fps({ playbackSpeedFraction: 0, playRate_fps: 24 })).toThrow(
    'playbackSpeedFraction must be positive',
  );
  expect(() => exactExpansion({ captureRate: { num: 0, den: 1 }, playRate: FILM })).toThrow(
    'captureRate must be positive',
  );
  expect(() => exactExpansion({ captureRate: rational(1000), playRate: { num: 24, den: 0 } })).toThrow(
    'playRate must be positive and finite',
  );
});
