/**
 * Light from a round, matte, evenly bright source: a beauty dish, a round softbox, the mouth of a fixture behind
 * diffusion.
 *
 *     on its axis   F = r²/(r² + h²)
 *     beside it     F = ½·[1 − (1 + H² − R²)/√(Z² − 4R²)],  H = h/a, R = r/a, Z = 1 + H² + R²
 *     edge-on       F = (H/2)·[Z/√(Z² − 4R²) − 1]
 *
 * r radius        h distance of the disc's plane        a how far off its axis        E = π·L·F
 *
 * The surface is parallel to the disc; edge-on it is square to it and faces the axis, with the whole disc before it.
 *
 * @source configuration-factors all three forms
 */
import { requireNotNegative, requirePositive } from '../../../base/domain.ts';
import { law } from '../../law.ts';

export interface DiscGiven {
  readonly diameter_m: number;
  readonly distance_m: number;
  readonly offAxis_m?: number;
}

/** Configuration factor from a parallel surface to a disc. Throws RangeError outside positive size and distance. */
export function parallelDiscFactor({ diameter_m, distance_m, offAxis_m = 0 }: DiscGiven): number {
  requirePositive({ diameter_m, distance_m });
  requireNotNegative({ offAxis_m });
  const r2 = (diameter_m / 2) ** 2;
  const h2 = distance_m ** 2;
  const a2 = offAxis_m ** 2;
  const root = Math.sqrt((h2 + (offAxis_m + diameter_m / 2) ** 2) * (h2 + (offAxis_m - diameter_m / 2) ** 2));
  const rest = a2 + h2 - r2;
  // Far away the form above is a small difference of large numbers: there it is written out.
  return rest > 0 ? (2 * r2 * h2) / (root * (root + rest)) : (root - rest) / (2 * root);
}

/**
 * Configuration factor from a surface square to the disc that faces its axis. Throws RangeError unless the whole disc
 * lies before it.
 */
export function edgeOnDiscFactor({ diameter_m, distance_m, offAxis_m }: Required<DiscGiven>): number {
  requirePositive({ diameter_m, distance_m, offAxis_m });
  if (offAxis_m < diameter_m / 2)
    throw new RangeError(`offAxis_m must be at least the radius, ${diameter_m / 2}, got ${offAxis_m}`);
  const r2 = (diameter_m / 2) ** 2;
  const z = offAxis_m ** 2 + distance_m ** 2 + r2;
  const root = Math.sqrt(
    (distance_m ** 2 + (offAxis_m + diameter_m / 2) ** 2) * (distance_m ** 2 + (offAxis_m - diameter_m / 2) ** 2),
  );
  return (distance_m / (2 * offAxis_m)) * ((4 * offAxis_m ** 2 * r2) / (root * (root + z)));
}

/** Light on a surface parallel to a disc. Throws RangeError outside its domain. */
export function discLight(given: DiscGiven & { readonly luminance_cd_per_m2: number }): {
  readonly illuminance_lx: number;
  readonly factorFraction: number;
} {
  requireNotNegative({ luminance_cd_per_m2: given.luminance_cd_per_m2 });
  const factorFraction = parallelDiscFactor(given);
  return { illuminance_lx: Math.PI * given.luminance_cd_per_m2 * factorFraction, factorFraction };
}

export const discIlluminance = law(discLight, {
  id: 'disc-light',
  title: 'Light from a round source',
  says: 'What a round softbox or dish gives on a surface that faces it, also from close by.',
  equation: 'E = π · L · F, on the axis F = r² / (r² + h²)',
  takes: {
    diameter_m: 'Diameter',
    distance_m: 'Distance',
    luminance_cd_per_m2: { title: 'Luminance', note: 'measured with a spot meter over its face' },
    offAxis_m: { title: 'Off its axis', default: 0 },
  },
  gives: {
    illuminance_lx: 'Illuminance',
    factorFraction: { title: 'Share of a bright half sphere', as: 'fraction' },
  },
  holds: 'A matte disc, evenly bright, parallel to the surface. A dish with a bright middle throws forward.',
  sources: ['configuration-factors'],
  cautions: ['intense-light', 'heat'],
  words: ['softbox', 'octa', 'beauty dish', 'diffusion', 'configuration factor', 'view factor'],
  example: { diameter_m: 0.9, distance_m: 0.7, luminance_cd_per_m2: 15_000, offAxis_m: 0.2 },
});
