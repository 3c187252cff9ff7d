/**
 * Whether a drop splashes: on a dry surface, and on a film of liquid, where a splash is a crown.
 *
 *     dry     K = √We · ⁴√Re  above 57.7
 *     film    We · Oh^−0.4    above 2100 + 5880·δ^1.44        δ = h / D
 *
 * We, Re, Oh as in impact.ts        h depth of the film, m        D diameter of the drop, m
 *
 * Both are thresholds fitted to experiments, and neither is sharp: roughness, the gas around and its pressure move the
 * dry one. The film law was fitted from a tenth of a drop deep to a whole one.
 *
 * @source mundo the dry threshold
 * @source cossali the film threshold
 */
import { requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';
import { ohnesorgeNumber, reynoldsNumber, weberNumber, type MovingDrop } from './impact.ts';
import { DENSITY_TAKEN, SURFACE_TENSION_TAKEN, VISCOSITY_TAKEN } from './liquids.ts';

/** @source mundo */
export const DRY_SPLASH_THRESHOLD = 57.7;

export interface LiquidDrop extends MovingDrop {
  readonly density_kg_per_m3?: number;
  readonly viscosity_Pa_s?: number;
  readonly surfaceTension_N_per_m?: number;
}

export interface SplashJudged {
  readonly splashParameter: number;
  readonly thresholdParameter: number;
  readonly splashes: boolean;
}

const judged = (splashParameter: number, thresholdParameter: number): SplashJudged => ({
  splashParameter,
  thresholdParameter,
  splashes: splashParameter > thresholdParameter,
});

/** Whether a drop splashes on a dry surface. Throws RangeError outside positive inputs. */
export function drySplashOf(drop: LiquidDrop): SplashJudged {
  return judged(Math.sqrt(weberNumber(drop)) * reynoldsNumber(drop) ** 0.25, DRY_SPLASH_THRESHOLD);
}

/** Whether a drop throws up a crown from a film. Throws RangeError outside positive inputs, or for a film not from 0.1 to 1 drop deep. */
export function filmSplashOf(drop: LiquidDrop & { readonly filmDepth_m: number }): SplashJudged {
  const { filmDepth_m, diameter_m } = drop;
  requirePositive({ filmDepth_m, diameter_m });
  const depthRatio = filmDepth_m / diameter_m;
  requireWithin(0.1, 1, { depthRatio });
  return judged(weberNumber(drop) * ohnesorgeNumber(drop) ** -0.4, 2100 + 5880 * depthRatio ** 1.44);
}

const DROP = {
  diameter_m: 'Diameter of the drop',
  speed_m_per_s: 'Speed at impact',
  ...DENSITY_TAKEN,
  ...VISCOSITY_TAKEN,
  ...SURFACE_TENSION_TAKEN,
};
const JUDGED = {
  splashParameter: { title: 'Splash parameter', as: 'ratio' },
  thresholdParameter: { title: 'Splashes above', as: 'ratio' },
  splashes: { title: 'Splashes', as: 'flag' },
} as const;

export const drySplash = law(drySplashOf, {
  id: 'dry-splash',
  title: 'Splash on a dry surface',
  says: 'Whether a drop breaks up on a dry surface or only spreads.',
  equation: 'K = √We · ⁴√Re, splashing above 57.7',
  takes: DROP,
  gives: JUDGED,
  holds: 'Solid surfaces in air at ordinary pressure. Rough ones splash sooner; test with the real surface.',
  sources: ['mundo'],
  cautions: ['splash-and-flying-parts'],
  words: ['drop', 'droplet', 'impact', 'spread', 'threshold'],
  example: { diameter_m: 0.004, speed_m_per_s: 3.13 },
});

export const filmSplash = law(filmSplashOf, {
  id: 'film-splash',
  title: 'Crown from a film',
  says: 'Whether a drop falling into a thin layer of liquid throws up a crown.',
  equation: 'We · Oh^−0.4, splashing above 2100 + 5880 · δ^1.44',
  takes: { ...DROP, filmDepth_m: { title: 'Depth of the film', note: 'from a tenth of the drop to all of it' } },
  gives: JUDGED,
  holds: 'Films from 0.1 to 1 drop deep, of the same liquid as the drop.',
  sources: ['cossali'],
  cautions: ['splash-and-flying-parts'],
  words: ['drop', 'droplet', 'coronet', 'milk drop', 'threshold'],
  example: { diameter_m: 0.004, speed_m_per_s: 3.13, filmDepth_m: 0.002 },
});
