/**
 * A lamp's measured light: how many candela it sends each way, on a grid of C planes and γ angles, whatever file it was
 * read from. Plain data, so that it can be kept, compared and sent to a worker.
 *
 * γ is 0 along the lamp's axis (straight down, as it hangs in the laboratory), 90 across it, 180 behind it. C turns about
 * that axis, counterclockwise seen from behind the lamp. Between grid points the intensity is linear in γ and in C.
 */

/** Which planes the grid holds, and how the others follow from them. */
export type Symmetry =
  /** One plane, the same all round. */
  | 'rotational'
  /** C0 to C90, mirrored about both principal planes. */
  | 'quadrants'
  /** C0 to C180, mirrored about the plane C0–C180. */
  | 'about-c0'
  /** C90 to C270, mirrored about the plane C90–C270. */
  | 'about-c90'
  /** C0 to C360. */
  | 'none';

/** Something a reader of the lamp's file should know: what was odd, and what was made of it. */
export interface Notice {
  /** Stable, searchable name. */
  readonly code: string;
  readonly what: string;
  /** The line of the file concerned, from 1, where there is one. */
  readonly line?: number;
}

export type OpeningShape =
  | 'point'
  | 'rectangle'
  | 'box'
  | 'disc'
  | 'ellipse'
  | 'vertical-cylinder'
  | 'horizontal-cylinder'
  | 'vertical-disc'
  | 'sphere'
  | 'ellipsoid'
  /** Dimensions that follow no rule of the format; the largest still stands for the size. */
  | 'unlisted';

/** The part of the lamp that shines. */
export interface Opening {
  readonly shape: OpeningShape;
  readonly width_m: number;
  readonly length_m: number;
  readonly height_m: number;
}

/** A line of description, with the keyword it stood under, or an empty one. */
export interface Label {
  readonly keyword: string;
  readonly text: string;
}

/** How a lamp's output changes with its tilt, as the file lists it. Kept, not applied. */
export interface TiltTable {
  readonly lampPosition: 'vertical' | 'horizontal' | 'horizontal-tilting';
  readonly angles_deg: Float64Array;
  readonly factors: Float64Array;
}

export interface Photometry {
  readonly format: 'ies' | 'ldt';
  /** `LM-63-1986` to `LM-63-2019`, or `EULUMDAT`. */
  readonly version: string;
  readonly symmetry: Symmetry;
  /** The planes held, ascending; first and last as `symmetry` says. */
  readonly planes_deg: Float64Array;
  /** Ascending, within 0 to 180; outside them no light was measured, and none is reckoned with. */
  readonly gammas_deg: Float64Array;
  /** Plane by plane: `intensities_cd[plane * gammas_deg.length + gamma]`. */
  readonly intensities_cd: Float64Array;
  /** All the light of the grid, integrated. */
  readonly flux_lm: number;
  /** Light of the bare lamps as stated; none for absolute photometry. */
  readonly ratedFlux_lm: number | undefined;
  readonly inputPower_W: number | undefined;
  readonly opening: Opening;
  readonly tilt: TiltTable | undefined;
  readonly labels: readonly Label[];
  readonly notices: readonly Notice[];
}

/** The grid alone, as integration and interpolation need it. */
export type Grid = Pick<Photometry, 'symmetry' | 'planes_deg' | 'gammas_deg' | 'intensities_cd'>;

/** Largest dimension of the opening: five times it is where the inverse square holds to 1 %. */
export function largestDimension_m({ width_m, length_m, height_m }: Opening): number {
  return Math.max(width_m, length_m, height_m);
}
