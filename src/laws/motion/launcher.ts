/**
 * Throwing things: the speed a spring or compressed air gives, and how high and how far a throw goes.
 *
 *     spring   v = x·√(η·k / m)        air   v = √(2·η·P·A·L / m)        high   v²·sin²α / 2g        far   v²·sin 2α / g
 *
 * v speed, m/s        x compression, m        k stiffness, N/m        m mass, kg        P pressure above the air's, Pa
 * A area of the bore, m²        L length of the push, m        η share of the work that moves the thing
 * α angle above level, deg        g gravity, m/s²
 *
 * A spring also moves its own coils and its carriage. Air loses most of its work in valves and leaks: calibrate with a
 * clip. The throw leaves out air, which shortens it.
 *
 * @source spring-exercises the spring, worked
 * @source launch-energy pressure times volume as work, and the share that is left of it
 * @source throw-textbook height and reach of a throw
 */
import { requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';
import { STANDARD_GRAVITY_m_per_s2 } from './gravity.ts';

/** Midway in what valves and leaks usually leave, a third to a half. @source launch-energy */
const AIR_EFFICIENCY = 0.4;

function requireShare(efficiencyFraction: number): void {
  requirePositive({ efficiencyFraction });
  requireWithin(0, 1, { efficiencyFraction });
}

/** Speed a spring gives. Throws RangeError outside positive inputs, or a share above 1. */
export function springLaunchSpeed_m_per_s(given: {
  readonly stiffness_N_per_m: number;
  readonly compression_m: number;
  readonly mass_kg: number;
  readonly efficiencyFraction?: number;
}): number {
  const { stiffness_N_per_m, compression_m, mass_kg, efficiencyFraction = 1 } = given;
  requirePositive({ stiffness_N_per_m, compression_m, mass_kg });
  requireShare(efficiencyFraction);
  return compression_m * Math.sqrt((efficiencyFraction * stiffness_N_per_m) / mass_kg);
}

/** Speed compressed air gives. Throws RangeError outside positive inputs, or a share above 1. */
export function airLaunchSpeed_m_per_s(given: {
  readonly pressure_Pa: number;
  readonly bore_m: number;
  readonly stroke_m: number;
  readonly mass_kg: number;
  readonly efficiencyFraction?: number;
}): number {
  const { pressure_Pa, bore_m, stroke_m, mass_kg, efficiencyFraction = AIR_EFFICIENCY } = given;
  requirePositive({ pressure_Pa, bore_m, stroke_m, mass_kg });
  requireShare(efficiencyFraction);
  const work = pressure_Pa * ((Math.PI * bore_m ** 2) / 4) * stroke_m;
  return Math.sqrt((2 * efficiencyFraction * work) / mass_kg);
}

export interface Throw {
  readonly speed_m_per_s: number;
  readonly angle_deg?: number;
  readonly gravity_m_per_s2?: number;
}

/** How high and how far a throw goes without air, landing level with where it left. Throws RangeError outside 0 to 90 degrees or positive inputs. */
export function throwReachOf({ speed_m_per_s, angle_deg = 45, gravity_m_per_s2 = STANDARD_GRAVITY_m_per_s2 }: Throw): {
  readonly height_m: number;
  readonly distance_m: number;
} {
  requirePositive({ speed_m_per_s, gravity_m_per_s2 });
  requireWithin(0, 90, { angle_deg });
  const angle_rad = (angle_deg * Math.PI) / 180;
  const scale_m = speed_m_per_s ** 2 / gravity_m_per_s2;
  return { height_m: (scale_m * Math.sin(angle_rad) ** 2) / 2, distance_m: scale_m * Math.sin(2 * angle_rad) };
}

const CAUTIONS = ['moving-rigs', 'pressure-and-projectiles'];
const WORDS = ['launch', 'throw', 'fire', 'catapult', 'cannon', 'rig'];
const MASS = { mass_kg: { title: 'Mass thrown', note: 'with the carriage or piston that moves along' } };

export const springLaunchSpeed = law(springLaunchSpeed_m_per_s, {
  id: 'spring-launch-speed',
  title: 'Speed from a spring',
  says: 'How fast a spring throws what lies before it.',
  equation: 'v = x · √(η · k / m)',
  takes: {
    stiffness_N_per_m: 'Stiffness of the spring',
    compression_m: 'Compression',
    ...MASS,
    efficiencyFraction: { title: 'Share of the work left', as: 'fraction', default: 1 },
  },
  gives: { speed_m_per_s: 'Speed of launch' },
  holds: 'A spring light beside what it throws, released freely; measure the real one with a clip.',
  sources: ['spring-exercises'],
  cautions: CAUTIONS,
  words: WORDS,
  example: { stiffness_N_per_m: 800, compression_m: 0.05, mass_kg: 0.1 },
});

export const airLaunchSpeed = law(airLaunchSpeed_m_per_s, {
  id: 'air-launch-speed',
  title: 'Speed from compressed air',
  says: 'About how fast an air cylinder or tube throws what lies before it.',
  equation: 'v = √(2 · η · P · A · L / m)',
  takes: {
    pressure_Pa: { title: 'Pressure above the air’s', note: 'as a gauge reads it' },
    bore_m: 'Diameter of the bore',
    stroke_m: 'Length of the push',
    ...MASS,
    efficiencyFraction: {
      title: 'Share of the work left',
      as: 'fraction',
      default: AIR_EFFICIENCY,
      note: 'a third to a half is usual',
    },
  },
  gives: { speed_m_per_s: 'Speed of launch' },
  holds: 'A reservoir large beside the bore; the share is a guess until it is measured with a clip.',
  sources: ['launch-energy'],
  cautions: CAUTIONS,
  words: [...WORDS, 'pneumatic', 'cylinder', 'valve'],
  example: { pressure_Pa: 5e5, bore_m: 0.02, stroke_m: 0.1, mass_kg: 0.1, efficiencyFraction: 0.5 },
});

export const throwReach = law(throwReachOf, {
  id: 'throw-reach',
  title: 'Reach of a throw',
  says: 'How high and how far a thrown thing goes, and so where nobody stands.',
  equation: 'high = v² · sin²α / 2g, far = v² · sin 2α / g',
  takes: {
    speed_m_per_s: 'Speed of launch',
    angle_deg: { title: 'Angle above level', default: 45, note: '45 degrees reaches farthest' },
    gravity_m_per_s2: { title: 'Gravity', default: STANDARD_GRAVITY_m_per_s2 },
  },
  gives: { height_m: 'Height', distance_m: 'Distance' },
  holds: 'No air, landing at the height it left from; from a table it goes farther.',
  sources: ['throw-textbook'],
  cautions: CAUTIONS,
  words: WORDS,
  example: { speed_m_per_s: 4.47, angle_deg: 60 },
});
