/**
 * Falls from rest: how fast a thing arrives and how long it takes.
 *
 *     no air            v = √(2·g·h)                          t = √(2·h / g)
 *     steady drag       v = vt·√(1 − e^(−2·g·h / vt²))        t = (vt / g)·arcosh e^(g·h / vt²)
 *     sphere in air     dv/dt = a(v), dh/dt = v               a(v) as in sphereDrag.ts
 *
 * v speed on arrival, m/s        t time of fall, s        h height, m        g gravity, m/s²
 * vt terminal speed, m/s
 *
 * Holds from rest in still air, for heights where gravity and air are the same from top to bottom. "Steady drag" takes one
 * drag coefficient for the whole fall; it is the form to use where a terminal speed was measured.
 *
 * @source falling-with-drag the first two pairs of equations, and the value of gravity
 * @source clift-gauvin the drag of the third
 */
import { requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';
import { STANDARD_GRAVITY_m_per_s2 } from './gravity.ts';
import {
  accelerationAt,
  AIR_TAKEN,
  HIGHEST_REYNOLDS_NUMBER,
  settledSpeed_m_per_s,
  SPHERE_HOLDS,
  sphereFall,
  type SphereFall,
  type SphereInAir,
} from './sphereDrag.ts';

/** No set is so tall, and beyond it neither air nor gravity is the same from top to bottom. */
const HIGHEST_FALL_m = 1000;

export interface Fall {
  readonly fallHeight_m: number;
  readonly gravity_m_per_s2?: number;
}

/** Speed on arrival without air. Throws RangeError for a height outside 0 to 1000 m or gravity not positive. */
export function fallSpeed_m_per_s({ fallHeight_m, gravity_m_per_s2 = STANDARD_GRAVITY_m_per_s2 }: Fall): number {
  requireWithin(0, HIGHEST_FALL_m, { fallHeight_m });
  requirePositive({ gravity_m_per_s2 });
  return Math.sqrt(2 * gravity_m_per_s2 * fallHeight_m);
}

/** Time of fall without air. Throws RangeError as `fallSpeed_m_per_s` does. */
export function fallTime_s({ fallHeight_m, gravity_m_per_s2 = STANDARD_GRAVITY_m_per_s2 }: Fall): number {
  requireWithin(0, HIGHEST_FALL_m, { fallHeight_m });
  requirePositive({ gravity_m_per_s2 });
  return Math.sqrt((2 * fallHeight_m) / gravity_m_per_s2);
}

export interface TerminalFall extends Fall {
  readonly terminalSpeed_m_per_s: number;
}

/** Speed on arrival with steady drag. Throws RangeError as `fallSpeed_m_per_s` does, or for a terminal speed not positive. */
export function terminalFallSpeed_m_per_s(given: TerminalFall): number {
  const { fallHeight_m, terminalSpeed_m_per_s, gravity_m_per_s2 = STANDARD_GRAVITY_m_per_s2 } = given;
  requireWithin(0, HIGHEST_FALL_m, { fallHeight_m });
  requirePositive({ terminalSpeed_m_per_s, gravity_m_per_s2 });
  return (
    terminalSpeed_m_per_s * Math.sqrt(-Math.expm1((-2 * gravity_m_per_s2 * fallHeight_m) / terminalSpeed_m_per_s ** 2))
  );
}

/** Time of fall with steady drag. Throws RangeError as `terminalFallSpeed_m_per_s` does. */
export function terminalFallTime_s(given: TerminalFall): number {
  const { fallHeight_m, terminalSpeed_m_per_s, gravity_m_per_s2 = STANDARD_GRAVITY_m_per_s2 } = given;
  requireWithin(0, HIGHEST_FALL_m, { fallHeight_m });
  requirePositive({ terminalSpeed_m_per_s, gravity_m_per_s2 });
  const reach = (gravity_m_per_s2 * fallHeight_m) / terminalSpeed_m_per_s ** 2;
  // arcosh e^x, written so that neither a long fall overflows nor a short one loses its digits.
  return (terminalSpeed_m_per_s / gravity_m_per_s2) * (reach + Math.log1p(Math.sqrt(-Math.expm1(-2 * reach))));
}

interface Moment {
  readonly time_s: number;
  readonly speed_m_per_s: number;
  readonly fallen_m: number;
}

/** One step of the classical fourth-order Runge-Kutta method. */
function stepped(fall: SphereFall, from: Moment, step_s: number): Moment {
  const half_s = step_s / 2;
  const v1 = from.speed_m_per_s;
  const a1 = accelerationAt(fall, v1);
  const v2 = v1 + half_s * a1;
  const a2 = accelerationAt(fall, v2);
  const v3 = v1 + half_s * a2;
  const a3 = accelerationAt(fall, v3);
  const v4 = v1 + step_s * a3;
  const a4 = accelerationAt(fall, v4);
  return {
    time_s: from.time_s + step_s,
    speed_m_per_s: v1 + (step_s * (a1 + 2 * a2 + 2 * a3 + a4)) / 6,
    fallen_m: from.fallen_m + (step_s * (v1 + 2 * v2 + 2 * v3 + v4)) / 6,
  };
}

/** Steps in the shorter of the fall without air and the time drag takes to act. */
const STEPS = 64;

/** Near enough to terminal speed to reckon the rest of the fall at it. */
const SETTLED = 1 - 1e-9;

/** Stokes' drag, the slowest to settle, comes within 1e-9 in 20.7 of those times. */
const MOST_STEPS = 24 * STEPS;

/** The end of the step that lands, by Newton's method: height grows ever faster, so it closes from above. */
function landed(fall: SphereFall, before: Moment, step_s: number, fallHeight_m: number): Moment {
  let last_s = step_s;
  let at = stepped(fall, before, last_s);
  for (let i = 0; i < 20 && Math.abs(at.fallen_m - fallHeight_m) > 1e-14 * fallHeight_m; i += 1) {
    last_s -= (at.fallen_m - fallHeight_m) / at.speed_m_per_s;
    at = stepped(fall, before, last_s);
  }
  return at;
}

export interface DragFall extends SphereInAir {
  readonly fallHeight_m: number;
}

/** A sphere's arrival; its work is bounded whatever is asked. */
function arrival({ fallHeight_m, ...sphere }: DragFall): Moment {
  requireWithin(0, HIGHEST_FALL_m, { fallHeight_m });
  const fall = sphereFall(sphere);
  let now: Moment = { time_s: 0, speed_m_per_s: 0, fallen_m: 0 };
  if (fallHeight_m === 0) return now;
  const terminal_m_per_s = settledSpeed_m_per_s(fall);
  const withoutAir_s = Math.sqrt((2 * fallHeight_m) / fall.drive_m_per_s2);
  const step_s = Math.min(withoutAir_s, terminal_m_per_s / fall.drive_m_per_s2) / STEPS;
  for (let i = 0; i < MOST_STEPS && now.speed_m_per_s < SETTLED * terminal_m_per_s; i += 1) {
    const next = stepped(fall, now, step_s);
    if (next.fallen_m >= fallHeight_m) {
      now = landed(fall, now, step_s, fallHeight_m);
      break;
    }
    now = next;
  }
  const { speed_m_per_s } = now;
  requireWithin(0, HIGHEST_REYNOLDS_NUMBER, { reynoldsNumber: fall.reynoldsPerSpeed * speed_m_per_s });
  const rest_s = (fallHeight_m - now.fallen_m) / speed_m_per_s;
  return { time_s: now.time_s + rest_s, speed_m_per_s, fallen_m: fallHeight_m };
}

/**
 * Speed on arrival of a sphere dropped through air. Throws RangeError for a height outside 0 to 1000 m, a sphere outside
 * 1 µm to 1 m or not denser than air, or a Reynolds number that passes 300,000.
 */
export function dragFallSpeed_m_per_s(given: DragFall): number {
  return arrival(given).speed_m_per_s;
}

/** Time of fall of a sphere dropped through air. Throws RangeError as `dragFallSpeed_m_per_s` does. */
export function dragFallTime_s(given: DragFall): number {
  return arrival(given).time_s;
}

const HEIGHT = { fallHeight_m: 'Height of the fall' };
const GRAVITY = { gravity_m_per_s2: { title: 'Gravity', default: STANDARD_GRAVITY_m_per_s2 } };
const WITHOUT_AIR = {
  takes: { ...HEIGHT, ...GRAVITY },
  holds: 'From rest, in no air, up to 1000 m. Small or light things arrive later and slower.',
  sources: ['falling-with-drag'],
};
const STEADY = {
  takes: { ...HEIGHT, terminalSpeed_m_per_s: 'Terminal speed', ...GRAVITY },
  holds: 'From rest, one drag coefficient for the whole fall, up to 1000 m.',
  sources: ['falling-with-drag'],
};
const THROUGH_AIR = {
  takes: { ...HEIGHT, diameter_m: 'Diameter', density_kg_per_m3: 'Density', ...AIR_TAKEN },
  holds: `From rest, up to 1000 m. ${SPHERE_HOLDS}`,
  sources: ['clift-gauvin', 'falling-with-drag', 'air-20c'],
};

export const fallSpeed = law(fallSpeed_m_per_s, {
  id: 'fall-speed',
  title: 'Speed after a fall',
  says: 'How fast a thing arrives when dropped from a height, leaving air out.',
  equation: 'v = √(2 · g · h)',
  gives: { speed_m_per_s: 'Speed on arrival' },
  words: ['drop', 'splash', 'impact', 'free fall'],
  example: { fallHeight_m: 0.5 },
  ...WITHOUT_AIR,
});

export const fallTime = law(fallTime_s, {
  id: 'fall-time',
  title: 'Time of a fall',
  says: 'How long a thing takes to fall from a height, leaving air out.',
  equation: 't = √(2 · h / g)',
  gives: { fallTime_s: 'Time of the fall' },
  words: ['drop', 'free fall', 'release', 'cue', 'lead'],
  example: { fallHeight_m: 0.3 },
  ...WITHOUT_AIR,
});

export const terminalFallSpeed = law(terminalFallSpeed_m_per_s, {
  id: 'terminal-fall-speed',
  title: 'Speed after a fall, terminal speed known',
  says: 'How fast a thing arrives when its terminal speed in air is known or measured.',
  equation: 'v = vt · √(1 − e^(−2 · g · h / vt²))',
  gives: { speed_m_per_s: 'Speed on arrival' },
  words: ['drop', 'air resistance', 'drag', 'impact'],
  example: { fallHeight_m: 1, terminalSpeed_m_per_s: 8.83 },
  ...STEADY,
});

export const terminalFallTime = law(terminalFallTime_s, {
  id: 'terminal-fall-time',
  title: 'Time of a fall, terminal speed known',
  says: 'How long a fall takes when the terminal speed in air is known or measured.',
  equation: 't = (vt / g) · arcosh e^(g · h / vt²)',
  gives: { fallTime_s: 'Time of the fall' },
  words: ['drop', 'air resistance', 'drag', 'cue', 'lead'],
  example: { fallHeight_m: 1, terminalSpeed_m_per_s: 8.83 },
  ...STEADY,
});

export const dragFallSpeed = law(dragFallSpeed_m_per_s, {
  id: 'drag-fall-speed',
  title: 'Speed after a fall through air',
  says: 'How fast a ball, berry or drop arrives when air holds it back.',
  equation: 'dv/dt = g · (1 − ρa/ρ) − ¾ · Cd · ρa · v² / (ρ · d)',
  gives: { speed_m_per_s: 'Speed on arrival' },
  words: ['drop', 'droplet', 'fruit', 'air resistance', 'drag', 'impact', 'splash'],
  example: { fallHeight_m: 0.6, diameter_m: 0.004, density_kg_per_m3: 998.2 },
  ...THROUGH_AIR,
});

export const dragFallTime = law(dragFallTime_s, {
  id: 'drag-fall-time',
  title: 'Time of a fall through air',
  says: 'How long a ball, berry or drop takes to arrive when air holds it back.',
  equation: 'dh/dt = v, dv/dt = g · (1 − ρa/ρ) − ¾ · Cd · ρa · v² / (ρ · d)',
  gives: { fallTime_s: 'Time of the fall' },
  words: ['drop', 'droplet', 'fruit', 'air resistance', 'drag', 'cue', 'lead', 'release'],
  example: { fallHeight_m: 0.9, diameter_m: 0.025, density_kg_per_m3: 950 },
  ...THROUGH_AIR,
});
