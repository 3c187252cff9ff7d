/** The laws of single lamps: from readings and stated angles to light, in the order a reader meets them. */
import type { AnyLaw } from '../../law.ts';
import { lampCalibration } from './calibration.ts';
import { lampIntensity, lampLight } from './intensity.ts';
import { beamWidth, lobe, lobeFlux, usualFieldAngle } from './lobe.ts';
import { twoReadings, twoReadingsLight } from './offset.ts';
import { spotToFlood } from './zoom.ts';

export const LAMP_LAWS: readonly AnyLaw[] = [
  lampIntensity,
  lampLight,
  twoReadings,
  twoReadingsLight,
  beamWidth,
  usualFieldAngle,
  lobe,
  lobeFlux,
  spotToFlood,
  lampCalibration,
];
