import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { angleOfView_deg, fieldWidth_m } from './field.ts';
import { magnification, objectDistance_m } from './magnification.ts';

describe('published values', () => {
  published('angleOfView_deg', angleOfView_deg, [
    {
      source: 'angle-of-view-page',
      at: '30 mm lens, 22.5 mm wide',
      given: { focalLength_mm: 30, imageWidth_m: 0.0225 },
      expected: '41.1',
    },
    {
      source: 'angle-of-view-diagonal',
      at: '21 mm lens, diagonal of 24 × 36 mm',
      given: { focalLength_mm: 21, imageWidth_m: Math.hypot(0.024, 0.036) },
      expected: '91.702105',
    },
  ]);

  const halfLifeSize = {
    focalLength_mm: 50,
    objectDistance_m: objectDistance_m({ focalLength_mm: 50, magnificationRatio: 0.5 }),
  };
  published('fieldWidth in mm', (given: Parameters<typeof fieldWidth_m>[0]) => 1000 * fieldWidth_m(given), [
    {
      source: 'macro-formulas',
      at: 'width seen at 1:2 on 24 × 36 mm',
      given: { ...halfLifeSize, imageWidth_m: 0.036 },
      expected: '72',
    },
    {
      source: 'macro-formulas',
      at: 'height seen at 1:2 on 24 × 36 mm',
      given: { ...halfLifeSize, imageWidth_m: 0.024 },
      expected: '48',
    },
  ]);
});

test('an independent computation of the angles of two windows of 10 µm pixels agrees', () => {
  expect(angleOfView_deg({ focalLength_mm: 50, imageWidth_m: 0.0256 })).toBeCloseTo(28.72, 2);
  expect(angleOfView_deg({ focalLength_mm: 50, imageWidth_m: 0.0128 })).toBeCloseTo(14.59, 2);
});

const focalLength_mm = fc.double({ min: 10, max: 300, noNaN: true });
const imageWidth_m = fc.double({ min: 0.002, max: 0.04, noNaN: true });
const magnificationRatio = fc.double({ min: 0.01, max: 5, noNaN: true });

test('the field is the width on the sensor over the magnification', () => {
  fc.assert(
    fc.property(focalLength_mm, imageWidth_m, magnificationRatio, (focal_mm, width_m, ratio) => {
      const object_m = objectDistance_m({ focalLength_mm: focal_mm, magnificationRatio: ratio });
      const seen_m = fieldWidth_m({ focalLength_mm: focal_mm, objectDistance_m: object_m, imageWidth_m: width_m });
      expect(magnification({ subjectWidth_m: seen_m, imageWidth_m: width_m }) / ratio).toBeCloseTo(1, 9);
    }),
  );
});

test('for like pupils the angle is that of the field seen from the principal plane', () => {
  fc.assert(
    fc.property(focalLength_mm, imageWidth_m, magnificationRatio, (focal_mm, width_m, ratio) => {
      const object_m = objectDistance_m({ focalLength_mm: focal_mm, magnificationRatio: ratio });
      const seen_m = fieldWidth_m({ focalLength_mm: focal_mm, objectDistance_m: object_m, imageWidth_m: width_m });
      const angle_deg = angleOfView_deg({
        focalLength_mm: focal_mm,
        imageWidth_m: width_m,
        magnificationRatio: ratio,
      });
      expect(Math.tan((angle_deg * Math.PI) / 360) * 2 * object_m).toBeCloseTo(seen_m, 9);
    }),
  );
});

test('the angle of a stop in front of a thin lens is that of the ray traced through its middle to the edge of the picture', () => {
  const focal_m = 0.06;
  const stopBefore_m = 0.025;
  const pupilMagnificationRatio = 1 / (1 - stopBefore_m / focal_m);
  const ratio = 0.8;
  const sensor_m = focal_m * (1 + ratio);
  const edgeHeight_m = 0.01;

  let low = 0;
  let high = 1;
  for (let i = 0; i < 100; i += 1) {
    const slope = (low + high) / 2;
    const atLens_m = slope * stopBefore_m;
    const atSensor_m = atLens_m + (slope - atLens_m / focal_m) * sensor_m;
    if (atSensor_m < edgeHeight_m) low = slope;
    else high = slope;
  }
  const traced_deg = (2 * Math.atan(low) * 180) / Math.PI;

  const angle_deg = angleOfView_deg({
    focalLength_mm: 60,
    imageWidth_m: 2 * edgeHeight_m,
    magnificationRatio: ratio,
    pupilMagnificationRatio,
  });
  expect(angle_deg).toBeCloseTo(traced_deg, 9);
});

test('a subject at or within the focal length is refused by name', () => {
  expect(() => fieldWidth_m({ focalLength_mm: 100, objectDistance_m: 0.1, imageWidth_m: 0.02 })).toThrow(
    'objectDistance_m must be above the focal length, 0.1 m, got 0.1',
  );
});

test('a picture of no width and a negative magnification are refused by name', () => {
  expect(() => angleOfView_deg({ focalLength_mm: 50, imageWidth_m: 0 })).toThrow('imageWidth_m must be positive');
  expect(() => angleOfView_deg({ focalLength_mm: 50, imageWidth_m: 0.02, magnificationRatio: -1 })).toThrow(
    'magnificationRatio must be zero or above',
  );
});
