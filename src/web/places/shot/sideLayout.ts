/** The set from the side, to scale: the front of the lens, the subject, what flies between them, and how deep it is sharp. */

export interface SideFigures {
  readonly workingDistance_m: number;
  readonly sharpNear_m?: number;
  /** Missing beside a near side: sharp without end. */
  readonly sharpFar_m?: number;
  readonly depthWanted_m?: number;
  readonly clearanceWanted_m?: number;
  readonly reachTowardsLens_m?: number;
}

export type Span = readonly [from: number, to: number];

export interface SideLayout {
  readonly lensFront: number;
  readonly subject: number;
  /** Where the axis is broken, and the scale with it. */
  readonly broken?: Span;
  readonly clearance?: Span;
  readonly reach?: Span;
  readonly sharp?: Span;
  /** The sharp slice once more, larger. */
  readonly enlarged?: {
    readonly times: number;
    readonly from_m: number;
    readonly to_m: number;
    readonly edges: Span;
    readonly subject: number;
    readonly sharp: Span;
    readonly wanted?: Span;
  };
  /** The far side runs off the drawing. */
  readonly runsOff: boolean;
}

export interface SideRoom {
  readonly width_px: number;
  /** Room of the lens at the left. */
  readonly lens_px: number;
}

/** Room of the break in the axis. */
const BREAK_px = 34;
/** Where the lens stands this many times farther off than anything else reaches, the axis is broken. */
const BROKEN_FROM = 2.5;
/** A sharp slice of less than this share of the drawing is drawn once more, larger. */
const LARGE_ENOUGH = 0.3;

const most = (...sizes: readonly (number | undefined)[]) => Math.max(0, ...sizes.map((size) => size ?? 0));

/** Lays the drawing into a width. Distances towards the lens run to the left. */
export function laySide(figures: SideFigures, { width_px, lens_px }: SideRoom): SideLayout {
  const { workingDistance_m, sharpNear_m, sharpFar_m, depthWanted_m, clearanceWanted_m, reachTowardsLens_m } = figures;
  const near_m = most(sharpNear_m);
  const isEndless = sharpNear_m !== undefined && sharpFar_m === undefined;
  const wanted_m = most(clearanceWanted_m, reachTowardsLens_m, 2 * near_m, depthWanted_m);
  const isBroken = wanted_m > 0 && workingDistance_m > BROKEN_FROM * wanted_m;
  const left_m = isBroken ? wanted_m * 1.2 : most(workingDistance_m, clearanceWanted_m, reachTowardsLens_m);
  const right_m = Math.min(most(sharpFar_m === undefined ? near_m * 2 : sharpFar_m * 1.15, left_m * 0.16), left_m * 0.6);
  const from = isBroken ? lens_px + BREAK_px : lens_px;
  const scale = (width_px - from) / (left_m + right_m);
  const subject = from + left_m * scale;
  const lensFront = isBroken ? lens_px : subject - workingDistance_m * scale;
  const towards = (length_m: number) => Math.max(subject - length_m * scale, 0);
  const behind = (length_m: number) => Math.min(subject + length_m * scale, width_px);
  const far_m = isEndless ? Infinity : most(sharpFar_m);
  const sharp = sharpNear_m === undefined ? undefined : ([towards(near_m), behind(far_m)] as const);
  return {
    lensFront,
    subject,
    ...(isBroken ? { broken: [lens_px, from] as const } : {}),
    ...(clearanceWanted_m === undefined ? {} : { clearance: [towards(clearanceWanted_m), subject] as const }),
    ...(reachTowardsLens_m === undefined ? {} : { reach: [towards(reachTowardsLens_m), subject] as const }),
    ...(sharp ? { sharp } : {}),
    ...(sharp && !isEndless && sharp[1] - sharp[0] < LARGE_ENOUGH * width_px ? { enlarged: enlarge({ near_m, far_m, depthWanted_m, width_px, scale }) } : {}),
    runsOff: sharp !== undefined && (isEndless || subject + far_m * scale > width_px),
  };
} // prettier-ignore

interface Slice {
  readonly near_m: number;
  readonly far_m: number;
  readonly depthWanted_m: number | undefined;
  readonly width_px: number;
  readonly scale: number;
}

/** The slice over most of the width; the depth wanted lies about the subject as the sharp depth does. */
function enlarge({ near_m, far_m, depthWanted_m, width_px, scale }: Slice): NonNullable<SideLayout['enlarged']> {
  const depth_m = near_m + far_m;
  const nearShare = near_m / depth_m;
  const whole_m = 1.25 * most(depth_m, depthWanted_m);
  const from_m = -whole_m * nearShare;
  const to_m = whole_m * (1 - nearShare);
  const edges = [width_px * 0.04, width_px * 0.96] as const;
  const larger = (edges[1] - edges[0]) / whole_m;
  const at = (along_m: number) => edges[0] + (along_m - from_m) * larger;
  return {
    times: larger / scale,
    from_m,
    to_m,
    edges,
    subject: at(0),
    sharp: [at(-near_m), at(far_m)],
    ...(depthWanted_m === undefined
      ? {}
      : { wanted: [at(-depthWanted_m * nearShare), at(depthWanted_m * (1 - nearShare))] as const }),
  };
}
