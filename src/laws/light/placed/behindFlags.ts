/**
 * How much of a glowing face is seen past flags: exact for any number of them, however they overlap.
 *
 *     F = Σ F(piece)        pieces = face \ C₁ \ C₂ …
 *
 * F configuration factor        Cₖ all that flag k hides from the point: the cone from the point over the flag's outline
 *
 * The side planes of a cone go through the point, so the face is cut where it stands, with nothing projected and nothing
 * infinite. What lies beyond one side plane and within all those before it is one piece; the rest within all of them is
 * hidden. Pieces of a convex face are convex, none overlaps another, and what two flags hide is taken away once. A flag
 * that reaches through the plane of the face hides with what is before that plane.
 *
 * @source polygon-contour the factor of each piece
 * @source polygon-clipping a convex shape cut by one plane after another
 */
import { polygonFactor, type Vec3 } from '../area/polygon.ts';
import type { Flag } from './flag.ts';

/** A flag seen so nearly edge on that its cone is thinner than this share of the distance hides nothing. */
const EDGE_ON = 1e-12;

export interface Glowing {
  readonly at: Vec3;
  /** Unit vector the way it shines. */
  readonly axis: Vec3;
  readonly corners: Float64Array;
}

let heightsNow = new Float64Array(64);

/** How far each corner of a shape stands on one side of a plane through a point; held until the next shape is asked for. */
function heightsOf(shape: Float64Array, px: number, py: number, pz: number, nx: number, ny: number, nz: number, side: 1 | -1): Float64Array {
  if (shape.length > 3 * heightsNow.length) heightsNow = new Float64Array(shape.length);
  for (let i = 0; i < shape.length; i += 3) heightsNow[i / 3] = side * ((shape[i]! - px) * nx + (shape[i + 1]! - py) * ny + (shape[i + 2]! - pz) * nz);
  return heightsNow;
} // prettier-ignore

/**
 * The part of a convex shape where a plane through a point (normal n) has it: on the side the normal points to, or on the
 * other. The very same shape where all of it is there; undefined where nothing is.
 */
function cut(
  shape: Float64Array,
  px: number,
  py: number,
  pz: number,
  nx: number,
  ny: number,
  nz: number,
  side: 1 | -1,
): Float64Array | undefined {
  const heights = heightsOf(shape, px, py, pz, nx, ny, nz, side);
  const corners = shape.length / 3;
  let inside = 0;
  let crossings = 0;
  for (let i = 0; i < corners; i += 1) {
    const isIn = heights[i]! > 0;
    if (isIn) inside += 1;
    if (isIn !== heights[i === 0 ? corners - 1 : i - 1]! > 0) crossings += 1;
  }
  if (inside === corners) return shape;
  if (inside === 0) return undefined;
  const kept = new Float64Array(3 * (inside + crossings));
  let length = 0;
  let before = shape.length - 3;
  let beforeHeight = heights[before / 3]!;
  for (let i = 0; i < shape.length; i += 3) {
    const height = heights[i / 3]!;
    if (height > 0 !== beforeHeight > 0) {
      const t = beforeHeight / (beforeHeight - height);
      kept[length] = shape[before]! + t * (shape[i]! - shape[before]!);
      kept[length + 1] = shape[before + 1]! + t * (shape[i + 1]! - shape[before + 1]!);
      kept[length + 2] = shape[before + 2]! + t * (shape[i + 2]! - shape[before + 2]!);
      length += 3;
    }
    if (height > 0) {
      kept[length] = shape[i]!;
      kept[length + 1] = shape[i + 1]!;
      kept[length + 2] = shape[i + 2]!;
      length += 3;
    }
    before = i;
    beforeHeight = height;
  }
  return kept;
}

/** Whether a flag is too far from all that lies between a point and a face to hide any of it; cheap, and never wrong in saying so. */
function isAside({ centre, radius_m }: Flag, { at }: Glowing, faceRadius_m: number, px: number, py: number, pz: number): boolean {
  const dx = at[0] - px;
  const dy = at[1] - py;
  const dz = at[2] - pz;
  const cx = centre[0] - px;
  const cy = centre[1] - py;
  const cz = centre[2] - pz;
  const square = dx * dx + dy * dy + dz * dz;
  const share = square > 0 ? Math.min(1, Math.max(0, (cx * dx + cy * dy + cz * dz) / square)) : 0;
  const x = cx - share * dx;
  const y = cy - share * dy;
  const z = cz - share * dz;
  const reach = radius_m + faceRadius_m;
  return x * x + y * y + z * z > reach * reach;
} // prettier-ignore

const radii = new WeakMap<Float64Array, number>();

/** From a face's middle to its farthest corner. */
function radiusOf_m({ at, corners }: Glowing): number {
  let radius_m = radii.get(corners);
  if (radius_m === undefined) {
    radius_m = 0;
    for (let i = 0; i < corners.length; i += 3)
      radius_m = Math.max(radius_m, Math.hypot(corners[i]! - at[0], corners[i + 1]! - at[1], corners[i + 2]! - at[2]));
    radii.set(corners, radius_m);
  }
  return radius_m;
}

/** Side planes of the cone that is worked with now, each by its normal; an outline has at most five corners. */
const normals = new Float64Array(3 * 8);

/** Side planes of the cone from a point over an outline, pointing inwards; how many there are. */
function coneOver(outline: Float64Array, inward: 1 | -1, px: number, py: number, pz: number): number {
  const count = outline.length;
  for (let i = 0; i < count; i += 3) {
    const j = (i + 3) % count;
    const ax = outline[i]! - px;
    const ay = outline[i + 1]! - py;
    const az = outline[i + 2]! - pz;
    const bx = outline[j]! - px;
    const by = outline[j + 1]! - py;
    const bz = outline[j + 2]! - pz;
    normals[i] = inward * (ay * bz - az * by);
    normals[i + 1] = inward * (az * bx - ax * bz);
    normals[i + 2] = inward * (ax * by - ay * bx);
  }
  return count;
}

/** Whether all of a shape lies outside one side plane of the cone: most flags are aside of most light, and then cut nothing. */
function isOutside(shape: Float64Array, planes: number, px: number, py: number, pz: number): boolean {
  for (let of = 0; of < planes; of += 3) {
    let isAllOut = true;
    for (let i = 0; i < shape.length && isAllOut; i += 3)
      isAllOut = (shape[i]! - px) * normals[of]! + (shape[i + 1]! - py) * normals[of + 1]! + (shape[i + 2]! - pz) * normals[of + 2]! <= 0;
    if (isAllOut) return true;
  }
  return false;
} // prettier-ignore

/** What the cone leaves of a convex piece of a face, in pieces; the very same piece where it hides nothing of it. */
function past(piece: Float64Array, planes: number, px: number, py: number, pz: number): readonly Float64Array[] {
  if (isOutside(piece, planes, px, py, pz)) return [piece];
  const left: Float64Array[] = [];
  let within = piece;
  for (let of = 0; of < planes; of += 3) {
    const [nx, ny, nz] = [normals[of]!, normals[of + 1]!, normals[of + 2]!];
    const inside = cut(within, px, py, pz, nx, ny, nz, 1);
    if (!inside) return [piece];
    if (inside === within) continue;
    const outside = cut(within, px, py, pz, nx, ny, nz, -1);
    if (outside) left.push(outside);
    within = inside;
  }
  return left;
}

/**
 * Configuration factor from a point (p) on a surface (unit normal n) to what it sees of a face past flags: never below
 * nothing, never above that of the whole face. Checks nothing.
 */
export function factorPast(
  face: Glowing,
  flags: readonly Flag[],
  px: number,
  py: number,
  pz: number,
  nx: number,
  ny: number,
  nz: number,
): number {
  const whole = Math.max(0, polygonFactor(face.corners, px, py, pz, nx, ny, nz));
  if (whole === 0) return 0;
  const radius_m = radiusOf_m(face);
  const { at, axis } = face;
  let pieces: readonly Float64Array[] = [face.corners];
  for (let i = 0; i < flags.length && pieces.length > 0; i += 1) {
    const flag = flags[i]!;
    const { centre, facing } = flag;
    const away = (centre[0] - px) * facing[0] + (centre[1] - py) * facing[1] + (centre[2] - pz) * facing[2];
    if (Math.abs(away) <= EDGE_ON * flag.radius_m || isAside(flag, face, radius_m, px, py, pz)) continue;
    // What of it stands behind the face hides nothing.
    const outline = cut(flag.corners, at[0], at[1], at[2], axis[0], axis[1], axis[2], 1);
    if (!outline) continue;
    const planes = coneOver(outline, away > 0 ? 1 : -1, px, py, pz);
    pieces =
      pieces.length === 1
        ? past(pieces[0]!, planes, px, py, pz)
        : pieces.flatMap((piece) => past(piece, planes, px, py, pz));
  }
  if (pieces.length === 1 && pieces[0] === face.corners) return whole;
  let sum = 0;
  for (const piece of pieces) sum += Math.max(0, polygonFactor(piece, px, py, pz, nx, ny, nz));
  return Math.min(whole, sum);
}
