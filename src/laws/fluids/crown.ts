/**
 * How fast the foot of a crown runs outwards after a drop strikes a film.
 *
 *     r = D·(2 / 3δ)^¼ · √(τ − τ0)        τ = U·t / D        δ = h / D
 *
 * r radius of the foot, m        D diameter of the drop, m        U speed at impact, m/s        t time since contact, s
 * h depth of the film, m        τ0 delay, in the same clock
 *
 * Holds for thin films, once the drop has gone in and before gravity or surface tension slows the crown: about τ from 1
 * to 20.
 *
 * @source yarin-weiss the square root of time and its factor
 */
import { requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { impactTime_s, type MovingDrop } from './impact.ts';

/** Radius of a crown's foot. Throws RangeError outside positive inputs, or for a moment before the crown begins. */
export function crownRadius_m(
  given: MovingDrop & { readonly filmDepth_m: number; readonly time_s: number; readonly delayRatio?: number },
): number {
  const { diameter_m, filmDepth_m, time_s, delayRatio = 0 } = given;
  requirePositive({ filmDepth_m, time_s });
  requireNotNegative({ delayRatio });
  const clockRatio = time_s / impactTime_s(given);
  if (clockRatio < delayRatio)
    throw new RangeError(`time_s must be at least ${delayRatio} times the time of the impact, got ${time_s}`);
  return diameter_m * ((2 * diameter_m) / (3 * filmDepth_m)) ** 0.25 * Math.sqrt(clockRatio - delayRatio);
}

export const crownRadius = law(crownRadius_m, {
  id: 'crown-radius',
  title: 'Radius of a crown',
  says: 'How far the foot of a crown has run at a moment after impact.',
  equation: 'r = D · (2 / 3δ)^¼ · √(τ − τ0), τ = U · t / D, δ = h / D',
  takes: {
    diameter_m: 'Diameter of the drop',
    speed_m_per_s: 'Speed at impact',
    filmDepth_m: 'Depth of the film',
    time_s: 'Time since contact',
    delayRatio: { title: 'Delay', as: 'ratio', default: 0, note: 'in times of the impact, D / U' },
  },
  gives: { crownRadius_m: 'Radius of the crown' },
  holds: 'Thin films, from about one to twenty times of the impact; the crown closes or falls back later.',
  sources: ['yarin-weiss'],
  cautions: ['splash-and-flying-parts'],
  words: ['splash', 'coronet', 'milk drop', 'frame'],
  example: { diameter_m: 0.004, speed_m_per_s: 3.13, filmDepth_m: 0.002, time_s: 0.02 },
});
