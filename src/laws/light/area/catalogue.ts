/** The laws of large sources, in the order a reader meets them. */
import type { AnyLaw } from '../../law.ts';
import { discIlluminance } from './disc.ts';
import { diffusionLuminance, exitance, exitanceLuminance, openingLuminance } from './exitance.ts';
import { nearSource, pointDistance } from './nearness.ts';
import { panelIlluminance, standingPanel } from './rectangle.ts';

export const AREA_LAWS: readonly AnyLaw[] = [
  nearSource,
  pointDistance,
  panelIlluminance,
  standingPanel,
  discIlluminance,
  exitance,
  exitanceLuminance,
  diffusionLuminance,
  openingLuminance,
];
