/**
 * A grain of powder thrown into still air: how soon it follows the air, and how far it flies.
 *
 *     τ = ρ·d² / (18·μ)        S = (ρ·d / ρa)·(Re^⅓ − √6·arctan(Re^⅓ / √6))        Re = ρa·v·d / μ
 *
 * τ relaxation time, s        S distance to a stop, m        ρ density of the grain, kg/m³        d diameter, m
 * v speed of the throw, m/s        ρa density of air, kg/m³        μ viscosity of air, Pa·s
 *
 * S holds up to Re 1500 within a few per cent; for slow fine grains it is v·τ. One grain alone: a dense cloud carries air
 * along and goes much farther.
 *
 * @source relaxation-time the relaxation time
 * @source stopping-formula the distance beyond the slowest motion
 * @source aerosol-course distances of grains thrown at 10 m/s
 * @source air-20c density and viscosity of air
 */
import { requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';
import { AIR_DENSITY_kg_per_m3, AIR_TAKEN, AIR_VISCOSITY_Pa_s } from '../motion/sphereDrag.ts';

export interface Grain {
  readonly diameter_m: number;
  readonly density_kg_per_m3: number;
  readonly airViscosity_Pa_s?: number;
}

/** Where the drag that the distance rests on ends. @source stopping-formula */
const HIGHEST_REYNOLDS_NUMBER = 1500;

/** Time in which a grain takes on the speed of the air. Throws RangeError outside positive inputs. */
export function relaxationTime_s(grain: Grain): number {
  const { diameter_m, density_kg_per_m3, airViscosity_Pa_s = AIR_VISCOSITY_Pa_s } = grain;
  requirePositive({ diameter_m, density_kg_per_m3, airViscosity_Pa_s });
  return (density_kg_per_m3 * diameter_m ** 2) / (18 * airViscosity_Pa_s);
}

/** x − arctan x, whose digits vanish in the difference where x is small. */
const lessArctan = (x: number): number =>
  x < 0.05 ? x ** 3 * (1 / 3 - x ** 2 * (1 / 5 - x ** 2 / 7)) : x - Math.atan(x);

/** Distance in which a thrown grain stops. Throws RangeError outside positive inputs, or above Reynolds number 1500. */
export function stoppingDistance_m(
  grain: Grain & { readonly speed_m_per_s: number; readonly airDensity_kg_per_m3?: number },
): number {
  const { diameter_m, density_kg_per_m3, speed_m_per_s } = grain;
  const { airDensity_kg_per_m3 = AIR_DENSITY_kg_per_m3, airViscosity_Pa_s = AIR_VISCOSITY_Pa_s } = grain;
  requirePositive({ diameter_m, density_kg_per_m3, speed_m_per_s, airDensity_kg_per_m3, airViscosity_Pa_s });
  const reynoldsNumber = (airDensity_kg_per_m3 * speed_m_per_s * diameter_m) / airViscosity_Pa_s;
  requireWithin(0, HIGHEST_REYNOLDS_NUMBER, { reynoldsNumber });
  const scaled = Math.cbrt(reynoldsNumber) / Math.sqrt(6);
  return ((density_kg_per_m3 * diameter_m) / airDensity_kg_per_m3) * Math.sqrt(6) * lessArctan(scaled);
}

const GRAIN = { diameter_m: 'Diameter of a grain', density_kg_per_m3: 'Density of a grain' };
const FLOUR = { diameter_m: 50e-6, density_kg_per_m3: 1500 };
const COMMON = {
  cautions: ['powders-and-dust'],
  words: ['powder', 'dust', 'flour', 'cocoa', 'spice', 'cloud', 'burst'],
};

export const relaxationTime = law(relaxationTime_s, {
  id: 'relaxation-time',
  title: 'Powder following the air',
  says: 'How long a grain of powder takes to move with the air instead of on its own.',
  equation: 'τ = ρ · d² / (18 · μ)',
  takes: { ...GRAIN, airViscosity_Pa_s: AIR_TAKEN.airViscosity_Pa_s },
  gives: { relaxationTime_s: 'Relaxation time' },
  holds: 'Single round grains from about a micrometre, moving slowly through the air.',
  sources: ['relaxation-time', 'air-20c'],
  example: FLOUR,
  ...COMMON,
});

export const stoppingDistance = law(stoppingDistance_m, {
  id: 'stopping-distance',
  title: 'Flight of a grain of powder',
  says: 'How far one grain flies when it is thrown into still air.',
  equation: 'S = (ρ · d / ρa) · (Re^⅓ − √6 · arctan(Re^⅓ / √6))',
  takes: { ...GRAIN, speed_m_per_s: 'Speed of the throw', ...AIR_TAKEN },
  gives: { stoppingDistance_m: 'Distance to a stop' },
  holds: 'Single round grains, Reynolds number up to 1500. A dense cloud drags air along and goes much farther.',
  sources: ['stopping-formula', 'aerosol-course', 'air-20c'],
  example: { ...FLOUR, speed_m_per_s: 5 },
  ...COMMON,
});
