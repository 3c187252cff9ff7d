/**
 * Drag of air on a smooth sphere, and the speed at which it stops getting faster.
 *
 *     Cd = 24/Re · (1 + 0.15·Re^0.687) + 0.42 / (1 + 42500·Re^−1.16)        Re = ρa·v·d / μ
 *     a(v) = g·(1 − ρa/ρ) − ¾·Cd·ρa·v² / (ρ·d)                             terminal speed: a(v) = 0
 *
 * Cd drag coefficient        Re Reynolds number        v speed, m/s        d diameter, m        ρ density, kg/m³
 * ρa density of air, kg/m³        μ viscosity of air, Pa·s        g gravity, m/s²
 *
 * Holds up to Re 300,000, below the sudden loss of drag of a sphere. Water drops above about 2 mm flatten and fall slower
 * than the sphere: a tenth at 3 mm, a sixth at 4 mm, by measured terminal speeds.
 *
 * @source clift-gauvin the drag coefficient
 * @source gunn-kinzer measured terminal speeds of water drops
 * @source air-20c density and viscosity of air
 */
import { requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';
import { STANDARD_GRAVITY_m_per_s2 } from './gravity.ts';

/** At 20 °C and 101,325 Pa. @source air-20c */
export const AIR_DENSITY_kg_per_m3 = 1.204;

/** At 20 °C. @source air-20c */
export const AIR_VISCOSITY_Pa_s = 1.813e-5;

/** Where the correlation ends. @source clift-gauvin */
export const HIGHEST_REYNOLDS_NUMBER = 3e5;

export interface SphereInAir {
  readonly diameter_m: number;
  readonly density_kg_per_m3: number;
  readonly airDensity_kg_per_m3?: number;
  readonly airViscosity_Pa_s?: number;
}

/** A sphere's fall in numbers that its drag needs. */
export interface SphereFall {
  /** Gravity less buoyancy: the acceleration at rest. */
  readonly drive_m_per_s2: number;
  /** Reynolds number at 1 m/s. */
  readonly reynoldsPerSpeed: number;
  /** Deceleration at 1 m/s if drag were Stokes' alone. */
  readonly stokesRate_per_s: number;
}

/** Drag over Stokes' drag, Cd·Re/24: finite at rest, where Cd is not. */
function dragOverStokes(reynoldsNumber: number): number {
  const newton = (0.42 * reynoldsNumber) / (1 + 42_500 * reynoldsNumber ** -1.16);
  return 1 + 0.15 * reynoldsNumber ** 0.687 + newton / 24;
}

/** Drag coefficient of a smooth sphere. Throws RangeError unless Re is above 0 and at most 300,000. */
export function sphereDragCoefficient({ reynoldsNumber }: { readonly reynoldsNumber: number }): number {
  requirePositive({ reynoldsNumber });
  requireWithin(0, HIGHEST_REYNOLDS_NUMBER, { reynoldsNumber });
  return (24 / reynoldsNumber) * dragOverStokes(reynoldsNumber);
}

/**
 * What drives and holds back a falling sphere. Throws RangeError for a diameter outside 1 µm to 1 m, air that is no gas
 * near room conditions, or a sphere not denser than air.
 */
export function sphereFall(sphere: SphereInAir): SphereFall {
  const { diameter_m, density_kg_per_m3 } = sphere;
  const { airDensity_kg_per_m3 = AIR_DENSITY_kg_per_m3, airViscosity_Pa_s = AIR_VISCOSITY_Pa_s } = sphere;
  requireWithin(1e-6, 1, { diameter_m });
  requirePositive({ density_kg_per_m3, airDensity_kg_per_m3 });
  requireWithin(0, 100, { airDensity_kg_per_m3 });
  requireWithin(0, 1e5, { density_kg_per_m3 });
  requireWithin(1e-6, 1e-3, { airViscosity_Pa_s });
  if (density_kg_per_m3 <= airDensity_kg_per_m3)
    throw new RangeError(
      `density_kg_per_m3 must be above that of air, ${airDensity_kg_per_m3}, to fall, got ${density_kg_per_m3}`,
    );
  return {
    drive_m_per_s2: STANDARD_GRAVITY_m_per_s2 * (1 - airDensity_kg_per_m3 / density_kg_per_m3),
    reynoldsPerSpeed: (airDensity_kg_per_m3 * diameter_m) / airViscosity_Pa_s,
    stokesRate_per_s: (18 * airViscosity_Pa_s) / (density_kg_per_m3 * diameter_m ** 2),
  };
}

/** Acceleration of a falling sphere at a speed, m/s². */
export function accelerationAt(fall: SphereFall, speed_m_per_s: number): number {
  return (
    fall.drive_m_per_s2 - fall.stokesRate_per_s * speed_m_per_s * dragOverStokes(fall.reynoldsPerSpeed * speed_m_per_s)
  );
}

/** Speed at which acceleration ends, by bisection, wherever the correlation is carried on to. */
export function settledSpeed_m_per_s(fall: SphereFall): number {
  // Drag is never below Stokes', so the speed at which Stokes' drag alone would balance is an upper bound.
  let [low, high] = [0, fall.drive_m_per_s2 / fall.stokesRate_per_s];
  for (let i = 0; i < 200; i += 1) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (accelerationAt(fall, middle) > 0) low = middle;
    else high = middle;
  }
  return low;
}

/** Terminal speed of a sphere in air. Throws RangeError as `sphereFall` does, or past the end of the correlation. */
export function dragTerminalSpeed_m_per_s(sphere: SphereInAir): number {
  const fall = sphereFall(sphere);
  const speed_m_per_s = settledSpeed_m_per_s(fall);
  requireWithin(0, HIGHEST_REYNOLDS_NUMBER, { reynoldsNumber: fall.reynoldsPerSpeed * speed_m_per_s });
  return speed_m_per_s;
}

export const AIR_TAKEN = {
  airDensity_kg_per_m3: { title: 'Density of the air', default: AIR_DENSITY_kg_per_m3, note: '20 °C at sea level' },
  airViscosity_Pa_s: { title: 'Viscosity of the air', default: AIR_VISCOSITY_Pa_s, note: '20 °C' },
} as const;

export const SPHERE_HOLDS =
  'Smooth round things in still air, up to Reynolds number 300,000. Water drops above about 2 mm flatten and end up slower.';

export const dragCoefficient = law(sphereDragCoefficient, {
  id: 'sphere-drag-coefficient',
  title: 'Drag coefficient of a sphere',
  says: 'How strongly air or another fluid holds back a smooth ball at a Reynolds number.',
  equation: 'Cd = 24/Re · (1 + 0.15 · Re^0.687) + 0.42 / (1 + 42500 · Re^−1.16)',
  takes: { reynoldsNumber: { title: 'Reynolds number', as: 'ratio' } },
  gives: { dragCoefficient: { title: 'Drag coefficient', as: 'ratio' } },
  holds: 'Smooth spheres, Reynolds number up to 300,000; within about 7 % of measured values.',
  sources: ['clift-gauvin', 'morsi-alexander'],
  words: ['air resistance', 'Cd', 'Reynolds'],
  example: { reynoldsNumber: 500 },
});

export const terminalSpeed = law(dragTerminalSpeed_m_per_s, {
  id: 'terminal-speed',
  title: 'Terminal speed of a ball or drop',
  says: 'The speed a small thing settles at, however far it falls through air.',
  equation: 'g · (1 − ρa/ρ) = ¾ · Cd · ρa · v² / (ρ · d)',
  takes: { diameter_m: 'Diameter', density_kg_per_m3: 'Density', ...AIR_TAKEN },
  gives: { speed_m_per_s: 'Terminal speed' },
  holds: SPHERE_HOLDS,
  sources: ['clift-gauvin', 'air-20c'],
  words: ['drop', 'droplet', 'rain', 'air resistance', 'powder'],
  example: { diameter_m: 0.002, density_kg_per_m3: 998.2 },
});
