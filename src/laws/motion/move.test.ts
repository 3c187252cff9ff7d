import fc from 'fast-check';
import { expect, test } from 'vitest';
import { moveOf } from './move.ts';

test.each([
  [0.8, 0.6, 2],
  [0.2, 0.283, 1.414],
])('%f m at 2 m/s and 10 m/s² takes %f s and gets to %f m/s, worked by hand', (distance_m, time_s, peak_m_per_s) => {
  const { moveTime_s, peakSpeed_m_per_s } = moveOf({ distance_m, topSpeed_m_per_s: 2, acceleration_m_per_s2: 10 });
  expect(moveTime_s).toBeCloseTo(time_s, 3);
  expect(peakSpeed_m_per_s).toBeCloseTo(peak_m_per_s, 3);
});

const distance = fc.double({ min: 1e-3, max: 20, noNaN: true });
const speed = fc.double({ min: 0.01, max: 10, noNaN: true });
const acceleration = fc.double({ min: 0.05, max: 50, noNaN: true });

test('the area under the speed is the distance, whichever profile', () => {
  fc.assert(
    fc.property(distance, speed, acceleration, (distance_m, topSpeed_m_per_s, acceleration_m_per_s2) => {
      const { moveTime_s, peakSpeed_m_per_s } = moveOf({ distance_m, topSpeed_m_per_s, acceleration_m_per_s2 });
      const rising_s = peakSpeed_m_per_s / acceleration_m_per_s2;
      expect((peakSpeed_m_per_s * (moveTime_s - rising_s)) / distance_m).toBeCloseTo(1, 9);
      expect(peakSpeed_m_per_s).toBeLessThanOrEqual(topSpeed_m_per_s);
    }),
  );
});

test('a move too short for its top speed peaks at twice its average, as move-profiles says', () => {
  fc.assert(
    fc.property(distance, acceleration, (distance_m, acceleration_m_per_s2) => {
      const { moveTime_s, peakSpeed_m_per_s } = moveOf({ distance_m, topSpeed_m_per_s: 1e6, acceleration_m_per_s2 });
      expect(peakSpeed_m_per_s / (distance_m / moveTime_s)).toBeCloseTo(2, 9);
    }),
  );
});

test('the two profiles meet where the top speed is just reached', () => {
  const meeting = { topSpeed_m_per_s: 2, acceleration_m_per_s2: 10 };
  const short = moveOf({ distance_m: 0.4 * (1 - 1e-9), ...meeting });
  const long = moveOf({ distance_m: 0.4, ...meeting });
  expect(short.moveTime_s).toBeCloseTo(long.moveTime_s, 8);
  expect(short.peakSpeed_m_per_s).toBeCloseTo(long.peakSpeed_m_per_s, 8);
});

test('faults are refused by name', () => {
  const move = { distance_m: 1, topSpeed_m_per_s: 1, acceleration_m_per_s2: 1 };
  expect(() => moveOf({ ...move, distance_m: 0 })).toThrow('distance_m must be positive');
  expect(() => moveOf({ ...move, topSpeed_m_per_s: NaN })).toThrow('topSpeed_m_per_s must be positive');
  expect(() => moveOf({ ...move, acceleration_m_per_s2: -1 })).toThrow('acceleration_m_per_s2 must be positive');
});
