/**
 * How often a flame over a round burner or pool puffs.
 *
 *     f = 1.5 / √D
 *
 * f puffs a second, Hz        D diameter of the burner or pool, m
 *
 * Measured from a few centimetres to many metres, whatever the fuel. Small steady flames, a candle's or a match's, do not
 * puff by this law.
 *
 * @source puffing the law
 * @source pool-fires measured frequencies
 */
import { requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

/** Puffs a second of a flame. Throws RangeError for a diameter not positive. */
export function puffingFrequency_Hz({ diameter_m }: { readonly diameter_m: number }): number {
  requirePositive({ diameter_m });
  return 1.5 / Math.sqrt(diameter_m);
}

export const puffingFrequency = law(puffingFrequency_Hz, {
  id: 'puffing-frequency',
  title: 'Puffing of a flame',
  says: 'How many times a second a flame over a pan or burner swells and rises.',
  equation: 'f = 1.5 / √D',
  takes: { diameter_m: 'Diameter of the burner or pan' },
  gives: { puffing_Hz: 'Puffs a second' },
  holds: 'Flames that rise by their own heat, from a few centimetres across, in still air; within a tenth of measured.',
  sources: ['puffing', 'pool-fires'],
  cautions: ['flames'],
  words: ['fire', 'flambé', 'burner', 'flicker', 'pool'],
  example: { diameter_m: 0.1 },
});
