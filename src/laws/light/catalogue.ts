/** The laws of light on the subject, in the order a reader meets them. */
import type { AnyLaw } from '../law.ts';
import { LAMP_LAWS } from './lamp/catalogue.ts';
import { footcandlesInLux, inverseSquareIlluminance, luxInFootcandles, matteLuminance } from './units.ts';

export const LIGHT_LAWS: readonly AnyLaw[] = [
  luxInFootcandles,
  footcandlesInLux,
  matteLuminance,
  inverseSquareIlluminance,
  ...LAMP_LAWS,
];
