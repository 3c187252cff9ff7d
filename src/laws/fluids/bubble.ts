/**
 * How fast a bubble rises, and the size that rises slowest.
 *
 *     U = √(2·σ / (ρ·d) + g·d / 2)        slowest: d = √(4·σ / (ρ·g)), U² = 2·√(σ·g / ρ)
 *
 * U speed, m/s        d diameter of a sphere of the same volume, m        σ surface tension, N/m        ρ density, kg/m³
 * g gravity, m/s²
 *
 * A bubble that wobbles rises as a wave of its own length runs. Holds in clean thin liquids from about 1.5 mm up;
 * smaller ones stay round and are slower than this says, and dirt or soap slows them further.
 *
 * @source mendelson the law
 */
import { requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';
import { STANDARD_GRAVITY_m_per_s2 } from '../motion/gravity.ts';
import { DENSITY_TAKEN, LIQUIDS, SURFACE_TENSION_TAKEN } from './liquids.ts';

/** Below this no bubble in any drink wobbles. */
const SMALLEST_m = 1e-3;
const LARGEST_m = 0.1;

export interface AroundBubble {
  readonly surfaceTension_N_per_m?: number;
  readonly density_kg_per_m3?: number;
  readonly gravity_m_per_s2?: number;
}

const around = ({
  surfaceTension_N_per_m = LIQUIDS.water.surfaceTension_N_per_m,
  density_kg_per_m3 = LIQUIDS.water.density_kg_per_m3,
  gravity_m_per_s2 = STANDARD_GRAVITY_m_per_s2,
}: AroundBubble): Required<AroundBubble> => {
  requirePositive({ surfaceTension_N_per_m, density_kg_per_m3, gravity_m_per_s2 });
  return { surfaceTension_N_per_m, density_kg_per_m3, gravity_m_per_s2 };
};

/** Speed at which a bubble rises. Throws RangeError for a bubble outside 1 mm to 0.1 m, or a liquid not positive. */
export function bubbleRise_m_per_s(given: AroundBubble & { readonly diameter_m: number }): number {
  const { diameter_m } = given;
  requireWithin(SMALLEST_m, LARGEST_m, { diameter_m });
  const { surfaceTension_N_per_m, density_kg_per_m3, gravity_m_per_s2 } = around(given);
  return Math.sqrt(
    (2 * surfaceTension_N_per_m) / (density_kg_per_m3 * diameter_m) + (gravity_m_per_s2 * diameter_m) / 2,
  );
}

/** The bubble that rises slowest, and its speed. Throws RangeError for a liquid not positive. */
export function slowestBubbleOf(given: AroundBubble): { readonly diameter_m: number; readonly speed_m_per_s: number } {
  const { surfaceTension_N_per_m, density_kg_per_m3, gravity_m_per_s2 } = around(given);
  const diameter_m = Math.sqrt((4 * surfaceTension_N_per_m) / (density_kg_per_m3 * gravity_m_per_s2));
  return { diameter_m, speed_m_per_s: Math.sqrt(gravity_m_per_s2 * diameter_m) };
}

const LIQUID = {
  ...SURFACE_TENSION_TAKEN,
  ...DENSITY_TAKEN,
  gravity_m_per_s2: { title: 'Gravity', default: STANDARD_GRAVITY_m_per_s2 },
};
const COMMON = { sources: ['mendelson'], words: ['bubble', 'carbonation', 'fizz', 'champagne', 'aquarium'] };

export const bubbleRise = law(bubbleRise_m_per_s, {
  id: 'bubble-rise',
  title: 'Speed of a rising bubble',
  says: 'How fast a bubble of a few millimetres rises.',
  equation: 'U = √(2 · σ / (ρ · d) + g · d / 2)',
  takes: { diameter_m: 'Diameter of the bubble', ...LIQUID },
  gives: { speed_m_per_s: 'Speed of rise' },
  holds: 'Single bubbles from about 1.5 mm in clean thin liquid, away from walls. Smaller and soapy ones are slower.',
  example: { diameter_m: 0.003 },
  ...COMMON,
});

export const slowestBubble = law(slowestBubbleOf, {
  id: 'slowest-bubble',
  title: 'The slowest bubble',
  says: 'The size of wobbling bubble that rises slowest, below and above which all are faster.',
  equation: 'd = √(4 · σ / (ρ · g)), U = √(g · d)',
  takes: LIQUID,
  gives: { diameter_m: 'Diameter', speed_m_per_s: 'Speed of rise' },
  holds: 'Clean thin liquids; bubbles below about 1.5 mm follow another law.',
  example: { surfaceTension_N_per_m: 0.045, density_kg_per_m3: 1030 },
  ...COMMON,
});
