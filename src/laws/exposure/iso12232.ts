/**
 * Exposure at the sensor, and the speeds that ISO 12232 reads from it.
 *
 *     H = q · L · t / (N² · (1 + m)²) + Hf        q = (π/4) · τ · v · cos⁴ φ
 *     EI = 10 / Hm                                S = 78 / Hs
 *
 * H exposure at the focal plane, lx·s    L luminance of the subject, cd/m²    t exposure time, s    N f-number
 * m magnification: the image lies at (1 + m) focal lengths                    Hf exposure by flare, lx·s
 * τ transmittance of the lens            v share left by vignetting           φ angle off the axis
 * Hm exposure of the mid-tone, lx·s      Hs least exposure that clips, lx·s
 *
 * N is the f-number, as τ stands in q; with a T-stop pass a q without τ. A cinema or high-speed camera's index follows
 * its maker's method, which need not be either speed here: hold it against a grey card.
 *
 * @source iso-12232 the speeds and the exposure equation
 * @source colour-hdri the same, with worked values
 */
import { requireNotNegative, requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';

/** Of the mid-tone, lx·s at index 1. @source iso-12232 */
export const MID_TONE_EXPOSURE_lx_s = 10;
/** Of clipping, lx·s at speed 1: half a stop above a matte white. @source colour-hdri */
export const CLIPPING_EXPOSURE_lx_s = 78;

/** q: the share of the subject's luminance that reaches the focal plane at N = 1. Throws RangeError outside its domain. */
export function lensFactor({
  transmittanceFraction = 0.9,
  vignettingFraction = 0.98,
  fieldAngle_deg = 10,
}: {
  readonly transmittanceFraction?: number;
  /** What vignetting leaves. */
  readonly vignettingFraction?: number;
  readonly fieldAngle_deg?: number;
}): number {
  requirePositive({ transmittanceFraction, vignettingFraction });
  requireWithin(0, 1, { transmittanceFraction, vignettingFraction });
  requireWithin(0, 89, { fieldAngle_deg });
  return (Math.PI / 4) * transmittanceFraction * vignettingFraction * Math.cos((fieldAngle_deg * Math.PI) / 180) ** 4;
}

/** q of a typical lens, ten degrees off the axis: 0.65. @source iso-12232 */
export const TYPICAL_LENS_FACTOR = lensFactor({});

/** Exposure at the focal plane. Throws RangeError outside its domain. */
export function focalPlaneExposure_lx_s({
  luminance_cd_per_m2,
  fNumber,
  exposureTime_s,
  magnificationRatio = 0,
  lensFactor: q = TYPICAL_LENS_FACTOR,
  flareExposure_lx_s = 0,
}: {
  readonly luminance_cd_per_m2: number;
  readonly fNumber: number;
  readonly exposureTime_s: number;
  readonly magnificationRatio?: number;
  readonly lensFactor?: number;
  readonly flareExposure_lx_s?: number;
}): number {
  requirePositive({ luminance_cd_per_m2, fNumber, exposureTime_s, lensFactor: q });
  requireNotNegative({ magnificationRatio, flareExposure_lx_s });
  return (q * luminance_cd_per_m2 * exposureTime_s) / (fNumber * (1 + magnificationRatio)) ** 2 + flareExposure_lx_s;
}

/** The index at which an exposure falls on the mid-tone. Throws RangeError unless it is positive. */
export function exposureIndex({ exposure_lx_s }: { readonly exposure_lx_s: number }): number {
  requirePositive({ exposure_lx_s });
  return MID_TONE_EXPOSURE_lx_s / exposure_lx_s;
}

/** The exposure that falls on the mid-tone at an index. Throws RangeError unless the index is positive. */
export function midGreyExposure_lx_s({ isoSpeed }: { readonly isoSpeed: number }): number {
  requirePositive({ isoSpeed });
  return MID_TONE_EXPOSURE_lx_s / isoSpeed;
}

/** The speed of a sensor that just clips at an exposure. Throws RangeError unless it is positive. */
export function saturationSpeed({ clippingExposure_lx_s }: { readonly clippingExposure_lx_s: number }): number {
  requirePositive({ clippingExposure_lx_s });
  return CLIPPING_EXPOSURE_lx_s / clippingExposure_lx_s;
}

const SOURCES = ['iso-12232', 'colour-hdri'];
const MAKERS_INDEX = 'A camera’s marked index follows its maker’s method: hold it against a grey card.';

export const lensFactorTypical = law(lensFactor, {
  id: 'lens-factor',
  title: 'Share of light a lens passes on',
  says: 'The factor from a subject’s brightness to the light on the sensor at f/1, with what the lens takes.',
  equation: 'q = (π/4) · τ · v · cos⁴ φ',
  takes: {
    transmittanceFraction: { title: 'Transmittance of the lens', as: 'fraction', default: 0.9 },
    vignettingFraction: { title: 'Share left by vignetting', as: 'fraction', default: 0.98 },
    fieldAngle_deg: { title: 'Angle off the axis', default: 10 },
  },
  gives: { lensFactor: { title: 'Lens factor', as: 'ratio' } },
  holds: 'Falls as the fourth power of the cosine; lenses made for even illumination fall less.',
  sources: SOURCES,
  words: ['vignetting', 'falloff', 'transmission', 'q'],
  example: { transmittanceFraction: 0.8, vignettingFraction: 0.98, fieldAngle_deg: 10 },
});

export const focalPlaneExposure = law(focalPlaneExposure_lx_s, {
  id: 'sensor-exposure',
  title: 'Exposure at the sensor',
  says: 'The lux seconds that reach the sensor from a subject of a given brightness.',
  equation: 'H = q · L · t / (N² · (1 + m)²) + Hf',
  takes: {
    luminance_cd_per_m2: 'Luminance of the subject',
    fNumber: { title: 'f-number', as: 'fStop' },
    exposureTime_s: 'Exposure time',
    magnificationRatio: { title: 'Magnification', as: 'ratio', default: 0 },
    lensFactor: { title: 'Lens factor', as: 'ratio', default: TYPICAL_LENS_FACTOR },
    flareExposure_lx_s: { title: 'Exposure by flare', default: 0 },
  },
  gives: { exposure_lx_s: 'Exposure at the sensor' },
  holds:
    'An f-number, for the lens’s loss stands in the factor. Pupils of one size; else the magnification counts m/p.',
  sources: SOURCES,
  words: ['lux seconds', 'focal plane', 'image illuminance'],
  example: { luminance_cd_per_m2: 4000, fNumber: 8, exposureTime_s: 1 / 250 },
});

export const exposureIndexOf = law(exposureIndex, {
  id: 'exposure-index',
  title: 'Exposure index of a mid-tone',
  says: 'The index to set so that an exposure falls on middle grey.',
  equation: 'EI = 10 / H',
  takes: { exposure_lx_s: 'Exposure of the mid-tone' },
  gives: { isoSpeed: { title: 'Exposure index', as: 'isoSpeed' } },
  holds: MAKERS_INDEX,
  sources: SOURCES,
  words: ['ISO', 'EI', 'ASA', 'rating'],
  example: { exposure_lx_s: 0.0125 },
});

export const midGreyExposure = law(midGreyExposure_lx_s, {
  id: 'mid-grey-exposure',
  title: 'Exposure of middle grey',
  says: 'The lux seconds at the sensor that an exposure index places on middle grey.',
  equation: 'H = 10 / EI',
  takes: { isoSpeed: { title: 'Exposure index', as: 'isoSpeed' } },
  gives: { exposure_lx_s: 'Exposure of the mid-tone' },
  holds: MAKERS_INDEX,
  sources: SOURCES,
  words: ['ISO', 'lux seconds', 'middle grey'],
  example: { isoSpeed: 800 },
});

export const saturationSpeedOf = law(saturationSpeed, {
  id: 'saturation-speed',
  title: 'Speed by clipping',
  says: 'The speed of a sensor from the exposure at which it clips.',
  equation: 'S = 78 / H',
  takes: { clippingExposure_lx_s: 'Least exposure that clips' },
  gives: { isoSpeed: { title: 'Saturation speed', as: 'isoSpeed' } },
  holds: 'Leaves half a stop between a matte white and clipping; says nothing of noise.',
  sources: SOURCES,
  words: ['ISO', 'clip', 'full well', 'base index'],
  example: { clippingExposure_lx_s: 0.1 },
});
