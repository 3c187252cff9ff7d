/**
 * How fast a falling thread of thick liquid coils.
 *
 *     inertia      Ω = (Q⁴ / (ν·r¹⁰))^⅓        thread falling far, whirling against its own inertia
 *     gravity      Ω = (g·Q³ / (ν·r⁸))^¼       thread falling less far, bending under its own weight
 *     turns a second = Ω / 2π
 *
 * Ω angular speed, rad/s        Q flow, m³/s        r radius of the thread where it coils, m        g gravity, m/s²
 * ν = μ/ρ, viscosity over density, m²/s
 *
 * Scaling laws: right in how they grow, and in size to a factor of two or three. The radius enters in its third power and
 * more, so measure it in a still.
 *
 * @source rope-trick the inertial law and what it neglects
 * @source ribe-coiling the gravitational law
 */
import { requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { STANDARD_GRAVITY_m_per_s2 } from '../motion/gravity.ts';

export interface Thread {
  readonly flow_m3_per_s: number;
  readonly threadRadius_m: number;
  readonly viscosity_Pa_s: number;
  readonly density_kg_per_m3: number;
}

const TURN_rad = 2 * Math.PI;

/** Coiling ruled by inertia. Throws RangeError outside positive inputs. */
export function inertialCoiling_rev_per_s(thread: Thread): number {
  const { flow_m3_per_s, threadRadius_m, viscosity_Pa_s, density_kg_per_m3 } = thread;
  requirePositive({ flow_m3_per_s, threadRadius_m, viscosity_Pa_s, density_kg_per_m3 });
  const cubed = (flow_m3_per_s ** 4 * density_kg_per_m3) / (viscosity_Pa_s * threadRadius_m ** 10);
  return Math.cbrt(cubed) / TURN_rad;
}

/** Coiling ruled by weight. Throws RangeError outside positive inputs. */
export function gravityCoiling_rev_per_s(thread: Thread & { readonly gravity_m_per_s2?: number }): number {
  const { flow_m3_per_s, threadRadius_m, viscosity_Pa_s, density_kg_per_m3 } = thread;
  const { gravity_m_per_s2 = STANDARD_GRAVITY_m_per_s2 } = thread;
  requirePositive({ flow_m3_per_s, threadRadius_m, viscosity_Pa_s, density_kg_per_m3, gravity_m_per_s2 });
  const fourth = (gravity_m_per_s2 * flow_m3_per_s ** 3 * density_kg_per_m3) / (viscosity_Pa_s * threadRadius_m ** 8);
  return fourth ** 0.25 / TURN_rad;
}

const THREAD = {
  flow_m3_per_s: 'Flow',
  threadRadius_m: { title: 'Radius of the thread', note: 'just above the coil' },
  viscosity_Pa_s: 'Viscosity of the liquid',
  density_kg_per_m3: 'Density of the liquid',
};
const HONEY = { flow_m3_per_s: 1e-7, threadRadius_m: 0.5e-3, viscosity_Pa_s: 10, density_kg_per_m3: 1400 };
const WORDS = ['honey', 'syrup', 'rope', 'coil', 'thread', 'sauce', 'caramel'];
const GIVES = { rotation_rev_per_s: 'Turns a second' };
const ROUGHLY = 'Order of magnitude only, for a steady thread of one thick liquid.';

export const inertialCoiling = law(inertialCoiling_rev_per_s, {
  id: 'coiling-by-inertia',
  title: 'Coiling of honey from high',
  says: 'How many turns a second a thread of thick liquid makes when it is poured from high.',
  equation: 'Ω = (Q⁴ / (ν · r¹⁰))^⅓, turns = Ω / 2π',
  takes: THREAD,
  gives: GIVES,
  holds: `${ROUGHLY} Poured from so high that the thread whirls.`,
  sources: ['rope-trick'],
  words: WORDS,
  example: HONEY,
});

export const gravityCoiling = law(gravityCoiling_rev_per_s, {
  id: 'coiling-by-weight',
  title: 'Coiling of honey from low',
  says: 'How many turns a second a thread of thick liquid makes when it is poured from a hand or two above.',
  equation: 'Ω = (g · Q³ / (ν · r⁸))^¼, turns = Ω / 2π',
  takes: { ...THREAD, gravity_m_per_s2: { title: 'Gravity', default: STANDARD_GRAVITY_m_per_s2 } },
  gives: GIVES,
  holds: `${ROUGHLY} Poured from some centimetres, where weight bends the thread.`,
  sources: ['ribe-coiling'],
  words: WORDS,
  example: HONEY,
});
