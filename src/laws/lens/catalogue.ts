/** Every law of lenses and of the picture's geometry. */
import type { AnyLaw } from '../law.ts';
import { circleOfConfusionByDiagonal, circleOfConfusionByPixels } from './circleOfConfusion.ts';
import { cropArea, cropHeight, cropWidth, enlargement } from './crop.ts';
import {
  depthFar,
  depthNear,
  depthOfField,
  hyperfocal,
  macroDepthOfField,
  fNumberForDepthWanted,
} from './depthOfField.ts';
import { airyDiameter, airyDiameterInPixels, combinedBlur, stopAtAiry } from './diffraction.ts';
import { angleOfView, fieldWidth } from './field.ts';
import {
  extensionNeeded,
  imageDistance,
  lensExtension,
  magnificationOfFrame,
  magnificationReached,
  objectDistance,
  sensorToSubject,
} from './magnification.ts';
import { fieldAtCrop } from './reach.ts';
import { imageCircleNeeded, sampledPitch, windowDiagonal, windowWidth } from './window.ts';
import { workingDistance } from './workingDistance.ts';

export const LENS_LAWS: readonly AnyLaw[] = [
  magnificationOfFrame,
  objectDistance,
  imageDistance,
  sensorToSubject,
  magnificationReached,
  extensionNeeded,
  lensExtension,
  workingDistance,
  fieldWidth,
  angleOfView,
  depthOfField,
  depthNear,
  depthFar,
  macroDepthOfField,
  fNumberForDepthWanted,
  hyperfocal,
  circleOfConfusionByPixels,
  circleOfConfusionByDiagonal,
  airyDiameter,
  airyDiameterInPixels,
  stopAtAiry,
  combinedBlur,
  sampledPitch,
  windowWidth,
  windowDiagonal,
  imageCircleNeeded,
  cropWidth,
  cropHeight,
  cropArea,
  enlargement,
  fieldAtCrop,
];
