/** The laws of motion, in the order a reader meets them. */
import type { AnyLaw } from '../law.ts';
import { exposureForBlur, frameRateForStep, frameStep, imageSpeed, motionBlur } from './blur.ts';
import { cameraArc, rimSpeed, turnAcceleration } from './circle.ts';
import { dragFallSpeed, dragFallTime, fallSpeed, fallTime, terminalFallSpeed, terminalFallTime } from './fall.ts';
import { dragFlight, flight } from './flight.ts';
import { airLaunchSpeed, springLaunchSpeed, throwReach } from './launcher.ts';
import { miniatureFrameRate, miniatureSpeed } from './miniature.ts';
import { railMove } from './move.ts';
import { exposureToFreeze, frameRateToFollow } from './ownSize.ts';
import { shortestPan } from './pan.ts';
import { dragCoefficient, terminalSpeed } from './sphereDrag.ts';
import { apparentRotation, standstillRotation, trueRotationRate } from './strobe.ts';
import { swing } from './swing.ts';

export const MOTION_LAWS: readonly AnyLaw[] = [
  imageSpeed,
  motionBlur,
  exposureForBlur,
  frameStep,
  frameRateForStep,
  exposureToFreeze,
  frameRateToFollow,
  fallSpeed,
  fallTime,
  dragFallSpeed,
  dragFallTime,
  terminalSpeed,
  terminalFallSpeed,
  terminalFallTime,
  dragCoefficient,
  springLaunchSpeed,
  airLaunchSpeed,
  throwReach,
  flight,
  dragFlight,
  swing,
  railMove,
  cameraArc,
  rimSpeed,
  turnAcceleration,
  shortestPan,
  apparentRotation,
  standstillRotation,
  trueRotationRate,
  miniatureFrameRate,
  miniatureSpeed,
];
