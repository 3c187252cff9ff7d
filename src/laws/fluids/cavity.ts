/**
 * The cavity that a drop or a falling thing opens in deep liquid, and when it closes.
 *
 *     drop       R = (D³·U² / (3·g))^¼        all its energy of motion spent in lifting liquid out of a half sphere
 *     closing    t = k·√(R / g)               k about 1 to 2
 *     sphere     t = 2.06·√(R / g)            from contact to the neck pinching off, at whatever speed
 *
 * R radius of the cavity, or of the sphere, m        D diameter of the drop, m        U speed at impact, m/s
 * t time, s        g gravity, m/s²
 *
 * The drop's radius leaves out surface tension and heat, so it is a little too large. The sphere must be one that takes a
 * cavity down with it: fast, or greasy, or dry.
 *
 * @source cavity-balance the balance of energies, and the closing by gravity
 * @source duclaux the pinch-off of a cavity
 * @source water-entry that a cavity closes by gravity or by surface tension, as its size has it
 */
import { requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { STANDARD_GRAVITY_m_per_s2 } from '../motion/gravity.ts';
import type { MovingDrop } from './impact.ts';

/** Largest radius of the cavity a drop opens. Throws RangeError outside positive inputs. */
export function cavityRadius_m(drop: MovingDrop & { readonly gravity_m_per_s2?: number }): number {
  const { diameter_m, speed_m_per_s, gravity_m_per_s2 = STANDARD_GRAVITY_m_per_s2 } = drop;
  requirePositive({ diameter_m, speed_m_per_s, gravity_m_per_s2 });
  return ((diameter_m ** 3 * speed_m_per_s ** 2) / (3 * gravity_m_per_s2)) ** 0.25;
}

/** Midway in the range that the balance leaves open. @source cavity-balance */
const CLOSING_FACTOR = 1.5;

/** Time in which gravity closes a cavity. Throws RangeError outside positive inputs. */
export function cavityClosingTime_s(given: {
  readonly radius_m: number;
  readonly closingFactor?: number;
  readonly gravity_m_per_s2?: number;
}): number {
  const { radius_m, closingFactor = CLOSING_FACTOR, gravity_m_per_s2 = STANDARD_GRAVITY_m_per_s2 } = given;
  requirePositive({ radius_m, closingFactor, gravity_m_per_s2 });
  return closingFactor * Math.sqrt(radius_m / gravity_m_per_s2);
}

/** @source duclaux */
const PINCH_FACTOR = 2.06;

/** Time from contact until the cavity behind a sphere pinches off. Throws RangeError outside positive inputs. */
export function pinchOffTime_s(given: { readonly radius_m: number; readonly gravity_m_per_s2?: number }): number {
  return cavityClosingTime_s({ ...given, closingFactor: PINCH_FACTOR });
}

const GRAVITY = { gravity_m_per_s2: { title: 'Gravity', default: STANDARD_GRAVITY_m_per_s2 } };
const CAUTIONS = ['splash-and-flying-parts'];

export const cavityRadius = law(cavityRadius_m, {
  id: 'cavity-radius',
  title: 'Cavity of a drop',
  says: 'How large a hole a drop opens in deep liquid before the jet rises from it.',
  equation: 'R = (D³ · U² / (3 · g))^¼',
  takes: { diameter_m: 'Diameter of the drop', speed_m_per_s: 'Speed at impact', ...GRAVITY },
  gives: { cavityRadius_m: 'Radius of the cavity' },
  holds: 'Liquid at least three drops deep; a little too large, as nothing is lost to surface tension.',
  sources: ['cavity-balance', 'splash-depth'],
  cautions: CAUTIONS,
  words: ['crater', 'splash', 'Worthington jet', 'milk', 'pool'],
  example: { diameter_m: 0.004, speed_m_per_s: 3.13 },
});

export const cavityClosingTime = law(cavityClosingTime_s, {
  id: 'cavity-closing-time',
  title: 'Closing of a cavity',
  says: 'How long a hole in liquid takes to fill, when the jet rises.',
  equation: 't = k · √(R / g)',
  takes: {
    radius_m: 'Radius of the cavity',
    closingFactor: { title: 'Factor', as: 'ratio', default: CLOSING_FACTOR, note: '1 to 2' },
    ...GRAVITY,
  },
  gives: { closingTime_s: 'Time to close' },
  holds: 'Cavities of several millimetres and more, which gravity closes; tiny ones close by surface tension.',
  sources: ['cavity-balance', 'water-entry'],
  cautions: CAUTIONS,
  words: ['crater', 'collapse', 'Worthington jet', 'pool'],
  example: { radius_m: 0.012 },
});

export const pinchOffTime = law(pinchOffTime_s, {
  id: 'pinch-off-time',
  title: 'Pinch-off behind a fruit',
  says: 'How long after contact the air behind a falling fruit pinches off and jets rise, whatever its speed.',
  equation: 't = 2.06 · √(R / g)',
  takes: { radius_m: 'Radius of the fruit', ...GRAVITY },
  gives: { pinchOffTime_s: 'Time to pinch-off' },
  holds: 'Round things that draw air down with them, in deep liquid; a wet smooth berry dropped slowly may draw none.',
  sources: ['duclaux', 'water-entry'],
  cautions: CAUTIONS,
  words: ['berry', 'strawberry', 'tank', 'aquarium', 'splash', 'cavity'],
  example: { radius_m: 0.0125 },
});
