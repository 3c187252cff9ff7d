/** The recorded picture to scale: every crop of it, what each is sure to show, and how far the action reaches. */
import type { Crop, Picture } from '../../../plan/types.ts';

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface CropStanding {
  readonly crop: Crop;
  /** Left over on each side of the action; negative where the crop cuts it. Missing where nobody said how far it goes. */
  readonly leftAcross_m?: number;
  readonly leftUp_m?: number;
  /** `over-safe`: whole, but past what is sure to be seen. */
  readonly state: 'cut' | 'over-safe' | 'whole' | 'unknown';
}

/** What lies nearer to the edge than this is rounding. */
const TOUCHING = 1e-9;

/** How each crop stands to the action. */
export function standingsOf({ crops, reachWidth_m, reachHeight_m }: Picture): readonly CropStanding[] {
  return crops.map((crop) => {
    const sides = [
      { size_m: crop.width_m, reach_m: reachWidth_m },
      { size_m: crop.height_m, reach_m: reachHeight_m },
    ].filter((side): side is { readonly size_m: number; readonly reach_m: number } => side.reach_m !== undefined);
    const exceeds = (share: number) => sides.some(({ size_m, reach_m }) => reach_m > size_m * share * (1 + TOUCHING));
    return {
      crop,
      ...(reachWidth_m === undefined ? {} : { leftAcross_m: (crop.width_m - reachWidth_m) / 2 }),
      ...(reachHeight_m === undefined ? {} : { leftUp_m: (crop.height_m - reachHeight_m) / 2 }),
      state: sides.length === 0 ? 'unknown' : exceeds(1) ? 'cut' : exceeds(crop.safeFraction ?? 1) ? 'over-safe' : 'whole',
    };
  });
} // prettier-ignore

export interface CropDrawn {
  readonly standing: CropStanding;
  readonly box: Box;
  /** What is sure to be seen. */
  readonly safe?: Box;
  /** How far the crop may move. */
  readonly held?: Box;
  /** Height of its dimension line above the picture. */
  readonly lineY: number;
}

export interface FrameLayout {
  readonly width_px: number;
  readonly height_px: number;
  readonly scale_px_per_m: number;
  readonly centre: { readonly x: number; readonly y: number };
  readonly field: Box;
  /** In the order of the deliverables. */
  readonly crops: readonly CropDrawn[];
  /** How far the action goes; a side nobody gave is nothing wide. Cut off at the edge of the drawing. */
  readonly reach?: Box & { readonly runsOff: boolean };
  /** What every crop shows. */
  readonly common?: Box;
}

/** Room of one dimension line. */
export const LINE_px = 22;
/** Room of the ruler beneath. */
export const RULER_px = 34;
/** An action that goes farther than this, in pictures, runs off the drawing. */
const FARTHEST = 1.5;

export interface FrameRoom {
  readonly width_px: number;
  readonly mostHeight_px: number;
  /** Kept free at each side. */
  readonly edge_px: number;
}

/** Lays the drawing into a width; nothing of it lies outside. */
export function layFrame(picture: Picture, { width_px, mostHeight_px, edge_px }: FrameRoom): FrameLayout {
  const { fieldWidth_m, fieldHeight_m, reframeFraction, reachWidth_m, reachHeight_m } = picture;
  const extent = (field: number, reach = 0) => Math.max(field, Math.min(reach, FARTHEST * field));
  const across_m = extent(fieldWidth_m, reachWidth_m);
  const up_m = extent(fieldHeight_m, reachHeight_m);
  const scale = Math.min((width_px - 2 * edge_px) / across_m, mostHeight_px / up_m);
  const top = picture.crops.length * LINE_px + 8;
  const centre = { x: width_px / 2, y: top + (up_m * scale) / 2 };
  const about = (width_m: number, height_m: number): Box => ({
    x: centre.x - (width_m * scale) / 2,
    y: centre.y - (height_m * scale) / 2,
    width: width_m * scale,
    height: height_m * scale,
  });
  // The narrowest lies nearest to the picture, so that no extension line crosses another's figure.
  const order = picture.crops.map((_, i) => i).sort((a, b) => picture.crops[a]!.width_m - picture.crops[b]!.width_m);
  const crops = standingsOf(picture).map((standing, i): CropDrawn => {
    const { width_m, height_m, safeFraction } = standing.crop;
    const move = 1 / (1 - reframeFraction);
    return {
      standing,
      box: about(width_m, height_m),
      ...(safeFraction === undefined ? {} : { safe: about(width_m * safeFraction, height_m * safeFraction) }),
      ...(reframeFraction > 0 ? { held: about(width_m * move, height_m * move) } : {}),
      lineY: top - 8 - order.indexOf(i) * LINE_px - LINE_px / 2,
    };
  });
  const least = (of: (crop: Crop) => number) => Math.min(...picture.crops.map(of));
  return {
    width_px,
    height_px: top + up_m * scale + RULER_px,
    scale_px_per_m: scale,
    centre,
    field: about(fieldWidth_m, fieldHeight_m),
    crops,
    ...(reachWidth_m === undefined && reachHeight_m === undefined
      ? {}
      : {
          reach: {
            ...about(Math.min(reachWidth_m ?? 0, across_m), Math.min(reachHeight_m ?? 0, up_m)),
            runsOff: (reachWidth_m ?? 0) > across_m || (reachHeight_m ?? 0) > up_m,
          },
        }),
    ...(picture.crops.length === 0 ? {} : { common: about(least(({ width_m }) => width_m), least(({ height_m }) => height_m)) }),
  };
} // prettier-ignore
