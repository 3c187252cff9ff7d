/** The laws of liquids, bubbles, powders and flames, in the order a reader meets them. */
import type { AnyLaw } from '../law.ts';
import { bubbleRise, slowestBubble } from './bubble.ts';
import { capillaryTime } from './capillaryTime.ts';
import { cavityClosingTime, cavityRadius, pinchOffTime } from './cavity.ts';
import { gravityCoiling, inertialCoiling } from './coiling.ts';
import { crownRadius } from './crown.ts';
import { filmBurstSpeed } from './filmBurst.ts';
import { puffingFrequency } from './flame.ts';
import { impactTime, ohnesorge, reynolds, spreadDiameter, weber } from './impact.ts';
import { effluxSpeed, jetBreakupLength, orificeFlow, thinnedDiameter } from './jet.ts';
import { pourFront } from './pourFront.ts';
import { relaxationTime, stoppingDistance } from './powder.ts';
import { drySplash, filmSplash } from './splash.ts';

export const FLUID_LAWS: readonly AnyLaw[] = [
  effluxSpeed,
  orificeFlow,
  pourFront,
  thinnedDiameter,
  jetBreakupLength,
  gravityCoiling,
  inertialCoiling,
  weber,
  reynolds,
  ohnesorge,
  impactTime,
  spreadDiameter,
  drySplash,
  filmSplash,
  crownRadius,
  cavityRadius,
  cavityClosingTime,
  pinchOffTime,
  bubbleRise,
  slowestBubble,
  capillaryTime,
  filmBurstSpeed,
  relaxationTime,
  stoppingDistance,
  puffingFrequency,
];
