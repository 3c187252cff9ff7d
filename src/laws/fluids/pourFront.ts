/**
 * The front of a pour on its way down: how long until it arrives, and how fast.
 *
 *     t = 2·h / (v + √(v² + 2·g·h))        speed √(v² + 2·g·h)
 *
 * t time, s        h how far it drops, m        v speed downwards at the mouth, m/s        g gravity, m/s²
 *
 * Holds for the first liquid of a compact stream of a thin liquid; a thick one hangs back, fine spray is slowed by air.
 *
 * @source throw-textbook a fall with a speed to begin with
 */
import { requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { STANDARD_GRAVITY_m_per_s2 } from '../motion/gravity.ts';

/** When and how fast the front arrives. Throws RangeError for a negative height or speed, or gravity not positive. */
export function pourFrontOf(given: {
  readonly fallHeight_m: number;
  readonly speed_m_per_s?: number;
  readonly gravity_m_per_s2?: number;
}): { readonly pourTime_s: number; readonly arrivalSpeed_m_per_s: number } {
  const { fallHeight_m, speed_m_per_s = 0, gravity_m_per_s2 = STANDARD_GRAVITY_m_per_s2 } = given;
  requireNotNegative({ fallHeight_m, speed_m_per_s });
  requirePositive({ gravity_m_per_s2 });
  const arrivalSpeed_m_per_s = Math.sqrt(speed_m_per_s ** 2 + 2 * gravity_m_per_s2 * fallHeight_m);
  const pourTime_s = fallHeight_m === 0 ? 0 : (2 * fallHeight_m) / (speed_m_per_s + arrivalSpeed_m_per_s);
  return { pourTime_s, arrivalSpeed_m_per_s };
}

export const pourFront = law(pourFrontOf, {
  id: 'pour-front',
  title: 'Front of a pour',
  says: 'How long the first liquid of a pour takes from the mouth to where it lands.',
  equation: 't = 2·h / (v + √(v² + 2·g·h))',
  takes: {
    fallHeight_m: 'How far it drops',
    speed_m_per_s: { title: 'Speed at the mouth', default: 0, note: 'downwards' },
    gravity_m_per_s2: { title: 'Gravity', default: STANDARD_GRAVITY_m_per_s2 },
  },
  gives: { pourTime_s: 'Time until it lands', arrivalSpeed_m_per_s: 'Speed on landing' },
  holds: 'Thin liquids in a compact stream. From the valve or the lip on: what it takes to get there is latency.',
  sources: ['throw-textbook'],
  words: ['pour', 'valve', 'stream', 'cue', 'lead', 'travel'],
  example: { fallHeight_m: 0.3, speed_m_per_s: 0.96 },
});
