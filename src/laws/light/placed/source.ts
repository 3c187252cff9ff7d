/**
 * A lamp where it stands: what it gives to a point of a surface that faces some way, and how bright it looks from there.
 *
 *     E = I(C, γ) · max(0, n·l) / d²        for a lamp taken for a point
 *     E = π · L · F                          for a face that glows evenly
 *
 * I intensity towards the point, cd        d distance, m        n unit normal of the surface        l unit vector to the lamp
 * L luminance of the face, cd/m²        F configuration factor of the face
 *
 * Lamps add. Only flags and a lamp's own doors stand between; no light comes back from them, walls, tables or the subject.
 *
 * @source photometric-distance the law for a point
 * @source polygon-contour the factor of a face
 */
import { polygonFactor, type Vec3 } from '../area/polygon.ts';
import { lobeExponent } from '../lamp/lobe.ts';
import type { Grid } from '../photometry/photometry.ts';
import { factorPast } from './behindFlags.ts';
import { passesDoors, type Door } from './doors.ts';
import { isHidden, type Flag } from './flag.ts';
import { lookedUp_cd, lookupOf } from './gridLookup.ts';

export { acrossAxis, towards } from './axes.ts';

/** What stands in the way of a lamp's light; left out, nothing does. */
interface Shaded {
  readonly flags?: readonly Flag[];
}

/** A lamp taken for a point may have doors too. */
interface PointShaded extends Shaded {
  readonly doors?: readonly Door[];
}

/** Known by its intensity and angles: round about its axis. */
export interface BeamSource extends PointShaded {
  readonly kind: 'beam';
  readonly at: Vec3;
  /** Unit vector along its beam. */
  readonly axis: Vec3;
  readonly intensity_cd: number;
  readonly beamAngle_deg: number;
  readonly exponent: number;
}

/** Known by its measured file, whose γ 0 lies along the axis. */
export interface GridSource extends PointShaded {
  readonly kind: 'grid';
  readonly at: Vec3;
  readonly axis: Vec3;
  /** Unit vectors across the axis that C 0 and C 90 point along. */
  readonly c0: Vec3;
  readonly c90: Vec3;
  readonly grid: Grid;
  /** What is left of the file's candela by level, filters and calibration. */
  readonly share: number;
}

/** A face that glows evenly and mattely over all of it. */
export interface FaceSource extends Shaded {
  readonly kind: 'face';
  readonly at: Vec3;
  readonly axis: Vec3;
  /** Counter-clockwise seen from where it shines, x, y, z after one another, metres. */
  readonly corners: Float64Array;
  readonly luminance_cd_per_m2: number;
}

export type LightSource = BeamSource | GridSource | FaceSource;

const DEGREES_per_rad = 180 / Math.PI;

/** The same lamp with all that stands in its way taken out. */
export function unshaded(source: LightSource): LightSource {
  if (source.kind === 'face') {
    const { flags: _flags, ...bare } = source;
    return bare;
  }
  const { flags: _flags, doors: _doors, ...bare } = source;
  return bare;
}

/** The same lamp with its light multiplied. */
export function scaledSource(source: LightSource, factor: number): LightSource {
  switch (source.kind) {
    case 'beam':
      return { ...source, intensity_cd: source.intensity_cd * factor };
    case 'face':
      return { ...source, luminance_cd_per_m2: source.luminance_cd_per_m2 * factor };
    case 'grid':
      return { ...source, share: source.share * factor };
  }
}

export interface BeamGiven {
  readonly at: Vec3;
  readonly axis: Vec3;
  readonly intensity_cd: number;
  readonly beamAngle_deg: number;
  readonly fieldAngle_deg: number;
}

/** A beam ready to be worked with. Throws RangeError unless the field is wider than the beam. */
export function beamSource({ fieldAngle_deg, ...given }: BeamGiven): BeamSource {
  const exponent = lobeExponent({ beamAngle_deg: given.beamAngle_deg, fieldAngle_deg });
  return { kind: 'beam', ...given, exponent };
}

/**
 * Illuminance of a source at a point (p) of a surface (unit normal n), in lux; 0 behind the surface or behind the lamp.
 * Checks nothing: made to be called many times.
 */
export function lightAt_lx(
  source: LightSource,
  px: number,
  py: number,
  pz: number,
  nx: number,
  ny: number,
  nz: number,
): number {
  const { at, axis, flags } = source;
  if (source.kind === 'face')
    return Math.PI * source.luminance_cd_per_m2 * (flags ? factorPast(source, flags, px, py, pz, nx, ny, nz) : Math.max(0, polygonFactor(source.corners, px, py, pz, nx, ny, nz))); // prettier-ignore
  const rx = px - at[0];
  const ry = py - at[1];
  const rz = pz - at[2];
  const square = rx * rx + ry * ry + rz * rz;
  const facing = -(rx * nx + ry * ny + rz * nz);
  if (!(facing > 0) || !(square > 0)) return 0;
  const ahead = rx * axis[0] + ry * axis[1] + rz * axis[2];
  if (source.doors && !passesDoors(source.doors, rx, ry, rz, ahead)) return 0;
  if (flags && isHidden(flags, px, py, pz, at[0], at[1], at[2])) return 0;
  const distance = Math.sqrt(square);
  const along = Math.min(1, Math.max(-1, ahead / distance));
  return (intensityOf_cd(source, rx, ry, rz, Math.acos(along) * DEGREES_per_rad) * facing) / (square * distance);
}

function intensityOf_cd(
  source: BeamSource | GridSource,
  rx: number,
  ry: number,
  rz: number,
  offAxis_deg: number,
): number {
  if (source.kind === 'beam') {
    // A lamp with a beam sends nothing behind it.
    if (offAxis_deg >= 90) return 0;
    return source.intensity_cd * Math.exp(-Math.LN2 * ((2 * offAxis_deg) / source.beamAngle_deg) ** source.exponent);
  }
  const { c0, c90, grid, share } = source;
  const right = rx * c0[0] + ry * c0[1] + rz * c0[2];
  const up = rx * c90[0] + ry * c90[1] + rz * c90[2];
  return share * lookedUp_cd(lookupOf(grid), right, up, offAxis_deg);
}

/** All sources together at a point of a surface, in lux. Checks nothing. */
export function lightOfAll_lx(sources: readonly LightSource[], point: Vec3, normal: Vec3): number {
  let sum = 0;
  for (const source of sources)
    sum += lightAt_lx(source, point[0], point[1], point[2], normal[0], normal[1], normal[2]);
  return sum;
}

/**
 * Luminance that an eye at a point sees along a direction (unit vector): that of the nearest face which shines towards it,
 * or undefined where no face lies that way, or a flag stands before it. A beam's opening is not a face: it is dazzling,
 * and not even.
 */
export function luminanceSeen_cd_per_m2(
  sources: readonly LightSource[],
  eye: Vec3,
  direction: Vec3,
): { readonly luminance_cd_per_m2: number; readonly source: FaceSource; readonly distance_m: number } | undefined {
  let nearest: { readonly source: FaceSource; readonly distance_m: number } | undefined;
  for (const source of sources) {
    if (source.kind !== 'face') continue;
    const distance_m = distanceToFace_m(source, eye, direction);
    if (distance_m !== undefined && (!nearest || distance_m < nearest.distance_m)) nearest = { source, distance_m };
  }
  return nearest && { ...nearest, luminance_cd_per_m2: nearest.source.luminance_cd_per_m2 };
}

/** How far along a ray a face is met from its bright side, where it is and nothing hides it. */
function distanceToFace_m({ at, axis, corners, flags }: FaceSource, eye: Vec3, direction: Vec3): number | undefined {
  const [ux, uy, uz] = direction;
  const facing = ux * axis[0] + uy * axis[1] + uz * axis[2];
  if (!(facing < -1e-9)) return undefined;
  const offset = (at[0] - eye[0]) * axis[0] + (at[1] - eye[1]) * axis[1] + (at[2] - eye[2]) * axis[2];
  const distance_m = offset / facing;
  if (!(distance_m > 0)) return undefined;
  const [x, y, z] = [eye[0] + distance_m * ux, eye[1] + distance_m * uy, eye[2] + distance_m * uz];
  const count = corners.length / 3;
  for (let i = 0; i < count; i += 1) {
    const [a, b] = [3 * i, 3 * ((i + 1) % count)];
    const [ex, ey, ez] = [corners[b]! - corners[a]!, corners[b + 1]! - corners[a + 1]!, corners[b + 2]! - corners[a + 2]!];
    const [qx, qy, qz] = [x - corners[a]!, y - corners[a + 1]!, z - corners[a + 2]!];
    const turn =
      (ey * qz - ez * qy) * axis[0] + (ez * qx - ex * qz) * axis[1] + (ex * qy - ey * qx) * axis[2];
    if (turn < 0) return undefined;
  }
  return flags && isHidden(flags, eye[0], eye[1], eye[2], x, y, z) ? undefined : distance_m;
} // prettier-ignore
