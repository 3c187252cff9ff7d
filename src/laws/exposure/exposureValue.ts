/**
 * Exposure value at ISO 100: one number for a stop, a time and an index, and the light that it stands for.
 *
 *     EV = log2(N²/t) − log2(S/100)        E = C/100 · 2^EV        L = K/100 · 2^EV
 *
 * N stop        t exposure time, s        S exposure index        E illuminance, lx        L luminance, cd/m²
 * C incident-light constant, lx·s         K reflected-light constant, cd·s/m²
 *
 * Strictly a setting and no light: the light follows only with a meter constant, which must be said with it.
 *
 * @source ev-table both lights tabulated by exposure value
 * @source colour-hdri the value of a setting
 */
import { requireFinite, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { FLAT_RECEPTOR_CONSTANT_lx_s } from './incident.ts';
import { REFLECTED_CONSTANT, REFLECTED_CONSTANT_cd_s_per_m2 } from './reflected.ts';

const REFERENCE_SPEED = 100;

/** The exposure value, referred to ISO 100, of a setting. Throws RangeError outside positive inputs. */
export function exposureValue100({
  stop,
  exposureTime_s,
  isoSpeed,
}: {
  readonly stop: number;
  readonly exposureTime_s: number;
  readonly isoSpeed: number;
}): number {
  requirePositive({ stop, exposureTime_s, isoSpeed });
  return 2 * Math.log2(stop) - Math.log2(exposureTime_s) - Math.log2(isoSpeed / REFERENCE_SPEED);
}

/** Illuminance that an exposure value stands for. Throws RangeError for a value not finite or a constant not positive. */
export function illuminanceOfExposureValue_lx({
  exposureValue,
  meterConstant_lx_s = FLAT_RECEPTOR_CONSTANT_lx_s,
}: {
  readonly exposureValue: number;
  readonly meterConstant_lx_s?: number;
}): number {
  requireFinite({ exposureValue });
  requirePositive({ meterConstant_lx_s });
  return (meterConstant_lx_s / REFERENCE_SPEED) * 2 ** exposureValue;
}

/** Luminance that an exposure value stands for. Throws RangeError for a value not finite or a constant not positive. */
export function luminanceOfExposureValue_cd_per_m2({
  exposureValue,
  reflectedConstant_cd_s_per_m2 = REFLECTED_CONSTANT_cd_s_per_m2,
}: {
  readonly exposureValue: number;
  readonly reflectedConstant_cd_s_per_m2?: number;
}): number {
  requireFinite({ exposureValue });
  requirePositive({ reflectedConstant_cd_s_per_m2 });
  return (reflectedConstant_cd_s_per_m2 / REFERENCE_SPEED) * 2 ** exposureValue;
}

const VALUE = { title: 'Exposure value at ISO 100', as: 'ratio' } as const;
const HOLDS = 'Good only with the meter constant named beside it; makers differ by a sixth of a stop and more.';

export const exposureValue = law(exposureValue100, {
  id: 'exposure-value',
  title: 'Exposure value of a setting',
  says: 'One number for every stop, shutter and index that exposes alike, referred to ISO 100.',
  equation: 'EV = log2(N²/t) − log2(S/100)',
  takes: {
    stop: { title: 'Stop', as: 'tStop' },
    exposureTime_s: 'Exposure time',
    isoSpeed: { title: 'Exposure index', as: 'isoSpeed' },
  },
  gives: { exposureValue: VALUE },
  holds: 'Settings that share a value expose alike; what light they suit depends on the meter constant.',
  sources: ['colour-hdri'],
  words: ['EV', 'light value'],
  example: { stop: 8, exposureTime_s: 1 / 2000, isoSpeed: 800 },
});

export const illuminanceOfExposureValue = law(illuminanceOfExposureValue_lx, {
  id: 'lux-of-exposure-value',
  title: 'Illuminance of an exposure value',
  says: 'The light on the subject that an exposure value at ISO 100 stands for.',
  equation: 'E = C/100 · 2^EV',
  takes: {
    exposureValue: VALUE,
    meterConstant_lx_s: {
      title: 'Meter constant',
      default: FLAT_RECEPTOR_CONSTANT_lx_s,
      note: '250 for a flat receptor, 340 in common use with a dome',
    },
  },
  gives: { illuminance_lx: 'Illuminance on the subject' },
  holds: HOLDS,
  sources: ['ev-table'],
  words: ['EV', 'lux', 'meter reading'],
  example: { exposureValue: 14 },
});

export const luminanceOfExposureValue = law(luminanceOfExposureValue_cd_per_m2, {
  id: 'nits-of-exposure-value',
  title: 'Luminance of an exposure value',
  says: 'The brightness of the metered tone that an exposure value at ISO 100 stands for.',
  equation: 'L = K/100 · 2^EV',
  takes: { exposureValue: VALUE, reflectedConstant_cd_s_per_m2: REFLECTED_CONSTANT },
  gives: { luminance_cd_per_m2: 'Luminance of the metered tone' },
  holds: HOLDS,
  sources: ['ev-table'],
  words: ['EV', 'spot meter', 'nits'],
  example: { exposureValue: 12 },
});
