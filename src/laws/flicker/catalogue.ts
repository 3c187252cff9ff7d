/** The laws of flicker, in the order a reader meets them. */
import type { AnyLaw } from '../law.ts';
import { screenFlicker } from './alias.ts';
import { lockDrift, nullShutter } from './cures.ts';
import { dimmedFilament } from './dimmed.ts';
import { exposedRipple, threePhaseRipple } from './exposure.ts';
import { eyeThreshold } from './eye.ts';
import { filamentDepth, tungstenDepth } from './filament.ts';
import { pulseHarmonic } from './led.ts';
import { depthOfSwing, flickerIndex, ieeeLevels, percentFlicker, stroboscopicLimit, swingOfDepth } from './metrics.ts';
import { rollingBands } from './rolling.ts';

export const FLICKER_LAWS: readonly AnyLaw[] = [
  screenFlicker,
  nullShutter,
  lockDrift,
  exposedRipple,
  tungstenDepth,
  filamentDepth,
  dimmedFilament,
  threePhaseRipple,
  pulseHarmonic,
  rollingBands,
  eyeThreshold,
  swingOfDepth,
  depthOfSwing,
  percentFlicker,
  flickerIndex,
  stroboscopicLimit,
  ieeeLevels,
];
