/** The laws of what is put before a lamp, or done to it, in the order a reader meets them. */
import type { AnyLaw } from '../../law.ts';
import { flagCut, flagDistance, penumbra } from './flag.ts';
import { measuredLoss, modifierLoss } from './losses.ts';
import { tungstenLevel, tungstenVoltage, tungstenVoltageForStops } from './tungsten.ts';

export const MODIFIER_LAWS: readonly AnyLaw[] = [
  modifierLoss,
  measuredLoss,
  tungstenLevel,
  tungstenVoltage,
  tungstenVoltageForStops,
  penumbra,
  flagCut,
  flagDistance,
];
