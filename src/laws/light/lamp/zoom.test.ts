import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lampAtBeam, spotToFlood_cd } from './zoom.ts';

const THREE = [
  { beamAngle_deg: 10, intensity_cd: 300_000, fieldAngle_deg: 16 },
  { beamAngle_deg: 25, intensity_cd: 80_000, fieldAngle_deg: 45 },
  { beamAngle_deg: 50, intensity_cd: 20_000, fieldAngle_deg: 70 },
];

describe('between settings', () => {
  test('a lamp that keeps its light while its beam widens falls with the square of the angle, exactly', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 20, noNaN: true }),
        fc.double({ min: 1.1, max: 8, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (spotBeamAngle_deg, wider, share) => {
          const floodBeamAngle_deg = spotBeamAngle_deg * wider;
          const beamAngle_deg = Math.min(
            floodBeamAngle_deg,
            spotBeamAngle_deg + share * (floodBeamAngle_deg - spotBeamAngle_deg),
          );
          const found_cd = spotToFlood_cd({
            spotBeamAngle_deg,
            spotIntensity_cd: 1e5,
            floodBeamAngle_deg,
            floodIntensity_cd: 1e5 / wider ** 2,
            beamAngle_deg,
          });
          expect(found_cd / (1e5 * (spotBeamAngle_deg / beamAngle_deg) ** 2)).toBeCloseTo(1, 10);
        },
      ),
    );
  });

  test('worked by hand: 160,000 cd at 10° and 10,000 cd at 40° make 40,000 cd at 20°', () => {
    expect(
      spotToFlood_cd({
        spotBeamAngle_deg: 10,
        spotIntensity_cd: 160_000,
        floodBeamAngle_deg: 40,
        floodIntensity_cd: 10_000,
        beamAngle_deg: 20,
      }),
    ).toBeCloseTo(40_000, 6);
  });

  test('every stated setting is met, and between them the intensity lies between theirs', () => {
    for (const { beamAngle_deg, intensity_cd, fieldAngle_deg } of THREE) {
      const there = lampAtBeam(THREE, beamAngle_deg);
      expect(there.intensity_cd).toBeCloseTo(intensity_cd, 6);
      expect(there.fieldAngle_deg).toBeCloseTo(fieldAngle_deg, 9);
    }
    fc.assert(
      fc.property(fc.double({ min: 25, max: 50, noNaN: true }), (beamAngle_deg) => {
        const { intensity_cd, fieldAngle_deg } = lampAtBeam(THREE, beamAngle_deg);
        expect(intensity_cd).toBeGreaterThanOrEqual(20_000 * (1 - 1e-12));
        expect(intensity_cd).toBeLessThanOrEqual(80_000 * (1 + 1e-12));
        expect(fieldAngle_deg).toBeGreaterThan(beamAngle_deg);
      }),
    );
  });

  test('a setting without a field angle is taken for a bell', () => {
    const plain = THREE.map(({ beamAngle_deg, intensity_cd }) => ({ beamAngle_deg, intensity_cd }));
    expect(lampAtBeam(plain, 30).fieldAngle_deg / 30).toBeCloseTo(Math.sqrt(Math.log2(10)), 12);
  });
});

test('settings that are none and angles beyond them are refused by name', () => {
  expect(() => lampAtBeam(THREE.slice(0, 1), 10)).toThrow('settings must be at least 2, got 1');
  expect(() => lampAtBeam(THREE.toReversed(), 30)).toThrow('settings[1].beamAngle_deg must be above 50, got 25');
  expect(() => lampAtBeam(THREE, 9.9)).toThrow('beamAngle_deg must be within the settings, 10 to 50, got 9.9');
  expect(() => lampAtBeam(THREE, 51)).toThrow('beamAngle_deg must be within the settings, 10 to 50, got 51');
  const dark = [...THREE.slice(0, 2), { beamAngle_deg: 50, intensity_cd: 0 }];
  expect(() => lampAtBeam(dark, 30)).toThrow('settings[2].intensity_cd must be positive');
  const given = { spotBeamAngle_deg: 20, spotIntensity_cd: 1, floodIntensity_cd: 1, beamAngle_deg: 20 };
  expect(() => spotToFlood_cd({ ...given, floodBeamAngle_deg: 20 })).toThrow(
    'floodBeamAngle_deg must be above the spot, 20',
  );
});
