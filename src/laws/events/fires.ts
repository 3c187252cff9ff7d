/** Flames. */
import { requirePositive } from '../../base/domain.ts';
import { puffingFrequency_Hz } from '../fluids/flame.ts';
import { STANDARD_GRAVITY_m_per_s2 } from '../motion/gravity.ts';
import { filmedEvent, said } from './event.ts';

export const matchStrike = filmedEvent({
  id: 'match-strike',
  title: 'Striking a match',
  says: 'A match head catches, flares and settles to a flame.',
  typical: {
    speed_m_per_s: { low: 0.5, typical: 1, high: 3 },
    duration_s: { low: 0.05, typical: 0.15, high: 3 },
  },
  parameters: {
    flareTime_s: { title: 'How much of it is watched', default: 0.15, note: 'the flash; the head burns 2 to 3 s' },
    gas_m_per_s: { title: 'Speed of sparks and hot gas', default: 1 },
  },
  compute: ({ flareTime_s, gas_m_per_s }) => {
    requirePositive({ flareTime_s, gas_m_per_s });
    return { speed_m_per_s: gas_m_per_s, duration_s: flareTime_s, reachWidth_m: 0.03, reachHeight_m: 0.06 };
  },
  laws: [],
  frameRateReasoning:
    'The flash takes a tenth of a second or two: 500 to 1000 fps; films of the head alone were taken at 2000 and 4000.',
  frameRate_fps: { low: 500, high: 4000 },
  sources: ['match-burn', 'match-films', 'event-practice'],
  cautions: ['flames'],
  words: ['match', 'lighter', 'spark', 'ignite', 'head'],
});

export const flame = filmedEvent({
  id: 'flame',
  title: 'Flame',
  says: 'A flame over a pan, burner or grill swells, rises and breaks off, again and again.',
  typical: {
    speed_m_per_s: { low: 0.5, typical: 2, high: 4 },
    duration_s: { low: 0.2, typical: 0.6, high: 3 },
  },
  parameters: {
    burnerDiameter_m: { title: 'Diameter of the burner or pan', default: 0.1 },
    puffCount: { title: 'Puffs to be seen', default: 3, as: 'count' },
  },
  compute: ({ burnerDiameter_m, puffCount }) => {
    requirePositive({ puffCount });
    const puffing_Hz = puffingFrequency_Hz({ diameter_m: burnerDiameter_m });
    return {
      // Twice the speed that its own width would give anything falling upwards.
      speed_m_per_s: 2 * Math.sqrt(STANDARD_GRAVITY_m_per_s2 * burnerDiameter_m),
      duration_s: puffCount / puffing_Hz,
      reachWidth_m: 2 * burnerDiameter_m,
      reachHeight_m: 5 * burnerDiameter_m,
      remark: `It puffs at about ${said('frequency', puffing_Hz)}.`,
    };
  },
  laws: ['puffing-frequency'],
  frameRateReasoning:
    'A few puffs a second, with curls a tenth as long: 500 to 1000 fps, and its own light exposes it.',
  frameRate_fps: { low: 500, high: 1000 },
  sources: ['puffing', 'pool-fires', 'event-practice'],
  cautions: ['flames', 'heat'],
  words: ['fire', 'flambé', 'grill', 'wok', 'gas', 'burner'],
});
