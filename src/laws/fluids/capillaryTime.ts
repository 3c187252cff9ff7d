/**
 * The time surface tension takes to move liquid across a radius: a bubble closing, a drop bouncing, a thread pinching.
 *
 *     t = √(ρ·R³ / σ)        speed = R / t
 *
 * t time, s        ρ density, kg/m³        R radius, m        σ surface tension, N/m
 *
 * Holds for thin liquids, where viscosity does not slow it: Oh well below 1. Whole events take one to three of these.
 *
 * @source capillary-scaling the balance of inertia and surface tension
 */
import { requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { DENSITY_TAKEN, LIQUIDS, SURFACE_TENSION_TAKEN } from './liquids.ts';

/** Time of a motion driven by surface tension. Throws RangeError outside positive inputs. */
export function capillaryTime_s(given: {
  readonly radius_m: number;
  readonly density_kg_per_m3?: number;
  readonly surfaceTension_N_per_m?: number;
}): number {
  const { radius_m, density_kg_per_m3 = LIQUIDS.water.density_kg_per_m3 } = given;
  const { surfaceTension_N_per_m = LIQUIDS.water.surfaceTension_N_per_m } = given;
  requirePositive({ radius_m, density_kg_per_m3, surfaceTension_N_per_m });
  return Math.sqrt((density_kg_per_m3 * radius_m ** 3) / surfaceTension_N_per_m);
}

export const capillaryTime = law(capillaryTime_s, {
  id: 'capillary-time',
  title: 'Time of surface tension',
  says: 'How long surface tension takes to close a bubble, round a drop or pinch a thread.',
  equation: 't = √(ρ · R³ / σ)',
  takes: { radius_m: 'Radius of the bubble or drop', ...DENSITY_TAKEN, ...SURFACE_TENSION_TAKEN },
  gives: { capillaryTime_s: 'Time of surface tension' },
  holds: 'Thin liquids; honey and syrup take longer. Whole events last one to three of these.',
  sources: ['capillary-scaling'],
  words: ['bubble', 'burst', 'pop', 'drop', 'pinch', 'bounce', 'how fast'],
  example: { radius_m: 0.001 },
});
