/**
 * How fast a hole opens in a film of liquid.
 *
 *     V = √(2·σ / (ρ·h))
 *
 * V speed of the rim, m/s        σ surface tension, N/m        ρ density, kg/m³        h thickness of the film, m
 *
 * Both faces of the film pull on the rim. Holds for films of even thickness, from soon after the hole appears until the
 * rim sheds drops; measured rims are some tenths slower.
 *
 * @source taylor-culick the law and its symbols
 */
import { requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { DENSITY_TAKEN, LIQUIDS, SURFACE_TENSION_TAKEN } from './liquids.ts';

/** Speed of the rim of a hole in a film. Throws RangeError outside positive inputs. */
export function filmBurstSpeed_m_per_s(given: {
  readonly filmThickness_m: number;
  readonly surfaceTension_N_per_m?: number;
  readonly density_kg_per_m3?: number;
}): number {
  const { filmThickness_m, surfaceTension_N_per_m = LIQUIDS.water.surfaceTension_N_per_m } = given;
  const { density_kg_per_m3 = LIQUIDS.water.density_kg_per_m3 } = given;
  requirePositive({ filmThickness_m, surfaceTension_N_per_m, density_kg_per_m3 });
  return Math.sqrt((2 * surfaceTension_N_per_m) / (density_kg_per_m3 * filmThickness_m));
}

export const filmBurstSpeed = law(filmBurstSpeed_m_per_s, {
  id: 'film-burst-speed',
  title: 'Speed of a bursting film',
  says: 'How fast a soap film or a bubble’s skin draws back from a hole.',
  equation: 'V = √(2 · σ / (ρ · h))',
  takes: {
    filmThickness_m: { title: 'Thickness of the film', note: 'a coloured soap film is 0.1 to 1 µm' },
    ...SURFACE_TENSION_TAKEN,
    ...DENSITY_TAKEN,
  },
  gives: { speed_m_per_s: 'Speed of the rim' },
  holds: 'Even films of thin liquid. Thin places open faster than thick ones.',
  sources: ['taylor-culick'],
  words: ['soap', 'bubble', 'pop', 'burst', 'membrane'],
  example: { filmThickness_m: 1e-6, surfaceTension_N_per_m: 0.03 },
});
