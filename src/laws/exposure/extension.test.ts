import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { effectiveStop, extensionFactor } from './extension.ts';

interface Bellows {
  readonly focalLength_mm: number;
  readonly imageDistance_mm: number;
}

const factorOfBellows = ({ focalLength_mm, imageDistance_mm }: Bellows): number =>
  extensionFactor({ magnificationRatio: (imageDistance_mm - focalLength_mm) / focalLength_mm });

describe('published values', () => {
  published('exposure factor of a bellows', factorOfBellows, [
    {
      source: 'army-copy-course',
      at: '12 in lens, bellows at 18 in',
      given: { focalLength_mm: 304.8, imageDistance_mm: 457.2 },
      expected: '2.25',
    },
    {
      source: 'army-copy-course',
      at: '300 mm lens, bellows at 450 mm',
      given: { focalLength_mm: 300, imageDistance_mm: 450 },
      expected: '2.25',
    },
  ]);
  published('exposure of 8 s made longer', (given: Bellows) => 8 * factorOfBellows(given), [
    {
      source: 'army-copy-course',
      at: '8 s at f/16 becomes 18 s',
      given: { focalLength_mm: 304.8, imageDistance_mm: 457.2 },
      expected: '18',
    },
  ]);
  published('exposure factor', extensionFactor, [
    {
      source: 'army-copy-course',
      at: 'image 8 in of an original 12 in high',
      given: { magnificationRatio: 8 / 12 },
      expected: '2.8',
    },
    { source: 'close-up-textbook', at: '10 cm drawn 5 cm high', given: { magnificationRatio: 0.5 }, expected: '2.25' },
  ]);
  published('effective stop', effectiveStop, [
    { source: 'pupil-thread', at: 'f/4 at life size', given: { stop: 4, magnificationRatio: 1 }, expected: '8' },
  ]);
});

describe('true of every lens', () => {
  const magnification = fc.double({ min: 0, max: 10, noNaN: true });
  const pupil = fc.double({ min: 0.2, max: 5, noNaN: true });

  test('the effective stop is that of the cone from the exit pupil to the image', () => {
    fc.assert(
      fc.property(magnification, pupil, fc.double({ min: 1, max: 32, noNaN: true }), (m, p, stop) => {
        // In focal lengths: the rear focal point lies p behind the exit pupil, and the image m behind that.
        const exitPupilDiameter = p / stop;
        const effective = effectiveStop({ stop, magnificationRatio: m, pupilMagnificationRatio: p });
        expect(effective / ((m + p) / exitPupilDiameter)).toBeCloseTo(1, 12);
      }),
    );
  });

  test('a lens turned round sees the stop that pupil-thread gives for it', () => {
    fc.assert(
      fc.property(magnification, pupil, fc.double({ min: 1, max: 32, noNaN: true }), (m, p, stop) => {
        // Turned round, its old exit pupil, p times as wide, is the one that light enters by.
        const turned = effectiveStop({ stop: stop / p, magnificationRatio: m, pupilMagnificationRatio: 1 / p });
        expect(turned / ((stop / p) * (1 + p * m))).toBeCloseTo(1, 12);
      }),
    );
  });

  test('the factor is the square of what the stop loses, and 1 at distant focus', () => {
    fc.assert(
      fc.property(magnification, pupil, (magnificationRatio, pupilMagnificationRatio) => {
        const closeUp = { magnificationRatio, pupilMagnificationRatio };
        expect(effectiveStop({ stop: 4, ...closeUp }) ** 2 / 16 / extensionFactor(closeUp)).toBeCloseTo(1, 12);
        expect(extensionFactor({ magnificationRatio: 0, pupilMagnificationRatio })).toBe(1);
      }),
    );
  });
});

test('what has no meaning is refused by name', () => {
  expect(() => extensionFactor({ magnificationRatio: -0.1 })).toThrow('magnificationRatio must be zero or above');
  expect(() => extensionFactor({ magnificationRatio: 1, pupilMagnificationRatio: 0 })).toThrow(
    'pupilMagnificationRatio must be positive and finite, got 0',
  );
  expect(() => effectiveStop({ stop: 0, magnificationRatio: 1 })).toThrow('stop must be positive and finite, got 0');
});
