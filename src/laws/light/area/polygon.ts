/**
 * Light from a flat, evenly bright, matte source of any straight-sided shape: a softbox, a frame of diffusion, a bounce,
 * a window. Exact at any distance, tilt and shape, and cut off at the horizon of the surface it falls on.
 *
 *     E = π·L·F        F = (1/2π) · Σ βᵢ·(Γᵢ·n)
 *
 * E illuminance, lx        L luminance, cd/m²        F configuration factor, the share of a bright half sphere that the
 * source stands for        βᵢ angle that edge i subtends, rad        Γᵢ unit normal of the plane through edge i and the
 * point        n unit normal of the surface
 *
 * Equally bright from every side and over all of it: diffusion that is thin, or close to its lamp, has a hot middle and
 * throws forward, and does more on its axis than this says. Nothing stands between, and no light comes back from walls.
 *
 * @source polygon-contour the sum over edges
 */
import { requireCount, requireNotNegative } from '../../../base/domain.ts';

export type Vec3 = readonly [x: number, y: number, z: number];

/** One edge's angle times how far its plane leans on the normal; none where the edge points at the receiver. */
function edgeTerm(
  ax: number,
  ay: number,
  az: number,
  bx: number,
  by: number,
  bz: number,
  nx: number,
  ny: number,
  nz: number,
): number {
  const cx = ay * bz - az * by;
  const cy = az * bx - ax * bz;
  const cz = ax * by - ay * bx;
  const length = Math.sqrt(cx * cx + cy * cy + cz * cz);
  if (length === 0) return 0;
  return (Math.atan2(length, ax * bx + ay * by + az * bz) * (cx * nx + cy * ny + cz * nz)) / length;
}

/**
 * Configuration factor from a point (p) on a surface (unit normal n) to a flat polygon: positive where the receiver sees
 * its front, from which the vertices run counter-clockwise, negative where it sees its back. Vertices are x, y, z after
 * one another, in metres. Allocates nothing; checks nothing.
 */
export function polygonFactor(
  vertices: Float64Array,
  px: number,
  py: number,
  pz: number,
  nx: number,
  ny: number,
  nz: number,
): number {
  const length = vertices.length;
  let ax = vertices[length - 3]! - px;
  let ay = vertices[length - 2]! - py;
  let az = vertices[length - 1]! - pz;
  let aHeight = ax * nx + ay * ny + az * nz;
  let sum = 0;
  // Where the outline sinks below the horizon and where it first came up: what lies between is closed along the horizon.
  let isDown = false;
  let isOpen = false;
  let downX = 0;
  let downY = 0;
  let downZ = 0;
  let upX = 0;
  let upY = 0;
  let upZ = 0;
  for (let i = 0; i < length; i += 3) {
    const bx = vertices[i]! - px;
    const by = vertices[i + 1]! - py;
    const bz = vertices[i + 2]! - pz;
    const bHeight = bx * nx + by * ny + bz * nz;
    if (aHeight >= 0 && bHeight >= 0) {
      sum += edgeTerm(ax, ay, az, bx, by, bz, nx, ny, nz);
    } else if (aHeight >= 0 || bHeight >= 0) {
      const t = aHeight / (aHeight - bHeight);
      const x = ax + t * (bx - ax);
      const y = ay + t * (by - ay);
      const z = az + t * (bz - az);
      if (aHeight >= 0) {
        sum += edgeTerm(ax, ay, az, x, y, z, nx, ny, nz);
        isDown = true;
        downX = x;
        downY = y;
        downZ = z;
      } else {
        if (isDown) {
          sum += edgeTerm(downX, downY, downZ, x, y, z, nx, ny, nz);
          isDown = false;
        } else {
          isOpen = true;
          upX = x;
          upY = y;
          upZ = z;
        }
        sum += edgeTerm(x, y, z, bx, by, bz, nx, ny, nz);
      }
    }
    ax = bx;
    ay = by;
    az = bz;
    aHeight = bHeight;
  }
  if (isDown && isOpen) sum += edgeTerm(downX, downY, downZ, upX, upY, upZ, nx, ny, nz);
  return sum === 0 ? 0 : -sum / (2 * Math.PI);
}

function requireVector(name: string, vector: Vec3): void {
  if (vector.length !== 3 || !vector.every(Number.isFinite))
    throw new RangeError(`${name} must be three finite numbers, got ${vector.join(', ')}`);
}

function unit(name: string, vector: Vec3): Vec3 {
  requireVector(name, vector);
  const length = Math.hypot(...vector);
  if (length === 0) throw new RangeError(`${name} must point somewhere, got 0, 0, 0`);
  return [vector[0] / length, vector[1] / length, vector[2] / length];
}

export interface PolygonGiven {
  /** Corners in order, counter-clockwise seen from the side that shines, metres. */
  readonly corners: readonly Vec3[];
  readonly luminance_cd_per_m2: number;
  readonly point: Vec3;
  /** The way the surface faces; need not be of length 1. */
  readonly normal: Vec3;
  readonly shines?: 'front' | 'both-sides';
}

/** Illuminance at one point from one polygon. Throws RangeError for fewer than three corners, or numbers without meaning. */
export function polygonIlluminance_lx({
  corners,
  luminance_cd_per_m2,
  point,
  normal,
  shines = 'front',
}: PolygonGiven): number {
  requireCount({ cornerCount: corners.length }, 3);
  requireNotNegative({ luminance_cd_per_m2 });
  for (const corner of corners) requireVector('corners', corner);
  requireVector('point', point);
  const factor = polygonFactor(Float64Array.from(corners.flat()), ...point, ...unit('normal', normal));
  return Math.PI * luminance_cd_per_m2 * (shines === 'front' ? Math.max(0, factor) : Math.abs(factor));
}

export interface PanelPlace {
  readonly centre: Vec3;
  /** The way its front faces; need not be of length 1. */
  readonly facing: Vec3;
  readonly width_m: number;
  readonly height_m: number;
  /** Turned about the way it faces, counter-clockwise as its subject sees it; 0 has its width level. */
  readonly roll_rad?: number;
}

/** Level to the right and up, for someone who looks at the panel's front; a panel that faces straight up or down takes x as right. */
function axesOf({ facing, roll_rad = 0 }: PanelPlace): { readonly right: Vec3; readonly up: Vec3 } {
  const [fx, fy, fz] = unit('facing', facing);
  const level = Math.hypot(fx, fy);
  const right: Vec3 = level < 1e-9 ? [1, 0, 0] : [-fy / level, fx / level, 0];
  const up: Vec3 = [fy * right[2] - fz * right[1], fz * right[0] - fx * right[2], fx * right[1] - fy * right[0]];
  const [c, s] = [Math.cos(roll_rad), Math.sin(roll_rad)];
  const turned = (a: Vec3, b: Vec3, p: number, q: number): Vec3 => [
    p * a[0] + q * b[0],
    p * a[1] + q * b[1],
    p * a[2] + q * b[2],
  ];
  return { right: turned(right, up, c, s), up: turned(right, up, -s, c) };
}

const around = ({ centre, width_m, height_m }: PanelPlace, right: Vec3, up: Vec3, x: number, y: number): Vec3 => [
  centre[0] + (x * width_m * right[0]) / 2 + (y * height_m * up[0]) / 2,
  centre[1] + (x * width_m * right[1]) / 2 + (y * height_m * up[1]) / 2,
  centre[2] + (x * width_m * right[2]) / 2 + (y * height_m * up[2]) / 2,
];

function requirePanel({ centre, width_m, height_m }: PanelPlace): void {
  requireVector('centre', centre);
  for (const [name, size] of Object.entries({ width_m, height_m }))
    if (!(size > 0 && size < Infinity)) throw new RangeError(`${name} must be positive and finite, got ${size}`);
}

/** Corners of a rectangular panel, for `polygonFactor`. Throws RangeError for a size that is not positive. */
export function panelCorners(panel: PanelPlace): Float64Array {
  requirePanel(panel);
  const { right, up } = axesOf(panel);
  const at = (x: number, y: number) => around(panel, right, up, x, y);
  return Float64Array.from([...at(-1, -1), ...at(1, -1), ...at(1, 1), ...at(-1, 1)]);
}

/**
 * Corners of a round or oval panel of the same area as its ellipse, for `polygonFactor`. Throws RangeError for a size
 * that is not positive or fewer than three sides.
 */
export function roundCorners({ sideCount = 32, ...panel }: PanelPlace & { readonly sideCount?: number }): Float64Array {
  requirePanel(panel);
  requireCount({ sideCount }, 3);
  const { right, up } = axesOf(panel);
  const step = (2 * Math.PI) / sideCount;
  const stretch = Math.sqrt(step / Math.sin(step));
  const corners = new Float64Array(3 * sideCount);
  for (let i = 0; i < sideCount; i += 1)
    corners.set(around(panel, right, up, stretch * Math.cos(i * step), stretch * Math.sin(i * step)), 3 * i);
  return corners;
}
