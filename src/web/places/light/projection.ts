/** The set as it is drawn: from above, from the camera's side, or from the side of that. */
import type { Position } from '../../../document/shape.ts';
import type { Vec3 } from '../../../laws/light/area/polygon.ts';
import type { Door } from '../../../laws/light/placed/doors.ts';

export type Looking = 'above' | 'camera' | 'side';

export interface Flat {
  readonly x: number;
  readonly y: number;
}

/** The directions that run to the right and up on the page. */
export interface Projection {
  readonly looking: Looking;
  readonly across: Vec3;
  readonly up: Vec3;
}

const RADIANS_per_deg = Math.PI / 180;

/** From above, with away up the page; else as somebody stands to the camera at an azimuth. From the side the camera is at the left. */
export function projectionOf(looking: Looking, azimuth_deg: number): Projection {
  const [sin, cos] = [Math.sin(azimuth_deg * RADIANS_per_deg), Math.cos(azimuth_deg * RADIANS_per_deg)];
  switch (looking) {
    case 'above':
      return { looking, across: [1, 0, 0], up: [0, 1, 0] };
    case 'camera':
      return { looking, across: [cos, sin, 0], up: [0, 0, 1] };
    case 'side':
      return { looking, across: [-sin, cos, 0], up: [0, 0, 1] };
  }
}

const dot = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

export const flatten = ({ across, up }: Projection, point: Vec3): Flat => ({
  x: dot(across, point),
  y: dot(up, point),
});

/** The point of the drawing's plane through the subject that lies at a spot of the page. */
export const spread = ({ across, up }: Projection, { x, y }: Flat): Vec3 => [
  across[0] * x + up[0] * y,
  across[1] * x + up[1] * y,
  across[2] * x + up[2] * y,
];

/** What a movement on the page moves: along both ways from above, only up and down seen level. */
export function movement({ looking }: Projection, by: Flat): Partial<Position> {
  return looking === 'above' ? { right_m: by.x, away_m: by.y } : { up_m: by.y };
}

const turn = (o: Flat, a: Flat, b: Flat) => (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);

/** The outline about some points, counter-clockwise. */
export function outline(points: readonly Flat[]): readonly Flat[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (from: readonly Flat[]) => {
    const kept: Flat[] = [];
    for (const point of from) {
      while (kept.length > 1 && turn(kept.at(-2)!, kept.at(-1)!, point) <= 0) kept.pop();
      kept.push(point);
    }
    return kept.slice(0, -1);
  };
  return sorted.length < 3 ? sorted : [...half(sorted), ...half(sorted.reverse())];
}

export interface Cone {
  readonly at: Vec3;
  /** Unit vector along it. */
  readonly axis: Vec3;
  readonly angle_deg: number;
  readonly length_m: number;
  /** Doors that cut it. */
  readonly doors?: readonly Door[];
}

/** The part of a ring of points where a figure of each, linear over the ring, is not above nothing. */
function ringWithin(ring: readonly Vec3[], above: (point: Vec3) => number): readonly Vec3[] {
  return ring.flatMap((point, i) => {
    const before = ring.at(i - 1)!;
    const [a, b] = [above(before), above(point)];
    const t = a / (a - b);
    const met: readonly Vec3[] = a > 0 === b > 0 ? [] : [[before[0] + t * (point[0] - before[0]), before[1] + t * (point[1] - before[1]), before[2] + t * (point[2] - before[2])]];
    return b > 0 ? met : [...met, point];
  });
} // prettier-ignore

const RIM_POINTS = 24;
/** A cone wider than this is drawn as this: its rim runs off the page. */
const WIDEST_deg = 150;

/** The outline of a cone of light as it is seen, cut off at its length, and by its doors. */
export function coneOutline(projection: Projection, { at, axis, angle_deg, length_m, doors = [] }: Cone): readonly Flat[] {
  const radius_m = length_m * Math.tan((Math.min(angle_deg, WIDEST_deg) / 2) * RADIANS_per_deg);
  const side: Vec3 = Math.abs(axis[2]) > 0.9 ? [1, 0, 0] : [0, 0, 1];
  const along = dot(side, axis);
  const raw: Vec3 = [side[0] - along * axis[0], side[1] - along * axis[1], side[2] - along * axis[2]];
  const size = Math.hypot(...raw);
  const u: Vec3 = [raw[0] / size, raw[1] / size, raw[2] / size];
  const v: Vec3 = [axis[1] * u[2] - axis[2] * u[1], axis[2] * u[0] - axis[0] * u[2], axis[0] * u[1] - axis[1] * u[0]];
  const rim = Array.from({ length: RIM_POINTS }, (_, i): Vec3 => {
    const [c, s] = [radius_m * Math.cos((2 * Math.PI * i) / RIM_POINTS), radius_m * Math.sin((2 * Math.PI * i) / RIM_POINTS)];
    return [length_m * axis[0] + c * u[0] + s * v[0], length_m * axis[1] + c * u[1] + s * v[1], length_m * axis[2] + c * u[2] + s * v[2]];
  });
  const lit = doors.reduce((ring, { towards, cos, sin }) => ringWithin(ring, (point) => dot(point, towards) * cos - length_m * sin), rim as readonly Vec3[]);
  return outline([flatten(projection, at), ...lit.map(([x, y, z]) => flatten(projection, [at[0] + x, at[1] + y, at[2] + z]))]);
} // prettier-ignore

/** Corners laid one after another, as the laws keep them. */
export function cornersFlat(projection: Projection, corners: Float64Array): readonly Flat[] {
  return Array.from({ length: corners.length / 3 }, (_, i) =>
    flatten(projection, [corners[3 * i]!, corners[3 * i + 1]!, corners[3 * i + 2]!]),
  );
}
