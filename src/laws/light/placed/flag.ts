/**
 * A flag: a flat rectangle that lets no light through, from either side, and gives none back. Its width edge is level;
 * one that faces straight up or down has its width along x.
 */
import { panelCorners, type Vec3 } from '../area/polygon.ts';
import { acrossAxis } from './axes.ts';

export interface FlagGiven {
  readonly centre: Vec3;
  /** The way it is square to; need not be of length 1, and its opposite is the same flag. */
  readonly facing: Vec3;
  readonly width_m: number;
  readonly height_m: number;
}

/** A flag ready to be asked. */
export interface Flag {
  readonly centre: Vec3;
  /** Unit vectors: square to it, along its width, along its height. */
  readonly facing: Vec3;
  readonly right: Vec3;
  readonly up: Vec3;
  readonly halfWidth_m: number;
  readonly halfHeight_m: number;
  /** From its middle to a corner. */
  readonly radius_m: number;
  /** Counter-clockwise for whoever it faces, x, y, z after one another, metres. */
  readonly corners: Float64Array;
}

/** A flag where it stands. Throws RangeError for a size that is not positive, or a facing that points nowhere. */
export function flagAt({ centre, facing, width_m, height_m }: FlagGiven): Flag {
  const corners = panelCorners({ centre, facing, width_m, height_m });
  const length = Math.hypot(...facing);
  const unit: Vec3 = [facing[0] / length, facing[1] / length, facing[2] / length];
  return {
    centre,
    facing: unit,
    ...acrossAxis(unit),
    halfWidth_m: width_m / 2,
    halfHeight_m: height_m / 2,
    radius_m: Math.hypot(width_m, height_m) / 2,
    corners,
  };
}

/**
 * Whether a flag stands between two points (p and q). One that is met edge on, or that either point lies on, hides
 * neither from the other. Checks nothing.
 */
export function hides(flag: Flag, px: number, py: number, pz: number, qx: number, qy: number, qz: number): boolean {
  const { centre, facing, right, up, halfWidth_m, halfHeight_m } = flag;
  const ax = px - centre[0];
  const ay = py - centre[1];
  const az = pz - centre[2];
  const bx = qx - centre[0];
  const by = qy - centre[1];
  const bz = qz - centre[2];
  const a = ax * facing[0] + ay * facing[1] + az * facing[2];
  const b = bx * facing[0] + by * facing[1] + bz * facing[2];
  if (!(a * b < 0)) return false;
  const t = a / (a - b);
  const x = ax + t * (bx - ax);
  const y = ay + t * (by - ay);
  const z = az + t * (bz - az);
  return (
    Math.abs(x * right[0] + y * right[1] + z * right[2]) <= halfWidth_m &&
    Math.abs(x * up[0] + y * up[1] + z * up[2]) <= halfHeight_m
  );
}

/** Whether any flag stands between two points. Checks nothing. */
export function isHidden(
  flags: readonly Flag[],
  px: number,
  py: number,
  pz: number,
  qx: number,
  qy: number,
  qz: number,
): boolean {
  for (let i = 0; i < flags.length; i += 1) if (hides(flags[i]!, px, py, pz, qx, qy, qz)) return true;
  return false;
}
