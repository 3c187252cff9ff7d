/**
 * Noise of middle grey: the electrons an index leaves it with, their signal-to-noise ratio, and the index at a wanted one.
 *
 *     n = (10/S) · Φ · p² · η · b²        SNR = n / √(n + b² · σ²)        dB = 20 · log10 SNR
 *
 * n electrons of one picture element        S exposure index            Φ photons per m² and lx·s of white light
 * p pixel pitch, m                          η electrons per photon, filters included
 * b pixels summed across and down           σ read noise of one pixel, electrons
 *
 * Shot noise and read noise only: dark current and pattern noise are left out, as exposures are short and dark frames are
 * taken. Binning sums b² pixels after each was read, so their read noise adds; a camera that sums charge first does
 * better. For warnings, not for comparing cameras: η is rarely published and the noise seen depends on processing.
 *
 * @source iso-12232 the exposure of the mid-tone
 * @source white-light-efficacy photons per lux second, reckoned from it
 * @source sensor-noise-article shot and read noise together
 * @source binning-note what summing gains
 */
import { requireCount, requireNotNegative, requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';
import { midGreyExposure_lx_s } from './iso12232.ts';

/** 1.1e4 a µm²: white light from 400 to 700 nm, at about 250 lm/W. @source white-light-efficacy */
export const WHITE_PHOTONS_per_m2_lx_s = 1.1e16;

export interface Pixel {
  readonly pixelPitch_m: number;
  /** Electrons for each photon that reaches the sensor, colour filter included. */
  readonly quantumEfficiencyFraction: number;
  /** Pixels summed across and down; 1 for none. */
  readonly binningCount?: number;
}

/** Electrons of one picture element for each lx·s. */
function electronsPerExposure({ pixelPitch_m, quantumEfficiencyFraction, binningCount = 1 }: Pixel): number {
  requirePositive({ pixelPitch_m, quantumEfficiencyFraction });
  requireWithin(0, 1, { quantumEfficiencyFraction });
  requireCount({ binningCount }, 1);
  return WHITE_PHOTONS_per_m2_lx_s * (pixelPitch_m * binningCount) ** 2 * quantumEfficiencyFraction;
}

/** Electrons that middle grey leaves in one picture element, on average. Throws RangeError outside its domain. */
export function midGreyElectrons({ isoSpeed, ...pixel }: Pixel & { readonly isoSpeed: number }): number {
  return midGreyExposure_lx_s({ isoSpeed }) * electronsPerExposure(pixel);
}

/** Signal-to-noise ratio of middle grey, dB. Throws RangeError outside its domain. */
export function midGreySignalToNoise_dB({
  readNoise_e,
  ...sensor
}: Pixel & { readonly isoSpeed: number; readonly readNoise_e: number }): number {
  requireNotNegative({ readNoise_e });
  const { binningCount = 1 } = sensor;
  const electrons = midGreyElectrons(sensor);
  return 20 * Math.log10(electrons / Math.sqrt(electrons + (binningCount * readNoise_e) ** 2));
}

/**
 * The index at which middle grey has a wanted signal-to-noise ratio: from n² = r²·(n + b²σ²), solved for n. Throws
 * RangeError outside its domain.
 */
export function isoSpeedAtSignalToNoise({
  signalToNoise_dB,
  readNoise_e,
  ...pixel
}: Pixel & { readonly signalToNoise_dB: number; readonly readNoise_e: number }): number {
  requireWithin(-200, 200, { signalToNoise_dB });
  requireNotNegative({ readNoise_e });
  const { binningCount = 1 } = pixel;
  const ratioSquared = 10 ** (signalToNoise_dB / 10);
  const readSquared = (binningCount * readNoise_e) ** 2;
  const electrons = (ratioSquared + Math.sqrt(ratioSquared ** 2 + 4 * ratioSquared * readSquared)) / 2;
  return midGreyExposure_lx_s({ isoSpeed: 1 }) * (electronsPerExposure(pixel) / electrons);
}

const PIXEL = {
  pixelPitch_m: 'Pixel pitch',
  quantumEfficiencyFraction: {
    title: 'Electrons per photon',
    as: 'fraction',
    note: 'colour filter included: 0.15 to 0.3 for one colour of a mosaic, from memory',
  },
  binningCount: { title: 'Pixels summed across and down', as: 'count', default: 1 },
} as const;

const COMMON = {
  holds: 'Shot noise and read noise, in white light, before any processing. Electrons per photon are rarely published.',
  sources: ['iso-12232', 'white-light-efficacy', 'sensor-noise-article', 'binning-note'],
  words: ['noise', 'grain', 'signal to noise', 'photons', 'binning'],
};

export const greyElectrons = law(midGreyElectrons, {
  id: 'mid-grey-electrons',
  title: 'Electrons of middle grey',
  says: 'How many electrons middle grey leaves in a pixel at an exposure index.',
  equation: 'n = (10/S) · Φ · p² · η · b²',
  takes: { isoSpeed: { title: 'Exposure index', as: 'isoSpeed' }, ...PIXEL },
  gives: { electrons_e: 'Electrons in a picture element' },
  example: { isoSpeed: 800, pixelPitch_m: 10e-6, quantumEfficiencyFraction: 0.165 },
  ...COMMON,
});

export const greySignalToNoise = law(midGreySignalToNoise_dB, {
  id: 'mid-grey-noise',
  title: 'Noise of middle grey',
  says: 'How far middle grey stands above its noise at an exposure index.',
  equation: 'dB = 20 · log10(n / √(n + b² · σ²))',
  takes: { isoSpeed: { title: 'Exposure index', as: 'isoSpeed' }, ...PIXEL, readNoise_e: 'Read noise of a pixel' },
  gives: { signalToNoise_dB: 'Signal-to-noise ratio' },
  example: { isoSpeed: 3200, pixelPitch_m: 10e-6, quantumEfficiencyFraction: 0.165, readNoise_e: 20 },
  ...COMMON,
});

export const indexAtNoise = law(isoSpeedAtSignalToNoise, {
  id: 'index-at-noise',
  title: 'Index at a wanted noise',
  says: 'The highest index that keeps middle grey as far above its noise as wanted.',
  equation: 'n = (r² + √(r⁴ + 4 · r² · b² · σ²)) / 2, S = 10 · Φ · p² · η · b² / n',
  takes: {
    signalToNoise_dB: {
      title: 'Signal-to-noise ratio wanted',
      note: '32 dB is the standard’s first excellent picture, 20 dB its first acceptable one',
    },
    ...PIXEL,
    readNoise_e: 'Read noise of a pixel',
  },
  gives: { isoSpeed: { title: 'Exposure index', as: 'isoSpeed' } },
  example: { signalToNoise_dB: 26, pixelPitch_m: 10e-6, quantumEfficiencyFraction: 0.165, readNoise_e: 20 },
  ...COMMON,
});
