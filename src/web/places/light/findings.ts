/** What a gaffer asks of a set-up: how even it is, how key stands to fill, what lies behind, what the meter makes of it. */
import { towardsCamera, type LampShare, type View } from '../../../plan/lighting.ts';
import type { Vec3 } from '../../../laws/light/area/polygon.ts';
import {
  lightOfAll_lx,
  luminanceSeen_cd_per_m2,
  towards,
  type FaceSource,
  type LightSource,
} from '../../../laws/light/placed/source.ts';

export interface Frame {
  readonly width_m: number;
  readonly height_m: number;
}

/** To the right and up across a picture that faces the camera. */
function pictureAxes(view: View): { readonly right: Vec3; readonly up: Vec3; readonly facing: Vec3 } {
  const facing = towardsCamera(view);
  const azimuth = (view.azimuth_deg * Math.PI) / 180;
  const right: Vec3 = [Math.cos(azimuth), Math.sin(azimuth), 0];
  const [x, y, z] = facing;
  const up: Vec3 = [y * right[2] - z * right[1], z * right[0] - x * right[2], x * right[1] - y * right[0]];
  return { right, up, facing };
}

const on = (right: Vec3, up: Vec3, across_m: number, rise_m: number): Vec3 => [
  right[0] * across_m + up[0] * rise_m,
  right[1] * across_m + up[1] * rise_m,
  right[2] * across_m + up[2] * rise_m,
];

export interface Evenness {
  readonly brightest_lx: number;
  readonly darkest_lx: number;
  /** Brightest over darkest, in stops. */
  readonly spread_stops: number;
}

/** Points each way across the frame that are held against one another. */
const EVEN_POINTS = 13;

/** How even the light is across the frame, from edge to edge, on surfaces that face one way; undefined where it is dark. */
export function evennessOf({ sources, view, facing, frame }: { readonly sources: readonly LightSource[]; readonly view: View; readonly facing: Vec3; readonly frame: Frame }): Evenness | undefined {
  const { right, up } = pictureAxes(view);
  let [darkest_lx, brightest_lx] = [Infinity, 0];
  for (let row = 0; row < EVEN_POINTS; row += 1)
    for (let column = 0; column < EVEN_POINTS; column += 1) {
      const across_m = (column / (EVEN_POINTS - 1) - 0.5) * frame.width_m;
      const rise_m = (row / (EVEN_POINTS - 1) - 0.5) * frame.height_m;
      const here_lx = lightOfAll_lx(sources, on(right, up, across_m, rise_m), facing);
      darkest_lx = Math.min(darkest_lx, here_lx);
      brightest_lx = Math.max(brightest_lx, here_lx);
    }
  if (!(brightest_lx > 0)) return undefined;
  return { brightest_lx, darkest_lx, spread_stops: Math.log2(brightest_lx / darkest_lx) };
} // prettier-ignore

export interface KeyRatio {
  readonly key: string;
  /** The strongest lamp over all the others together; Infinity where it is alone. */
  readonly ratio: number;
  readonly stops: number;
}

/** The strongest lamp against the rest; undefined where nothing lights the subject. */
export function keyRatioOf(lamps: readonly Pick<LampShare, 'id' | 'illuminance_lx'>[]): KeyRatio | undefined {
  const lit = lamps.filter(({ illuminance_lx }) => illuminance_lx > 0);
  const [key, ...rest] = [...lit].sort((a, b) => b.illuminance_lx - a.illuminance_lx);
  if (!key) return undefined;
  const fill_lx = rest.reduce((sum, { illuminance_lx }) => sum + illuminance_lx, 0);
  const ratio = fill_lx > 0 ? key.illuminance_lx / fill_lx : Infinity;
  return { key: key.id, ratio, stops: Math.log2(ratio) };
}

/** Which edges of the frame a face behind the subject does not reach. */
export type Edge = 'left' | 'right' | 'top' | 'bottom';

export interface Behind {
  readonly face: FaceSource;
  readonly luminance_cd_per_m2: number;
  /** From the front of the lens through the subject to the face. */
  readonly lensToFace_m: number;
  /** What the face must measure there to fill the frame, seen square on. */
  readonly needed: Frame;
  readonly missing: readonly Edge[];
}

export interface BehindAsk {
  readonly sources: readonly LightSource[];
  readonly view: View;
  readonly frame: Frame;
  readonly lensToSubject_m: number;
}

/** The glowing face that the camera sees behind the subject, and whether it fills the frame; undefined where there is none. */
export function behindOf({ sources, view, frame, lensToSubject_m }: BehindAsk): Behind | undefined {
  const { right, up, facing } = pictureAxes(view);
  const seen = luminanceSeen_cd_per_m2(sources, [0, 0, 0], [-facing[0], -facing[1], -facing[2]]);
  if (!seen) return undefined;
  const lens: Vec3 = [facing[0] * lensToSubject_m, facing[1] * lensToSubject_m, facing[2] * lensToSubject_m];
  const isSeen = (across: number, rise: number) => {
    const through = on(right, up, (across * frame.width_m) / 2, (rise * frame.height_m) / 2);
    return luminanceSeen_cd_per_m2([seen.source], lens, towards(lens, through)) !== undefined;
  };
  // A face is convex: where it is seen in all the corners, it is seen in between, but for what a small flag there hides.
  const edges: Readonly<Record<Edge, readonly (readonly [number, number])[]>> = {
    left: [[-1, -1], [-1, 0], [-1, 1]],
    right: [[1, -1], [1, 0], [1, 1]],
    top: [[-1, 1], [0, 1], [1, 1]],
    bottom: [[-1, -1], [0, -1], [1, -1]],
  };
  const lost = (Object.keys(edges) as Edge[]).map((edge) => ({ edge, count: edges[edge].filter(([x, y]) => !isSeen(x, y)).length }));
  const whole = lost.filter(({ edge, count }) => count === edges[edge].length);
  const part = lost.filter(({ count }) => count > 0);
  const lensToFace_m = lensToSubject_m + seen.distance_m;
  const times = lensToFace_m / lensToSubject_m;
  return {
    face: seen.source,
    luminance_cd_per_m2: seen.luminance_cd_per_m2,
    lensToFace_m,
    needed: { width_m: frame.width_m * times, height_m: frame.height_m * times },
    // Corners alone are lost to a round or tilted face; then every edge they lie on is named.
    missing: (whole.length > 0 ? whole : part).map(({ edge }) => edge),
  };
} // prettier-ignore

/** How far apart two opposite corners of a face's sides lie: its size, as it was made. */
export function sizeOf({ corners }: FaceSource): Frame | undefined {
  const side = (a: number, b: number) =>
    Math.hypot(corners[3 * a]! - corners[3 * b]!, corners[3 * a + 1]! - corners[3 * b + 1]!, corners[3 * a + 2]! - corners[3 * b + 2]!);
  if (corners.length === 12) return { width_m: side(0, 1), height_m: side(1, 2) };
  const across_m = side(0, corners.length / 6);
  return Number.isInteger(corners.length / 6) ? { width_m: across_m, height_m: across_m } : undefined;
} // prettier-ignore

/** The angle within which a beam gives at least a tenth of its middle. */
export function fieldOf_deg({ beamAngle_deg, exponent }: { readonly beamAngle_deg: number; readonly exponent: number }): number {
  return beamAngle_deg * Math.log2(10) ** (1 / exponent);
} // prettier-ignore
