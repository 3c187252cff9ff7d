/** The laws of motion, in the order a reader meets them. */
import type { AnyLaw } from '../law.ts';
import { exposureForBlur, frameRateForStep, frameStep, imageSpeed, motionBlur } from './blur.ts';
import { dragFallSpeed, dragFallTime, fallSpeed, fallTime, terminalFallSpeed, terminalFallTime } from './fall.ts';
import { dragCoefficient, terminalSpeed } from './sphereDrag.ts';

export const MOTION_LAWS: readonly AnyLaw[] = [
  imageSpeed,
  motionBlur,
  exposureForBlur,
  frameStep,
  frameRateForStep,
  fallSpeed,
  fallTime,
  dragFallSpeed,
  dragFallTime,
  terminalSpeed,
  terminalFallSpeed,
  terminalFallTime,
  dragCoefficient,
];
