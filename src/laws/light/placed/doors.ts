/**
 * Barn doors of a lamp that is taken for a point: each is the edge of a half plane that begins at the lamp, so that all
 * its light on one side, beyond one angle from the axis, is cut. A real door stands before the opening and cuts softly,
 * over the angle that the opening takes up as the door's edge sees it.
 *
 *     lit where  s ≤ 0  or  s·cos θ ≤ a·sin θ
 *
 * a along the axis, s towards the side of the door, both of the ray from the lamp        θ angle of the door off the axis
 */
import type { Vec3 } from '../area/polygon.ts';

const RADIANS_per_deg = Math.PI / 180;

/** Angles from the axis beyond which light is cut, for someone who looks along it; a side left out is open. */
export interface DoorAngles {
  readonly left_deg?: number;
  readonly right_deg?: number;
  readonly top_deg?: number;
  readonly bottom_deg?: number;
}

/** One door, ready to be asked. */
export interface Door {
  /** Unit vector across the axis, towards its side. */
  readonly towards: Vec3;
  readonly cos: number;
  readonly sin: number;
}

export interface Across {
  /** Unit vectors across the axis, as `acrossAxis` gives them. */
  readonly right: Vec3;
  readonly up: Vec3;
}

const opposite = ([x, y, z]: Vec3): Vec3 => [-x, -y, -z];

/** Doors ready to be asked. Throws RangeError for an angle outside 0 to 90°. */
export function doorsOf({ right, up }: Across, { left_deg, right_deg, top_deg, bottom_deg }: DoorAngles): readonly Door[] {
  const sides = [[left_deg, opposite(right)], [right_deg, right], [top_deg, up], [bottom_deg, opposite(up)]] as const;
  return sides.flatMap(([angle_deg, towards]): readonly Door[] => {
    if (angle_deg === undefined) return [];
    if (!(angle_deg >= 0 && angle_deg <= 90)) throw new RangeError(`a door must stand from 0 to 90° off the axis, got ${angle_deg}`);
    return [{ towards, cos: Math.cos(angle_deg * RADIANS_per_deg), sin: Math.sin(angle_deg * RADIANS_per_deg) }];
  });
} // prettier-ignore

/** Whether doors let a ray (r) from the lamp through, of which so much lies along the axis. Checks nothing. */
export function passesDoors(doors: readonly Door[], rx: number, ry: number, rz: number, along: number): boolean {
  for (let i = 0; i < doors.length; i += 1) {
    const { towards, cos, sin } = doors[i]!;
    const side = rx * towards[0] + ry * towards[1] + rz * towards[2];
    if (side > 0 && side * cos > along * sin) return false;
  }
  return true;
}
