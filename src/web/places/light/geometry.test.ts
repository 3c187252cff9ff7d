import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  atDistance,
  aimTurned,
  azimuth_deg,
  distance_m,
  snapPlace,
  snapRound,
  SUBJECT,
  tidyPlace,
  turnedBy,
} from './geometry.ts';

const metres = fc.double({ min: -20, max: 20, noNaN: true });
const place = fc.record({ right_m: metres, away_m: metres, up_m: metres });

test('a place in front is at 0°, one to the right at 90°, one behind at 180°', () => {
  expect(azimuth_deg({ right_m: 0, away_m: -2, up_m: 1 })).toBeCloseTo(0, 12);
  expect(azimuth_deg({ right_m: 2, away_m: 0, up_m: 1 })).toBeCloseTo(90, 12);
  expect(Math.abs(azimuth_deg({ right_m: 0, away_m: 2, up_m: 1 }))).toBeCloseTo(180, 12);
});

test('walking round the subject changes neither the distance nor the height, and walking back returns', () => {
  fc.assert(
    fc.property(place, fc.double({ min: -360, max: 360, noNaN: true }), (at, by_deg) => {
      const walked = turnedBy(at, by_deg);
      expect(walked.up_m).toBe(at.up_m);
      expect(distance_m(walked)).toBeCloseTo(distance_m(at), 9);
      expect(distance_m(turnedBy(walked, -by_deg), at)).toBeCloseTo(0, 6);
    }),
  );
});

test('a lamp kept to 15° stays as far out as it was, at the angle nearest to the hand', () => {
  const snapped = snapRound({ right_m: 0, away_m: -2, up_m: 0.5 }, { right_m: 1.1, away_m: -1, up_m: 3 });
  expect(azimuth_deg(snapped)).toBeCloseTo(45, 9);
  expect(Math.hypot(snapped.right_m, snapped.away_m)).toBeCloseTo(2, 9);
  expect(snapped.up_m).toBe(0.5);
});

test('places are rounded to the centimetre, and on the grid to five', () => {
  expect(tidyPlace({ right_m: 0.1234, away_m: -0.001, up_m: 1.009 })).toEqual({ right_m: 0.12, away_m: 0, up_m: 1.01 });
  expect(snapPlace({ right_m: 0.126, away_m: -1.38, up_m: 0.02 })).toEqual({ right_m: 0.15, away_m: -1.4, up_m: 0 });
});

test('a lamp is brought to a distance along its line, and one at the subject has no line', () => {
  expect(atDistance({ right_m: 3, away_m: -4, up_m: 0 }, 1)).toEqual({ right_m: 0.6, away_m: -0.8, up_m: 0 });
  expect(atDistance(SUBJECT, 1)).toBeUndefined();
});

test('panning keeps the aim as far from the lamp as it was', () => {
  const at = { right_m: 1, away_m: -2, up_m: 1.5 };
  const aim = aimTurned({ at, aim: SUBJECT, by_deg: 20 });
  expect(distance_m(aim, at)).toBeCloseTo(distance_m(SUBJECT, at), 12);
  expect(distance_m(aim)).toBeGreaterThan(0.5);
});
