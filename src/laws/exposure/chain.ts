/**
 * The whole chain of exposure: the light a shot needs through its stop, its extension and its filters, and the index a
 * light needs.
 *
 *     E = C · T² · B · F / (t · S)        L = K · T² · B · F / (t · S)        S by turning either round
 *
 * E illuminance on the subject, lx        L luminance of the metered tone, cd/m²        T T-stop
 * B (1 + m/p)², extension                 F 2^stops, filters                            t exposure time, s
 * S exposure index                        C incident-light constant, lx·s               K reflected, cd·s/m²
 *
 * E suits a subject lit on, read with a flat receptor in its plane. L suits one lit through or seen by reflection, whose
 * brightness an incident reading cannot tell.
 *
 * @source iso-2720 the exposure-meter equations
 * @source army-copy-course the extension factor
 * @source nd-names the filter factor
 */
import { requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { extensionFactor } from './extension.ts';
import { filterFactor } from './filter.ts';
import { FLAT_RECEPTOR_CONSTANT_lx_s, incidentIlluminance_lx } from './incident.ts';
import { REFLECTED_CONSTANT, REFLECTED_CONSTANT_cd_s_per_m2, reflectedLuminance_cd_per_m2 } from './reflected.ts';

/** What stands between the light and the sensor. */
export interface LightPath {
  readonly tStop: number;
  readonly magnificationRatio?: number;
  readonly pupilMagnificationRatio?: number;
  readonly filterLoss_stops?: number;
  readonly exposureTime_s: number;
}

/** B · F: what the light must be multiplied by beyond stop, time and index. */
function lossFactor({ magnificationRatio = 0, pupilMagnificationRatio = 1, filterLoss_stops = 0 }: LightPath): number {
  return extensionFactor({ magnificationRatio, pupilMagnificationRatio }) * filterFactor({ filterLoss_stops });
}

/** Illuminance that exposes a subject of average reflectance as metered. Throws RangeError outside its domain. */
export function illuminanceNeeded_lx(
  shot: LightPath & { readonly isoSpeed: number; readonly meterConstant_lx_s?: number },
): number {
  const { tStop, exposureTime_s, isoSpeed, meterConstant_lx_s = FLAT_RECEPTOR_CONSTANT_lx_s } = shot;
  requirePositive({ tStop });
  const distant_lx = incidentIlluminance_lx({ stop: tStop, exposureTime_s, isoSpeed, meterConstant_lx_s });
  return distant_lx * lossFactor(shot);
}

/** The index at which an illuminance exposes as metered. Throws RangeError outside its domain. */
export function isoSpeedNeeded(
  shot: LightPath & { readonly illuminance_lx: number; readonly meterConstant_lx_s?: number },
): number {
  const { illuminance_lx, tStop, exposureTime_s, meterConstant_lx_s = FLAT_RECEPTOR_CONSTANT_lx_s } = shot;
  requirePositive({ illuminance_lx, tStop, exposureTime_s, meterConstant_lx_s });
  return (meterConstant_lx_s * tStop ** 2 * lossFactor(shot)) / (illuminance_lx * exposureTime_s);
}

/** Luminance that exposes as metered. Throws RangeError outside its domain. */
export function luminanceNeeded_cd_per_m2(
  shot: LightPath & { readonly isoSpeed: number; readonly reflectedConstant_cd_s_per_m2?: number },
): number {
  const { tStop, exposureTime_s, isoSpeed, reflectedConstant_cd_s_per_m2 = REFLECTED_CONSTANT_cd_s_per_m2 } = shot;
  requirePositive({ tStop });
  const setting = { stop: tStop, exposureTime_s, isoSpeed, reflectedConstant_cd_s_per_m2 };
  return reflectedLuminance_cd_per_m2(setting) * lossFactor(shot);
}

/** The index at which a luminance exposes as metered. Throws RangeError outside its domain. */
export function isoSpeedNeededByLuminance(
  shot: LightPath & { readonly luminance_cd_per_m2: number; readonly reflectedConstant_cd_s_per_m2?: number },
): number {
  const {
    luminance_cd_per_m2,
    tStop,
    exposureTime_s,
    reflectedConstant_cd_s_per_m2 = REFLECTED_CONSTANT_cd_s_per_m2,
  } = shot;
  requirePositive({ luminance_cd_per_m2, tStop, exposureTime_s, reflectedConstant_cd_s_per_m2 });
  return (reflectedConstant_cd_s_per_m2 * tStop ** 2 * lossFactor(shot)) / (luminance_cd_per_m2 * exposureTime_s);
}

const PATH = {
  tStop: { title: 'T-stop', as: 'tStop' },
  magnificationRatio: { title: 'Magnification', as: 'ratio', default: 0, note: '0 where the marks allow for it' },
  pupilMagnificationRatio: { title: 'Pupil magnification', as: 'ratio', default: 1 },
  filterLoss_stops: { title: 'Light lost to filters', default: 0 },
  exposureTime_s: 'Exposure time',
} as const;

const METER_CONSTANT = {
  title: 'Meter constant',
  default: FLAT_RECEPTOR_CONSTANT_lx_s,
  note: '250 for a flat receptor, 340 in common use with a dome; 269 is 25 in footcandles',
};

const INDEX = { title: 'Exposure index', as: 'isoSpeed' } as const;

const COMMON = {
  sources: ['iso-2720', 'army-copy-course', 'nd-names'],
  cautions: ['intense-light'],
};
const LIT_ON = 'A subject of average reflectance lit on, read with a flat receptor in its plane.';
const SEEN = 'A subject lit through or seen by reflection, judged by the brightness of the tone that is metered.';

export const closeUpIlluminance = law(illuminanceNeeded_lx, {
  id: 'light-needed-close-up',
  title: 'Light a close-up needs',
  says: 'The illuminance on the subject that a shot asks for, with its extension and its filters.',
  equation: 'E = C · T² · (1 + m/p)² · 2^stops / (t · S)',
  takes: { ...PATH, isoSpeed: INDEX, meterConstant_lx_s: METER_CONSTANT },
  gives: { illuminance_lx: 'Illuminance on the subject' },
  holds: LIT_ON,
  words: ['lux', 'footcandles', 'how much light', 'macro', 'key level'],
  example: { tStop: 8, magnificationRatio: 1, exposureTime_s: 1 / 1000, isoSpeed: 1600, meterConstant_lx_s: 340 },
  ...COMMON,
});

export const closeUpIndex = law(isoSpeedNeeded, {
  id: 'index-needed',
  title: 'Exposure index a light needs',
  says: 'The index to rate the camera at, given the light on the subject.',
  equation: 'S = C · T² · (1 + m/p)² · 2^stops / (t · E)',
  takes: { illuminance_lx: 'Illuminance on the subject', ...PATH, meterConstant_lx_s: METER_CONSTANT },
  gives: { isoSpeed: INDEX },
  holds: LIT_ON,
  words: ['ISO', 'EI', 'rating', 'push'],
  example: { illuminance_lx: 40_000, tStop: 8, magnificationRatio: 0.25, exposureTime_s: 1 / 2000 },
  ...COMMON,
});

export const closeUpLuminance = law(luminanceNeeded_cd_per_m2, {
  id: 'luminance-needed-close-up',
  title: 'Luminance a close-up needs',
  says: 'How bright the metered tone must look for a shot, with its extension and its filters.',
  equation: 'L = K · T² · (1 + m/p)² · 2^stops / (t · S)',
  takes: { ...PATH, isoSpeed: INDEX, reflectedConstant_cd_s_per_m2: REFLECTED_CONSTANT },
  gives: { luminance_cd_per_m2: 'Luminance of the metered tone' },
  holds: SEEN,
  words: ['nits', 'backlight', 'lit through', 'spot meter'],
  example: { tStop: 8, magnificationRatio: 0.5, exposureTime_s: 1 / 2000, isoSpeed: 1600 },
  ...COMMON,
});

export const closeUpIndexByLuminance = law(isoSpeedNeededByLuminance, {
  id: 'index-needed-by-luminance',
  title: 'Exposure index a luminance needs',
  says: 'The index to rate the camera at, given the brightness of the metered tone.',
  equation: 'S = K · T² · (1 + m/p)² · 2^stops / (t · L)',
  takes: {
    luminance_cd_per_m2: 'Luminance of the metered tone',
    ...PATH,
    reflectedConstant_cd_s_per_m2: REFLECTED_CONSTANT,
  },
  gives: { isoSpeed: INDEX },
  holds: SEEN,
  words: ['nits', 'backlight', 'lit through', 'ISO', 'EI'],
  example: { luminance_cd_per_m2: 3000, tStop: 8, magnificationRatio: 0.5, exposureTime_s: 1 / 2000 },
  ...COMMON,
});
