/**
 * Diffraction: the smallest spot a stop can draw, and the stop for a spot.
 *
 *     d = 2.44 · λ · N · (1 + m/p)          b = √(c² + d²)
 *
 * d diameter of the Airy disc to its first dark ring, m     λ wavelength, m
 * N f-number for distant focus        m magnification       p pupil magnification
 * c blur of defocus, m                b blur of both, m
 *
 * Holds for a round stop and a lens otherwise perfect. 2.44 is twice 1.22, the first zero of the pattern, rounded up
 * by 0.03 %. The sum in squares is common practice without a basis in physics: the disc's outer parts are faint, so it
 * overstates the blur where both are alike.
 *
 * @source airy-guide the equation and a table for 520 nm
 * @source lens-tutorial the effective f-number N · (1 + m/p)
 * @source blur-in-squares the sum, and what is wrong with it
 */
import { requireCount, requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { BINNING, F_NUMBER, MAGNIFICATION, PUPIL_MAGNIFICATION, SYMMETRIC_PUPIL_RATIO } from './given.ts';

/** Green, where the eye and most sensors see best; common practice, no source. */
export const GREEN_WAVELENGTH_m = 550e-9;

/** @source airy-guide */
const AIRY_FACTOR = 2.44;

interface SpotSetting {
  readonly magnificationRatio: number;
  readonly pupilMagnificationRatio?: number;
  readonly wavelength_m?: number;
}

export interface AirySetting extends SpotSetting {
  readonly fNumber: number;
}

/** Diameter of the Airy disc that an f-number of 1 draws at this magnification. */
function airyPerStop_m(setting: SpotSetting): number {
  const { magnificationRatio } = setting;
  const { pupilMagnificationRatio = SYMMETRIC_PUPIL_RATIO, wavelength_m = GREEN_WAVELENGTH_m } = setting;
  requirePositive({ pupilMagnificationRatio, wavelength_m });
  requireNotNegative({ magnificationRatio });
  return AIRY_FACTOR * wavelength_m * (1 + magnificationRatio / pupilMagnificationRatio);
}

/** Diameter of the Airy disc on the sensor. Throws RangeError outside positive inputs, or magnification below 0. */
export function airyDiameter_m(setting: AirySetting): number {
  const { fNumber } = setting;
  requirePositive({ fNumber });
  return fNumber * airyPerStop_m(setting);
}

/** The same in picture pixels. Throws RangeError outside positive inputs, or a binning that is not a whole number. */
export function airyDiameter_px(
  setting: AirySetting & { readonly pixelPitch_m: number; readonly binningCount?: number },
): number {
  const { pixelPitch_m, binningCount = 1 } = setting;
  requirePositive({ pixelPitch_m });
  requireCount({ binningCount }, 1);
  return airyDiameter_m(setting) / (pixelPitch_m * binningCount);
}

/** The f-number whose Airy disc has this diameter. Throws RangeError outside positive inputs, or magnification below 0. */
export function fNumberAtAiry(setting: SpotSetting & { readonly airyDiameter_m: number }): number {
  const { airyDiameter_m: diameter_m } = setting;
  requirePositive({ airyDiameter_m: diameter_m });
  return diameter_m / airyPerStop_m(setting);
}

/** Blur of defocus and diffraction together, by the sum of squares. Throws RangeError below 0. */
export function combinedBlur_m(given: { readonly defocusBlur_m: number; readonly airyDiameter_m: number }): number {
  const { defocusBlur_m, airyDiameter_m: diameter_m } = given;
  requireNotNegative({ defocusBlur_m, airyDiameter_m: diameter_m });
  return Math.hypot(defocusBlur_m, diameter_m);
}

const SPOT = {
  magnificationRatio: { ...MAGNIFICATION, note: 'image size over subject size; 0 for a distant subject' },
  pupilMagnificationRatio: PUPIL_MAGNIFICATION,
  wavelength_m: { title: 'Wavelength', default: GREEN_WAVELENGTH_m, note: 'green, where most sensors see best' },
} as const;

const COMMON = {
  holds: 'A round stop and a lens otherwise perfect, focused by moving as a whole.',
  sources: ['airy-guide', 'lens-tutorial'],
  words: ['diffraction', 'Airy', 'stopping down', 'soft', 'resolution'],
};

export const airyDiameter = law(airyDiameter_m, {
  id: 'airy-diameter',
  title: 'Diffraction spot',
  says: 'The smallest spot a stop can draw on the sensor, larger the closer the subject.',
  equation: 'd = 2.44 · λ · N · (1 + m/p)',
  takes: { fNumber: F_NUMBER, ...SPOT },
  gives: { airyDiameter_m: 'Airy disc, first dark ring to first dark ring' },
  example: { fNumber: 11, magnificationRatio: 0.5 },
  ...COMMON,
});

export const airyDiameterInPixels = law(airyDiameter_px, {
  id: 'airy-diameter-in-pixels',
  title: 'Diffraction spot in pixels',
  says: 'How many pixels the smallest spot of a stop covers; many people stop at two.',
  equation: 'd / (a · n), d = 2.44 · λ · N · (1 + m/p)',
  takes: { fNumber: F_NUMBER, pixelPitch_m: 'Pixel pitch of the sensor', binningCount: BINNING, ...SPOT },
  gives: { airyDiameter_px: 'Airy disc in picture pixels' },
  example: { fNumber: 11, pixelPitch_m: 1e-5, magnificationRatio: 0.5 },
  ...COMMON,
});

export const stopAtAiry = law(fNumberAtAiry, {
  id: 'stop-at-airy',
  title: 'Stop for a diffraction spot',
  says: 'The f-number whose smallest spot has a given size.',
  equation: 'N = d / (2.44 · λ · (1 + m/p))',
  takes: { airyDiameter_m: 'Airy disc, first dark ring to first dark ring', ...SPOT },
  gives: { fNumber: { title: 'f-number', as: 'fStop' } },
  example: { airyDiameter_m: 2e-5, magnificationRatio: 0.5 },
  ...COMMON,
});

export const combinedBlur = law(combinedBlur_m, {
  id: 'combined-blur',
  title: 'Defocus and diffraction together',
  says: 'The blur that defocus and diffraction make together, as it is usually reckoned.',
  equation: 'b = √(c² + d²)',
  takes: {
    defocusBlur_m: 'Blur of defocus on the sensor',
    airyDiameter_m: 'Airy disc, first dark ring to first dark ring',
  },
  gives: { blur_m: 'Blur on the sensor' },
  holds: 'Common practice without a basis in physics: it overstates the blur, most where both parts are alike.',
  sources: ['blur-in-squares'],
  words: ['diffraction', 'sharpness', 'best stop', 'sweet spot'],
  example: { defocusBlur_m: 1.5e-5, airyDiameter_m: 2e-5 },
});
