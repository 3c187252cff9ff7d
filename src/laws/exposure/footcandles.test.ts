import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { stopFromThirds } from '../../base/stop.ts';
import { footcandlesNeeded_fc, stopOfFootcandles } from './footcandles.ts';

describe('published values', () => {
  published('footcandlesNeeded_fc', footcandlesNeeded_fc, [
    {
      source: 'footcandle-note',
      at: 'T4 at index 800 for 1/48 s, printed as the round number that 1/50 s gives',
      given: { stop: 4, exposureTime_s: 1 / 50, isoSpeed: 800 },
      expected: '25',
    },
  ]);
});

test('the rule of 100 footcandles at index 100 for f/2.8, 24 fps and 180° holds within a tenth of a stop (footcandle-rule)', () => {
  const exact_fc = footcandlesNeeded_fc({ stop: stopFromThirds(9), exposureTime_s: 1 / 48, isoSpeed: 100 });
  expect(Math.abs(Math.log2(exact_fc / 100))).toBeLessThan(0.1);
});

test('the stop comes back from the footcandles it asked for', () => {
  const stop = fc.double({ min: 0.7, max: 64, noNaN: true });
  const time = fc.double({ min: 1e-6, max: 1, noNaN: true });
  fc.assert(
    fc.property(stop, time, fc.integer({ min: 6, max: 102_400 }), (wanted, exposureTime_s, isoSpeed) => {
      const illuminance_fc = footcandlesNeeded_fc({ stop: wanted, exposureTime_s, isoSpeed });
      expect(stopOfFootcandles({ illuminance_fc, exposureTime_s, isoSpeed }) / wanted).toBeCloseTo(1, 12);
    }),
  );
});

test('faults are refused by name', () => {
  expect(() => footcandlesNeeded_fc({ stop: 0, exposureTime_s: 1, isoSpeed: 100 })).toThrow('stop must be positive');
  expect(() => stopOfFootcandles({ illuminance_fc: 0, exposureTime_s: 1, isoSpeed: 100 })).toThrow(
    'illuminance_fc must',
  );
  expect(() => stopOfFootcandles({ illuminance_fc: 1, exposureTime_s: 1, isoSpeed: NaN })).toThrow('isoSpeed must be');
});
