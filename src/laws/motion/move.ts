/**
 * A move of a rail, a slider or a robot from rest to rest: even acceleration, even speed, even braking.
 *
 *     long enough     t = D/v + v/a              where D ≥ v²/a
 *     too short       t = 2·√(D/a), peak √(D·a)  the top speed is never reached
 *
 * t time, s        D distance, m        v top speed, m/s        a acceleration and braking, m/s²
 *
 * Leaves out the rounding of the corners that real controllers add, which makes every move a little longer.
 *
 * @source move-profiles both profiles
 */
import { requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

/** How long a move takes and how fast it gets. Throws RangeError outside positive inputs. */
export function moveOf(given: {
  readonly distance_m: number;
  readonly topSpeed_m_per_s: number;
  readonly acceleration_m_per_s2: number;
}): { readonly moveTime_s: number; readonly peakSpeed_m_per_s: number } {
  const { distance_m, topSpeed_m_per_s, acceleration_m_per_s2 } = given;
  requirePositive({ distance_m, topSpeed_m_per_s, acceleration_m_per_s2 });
  if (distance_m * acceleration_m_per_s2 < topSpeed_m_per_s ** 2)
    return {
      moveTime_s: 2 * Math.sqrt(distance_m / acceleration_m_per_s2),
      peakSpeed_m_per_s: Math.sqrt(distance_m * acceleration_m_per_s2),
    };
  return {
    moveTime_s: distance_m / topSpeed_m_per_s + topSpeed_m_per_s / acceleration_m_per_s2,
    peakSpeed_m_per_s: topSpeed_m_per_s,
  };
}

export const railMove = law(moveOf, {
  id: 'rail-move',
  title: 'Move of a rail or robot',
  says: 'How long a move from rest to rest takes, and how fast it gets.',
  equation: 't = D/v + v/a, or 2 · √(D/a) where D < v²/a',
  takes: {
    distance_m: 'Distance',
    topSpeed_m_per_s: 'Top speed',
    acceleration_m_per_s2: 'Acceleration and braking',
  },
  gives: { moveTime_s: 'Time of the move', peakSpeed_m_per_s: 'Fastest' },
  holds:
    'Even acceleration; controllers that round the corners take longer. Use the speed of the camera, not the joints.',
  sources: ['move-profiles'],
  cautions: ['moving-rigs'],
  words: ['motion control', 'slider', 'dolly', 'robot', 'arm', 'trapezoid'],
  example: { distance_m: 0.8, topSpeed_m_per_s: 2, acceleration_m_per_s2: 10 },
});
