/**
 * Going round: the speed of a rim, the path of a camera on an arc, how far the arc bulges and how hard it pulls.
 *
 *     v = 2π·f·r        s = r·θ        bulge = r·(1 − cos θ/2)        a = v² / r
 *
 * v speed along the circle, m/s        f rotation, rev/s        r radius, m        s length of the arc, m
 * θ angle turned, rad in the formulas        a acceleration towards the middle, m/s²
 *
 * By geometry. The bulge is what a straight rail would lose in distance to the subject in the middle of the move.
 *
 * @source rim-exercises the speed of a rim, worked
 * @source arc-exercises the bulge of an arc and the pull of a turn, worked
 */
import { requireNotNegative, requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';

/** Speed of a point on a rotating thing. Throws RangeError for a negative rotation or a radius not positive. */
export function rimSpeed_m_per_s(given: { readonly rotation_rev_per_s: number; readonly radius_m: number }): number {
  const { rotation_rev_per_s, radius_m } = given;
  requireNotNegative({ rotation_rev_per_s });
  requirePositive({ radius_m });
  return 2 * Math.PI * rotation_rev_per_s * radius_m;
}

/** Length of an arc and how far it bulges from the straight line. Throws RangeError outside 0 to 360 degrees or for a radius not positive. */
export function arcOf(given: { readonly radius_m: number; readonly angle_deg: number }): {
  readonly arcLength_m: number;
  readonly bulge_m: number;
} {
  const { radius_m, angle_deg } = given;
  requirePositive({ radius_m });
  requireWithin(0, 360, { angle_deg });
  const angle_rad = (angle_deg * Math.PI) / 180;
  return { arcLength_m: radius_m * angle_rad, bulge_m: radius_m * (1 - Math.cos(angle_rad / 2)) };
}

/** Acceleration towards the middle of a turn. Throws RangeError for a negative speed or a radius not positive. */
export function turnAcceleration_m_per_s2(given: {
  readonly speed_m_per_s: number;
  readonly radius_m: number;
}): number {
  const { speed_m_per_s, radius_m } = given;
  requireNotNegative({ speed_m_per_s });
  requirePositive({ radius_m });
  return speed_m_per_s ** 2 / radius_m;
}

const WORDS = ['rotate', 'spin', 'orbit', 'arc', 'turntable'];

export const rimSpeed = law(rimSpeed_m_per_s, {
  id: 'rim-speed',
  title: 'Speed of a rim',
  says: 'How fast a point on something turning moves, for its blur and its frame rate.',
  equation: 'v = 2π · f · r',
  takes: { rotation_rev_per_s: 'Rotation', radius_m: 'Distance from the axis' },
  gives: { speed_m_per_s: 'Speed there' },
  holds: 'Even rotation.',
  sources: ['rim-exercises'],
  cautions: ['moving-rigs'],
  words: [...WORDS, 'rpm', 'wheel', 'blade', 'whisk'],
  example: { rotation_rev_per_s: 5, radius_m: 0.1 },
});

export const cameraArc = law(arcOf, {
  id: 'camera-arc',
  title: 'Path of an arc',
  says: 'How far a camera travels round a subject, and how far a straight rail would cut the corner.',
  equation: 's = r · θ, bulge = r · (1 − cos θ/2)',
  takes: { radius_m: 'Distance to the subject', angle_deg: 'Angle turned' },
  gives: { arcLength_m: 'Length of the path', bulge_m: 'Bulge beyond a straight line' },
  holds: 'A circle about the subject.',
  sources: ['arc-exercises'],
  cautions: ['moving-rigs'],
  words: [...WORDS, 'sagitta', 'rail', 'focus'],
  example: { radius_m: 0.6, angle_deg: 90 },
});

export const turnAcceleration = law(turnAcceleration_m_per_s2, {
  id: 'turn-acceleration',
  title: 'Pull of a turn',
  says: 'How hard going round pulls outwards on a camera, a stand or a glass on a turntable.',
  equation: 'a = v² / r',
  takes: { speed_m_per_s: 'Speed along the circle', radius_m: 'Radius' },
  gives: { acceleration_m_per_s2: 'Acceleration' },
  holds: 'Even speed; what is held must be held with its mass times this.',
  sources: ['arc-exercises'],
  cautions: ['moving-rigs'],
  words: [...WORDS, 'centrifugal', 'centripetal', 'spill'],
  example: { speed_m_per_s: 2, radius_m: 0.6 },
});
