/** Directions of a lamp or a flag: along it, and level and upright across that. */
import type { Vec3 } from '../area/polygon.ts';

/** Unit vector from one point to another. Throws RangeError where they are the same. */
export function towards(from: Vec3, to: Vec3): Vec3 {
  const [x, y, z] = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  const length = Math.hypot(x, y, z);
  if (!(length > 0)) throw new RangeError('to must be another point than from');
  return [x / length, y / length, z / length];
}

/** Level to the right and up across an axis, seen along it; an axis straight up or down has x as its right. */
export function acrossAxis([ax, ay, az]: Vec3): { readonly right: Vec3; readonly up: Vec3 } {
  const level = Math.hypot(ax, ay);
  const right: Vec3 = level < 1e-9 ? [1, 0, 0] : [ay / level, -ax / level, 0];
  const up: Vec3 = [right[1] * az - right[2] * ay, right[2] * ax - right[0] * az, right[0] * ay - right[1] * ax];
  return { right, up };
}
