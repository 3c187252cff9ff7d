/** The laws of exposure, in the order a reader meets them. */
import type { AnyLaw } from '../law.ts';
import { closeUpIlluminance, closeUpIndex, closeUpIndexByLuminance, closeUpLuminance } from './chain.ts';
import { exposureValue, illuminanceOfExposureValue, luminanceOfExposureValue } from './exposureValue.ts';
import { closeUpFactor, closeUpStop } from './extension.ts';
import { densityTransmittance, factorOfFilter, stopsOfDensity, stopsOfFilterFactor } from './filter.ts';
import { footcandlesNeeded, footcandleStop } from './footcandles.ts';
import { highlightHeadroom, lowestIndex } from './highlights.ts';
import { incidentIlluminance, incidentStopAllowed } from './incident.ts';
import {
  exposureIndexOf,
  focalPlaneExposure,
  lensFactorTypical,
  midGreyExposure,
  saturationSpeedOf,
} from './iso12232.ts';
import { greyElectrons, greySignalToNoise, indexAtNoise } from './noise.ts';
import { impliedReflectance, reflectedLuminance, reflectedStopAllowed } from './reflected.ts';
import { exposureTimeOfAngle, longestExposure, shutterAngle } from './shutter.ts';
import { apertureStops, exposureStops, frameRateStops, timeStops } from './stops.ts';
import { fNumberOfLens, tStopOfLens } from './tStop.ts';

export const EXPOSURE_LAWS: readonly AnyLaw[] = [
  exposureTimeOfAngle,
  shutterAngle,
  longestExposure,
  exposureStops,
  apertureStops,
  timeStops,
  frameRateStops,
  incidentIlluminance,
  incidentStopAllowed,
  footcandlesNeeded,
  footcandleStop,
  closeUpIlluminance,
  closeUpIndex,
  reflectedLuminance,
  reflectedStopAllowed,
  closeUpLuminance,
  closeUpIndexByLuminance,
  impliedReflectance,
  closeUpFactor,
  closeUpStop,
  tStopOfLens,
  fNumberOfLens,
  stopsOfDensity,
  densityTransmittance,
  factorOfFilter,
  stopsOfFilterFactor,
  exposureValue,
  illuminanceOfExposureValue,
  luminanceOfExposureValue,
  highlightHeadroom,
  lowestIndex,
  greyElectrons,
  greySignalToNoise,
  indexAtNoise,
  lensFactorTypical,
  focalPlaneExposure,
  exposureIndexOf,
  midGreyExposure,
  saturationSpeedOf,
];
