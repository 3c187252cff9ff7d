/** The laws of heat on the product, and of light on eyes and skin, in the order a reader meets them. */
import type { AnyLaw } from '../law.ts';
import {
  blueLightDistance,
  blueLightTime,
  blueRadiance,
  infraredEyeLimit,
  infraredEyeTime,
  irradianceDistance,
  retinalHeatLimit,
  skinHeatTime,
  smallBlueLightTime,
  ultravioletTime,
} from './eyeLaws.ts';
import { lampHeat, lightAsHeat } from './irradiance.ts';
import { productTime } from './products.ts';
import {
  layerTemperature,
  lightDuty,
  steadyTemperature,
  takesBeforeWarm,
  timeToCool,
  timeToMelt,
  timeToWarm,
} from './warming.ts';

export const HEAT_LAWS: readonly AnyLaw[] = [
  productTime,
  lampHeat,
  lightAsHeat,
  timeToWarm,
  timeToMelt,
  layerTemperature,
  steadyTemperature,
  lightDuty,
  takesBeforeWarm,
  timeToCool,
  blueRadiance,
  blueLightTime,
  smallBlueLightTime,
  blueLightDistance,
  retinalHeatLimit,
  infraredEyeTime,
  infraredEyeLimit,
  skinHeatTime,
  ultravioletTime,
  irradianceDistance,
];
