/**
 * How long the exposure limits that are published let an eye or a skin be lit, and from what distance.
 *
 *     blue light, wide source    t = 10⁶/L_B to 10⁴ s, the day at or below 100 W/(m²·sr)
 *     blue light, small source   t = 100/E_B to 10⁴ s, the day at or below 0.01 W/m²
 *     retina, heat               L_R ≤ 2.8·10⁷/C beyond 10 s, 5·10⁷/(C·t^0.25) below; C = α in mrad, from 1.7 to 100
 *     front of the eye           E ≤ 18 000·t^−0.75 to 1000 s, 100 W/m² beyond
 *     skin, heat                 E·t ≤ 20 000·t^0.25 to 10 s; the dose of 10 s beyond, where the standard gives none
 *     ultraviolet                E_eff·t ≤ 30 J/m²; UVA E·t ≤ 10⁴ J/m², in eight hours
 *
 * L_B, E_B, L_R, E_eff are weighted by the standard's curves: only a measurement or the maker's report gives them. Within
 * a limit means within the limit published, for workers with healthy eyes, and no more. A reflection counts like its source.
 *
 * No time is longer than a working day of eight hours, which the limits are made for.
 *
 * @source radiation-directive the limits for workers
 * @source radiometer-manual the same limits, and skin beyond 10 s
 * @source lamp-safety-standard the same limits, and the field of view they are averaged over
 */
import { requireNotNegative, requirePositive } from '../../base/domain.ts';

/** A day's work, over which limits of dose are summed. */
const DAY_s = 8 * 3600;
/** Beyond this the limits of blue light no longer fall. */
const BLUE_LAST_s = 1e4;
const BLUE_DOSE_J_per_m2_sr = 1e6;
const BLUE_SMALL_DOSE_J_per_m2 = 100;

/** Time in the published limit of blue light, wide sources; eight hours at or below its last step. Throws RangeError for a negative radiance. */
export function blueLightTime_s({ blueRadiance_W_per_m2_sr }: { readonly blueRadiance_W_per_m2_sr: number }): number {
  requireNotNegative({ blueRadiance_W_per_m2_sr });
  const time_s = BLUE_DOSE_J_per_m2_sr / blueRadiance_W_per_m2_sr;
  return time_s >= BLUE_LAST_s ? DAY_s : time_s;
}

/** Time in the published limit of blue light, sources below 11 mrad; eight hours at or below its last step. Throws RangeError for a negative irradiance. */
export function smallBlueLightTime_s({
  blueIrradiance_W_per_m2,
}: {
  readonly blueIrradiance_W_per_m2: number;
}): number {
  requireNotNegative({ blueIrradiance_W_per_m2 });
  const time_s = BLUE_SMALL_DOSE_J_per_m2 / blueIrradiance_W_per_m2;
  return time_s >= BLUE_LAST_s ? DAY_s : time_s;
}

/** Field of view, in rad, that the eye's own movements average a source over in this time. @source lamp-safety-standard */
function averagedOver_rad(time_s: number): number {
  if (time_s <= 100) return 0.011;
  return time_s >= BLUE_LAST_s ? 0.1 : Math.min(0.1, 0.0011 * Math.sqrt(time_s));
}

/**
 * Distance from which a round source of this radiance keeps within the published limit of blue light for a time, its
 * light averaged over the field of view; 0 where it does at any distance. Throws RangeError outside positive inputs.
 */
export function blueLightDistance_m(given: {
  readonly blueRadiance_W_per_m2_sr: number;
  readonly sourceDiameter_m: number;
  readonly time_s: number;
}): number {
  const { blueRadiance_W_per_m2_sr, sourceDiameter_m, time_s } = given;
  requireNotNegative({ blueRadiance_W_per_m2_sr });
  requirePositive({ sourceDiameter_m, time_s });
  const limit_W_per_m2_sr = BLUE_DOSE_J_per_m2_sr / Math.min(time_s, BLUE_LAST_s);
  const over = blueRadiance_W_per_m2_sr / limit_W_per_m2_sr;
  return over <= 1 ? 0 : (sourceDiameter_m / averagedOver_rad(time_s)) * Math.sqrt(over);
}

/** Angle that counts for the retina, mrad. */
function countedAngle_mrad(sourceDiameter_m: number, distance_m: number): number {
  return Math.min(100, Math.max(1.7, (1000 * sourceDiameter_m) / distance_m));
}

interface Seen {
  readonly sourceDiameter_m: number;
  readonly distance_m: number;
}

/** Published limit of weighted radiance for heat on the retina. Throws RangeError outside 10 µs and above, or positive inputs. */
export function retinalHeatLimit_W_per_m2_sr({
  sourceDiameter_m,
  distance_m,
  time_s,
}: Seen & { readonly time_s: number }): number {
  requirePositive({ sourceDiameter_m, distance_m, time_s });
  if (time_s < 1e-5) throw new RangeError(`time_s must be 0.00001 or above, got ${time_s}`);
  const angle = countedAngle_mrad(sourceDiameter_m, distance_m);
  return time_s > 10 ? 2.8e7 / angle : 5e7 / (angle * time_s ** 0.25);
}

/** Time in the published limit of infrared at the front of the eye; eight hours at or below its last step. Throws RangeError for a negative irradiance. */
export function infraredEyeTime_s({ infrared_W_per_m2 }: { readonly infrared_W_per_m2: number }): number {
  requireNotNegative({ infrared_W_per_m2 });
  return infrared_W_per_m2 <= 100 ? DAY_s : Math.min(1000, (18_000 / infrared_W_per_m2) ** (4 / 3));
}

/** Published limit of infrared at the front of the eye for a time, the last step beyond 1000 s. Throws RangeError unless the time is positive. */
export function infraredEyeLimit_W_per_m2({ time_s }: { readonly time_s: number }): number {
  requirePositive({ time_s });
  return time_s > 1000 ? 100 : 18_000 * time_s ** -0.75;
}

/** Dose that the limit for skin reaches at 10 s. */
const SKIN_DOSE_J_per_m2 = 20_000 * 10 ** 0.25;

/** Time in the published limit of heat on the skin, its dose of 10 s carried on beyond; eight hours at most. Throws RangeError for a negative irradiance. */
export function skinHeatTime_s({ irradiance_W_per_m2 }: { readonly irradiance_W_per_m2: number }): number {
  requireNotNegative({ irradiance_W_per_m2 });
  const time_s = (20_000 / irradiance_W_per_m2) ** (4 / 3);
  return time_s <= 10 ? time_s : Math.min(DAY_s, SKIN_DOSE_J_per_m2 / irradiance_W_per_m2);
}

/** Time in eight hours within the published limits of ultraviolet; all eight at or below them. Throws RangeError for a negative irradiance. */
export function ultravioletTime_s(given: {
  readonly effective_W_per_m2: number;
  readonly longWave_W_per_m2?: number;
}): number {
  const { effective_W_per_m2, longWave_W_per_m2 = 0 } = given;
  requireNotNegative({ effective_W_per_m2, longWave_W_per_m2 });
  return Math.min(DAY_s, 30 / effective_W_per_m2, 1e4 / longWave_W_per_m2);
}

/** Distance at which an irradiance measured elsewhere has fallen to a limit. Throws RangeError outside positive inputs. */
export function irradianceDistance_m(given: {
  readonly irradiance_W_per_m2: number;
  readonly measuredAt_m: number;
  readonly limit_W_per_m2: number;
}): number {
  const { irradiance_W_per_m2, measuredAt_m, limit_W_per_m2 } = given;
  requireNotNegative({ irradiance_W_per_m2 });
  requirePositive({ measuredAt_m, limit_W_per_m2 });
  return measuredAt_m * Math.sqrt(irradiance_W_per_m2 / limit_W_per_m2);
}

/** Lumens beside each watt weighted for blue light, daylight white at its bluest. @source blue-light-practice */
export const BLUEST_lm_per_W = 1000;

/** Weighted radiance of a white source from its luminance. Throws RangeError outside its domain. */
export function blueRadiance_W_per_m2_sr(given: {
  readonly luminance_cd_per_m2: number;
  readonly blueEfficacy_lm_per_W?: number;
}): number {
  const { luminance_cd_per_m2, blueEfficacy_lm_per_W = BLUEST_lm_per_W } = given;
  requireNotNegative({ luminance_cd_per_m2 });
  requirePositive({ blueEfficacy_lm_per_W });
  return luminance_cd_per_m2 / blueEfficacy_lm_per_W;
}
