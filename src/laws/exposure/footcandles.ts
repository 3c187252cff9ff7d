/**
 * Exposure in footcandles, as gaffers carry it in their heads.
 *
 *     E = 25·T² / (t·S)        T = √(E·t·S / 25)
 *
 * E illuminance, fc        T T-stop        t exposure time, s        S exposure index
 *
 * The incident-light equation with a constant of 25 fc·s, 269 lx·s: 0.1 stop above the 250 lx·s of a flat receptor. A
 * hundred footcandles at index 100 and 1/50 s are T2.8.
 *
 * @source footcandle-note the equation and its constant
 * @source footcandle-rule a hundred footcandles at index 100
 */
import { requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { footcandlesOfLux, FOOTCANDLE_lx, luxOfFootcandles } from '../light/units.ts';
import { incidentIlluminance_lx, incidentStop } from './incident.ts';

/** 25 fc·s. @source footcandle-note */
const FOOTCANDLE_CONSTANT_lx_s = 25 * FOOTCANDLE_lx;

interface Setting {
  readonly exposureTime_s: number;
  readonly isoSpeed: number;
}

/** Footcandles that a stop, a shutter and an index ask for. Throws RangeError outside positive inputs. */
export function footcandlesNeeded_fc(setting: Setting & { readonly stop: number }): number {
  const { stop, exposureTime_s, isoSpeed } = setting;
  const needed = { stop, exposureTime_s, isoSpeed, meterConstant_lx_s: FOOTCANDLE_CONSTANT_lx_s };
  return footcandlesOfLux({ illuminance_lx: incidentIlluminance_lx(needed) });
}

/** The stop that footcandles allow. Throws RangeError outside positive inputs. */
export function stopOfFootcandles(setting: Setting & { readonly illuminance_fc: number }): number {
  const { illuminance_fc, exposureTime_s, isoSpeed } = setting;
  requirePositive({ illuminance_fc });
  const illuminance_lx = luxOfFootcandles({ illuminance_fc });
  return incidentStop({ illuminance_lx, exposureTime_s, isoSpeed, meterConstant_lx_s: FOOTCANDLE_CONSTANT_lx_s });
}

const SETTING = { exposureTime_s: 'Exposure time', isoSpeed: { title: 'Exposure index', as: 'isoSpeed' } } as const;
const COMMON = {
  holds: 'Distant focus and a subject of average reflectance; 0.1 stop more light than the equation in lux with 250.',
  sources: ['footcandle-note', 'footcandle-rule'],
  cautions: ['intense-light'],
  words: ['fc', 'footcandles', 'gaffer', 'key level', 'incident'],
};

export const footcandlesNeeded = law(footcandlesNeeded_fc, {
  id: 'footcandles-needed',
  title: 'Footcandles an exposure needs',
  says: 'The light on the subject in footcandles, by the formula gaffers use.',
  equation: 'E = 25 · T² / (t · S)',
  takes: { stop: { title: 'Stop', as: 'tStop' }, ...SETTING },
  gives: { illuminance_fc: 'Footcandles' },
  example: { stop: 4, exposureTime_s: 1 / 48, isoSpeed: 800 },
  ...COMMON,
});

export const footcandleStop = law(stopOfFootcandles, {
  id: 'stop-for-footcandles',
  title: 'Stop that footcandles allow',
  says: 'The stop at which a reading in footcandles exposes correctly, by the formula gaffers use.',
  equation: 'T = √(E · t · S / 25)',
  takes: { illuminance_fc: 'Footcandles', ...SETTING },
  gives: { stop: { title: 'Stop', as: 'tStop' } },
  example: { illuminance_fc: 3700, exposureTime_s: 1 / 2000, isoSpeed: 800 },
  ...COMMON,
});
