import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import {
  isoSpeedAtSignalToNoise,
  midGreyElectrons,
  midGreySignalToNoise_dB,
  WHITE_PHOTONS_per_m2_lx_s,
  type Pixel,
} from './noise.ts';

/** One colour of a mosaic on a 10 µm pixel. */
const pixel = { pixelPitch_m: 10e-6, quantumEfficiencyFraction: 0.165 };

/** What summing n × n pixels gains, as a ratio of the two signal-to-noise ratios. */
function gainOfBinning({ count, readNoise_e }: { readonly count: number; readonly readNoise_e: number }): number {
  const sensor = { ...pixel, isoSpeed: 3200, readNoise_e };
  const gain_dB = midGreySignalToNoise_dB({ ...sensor, binningCount: count }) - midGreySignalToNoise_dB(sensor);
  return 10 ** (gain_dB / 20);
}

describe('published values', () => {
  published('gain of binning', gainOfBinning, [
    { source: 'binning-note', at: 'shot noise, 2 × 2', given: { count: 2, readNoise_e: 0 }, expected: '2.000' },
    { source: 'binning-note', at: 'shot noise, 3 × 3', given: { count: 3, readNoise_e: 0 }, expected: '3.000' },
  ]);

  test('the photons are those of 250 lm/W at 550 nm, to two digits, with the constants that define the SI', () => {
    const energyOfPhoton_J = (6.62607015e-34 * 299_792_458) / 550e-9;
    const photons = 1 / 250 / energyOfPhoton_J;
    expect(Number(photons.toPrecision(2))).toBe(WHITE_PHOTONS_per_m2_lx_s);
  });

  // Worked by hand: 10/800 lx·s · 1.1e4 photons a µm² · 100 µm² · 0.165 = 2268.75, whose root is 47.63, 33.6 dB.
  test('index 800 on a 10 µm pixel leaves 2269 electrons, 33.6 dB above their shot noise', () => {
    expect(midGreyElectrons({ ...pixel, isoSpeed: 800 })).toBeCloseTo(2268.75, 6);
    expect(midGreySignalToNoise_dB({ ...pixel, isoSpeed: 800, readNoise_e: 0 })).toBeCloseTo(33.56, 2);
  });

  test('where shot noise rules, a first acceptable picture (S/N 10) bears sixteen times the index of a first excellent one (S/N 40) of iso-12232', () => {
    const at = (ratio: number) =>
      isoSpeedAtSignalToNoise({ ...pixel, signalToNoise_dB: 20 * Math.log10(ratio), readNoise_e: 0 });
    expect(at(10) / at(40)).toBeCloseTo(16, 9);
  });
});

const anyPixel: fc.Arbitrary<Required<Pixel>> = fc.record({
  pixelPitch_m: fc.double({ min: 1e-6, max: 50e-6, noNaN: true }),
  quantumEfficiencyFraction: fc.double({ min: 0.01, max: 1, noNaN: true }),
  binningCount: fc.integer({ min: 1, max: 8 }),
});
const read_e = fc.double({ min: 0, max: 500, noNaN: true });
const speed = fc.double({ min: 6, max: 409_600, noNaN: true });

describe('true of every sensor', () => {
  test('the index comes back from the noise it makes', () => {
    fc.assert(
      fc.property(anyPixel, read_e, speed, (sensor, readNoise_e, isoSpeed) => {
        const signalToNoise_dB = midGreySignalToNoise_dB({ ...sensor, readNoise_e, isoSpeed });
        expect(isoSpeedAtSignalToNoise({ ...sensor, readNoise_e, signalToNoise_dB }) / isoSpeed).toBeCloseTo(1, 9);
      }),
    );
  });

  test('a stop of index costs 3 dB where shot noise rules and 6 dB where read noise does', () => {
    fc.assert(
      fc.property(anyPixel, speed, (sensor, isoSpeed) => {
        const cost_dB = (readNoise_e: number) =>
          midGreySignalToNoise_dB({ ...sensor, readNoise_e, isoSpeed }) -
          midGreySignalToNoise_dB({ ...sensor, readNoise_e, isoSpeed: 2 * isoSpeed });
        expect(cost_dB(0)).toBeCloseTo(10 * Math.log10(2), 9);
        expect(cost_dB(1e9)).toBeCloseTo(20 * Math.log10(2), 6);
      }),
    );
  });

  test('more read noise or a higher index never raises the signal-to-noise ratio', () => {
    fc.assert(
      fc.property(anyPixel, read_e, read_e, speed, (sensor, readNoise_e, more_e, isoSpeed) => {
        const plain_dB = midGreySignalToNoise_dB({ ...sensor, readNoise_e, isoSpeed });
        const noisier_dB = midGreySignalToNoise_dB({ ...sensor, readNoise_e: readNoise_e + more_e, isoSpeed });
        const faster_dB = midGreySignalToNoise_dB({ ...sensor, readNoise_e, isoSpeed: isoSpeed * 1.25 });
        expect(noisier_dB).toBeLessThanOrEqual(plain_dB + 1e-9);
        expect(faster_dB).toBeLessThan(plain_dB);
      }),
    );
  });

  test('summing n × n pixels gains n, however much of the noise is read noise', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 8 }), read_e, (count, readNoise_e) => {
        expect(gainOfBinning({ count, readNoise_e })).toBeCloseTo(count, 9);
      }),
    );
  });
});

test('what has no meaning is refused by name', () => {
  const sensor = { ...pixel, isoSpeed: 800, readNoise_e: 20 };
  expect(() => midGreyElectrons({ ...pixel, isoSpeed: 0 })).toThrow('isoSpeed must be positive');
  expect(() => midGreyElectrons({ ...sensor, pixelPitch_m: 0 })).toThrow('pixelPitch_m must be positive');
  expect(() => midGreyElectrons({ ...sensor, quantumEfficiencyFraction: 1.2 })).toThrow(
    'quantumEfficiencyFraction must be from 0 to 1, got 1.2',
  );
  expect(() => midGreySignalToNoise_dB({ ...sensor, binningCount: 1.5 })).toThrow(
    'binningCount must be a whole number of at least 1, got 1.5',
  );
  expect(() => midGreySignalToNoise_dB({ ...sensor, readNoise_e: -1 })).toThrow('readNoise_e must be zero or above');
  expect(() => isoSpeedAtSignalToNoise({ ...sensor, signalToNoise_dB: NaN })).toThrow(
    'signalToNoise_dB must be from -200 to 200, got NaN',
  );
  expect(() => isoSpeedAtSignalToNoise({ ...sensor, signalToNoise_dB: 201 })).toThrow(
    'signalToNoise_dB must be from -200 to 200, got 201',
  );
});
