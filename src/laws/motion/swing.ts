/**
 * A thing let go on an arm: how long it takes to the lowest point and how fast it passes there.
 *
 *     t = √(L/g)·K(sin ½θ)        K(sin ½θ) = π / (2·agm(1, cos ½θ))        v = √(2·g·L·(1 − cos θ))
 *
 * t time from release to the lowest point, s        L arm from pivot to the middle of the thing, m
 * θ angle of release from hanging straight down, deg        K complete elliptic integral of the first kind
 * agm mean that the arithmetic and the geometric one close in on        v speed at the lowest point, m/s        g gravity, m/s²
 *
 * Holds for a small heavy thing on a light stiff arm or a taut line, a free pivot and no air. A heavy arm swings faster.
 *
 * @source pendulum-table periods up to 90 degrees
 * @source pendulum-ratios periods over that of a small swing, up to 175 degrees
 */
import { requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';
import { STANDARD_GRAVITY_m_per_s2 } from './gravity.ts';

/** Nearer to upright it hangs there for as long as nobody breathes. */
const STEEPEST_deg = 179;

/** The common limit of arithmetic and geometric means: each round doubles the digits that are right. */
function commonMean(a: number, b: number): number {
  for (let round = 0; round < 12 && a !== b; round += 1) [a, b] = [(a + b) / 2, Math.sqrt(a * b)];
  return a;
}

/** Time to the lowest point and speed there. Throws RangeError for an arm or gravity not positive, or an angle outside 0 to 179 degrees. */
export function swingOf(given: {
  readonly arm_m: number;
  readonly release_deg: number;
  readonly gravity_m_per_s2?: number;
}): { readonly swingTime_s: number; readonly lowestSpeed_m_per_s: number } {
  const { arm_m, release_deg, gravity_m_per_s2 = STANDARD_GRAVITY_m_per_s2 } = given;
  requirePositive({ arm_m, release_deg, gravity_m_per_s2 });
  requireWithin(0, STEEPEST_deg, { release_deg });
  const half_rad = (release_deg * Math.PI) / 360;
  return {
    swingTime_s: (Math.sqrt(arm_m / gravity_m_per_s2) * Math.PI) / (2 * commonMean(1, Math.cos(half_rad))),
    lowestSpeed_m_per_s: 2 * Math.sin(half_rad) * Math.sqrt(gravity_m_per_s2 * arm_m),
  };
}

export const swing = law(swingOf, {
  id: 'swing',
  title: 'Swing to the lowest point',
  says: 'How long a thing on an arm takes from its release to the lowest point, and how fast it passes.',
  equation: 't = √(L/g) · K(sin ½θ), v = √(2 · g · L · (1 − cos θ))',
  takes: {
    arm_m: { title: 'Arm', note: 'from the pivot to the middle of the thing' },
    release_deg: { title: 'Angle of release', note: 'from hanging straight down' },
    gravity_m_per_s2: { title: 'Gravity', default: STANDARD_GRAVITY_m_per_s2 },
  },
  gives: { swingTime_s: 'Time to the lowest point', lowestSpeed_m_per_s: 'Speed there' },
  holds: 'A small heavy thing on a light arm, a free pivot, no air; up to 179 degrees.',
  sources: ['pendulum-table', 'pendulum-ratios'],
  cautions: ['moving-rigs'],
  words: ['pendulum', 'arm', 'hammer', 'release', 'cue', 'lead', 'rig'],
  example: { arm_m: 0.5, release_deg: 60 },
});
