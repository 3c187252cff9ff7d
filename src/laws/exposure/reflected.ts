/**
 * Reflected-light exposure: the luminance a metered tone needs, and the stop that a given one allows.
 *
 *     L = K · N² / (t · S)        R = π · K / C
 *
 * L luminance of the metered tone, cd/m²    N stop that governs exposure (T, or N where no T is marked)
 * K reflected-light constant, cd·s/m²       t exposure time, s              S exposure index
 * R reflectance at which a reflected and an incident reading agree          C incident-light constant, lx·s
 *
 * Holds at distant focus; for close-ups pass the effective stop. K already contains an average lens loss.
 *
 * @source iso-2720 the exposure-meter equation and its symbols
 * @source meter-article constants in use and the reflectance they imply
 * @source meter-thread the equation worked at f/16
 */
import { requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { FLAT_RECEPTOR_CONSTANT_lx_s } from './incident.ts';

/** In common use; 14 is the other. @source meter-article */
export const REFLECTED_CONSTANT_cd_s_per_m2 = 12.5;

export interface ReflectedSetting {
  readonly exposureTime_s: number;
  readonly isoSpeed: number;
  readonly reflectedConstant_cd_s_per_m2?: number;
}

/** Luminance that exposes as metered. Throws RangeError outside positive inputs. */
export function reflectedLuminance_cd_per_m2(setting: ReflectedSetting & { readonly stop: number }): number {
  const { stop, exposureTime_s, isoSpeed, reflectedConstant_cd_s_per_m2 = REFLECTED_CONSTANT_cd_s_per_m2 } = setting;
  requirePositive({ stop, exposureTime_s, isoSpeed, reflectedConstant_cd_s_per_m2 });
  return (reflectedConstant_cd_s_per_m2 * stop ** 2) / (exposureTime_s * isoSpeed);
}

/** The stop that a given luminance allows. Throws RangeError outside positive inputs. */
export function reflectedStop(setting: ReflectedSetting & { readonly luminance_cd_per_m2: number }): number {
  const {
    luminance_cd_per_m2,
    exposureTime_s,
    isoSpeed,
    reflectedConstant_cd_s_per_m2 = REFLECTED_CONSTANT_cd_s_per_m2,
  } = setting;
  requirePositive({ luminance_cd_per_m2, exposureTime_s, isoSpeed, reflectedConstant_cd_s_per_m2 });
  return Math.sqrt((luminance_cd_per_m2 * exposureTime_s * isoSpeed) / reflectedConstant_cd_s_per_m2);
}

/**
 * The reflectance of a matte surface for which a reflected and an incident reading ask for the same exposure.
 * Throws RangeError outside positive inputs, or for constants that would ask for a reflectance above 1.
 */
export function impliedReflectanceFraction({
  reflectedConstant_cd_s_per_m2 = REFLECTED_CONSTANT_cd_s_per_m2,
  meterConstant_lx_s = FLAT_RECEPTOR_CONSTANT_lx_s,
}: {
  readonly reflectedConstant_cd_s_per_m2?: number;
  readonly meterConstant_lx_s?: number;
}): number {
  requirePositive({ reflectedConstant_cd_s_per_m2, meterConstant_lx_s });
  const fraction = (Math.PI * reflectedConstant_cd_s_per_m2) / meterConstant_lx_s;
  if (fraction > 1)
    throw new RangeError(
      `meterConstant_lx_s must be at least π times reflectedConstant_cd_s_per_m2 (${reflectedConstant_cd_s_per_m2}), got ${meterConstant_lx_s}`,
    );
  return fraction;
}

/** The reflected-light constant as an input, shared by the laws that take it. */
export const REFLECTED_CONSTANT = {
  title: 'Reflected-light constant',
  default: REFLECTED_CONSTANT_cd_s_per_m2,
  note: '12.5 or 14 in common use',
};

const COMMON = {
  equation: 'L = K · N² / (t · S)',
  holds: 'Distant focus; for close-ups use the effective stop. The constant contains an average lens loss.',
  sources: ['iso-2720', 'meter-article', 'meter-thread'],
};

export const reflectedLuminance = law(reflectedLuminance_cd_per_m2, {
  id: 'luminance-needed',
  title: 'Luminance an exposure needs',
  says: 'How bright the metered tone must look, seen from the lens, for a stop, a shutter and an exposure index.',
  takes: {
    stop: { title: 'Stop', as: 'tStop' },
    exposureTime_s: 'Exposure time',
    isoSpeed: { title: 'Exposure index', as: 'isoSpeed' },
    reflectedConstant_cd_s_per_m2: REFLECTED_CONSTANT,
  },
  gives: { luminance_cd_per_m2: 'Luminance of the metered tone' },
  words: ['spot meter', 'reflected', 'nits', 'backlight', 'lit through'],
  example: { stop: 8, exposureTime_s: 1 / 2000, isoSpeed: 800 },
  ...COMMON,
});

export const reflectedStopAllowed = law(reflectedStop, {
  id: 'stop-by-luminance',
  title: 'Stop a luminance allows',
  says: 'The stop at which a spot reading exposes as metered.',
  takes: {
    luminance_cd_per_m2: 'Luminance of the metered tone',
    exposureTime_s: 'Exposure time',
    isoSpeed: { title: 'Exposure index', as: 'isoSpeed' },
    reflectedConstant_cd_s_per_m2: REFLECTED_CONSTANT,
  },
  gives: { stop: { title: 'Stop', as: 'tStop' } },
  words: ['spot meter', 'reflected', 'nits'],
  example: { luminance_cd_per_m2: 2000, exposureTime_s: 1 / 2000, isoSpeed: 800 },
  ...COMMON,
});

export const impliedReflectance = law(impliedReflectanceFraction, {
  id: 'implied-reflectance',
  title: 'Reflectance a pair of meters agrees on',
  says: 'How light a matte card must be for a spot reading of it and an incident reading at it to agree.',
  equation: 'R = π · K / C',
  takes: {
    reflectedConstant_cd_s_per_m2: REFLECTED_CONSTANT,
    meterConstant_lx_s: {
      title: 'Meter constant',
      default: FLAT_RECEPTOR_CONSTANT_lx_s,
      note: 'of the incident meter; 250 for a flat receptor',
    },
  },
  gives: { reflectanceFraction: { title: 'Reflectance', as: 'fraction' } },
  holds: 'A matte card lit evenly and a flat receptor in its plane.',
  sources: ['meter-article'],
  words: ['grey card', '18 percent', 'middle grey', 'calibration'],
  example: { reflectedConstant_cd_s_per_m2: 14, meterConstant_lx_s: 250 },
});
