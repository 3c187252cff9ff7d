/**
 * A thin layer under a light: how warm it gets, how soon, how soon it melts, and how it cools again.
 *
 *     T(t) = Tₑ − (Tₑ − T₀)·e^(−t/τ)        Tₑ = T_air + a·Eₑ/h        τ = ρ·δ·c/h
 *     time to T = τ·ln((Tₑ − T₀)/(Tₑ − T))        time to melt = x·ρ·δ·L/(a·Eₑ + h·(T_air − T_m))
 *
 * T temperature, °C        a share of the radiation absorbed        Eₑ irradiance, W/m²        h heat given to the air,
 * W/(m²·K)        ρ density, kg/m³        δ thickness, m        c specific heat, J/(kg·K)        L heat of melting, J/kg
 * x share that has melted
 *
 * One temperature through the layer: thin, or well conducting (h·δ/k below 0.1). In a thick piece only the skin is the
 * layer, and it warms faster than the whole would. Nothing evaporates and nothing flows in from below.
 *
 * @source heat-textbook lumped layers and Newton's cooling
 * @source thermocouple-example one worked
 * @source melting-example melting worked
 */
import { requireFinite, requireNotNegative, requirePositive, requireWithin } from '../../base/domain.ts';

/** Still air with what radiates away: little cooling, so that times come out short. @source heat-practice */
export const STILL_AIR_W_per_m2_K = 5;

export interface Layer {
  readonly thickness_m: number;
  readonly density_kg_per_m3: number;
  readonly specificHeat_J_per_kg_K: number;
}

export interface Load {
  readonly irradiance_W_per_m2: number;
  readonly absorbedFraction: number;
  readonly air_degC: number;
  readonly heatTransfer_W_per_m2_K?: number;
}

function absorbed_W_per_m2({
  irradiance_W_per_m2,
  absorbedFraction,
  air_degC,
  heatTransfer_W_per_m2_K = STILL_AIR_W_per_m2_K,
}: Load): number {
  requireNotNegative({ irradiance_W_per_m2, heatTransfer_W_per_m2_K });
  requireWithin(0, 1, { absorbedFraction });
  requireFinite({ air_degC });
  return absorbedFraction * irradiance_W_per_m2;
}

function capacity_J_per_m2_K({ thickness_m, density_kg_per_m3, specificHeat_J_per_kg_K }: Layer): number {
  requirePositive({ thickness_m, density_kg_per_m3, specificHeat_J_per_kg_K });
  return thickness_m * density_kg_per_m3 * specificHeat_J_per_kg_K;
}

/** Temperature at which a layer gives off what it takes in. Throws RangeError where nothing carries heat away. */
export function steadyTemperature_degC(load: Load): number {
  const { heatTransfer_W_per_m2_K = STILL_AIR_W_per_m2_K } = load;
  requirePositive({ heatTransfer_W_per_m2_K });
  return load.air_degC + absorbed_W_per_m2(load) / heatTransfer_W_per_m2_K;
}

export type Warming = Layer & Load & { readonly start_degC: number };

/** Temperature of a layer after a time in the light. Throws RangeError outside its domain. */
export function layerTemperature_degC(given: Warming & { readonly time_s: number }): number {
  const { start_degC, time_s, air_degC, heatTransfer_W_per_m2_K: h = STILL_AIR_W_per_m2_K } = given;
  requireNotNegative({ time_s });
  requireFinite({ start_degC });
  const capacity = capacity_J_per_m2_K(given);
  const absorbed = absorbed_W_per_m2(given);
  if (h === 0) return start_degC + (absorbed * time_s) / capacity;
  const gone = -Math.expm1((-h * time_s) / capacity);
  return start_degC + (air_degC + absorbed / h - start_degC) * gone;
}

/**
 * Time from one temperature to another: 0 where it has been reached already, Infinity where it never is. `rising` says
 * from which side it is reached.
 */
function timeBetween_s(given: Warming & { readonly target_degC: number }, rising: boolean): number {
  const { start_degC, target_degC, air_degC, heatTransfer_W_per_m2_K: h = STILL_AIR_W_per_m2_K } = given;
  requireFinite({ start_degC, target_degC });
  const capacity = capacity_J_per_m2_K(given);
  const absorbed = absorbed_W_per_m2(given);
  const rise = target_degC - start_degC;
  if (rising ? rise <= 0 : rise >= 0) return 0;
  if (h === 0) return rising && absorbed > 0 ? (rise * capacity) / absorbed : Infinity;
  const whole = air_degC + absorbed / h - start_degC;
  const share = rise / whole;
  return share > 0 && share < 1 ? (-capacity / h) * Math.log1p(-share) : Infinity;
}

/** Time until a layer is as warm as that; Infinity where the light is too weak. Throws RangeError outside its domain. */
export function timeToWarm_s(given: Warming & { readonly target_degC: number }): number {
  return timeBetween_s(given, true);
}

/** Time until a layer has cooled to that; Infinity where it never does. Throws RangeError outside its domain. */
export function timeToCool_s(
  given: Layer & {
    readonly start_degC: number;
    readonly target_degC: number;
    readonly air_degC: number;
    readonly heatTransfer_W_per_m2_K?: number;
  },
): number {
  return timeBetween_s({ ...given, irradiance_W_per_m2: 0, absorbedFraction: 0 }, false);
}

export interface MeltingGiven extends Load {
  readonly thickness_m: number;
  readonly density_kg_per_m3: number;
  readonly meltingHeat_J_per_kg: number;
  readonly melts_degC: number;
  readonly meltedFraction?: number;
}

/** Time a layer at its melting point takes to melt; Infinity where it never does. Throws RangeError outside its domain. */
export function timeToMelt_s(given: MeltingGiven): number {
  const { thickness_m, density_kg_per_m3, meltingHeat_J_per_kg, melts_degC, meltedFraction = 1 } = given;
  const { air_degC, heatTransfer_W_per_m2_K: h = STILL_AIR_W_per_m2_K } = given;
  requirePositive({ thickness_m, density_kg_per_m3, meltingHeat_J_per_kg, meltedFraction });
  requireWithin(0, 1, { meltedFraction });
  requireFinite({ melts_degC });
  const flow = absorbed_W_per_m2(given) + h * (air_degC - melts_degC);
  return flow > 0 ? (meltedFraction * thickness_m * density_kg_per_m3 * meltingHeat_J_per_kg) / flow : Infinity;
}

export interface DutyGiven extends Layer, Load {
  readonly lightOn_s: number;
  readonly lightOff_s: number;
}

/**
 * Temperatures between which a layer swings when the light goes on and off for long, starting from the air's. Throws
 * RangeError outside its domain.
 */
export function dutyTemperatures(given: DutyGiven): { readonly peak_degC: number; readonly rest_degC: number } {
  const { lightOn_s, lightOff_s, air_degC, heatTransfer_W_per_m2_K: h = STILL_AIR_W_per_m2_K } = given;
  requirePositive({ lightOn_s, heatTransfer_W_per_m2_K: h });
  requireNotNegative({ lightOff_s });
  const perTime = h / capacity_J_per_m2_K(given);
  const whole = absorbed_W_per_m2(given) / h;
  const peak = (whole * Math.expm1(-perTime * lightOn_s)) / Math.expm1(-perTime * (lightOn_s + lightOff_s));
  return { peak_degC: air_degC + peak, rest_degC: air_degC + peak * Math.exp(-perTime * lightOff_s) };
}

const MOST_TAKES = 1000;

/**
 * Takes after which the layer has never been warmer than that, lights on for each and off between; Infinity where it
 * stays below it for a thousand. Throws RangeError outside its domain.
 */
export function takesBeforeWarmCount(
  given: DutyGiven & { readonly start_degC: number; readonly limit_degC: number },
): number {
  const { lightOn_s, lightOff_s, start_degC, limit_degC } = given;
  requirePositive({ lightOn_s });
  requireNotNegative({ lightOff_s });
  requireFinite({ limit_degC });
  let temperature_degC = start_degC;
  for (let take = 0; take < MOST_TAKES; take += 1) {
    temperature_degC = layerTemperature_degC({ ...given, start_degC: temperature_degC, time_s: lightOn_s });
    if (temperature_degC > limit_degC) return take;
    temperature_degC = layerTemperature_degC({
      ...given,
      start_degC: temperature_degC,
      irradiance_W_per_m2: 0,
      time_s: lightOff_s,
    });
  }
  return Infinity;
}
