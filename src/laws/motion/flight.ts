/**
 * Thrown things on their way: how long they take to a place and how fast they get there.
 *
 *     no air            D² = v²·t² − v·g·sin α·t³ + g²·t⁴/4                speed √(v² − 2·g·y)
 *     sphere in air     dv/dt = −k(|v|)·v − (0, g·(1 − ρa/ρ))             k as in sphereDrag.ts
 *
 * D straight distance from where it leaves to where it is, m        v speed of launch, m/s        α angle above level, deg
 * t time, s        y height above where it left, m        k drag over speed, 1/s        g gravity, m/s²
 *
 * D is what a tape measures, whichever way it is thrown. A throw steeper than 70.5° comes back towards where it left: what
 * lies beyond its turning point it does not reach.
 *
 * @source throw-examples the throw without air, worked
 * @source clift-gauvin the drag of the sphere
 */
import { requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';
import { STANDARD_GRAVITY_m_per_s2 } from './gravity.ts';
import { accelerationAt, AIR_TAKEN, HIGHEST_REYNOLDS_NUMBER, SPHERE_HOLDS, sphereFall, type SphereFall, type SphereInAir } from './sphereDrag.ts'; // prettier-ignore

/** No set is so large. */
const FARTHEST_m = 1000;

export interface Flight {
  readonly distance_m: number;
  readonly speed_m_per_s: number;
  readonly angle_deg?: number;
}

export interface Arriving {
  readonly flightTime_s: number;
  readonly arrivalSpeed_m_per_s: number;
}

function requireFlight({ distance_m, speed_m_per_s, angle_deg = 0 }: Flight): number {
  requirePositive({ distance_m, speed_m_per_s });
  requireWithin(0, FARTHEST_m, { distance_m });
  requireWithin(-90, 90, { angle_deg });
  return Math.sin((angle_deg * Math.PI) / 180);
}

const refuseBeyond = (turns_m: number, distance_m: number): never => {
  throw new RangeError(`distance_m must be at most ${Number(turns_m.toPrecision(4))}, where the throw turns back, got ${distance_m}`);
}; // prettier-ignore

/** The place between `low` and `high` from where on `isBeyond` holds, by bisection to the last digit. */
function firstBeyond(low: number, high: number, isBeyond: (at: number) => boolean): number {
  for (let i = 0; i < 100; i += 1) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (isBeyond(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** A throw without air. Throws RangeError outside positive inputs and −90 to 90 degrees, or for a distance it turns back before. */
export function flightOf(given: Flight & { readonly gravity_m_per_s2?: number }): Arriving {
  const { distance_m: D, speed_m_per_s: v, gravity_m_per_s2: g = STANDARD_GRAVITY_m_per_s2 } = given;
  const rise = requireFlight(given);
  requirePositive({ gravity_m_per_s2: g });
  const away_m = (t: number) => t * Math.sqrt(Math.max(0, v * v - v * g * rise * t + (g * t) ** 2 / 4));
  // Where the way from the start stops growing: only throws steeper than sin α = √8/3 have such a place.
  const turns = 9 * rise * rise - 8;
  const turning_s = rise > 0 && turns >= 0 ? (v * (3 * rise - Math.sqrt(turns))) / (2 * g) : Infinity;
  const surely_s = (v + Math.sqrt(v * v + 2 * g * D)) / g;
  const latest_s = Math.min(turning_s, surely_s);
  if (away_m(latest_s) < D) refuseBeyond(away_m(latest_s), D);
  const flightTime_s = firstBeyond(0, latest_s, (t) => away_m(t) >= D);
  const height_m = v * rise * flightTime_s - (g * flightTime_s ** 2) / 2;
  return { flightTime_s, arrivalSpeed_m_per_s: Math.sqrt(Math.max(0, v * v - 2 * g * height_m)) };
}

/** Right, up, and how fast either grows. */
type Place = readonly [x: number, y: number, u: number, w: number];

function slopes({ drive_m_per_s2, ...rest }: SphereFall, [, , u, w]: Place): Place {
  const speed = Math.hypot(u, w);
  // Drag over speed is finite also where nothing moves, but 0/0 is not.
  const held = speed > 0 ? (drive_m_per_s2 - accelerationAt({ drive_m_per_s2, ...rest }, speed)) / speed : 0;
  return [u, w, -held * u, -held * w - drive_m_per_s2];
}

const moved = (from: Place, by: Place, step_s: number): Place => [from[0] + step_s * by[0], from[1] + step_s * by[1], from[2] + step_s * by[2], from[3] + step_s * by[3]]; // prettier-ignore

/** One step of the classical fourth-order Runge-Kutta method. */
function stepped(fall: SphereFall, from: Place, step_s: number): Place {
  const k1 = slopes(fall, from);
  const k2 = slopes(fall, moved(from, k1, step_s / 2));
  const k3 = slopes(fall, moved(from, k2, step_s / 2));
  const k4 = slopes(fall, moved(from, k3, step_s));
  return moved(from, [0, 1, 2, 3].map((i) => (k1[i]! + 2 * k2[i]! + 2 * k3[i]! + k4[i]!) / 6) as unknown as Place, step_s); // prettier-ignore
}

/** Steps in the least it could take, straight down and without air, and in the time that drag takes to act. */
const STEPS = 128;
const STEPS_OF_DRAG = 16;

/** What has not arrived by then floats rather than flies. */
const MOST_STEPS = 20_000;

/**
 * A sphere thrown through air. Throws RangeError outside the domain of `flightOf`, for a sphere outside 1 µm to 1 m or not
 * denser than air, a Reynolds number that passes 300,000, or what is so light that it floats.
 */
export function dragFlightOf(given: Flight & SphereInAir): Arriving {
  const { distance_m: D, speed_m_per_s: v, angle_deg = 0, ...sphere } = given;
  const rise = requireFlight(given);
  const fall = sphereFall(sphere);
  requireWithin(0, HIGHEST_REYNOLDS_NUMBER, { reynoldsNumber: fall.reynoldsPerSpeed * v });
  let now: Place = [0, 0, v * Math.cos((angle_deg * Math.PI) / 180), v * rise];
  let time_s = 0;
  const least_s = (2 * D) / (v + Math.sqrt(v * v + 2 * fall.drive_m_per_s2 * D));
  const away_m = ([x, y]: Place) => Math.hypot(x, y);
  for (let i = 0; i < MOST_STEPS; i += 1) {
    const [, , slowing, sinking] = slopes(fall, now);
    const speed = Math.hypot(now[2], now[3]);
    const held = Math.hypot(slowing, sinking + fall.drive_m_per_s2);
    const acts_s = held > 0 ? speed / held / STEPS_OF_DRAG : Infinity;
    const step_s = Math.min(least_s / STEPS, acts_s);
    const from = now;
    const next = stepped(fall, from, step_s);
    if (away_m(next) >= D) {
      const last_s = firstBeyond(0, step_s, (part_s) => away_m(stepped(fall, from, part_s)) >= D);
      const there = stepped(fall, from, last_s);
      const arrivalSpeed_m_per_s = Math.hypot(there[2], there[3]);
      requireWithin(0, HIGHEST_REYNOLDS_NUMBER, { reynoldsNumber: fall.reynoldsPerSpeed * arrivalSpeed_m_per_s });
      return { flightTime_s: time_s + last_s, arrivalSpeed_m_per_s };
    }
    if (next[0] * next[2] + next[1] * next[3] < 0) refuseBeyond(away_m(next), D);
    now = next;
    time_s += step_s;
  }
  throw new RangeError(`distance_m must be reached while it still flies, in ${Number(time_s.toPrecision(3))} s, got ${D}`);
} // prettier-ignore

const FLIGHT = {
  distance_m: { title: 'Distance', note: 'straight, from where it leaves to where it is to be, by tape' },
  speed_m_per_s: 'Speed of launch',
  angle_deg: { title: 'Angle above level', default: 0, note: 'negative below level' },
} as const;
const GIVES = { flightTime_s: 'Time of flight', arrivalSpeed_m_per_s: 'Speed on arrival' } as const;
const CAUTIONS = ['moving-rigs', 'pressure-and-projectiles', 'splash-and-flying-parts'];
const WORDS = ['throw', 'launch', 'toss', 'cue', 'lead', 'trajectory', 'time of flight', 'rig'];

export const flight = law(flightOf, {
  id: 'flight',
  title: 'Flight of a thrown thing',
  says: 'How long a thrown thing takes to where it is to be, and how fast it gets there, leaving air out.',
  equation: 'D² = v²·t² − v·g·sin α·t³ + g²·t⁴/4',
  takes: { ...FLIGHT, gravity_m_per_s2: { title: 'Gravity', default: STANDARD_GRAVITY_m_per_s2 } },
  gives: GIVES,
  holds: 'In no air, up to 1000 m, on the way out. Aim it so that the place lies on its path.',
  sources: ['throw-examples'],
  cautions: CAUTIONS,
  words: WORDS,
  example: { distance_m: 0.6, speed_m_per_s: 4.5, angle_deg: 30 },
});

export const dragFlight = law(dragFlightOf, {
  id: 'drag-flight',
  title: 'Flight of a thrown thing through air',
  says: 'How long a thrown ball, berry or drop takes to where it is to be, when air holds it back.',
  equation: 'dv/dt = −k(|v|) · v − (0, g · (1 − ρa/ρ)), k = ¾ · Cd · ρa · |v| / (ρ · d)',
  takes: { ...FLIGHT, diameter_m: 'Diameter', density_kg_per_m3: 'Density', ...AIR_TAKEN },
  gives: GIVES,
  holds: `Up to 1000 m, on the way out, in still air. ${SPHERE_HOLDS}`,
  sources: ['clift-gauvin', 'throw-examples', 'air-20c'],
  cautions: CAUTIONS,
  words: [...WORDS, 'air resistance', 'drag', 'fruit', 'droplet'],
  example: { distance_m: 0.6, speed_m_per_s: 4.5, angle_deg: 30, diameter_m: 0.025, density_kg_per_m3: 950 },
});
