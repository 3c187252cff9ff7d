/**
 * Incident-light exposure: the illuminance a subject of average reflectance needs, and what a given one allows.
 *
 *     E = C · N² / (t · S)
 *
 * E illuminance on the subject, lx    N stop that governs exposure (T, or N where no T is marked)
 * C meter constant, lx·s              t exposure time, s              S exposure index
 *
 * Holds at distant focus; for close-ups pass the effective stop. C already contains an average lens loss.
 *
 * @source iso-2720 the exposure-meter equation and its symbols
 * @source ev-table the same equation tabulated at ISO 100
 */
import { requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

/** For a flat, cosine-responding receptor. @source ev-table */
export const FLAT_RECEPTOR_CONSTANT_lx_s = 250;

export interface IncidentSetting {
  readonly exposureTime_s: number;
  readonly isoSpeed: number;
  readonly meterConstant_lx_s?: number;
}

/** Illuminance that exposes a subject of average reflectance as metered. Throws RangeError outside positive inputs. */
export function incidentIlluminance_lx(setting: IncidentSetting & { readonly stop: number }): number {
  const { stop, exposureTime_s, isoSpeed, meterConstant_lx_s = FLAT_RECEPTOR_CONSTANT_lx_s } = setting;
  requirePositive({ stop, exposureTime_s, isoSpeed, meterConstant_lx_s });
  return (meterConstant_lx_s * stop ** 2) / (exposureTime_s * isoSpeed);
}

/** The stop that a given illuminance allows. Throws RangeError outside positive inputs. */
export function incidentStop(setting: IncidentSetting & { readonly illuminance_lx: number }): number {
  const { illuminance_lx, exposureTime_s, isoSpeed, meterConstant_lx_s = FLAT_RECEPTOR_CONSTANT_lx_s } = setting;
  requirePositive({ illuminance_lx, exposureTime_s, isoSpeed, meterConstant_lx_s });
  return Math.sqrt((illuminance_lx * exposureTime_s * isoSpeed) / meterConstant_lx_s);
}

const METER_CONSTANT = {
  title: 'Meter constant',
  default: FLAT_RECEPTOR_CONSTANT_lx_s,
  note: '250 for a flat receptor, 340 in common use with a dome; 269 is 25 in footcandles',
};

const COMMON = {
  equation: 'E = C · N² / (t · S)',
  holds: 'Distant focus; for close-ups use the effective stop. The meter constant contains an average lens loss.',
  sources: ['iso-2720', 'ev-table'],
  cautions: ['intense-light'],
};

export const incidentIlluminance = law(incidentIlluminance_lx, {
  id: 'light-needed',
  title: 'Light an exposure needs',
  says: 'The illuminance on the subject that a stop, a shutter and an exposure index ask for.',
  takes: {
    stop: { title: 'Stop', as: 'tStop' },
    exposureTime_s: 'Exposure time',
    isoSpeed: { title: 'Exposure index', as: 'isoSpeed' },
    meterConstant_lx_s: METER_CONSTANT,
  },
  gives: { illuminance_lx: 'Illuminance on the subject' },
  words: ['lux', 'footcandles', 'incident', 'how much light', 'key level'],
  example: { stop: 8, exposureTime_s: 1 / 2000, isoSpeed: 800 },
  ...COMMON,
});

export const incidentStopAllowed = law(incidentStop, {
  id: 'stop-allowed',
  title: 'Stop a light allows',
  says: 'The stop at which an illuminance exposes correctly.',
  takes: {
    illuminance_lx: 'Illuminance on the subject',
    exposureTime_s: 'Exposure time',
    isoSpeed: { title: 'Exposure index', as: 'isoSpeed' },
    meterConstant_lx_s: METER_CONSTANT,
  },
  gives: { stop: { title: 'Stop', as: 'tStop' } },
  words: ['incident', 'meter reading', 'lux'],
  example: { illuminance_lx: 40_000, exposureTime_s: 1 / 2000, isoSpeed: 800 },
  ...COMMON,
});
