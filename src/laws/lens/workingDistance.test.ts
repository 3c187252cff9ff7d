import { expect, test } from 'vitest';
import { sensorToSubject_m } from './magnification.ts';
import { workingDistance_m } from './workingDistance.ts';

test('camera, lens and tubes are taken off the distance to the sensor', () => {
  const given = { sensorToSubject_m: 0.45, frontToSensor_m: 0.12 };
  expect(workingDistance_m(given)).toBeCloseTo(0.33, 12);
  expect(workingDistance_m({ ...given, addedLength_m: 0.05 })).toBeCloseTo(0.28, 12);
});

test('a subject that would stand inside the lens has a negative distance, not an error', () => {
  const lifeSize_m = sensorToSubject_m({ focalLength_mm: 35, magnificationRatio: 1 });
  expect(workingDistance_m({ sensorToSubject_m: lifeSize_m, frontToSensor_m: 0.17 })).toBeCloseTo(-0.03, 12);
});

test('a distance of nothing and a negative added length are refused by name', () => {
  expect(() => workingDistance_m({ sensorToSubject_m: 0, frontToSensor_m: 0.1 })).toThrow(
    'sensorToSubject_m must be positive',
  );
  expect(() => workingDistance_m({ sensorToSubject_m: 0.4, frontToSensor_m: NaN })).toThrow(
    'frontToSensor_m must be positive and finite, got NaN',
  );
  expect(() => workingDistance_m({ sensorToSubject_m: 0.4, frontToSensor_m: 0.1, addedLength_m: -0.01 })).toThrow(
    'addedLength_m must be zero or above',
  );
});
