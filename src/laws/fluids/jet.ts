/**
 * Liquid leaving a vessel and falling: its speed, its flow, how it thins and how far it stays whole.
 *
 *     v = Cv·√(2·g·h)        Q = Cd·(π/4)·d²·√(2·g·h)        d = d0·(v0² / (v0² + 2·g·z))^¼        L = 12·d·√We
 *
 * v speed at the mouth, m/s        h height of liquid above the mouth, m        Q flow, m³/s        d diameter, m
 * z fall below the mouth, m        L length before it breaks into drops, m        We Weber number of the jet
 * Cv, Cd how much of the ideal speed and flow are left        g gravity, m/s²
 *
 * Holds for thin liquids from a mouth small beside the vessel. Thinning holds while the jet is whole and smooth.
 *
 * @source efflux-examples speed and flow, worked
 * @source orifice-examples flow with a discharge coefficient, worked
 * @source faucet-exercise a falling jet thinning, worked
 * @source weber-jet the length of a jet before it breaks
 * @source jet-breakup-measured where longer jets stop getting longer
 */
import { requireNotNegative, requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';
import { STANDARD_GRAVITY_m_per_s2 } from '../motion/gravity.ts';
import { weberNumber } from './impact.ts';
import { DENSITY_TAKEN, SURFACE_TENSION_TAKEN } from './liquids.ts';

/** What is left of the ideal speed at a clean mouth: 0.97 to 0.98. @source orifice-coefficients */
export const VELOCITY_FACTOR = 0.97;

/** What is left of the ideal flow through a sharp edge. @source orifice-coefficients */
export const DISCHARGE_FACTOR = 0.62;

interface Head {
  readonly head_m: number;
  readonly gravity_m_per_s2?: number;
}

function idealSpeed_m_per_s({ head_m, gravity_m_per_s2 = STANDARD_GRAVITY_m_per_s2 }: Head): number {
  requireNotNegative({ head_m });
  requirePositive({ gravity_m_per_s2 });
  return Math.sqrt(2 * gravity_m_per_s2 * head_m);
}

/** Speed of liquid at the mouth of a vessel. Throws RangeError for a negative head, or a factor outside 0 to 1. */
export function effluxSpeed_m_per_s(given: Head & { readonly velocityFactor?: number }): number {
  const { velocityFactor = VELOCITY_FACTOR } = given;
  requirePositive({ velocityFactor });
  requireWithin(0, 1, { velocityFactor });
  return velocityFactor * idealSpeed_m_per_s(given);
}

/** Flow through a round hole. Throws RangeError for a negative head, a hole not positive, or a factor outside 0 to 1. */
export function orificeFlow_m3_per_s(
  given: Head & { readonly diameter_m: number; readonly dischargeFactor?: number },
): number {
  const { diameter_m, dischargeFactor = DISCHARGE_FACTOR } = given;
  requirePositive({ diameter_m, dischargeFactor });
  requireWithin(0, 1, { dischargeFactor });
  return ((dischargeFactor * Math.PI * diameter_m ** 2) / 4) * idealSpeed_m_per_s(given);
}

/** Diameter of a falling jet below its mouth. Throws RangeError for a speed or diameter not positive, or a negative fall. */
export function thinnedDiameter_m(given: {
  readonly diameter_m: number;
  readonly speed_m_per_s: number;
  readonly fallHeight_m: number;
  readonly gravity_m_per_s2?: number;
}): number {
  const { diameter_m, speed_m_per_s, fallHeight_m, gravity_m_per_s2 = STANDARD_GRAVITY_m_per_s2 } = given;
  requirePositive({ diameter_m, speed_m_per_s, gravity_m_per_s2 });
  requireNotNegative({ fallHeight_m });
  return diameter_m * (1 + (2 * gravity_m_per_s2 * fallHeight_m) / speed_m_per_s ** 2) ** -0.25;
}

/** Length of a jet before it breaks into drops. Throws RangeError as `weberNumber` does. */
export function jetBreakupLength_m(jet: Parameters<typeof weberNumber>[0]): number {
  return 12 * jet.diameter_m * Math.sqrt(weberNumber(jet));
}

const HEAD = { head_m: { title: 'Height of liquid', note: 'from the middle of the hole up to the surface' } };
const GRAVITY = { gravity_m_per_s2: { title: 'Gravity', default: STANDARD_GRAVITY_m_per_s2 } };
const WORDS = ['pour', 'jet', 'stream', 'tap', 'spout'];

export const effluxSpeed = law(effluxSpeed_m_per_s, {
  id: 'efflux-speed',
  title: 'Speed of a pour at its mouth',
  says: 'How fast liquid leaves a hole or a spout, by how much liquid stands above it.',
  equation: 'v = Cv · √(2 · g · h)',
  takes: {
    ...HEAD,
    velocityFactor: {
      title: 'Speed left',
      as: 'ratio',
      default: VELOCITY_FACTOR,
      note: '0.97 to 0.98 for a clean mouth, 1 for the ideal',
    },
    ...GRAVITY,
  },
  gives: { speed_m_per_s: 'Speed at the mouth' },
  holds: 'Thin liquids, a hole small beside the vessel, air free to enter.',
  sources: ['efflux-examples', 'orifice-coefficients'],
  words: [...WORDS, 'Torricelli'],
  example: { head_m: 0.1 },
});

export const orificeFlow = law(orificeFlow_m3_per_s, {
  id: 'orifice-flow',
  title: 'Flow of a pour',
  says: 'How much liquid leaves a round hole, and so how long a vessel lasts.',
  equation: 'Q = Cd · (π/4) · d² · √(2 · g · h)',
  takes: {
    diameter_m: 'Diameter of the hole',
    ...HEAD,
    dischargeFactor: {
      title: 'Flow left',
      as: 'ratio',
      default: DISCHARGE_FACTOR,
      note: '0.62 for a sharp edge, 0.8 for a short tube',
    },
    ...GRAVITY,
  },
  gives: { flow_m3_per_s: 'Flow' },
  holds: 'Thin liquids, a hole small beside the vessel, air free to enter.',
  sources: ['orifice-examples', 'efflux-examples', 'orifice-coefficients'],
  words: [...WORDS, 'Torricelli', 'how long'],
  example: { diameter_m: 0.01, head_m: 0.1 },
});

export const thinnedDiameter = law(thinnedDiameter_m, {
  id: 'jet-diameter',
  title: 'Diameter of a falling jet',
  says: 'How thin a pour has become below its mouth.',
  equation: 'd = d0 · (v0² / (v0² + 2 · g · z))^¼',
  takes: {
    diameter_m: 'Diameter at the mouth',
    speed_m_per_s: 'Speed at the mouth',
    fallHeight_m: 'Fall below the mouth',
    ...GRAVITY,
  },
  gives: { jetDiameter_m: 'Diameter there' },
  holds: 'A round jet, whole and smooth, falling straight; a mouth with a sharp edge narrows it at once by a fifth.',
  sources: ['faucet-exercise'],
  words: [...WORDS, 'thinning', 'neck'],
  example: { diameter_m: 0.01, speed_m_per_s: 0.96, fallHeight_m: 0.3 },
});

export const jetBreakupLength = law(jetBreakupLength_m, {
  id: 'jet-breakup-length',
  title: 'Length of a whole jet',
  says: 'How far a pour stays one thread before it breaks into drops.',
  equation: 'L = 12 · d · √We',
  takes: {
    diameter_m: 'Diameter of the jet',
    speed_m_per_s: 'Speed of the jet',
    ...DENSITY_TAKEN,
    ...SURFACE_TENSION_TAKEN,
  },
  gives: { length_m: 'Length before it breaks' },
  holds:
    'Within a half either way, for smooth slow jets of thin liquids: fast ones are torn by the air and break sooner, and some fine jets were longest at a Weber number near 20.',
  sources: ['weber-jet', 'jet-breakup-measured'],
  words: [...WORDS, 'thread', 'break up', 'drops'],
  example: { diameter_m: 0.003, speed_m_per_s: 1.5 },
});
