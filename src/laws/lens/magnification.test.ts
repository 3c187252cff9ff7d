import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import {
  extensionNeeded_m,
  imageDistance_m,
  lensExtension_m,
  magnification,
  magnificationAtDistance,
  objectDistance_m,
  sensorToSubject_m,
} from './magnification.ts';

interface Drawn {
  readonly focalLength_mm: number;
  readonly magnificationRatio: number;
}

describe('published values', () => {
  published('magnification', magnification, [
    {
      source: 'magnification-tables',
      at: 'worked example',
      given: { subjectWidth_m: 0.07, imageWidth_m: 0.036 },
      expected: '0.5143',
    },
    {
      source: 'magnification-tables',
      at: 'table, frame 500 mm, sensor 36 mm',
      given: { subjectWidth_m: 0.5, imageWidth_m: 0.036 },
      expected: '0.072',
    },
    {
      source: 'magnification-tables',
      at: 'table, frame 14 mm, sensor 36 mm',
      given: { subjectWidth_m: 0.014, imageWidth_m: 0.036 },
      expected: '2.6',
    },
  ]);

  published('imageDistance in mm', (given: Drawn) => 1000 * imageDistance_m(given), [
    {
      source: 'thin-lens-bellows',
      at: '210 mm at 1:3',
      given: { focalLength_mm: 210, magnificationRatio: 1 / 3 },
      expected: '280',
    },
    {
      source: 'thin-lens-bellows',
      at: '150 mm at 1.133',
      given: { focalLength_mm: 150, magnificationRatio: 1.133 },
      expected: '320',
    },
  ]);

  published('objectDistance in mm', (given: Drawn) => 1000 * objectDistance_m(given), [
    {
      source: 'thin-lens-bellows',
      at: '360 mm, subject at 1500 mm',
      given: { focalLength_mm: 360, magnificationRatio: 360 / (1500 - 360) },
      expected: '1500',
    },
  ]);

  test('a 200 mm lens on 315 mm of bellows sees at 547.8 mm, by the thin-lens equation that the worked example cuts to 547', () => {
    const magnificationRatio = (315 - 200) / 200;
    const distance_mm = 1000 * objectDistance_m({ focalLength_mm: 200, magnificationRatio });
    expect(Math.floor(distance_mm)).toBe(547);
    expect(1 / distance_mm + 1 / 315).toBeCloseTo(1 / 200, 15);
  });

  published(
    'magnification in per cent, subject to lens',
    ({ focalLength_mm, distance_m }: { readonly focalLength_mm: number; readonly distance_m: number }) => {
      let low = 1e-6;
      let high = 1;
      for (let i = 0; i < 100; i += 1) {
        const magnificationRatio = Math.sqrt(low * high);
        if (objectDistance_m({ focalLength_mm, magnificationRatio }) > distance_m) low = magnificationRatio;
        else high = magnificationRatio;
      }
      return 100 * low;
    },
    [
      {
        source: 'thin-lens-bellows',
        at: '300 mm at ten feet',
        given: { focalLength_mm: 300, distance_m: 3.048 },
        expected: '10.9',
      },
      {
        source: 'thin-lens-bellows',
        at: '450 mm at fifteen feet',
        given: { focalLength_mm: 450, distance_m: 4.572 },
        expected: '10.9',
      },
    ],
  );

  published('extensionNeeded in mm', (given: Drawn) => 1000 * extensionNeeded_m(given), [
    {
      source: 'extension-tubes',
      at: '50 mm lens at 0.15',
      given: { focalLength_mm: 50, magnificationRatio: 0.15 },
      expected: '7.5',
    },
    {
      source: 'extension-tubes',
      at: '50 mm lens at 0.65, with a tube of 25 mm',
      given: { focalLength_mm: 50, magnificationRatio: 0.65 },
      expected: '32.5',
    },
  ]);

  published('magnificationAtDistance', magnificationAtDistance, [
    {
      source: 'extension-tubes',
      at: '50 mm lens at its closest 0.45 m',
      given: { focalLength_mm: 50, sensorToSubject_m: 0.45 },
      expected: '0.15',
    },
    {
      source: 'four-focal-lengths',
      at: 'the least distance, four focal lengths',
      given: { focalLength_mm: 85, sensorToSubject_m: 0.34 },
      expected: '1.000000',
    },
  ]);
});

describe('true of every lens', () => {
  const focalLength_mm = fc.double({ min: 8, max: 600, noNaN: true });
  const magnificationRatio = fc.double({ min: 0.001, max: 20, noNaN: true });

  test('subject and image distance satisfy the thin-lens equation and their ratio is the magnification', () => {
    fc.assert(
      fc.property(focalLength_mm, magnificationRatio, (focal_mm, ratio) => {
        const setting = { focalLength_mm: focal_mm, magnificationRatio: ratio };
        const object_m = objectDistance_m(setting);
        const image_m = imageDistance_m(setting);
        expect((1 / object_m + 1 / image_m) * (focal_mm / 1000)).toBeCloseTo(1, 12);
        expect(image_m / object_m / ratio).toBeCloseTo(1, 12);
        expect(image_m - focal_mm / 1000).toBeCloseTo(extensionNeeded_m(setting), 12);
      }),
    );
  });

  test('the magnification up to life size comes back from the distance, sensor to subject', () => {
    const upToLifeSize = fc.double({ min: 0.001, max: 0.99, noNaN: true });
    fc.assert(
      fc.property(focalLength_mm, upToLifeSize, (focal_mm, ratio) => {
        const distance_m = sensorToSubject_m({ focalLength_mm: focal_mm, magnificationRatio: ratio });
        const back = magnificationAtDistance({ focalLength_mm: focal_mm, sensorToSubject_m: distance_m });
        expect(back / ratio).toBeCloseTo(1, 9);
      }),
    );
  });

  test('above life size the distance gives back the reciprocal magnification', () => {
    const distance_m = sensorToSubject_m({ focalLength_mm: 65, magnificationRatio: 4 });
    expect(magnificationAtDistance({ focalLength_mm: 65, sensorToSubject_m: distance_m })).toBeCloseTo(1 / 4, 12);
  });

  test('no subject stands nearer to the sensor than four focal lengths', () => {
    fc.assert(
      fc.property(focalLength_mm, magnificationRatio, (focal_mm, ratio) => {
        const distance_m = sensorToSubject_m({ focalLength_mm: focal_mm, magnificationRatio: ratio });
        expect(distance_m).toBeGreaterThanOrEqual(4 * (focal_mm / 1000) * (1 - 1e-12));
      }),
    );
  });

  test("a lens's own extension is what its closest distance needs", () => {
    fc.assert(
      fc.property(focalLength_mm, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (focal_mm, ratio) => {
        const setting = { focalLength_mm: focal_mm, magnificationRatio: ratio };
        const own_m = lensExtension_m({ focalLength_mm: focal_mm, closeFocus_m: sensorToSubject_m(setting) });
        expect(own_m / extensionNeeded_m(setting)).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('refused by name', () => {
  test('a subject nearer than four focal lengths', () => {
    expect(() => magnificationAtDistance({ focalLength_mm: 100, sensorToSubject_m: 0.399 })).toThrow(
      'sensorToSubject_m must be at least four focal lengths, 0.4 m, got 0.399',
    );
  });

  test('a closest focus that only a lens focusing inside can have', () => {
    expect(() => lensExtension_m({ focalLength_mm: 100, closeFocus_m: 0.3 })).toThrow(
      'closeFocus_m must be at least four focal lengths, 0.4 m, got 0.3',
    );
  });

  test('a subject of no width, a magnification of nothing where a subject distance is asked, a negative one anywhere', () => {
    expect(() => magnification({ subjectWidth_m: 0, imageWidth_m: 0.02 })).toThrow('subjectWidth_m must be positive');
    expect(() => objectDistance_m({ focalLength_mm: 50, magnificationRatio: 0 })).toThrow(
      'magnificationRatio must be positive',
    );
    expect(() => extensionNeeded_m({ focalLength_mm: 50, magnificationRatio: -0.1 })).toThrow(
      'magnificationRatio must be zero or above',
    );
    expect(() => imageDistance_m({ focalLength_mm: Infinity, magnificationRatio: 1 })).toThrow(
      'focalLength_mm must be positive and finite',
    );
  });
});
