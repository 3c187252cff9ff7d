/**
 * How bright the lamps of a set-up are to look into, and from what distance a published limit lets an eye do so: an alert
 * to those who dress the product and aim the lamps, not an assessment, which takes the maker's report and a qualified
 * person.
 *
 * A face is as bright as stated; a lens or a measured lamp as its greatest intensity over its opening, as if that glowed
 * evenly. Whoever works at the subject stands as far from a lamp as the subject does.
 */
import type { Shoot } from '../document/schema.ts';
import {
  blueLightDistance_m,
  blueLightTime_s,
  blueRadiance_W_per_m2_sr,
  BLUEST_lm_per_W,
  infraredEyeLimit_W_per_m2,
  infraredEyeTime_s,
  irradianceDistance_m,
} from '../laws/heat/eye.ts';
import { infraredOfLamp_W_per_m2 } from '../laws/heat/irradiance.ts';
import { peakOf } from '../laws/light/photometry/intensity.ts';
import type { Grid, Opening } from '../laws/light/photometry/photometry.ts';
import { lightAt_lx, towards, unshaded, type LightSource } from '../laws/light/placed/source.ts';
import { heatKindOf } from './heat.ts';
import type { LampShare } from './lighting.ts';
import { photometryOf } from './photometry.ts';

/** Seconds of a day that an eye rests on one lamp, summed: what the lowest class of lamps is reckoned with. @source lamp-safety-standard */
export const LOOK_s = 100;

/** Nearest distance from which lamps are judged. @source lamp-safety-standard */
export const NEAREST_LOOK_m = 0.2;

/** Lumens beside each watt weighted for blue light where the light is warm. @source blue-light-practice */
const WARM_lm_per_W = 3000;
/** Light of this colour or below counts as warm. */
const WARM_K = 3500;

/** One burning lamp as an eye at the subject meets it. */
export interface Glare {
  readonly id: string;
  readonly title: string;
  /** Lamp of the kit. */
  readonly lamp: string;
  readonly luminance_cd_per_m2: number;
  /** Of a round opening as large. */
  readonly diameter_m: number;
  readonly blueEfficacy_lm_per_W: number;
  /** Infrared on an eye at the subject that faces it, at its most. */
  readonly infrared_W_per_m2: number;
  /** From the subject to its front. */
  readonly distance_m: number;
  /** Time of a day that the published limits let an eye at the subject rest on it. */
  readonly lookTime_s: number;
  /** Distances from which each lets it for `LOOK_s`, never nearer than lamps are judged from; and the larger of them. */
  readonly blueDistance_m: number;
  readonly infraredDistance_m: number;
  readonly eyeDistance_m: number;
}

const asksFor = (of: 'blueDistance_m' | 'infraredDistance_m' | 'eyeDistance_m') => (glare: Glare) =>
  glare[of] / glare.distance_m;

const peaks = new WeakMap<Grid, number>();

/** Greatest intensity of a lamp taken for a point, worked out once for a measured one. */
function peak_cd(source: Exclude<LightSource, { kind: 'face' }>): number {
  if (source.kind === 'beam') return source.intensity_cd;
  let peak = peaks.get(source.grid);
  if (peak === undefined) peaks.set(source.grid, (peak = peakOf(source.grid).intensity_cd));
  return peak * source.share;
}

/** Area of an opening as its file lists it, square metres; undefined for a point. */
function areaOf_m2({ shape, width_m, length_m }: Opening): number | undefined {
  const [across, along] = [width_m, length_m > 0 ? length_m : width_m];
  if (!(across > 0)) return undefined;
  return shape === 'disc' || shape === 'ellipse' || shape === 'sphere' ? (Math.PI / 4) * across * along : across * along;
} // prettier-ignore

/** Area of what glows, square metres; undefined where nobody wrote it. */
function glowingArea_m2(shoot: Shoot, lampId: string): number | undefined {
  const lamp = shoot.kit.lamps[lampId];
  const { faceWidth_m: width_m, faceHeight_m: height_m } = lamp?.face ?? {};
  if (width_m !== undefined) return height_m === undefined ? (Math.PI / 4) * width_m ** 2 : width_m * height_m;
  const file = lamp?.file === undefined ? undefined : shoot.files[lamp.file];
  const grid = photometryOf(shoot)?.get(file?.sha256 ?? '');
  return grid && areaOf_m2(grid.opening);
}

/** Whether any lamp of a set-up that burns says how large what glows is: then it can be told how bright it looks. */
export function hasGlare(shoot: Shoot, setupId: string | undefined): boolean {
  const lamps = setupId === undefined ? undefined : shoot.lighting[setupId]?.lamps;
  return Object.values(lamps ?? {}).some(({ lamp, isOff, at }) => isOff !== true && at !== undefined && lamp !== undefined && glowingArea_m2(shoot, lamp) !== undefined);
} // prettier-ignore

/** How bright every lamp that can be told about is to look into, brightest for the eye first. */
export function glareOf(shoot: Shoot, setupId: string, lamps: readonly LampShare[]): readonly Glare[] {
  return lamps
    .flatMap((lamp): readonly Glare[] => {
      const glare = glareOfLamp(shoot, setupId, lamp);
      return glare ? [glare] : [];
    })
    .sort((a, b) => asksFor('eyeDistance_m')(b) - asksFor('eyeDistance_m')(a));
}

function glareOfLamp(shoot: Shoot, setupId: string, { id, title, lamp, isOff, source, distance_m }: LampShare): Glare | undefined {
  const area_m2 = lamp === undefined ? undefined : glowingArea_m2(shoot, lamp);
  if (isOff || !source || lamp === undefined || area_m2 === undefined || !(distance_m > 0)) return undefined;
  const of = shoot.kit.lamps[lamp]!;
  const luminance_cd_per_m2 = source.kind === 'face' ? source.luminance_cd_per_m2 : peak_cd(source) / area_m2;
  const diameter_m = 2 * Math.sqrt(area_m2 / Math.PI);
  const colour_K = shoot.lighting[setupId]?.lamps[id]?.colourTemperature_K ?? of.colourTemperature_K;
  const isWarm = of.kind === 'tungsten' || (colour_K !== undefined && colour_K <= WARM_K);
  const blueEfficacy_lm_per_W = isWarm ? WARM_lm_per_W : BLUEST_lm_per_W;
  // An eye may move out of the shadow of a flag or a door.
  const atSubject_lx = lightAt_lx(unshaded(source), 0, 0, 0, ...towards([0, 0, 0], source.at));
  const infrared_W_per_m2 = infraredOfLamp_W_per_m2({ illuminance_lx: atSubject_lx, lamp: heatKindOf(of.kind) });
  const blueRadiance = blueRadiance_W_per_m2_sr({ luminance_cd_per_m2, blueEfficacy_lm_per_W });
  const blue_m = blueLightDistance_m({ blueRadiance_W_per_m2_sr: blueRadiance, sourceDiameter_m: diameter_m, time_s: LOOK_s });
  const limit_W_per_m2 = infraredEyeLimit_W_per_m2({ time_s: LOOK_s });
  const infrared_m = irradianceDistance_m({ irradiance_W_per_m2: infrared_W_per_m2, measuredAt_m: distance_m, limit_W_per_m2 });
  return {
    id, title, lamp, luminance_cd_per_m2, diameter_m, blueEfficacy_lm_per_W, infrared_W_per_m2, distance_m,
    lookTime_s: Math.min(blueLightTime_s({ blueRadiance_W_per_m2_sr: blueRadiance }), infraredEyeTime_s({ infrared_W_per_m2 })),
    blueDistance_m: Math.max(blue_m, NEAREST_LOOK_m),
    infraredDistance_m: Math.max(infrared_m, NEAREST_LOOK_m),
    eyeDistance_m: Math.max(blue_m, infrared_m, NEAREST_LOOK_m),
  };
} // prettier-ignore

/** The lamp that asks for most by each limit apart; undefined where none can be told about. */
export function worstGlare(glares: readonly Glare[]): { readonly blue: Glare; readonly hot: Glare } | undefined {
  if (glares.length === 0) return undefined;
  const most = (of: (glare: Glare) => number) => glares.reduce((a, b) => (of(b) > of(a) ? b : a));
  return { blue: most(asksFor('blueDistance_m')), hot: most(asksFor('infraredDistance_m')) };
}
