/**
 * Light on a surface and light from it: footcandles and lux, the luminance of a matte surface, and light over distance.
 *
 *     1 fc = 1 lm/ft² = 1/0.3048² lx        L = ρ · E / π        E = E0 · (d0/d)²
 *
 * E illuminance, lx        L luminance, cd/m²        ρ reflectance        d distance from the source, m; 0 where measured
 *
 * The matte surface is Lambertian: equally bright from every side. The inverse square holds to 1 % beyond five times the
 * largest dimension of the source; closer, it says more light than there is. A lamp with a lens or a reflector keeps it
 * only beyond the distance where its beam has formed, and is best measured on the spot.
 *
 * @source footcandle-entry the unit
 * @source cie-vocabulary exitance and luminance of a Lambertian surface
 * @source lighting-textbook the inverse square, worked
 * @source ies-inverse-square how far from a source it holds
 */
import { requireNotNegative, requirePositive, requireWithin } from '../../base/domain.ts';
import { law } from '../law.ts';

const FOOT_m = 0.3048;

/** One lumen on a square foot, in lux. @source footcandle-entry */
export const FOOTCANDLE_lx = 1 / FOOT_m ** 2;

/** Lux in footcandles. Throws RangeError for a negative illuminance. */
export function footcandlesOfLux({ illuminance_lx }: { readonly illuminance_lx: number }): number {
  requireNotNegative({ illuminance_lx });
  return illuminance_lx / FOOTCANDLE_lx;
}

/** Footcandles in lux. Throws RangeError for a negative illuminance. */
export function luxOfFootcandles({ illuminance_fc }: { readonly illuminance_fc: number }): number {
  requireNotNegative({ illuminance_fc });
  return illuminance_fc * FOOTCANDLE_lx;
}

/** Luminance of a lit matte surface. Throws RangeError for a negative illuminance or a reflectance outside 0 to 1. */
export function luminanceOfMatte_cd_per_m2({
  illuminance_lx,
  reflectanceFraction,
}: {
  readonly illuminance_lx: number;
  readonly reflectanceFraction: number;
}): number {
  requireNotNegative({ illuminance_lx });
  requireWithin(0, 1, { reflectanceFraction });
  return (reflectanceFraction * illuminance_lx) / Math.PI;
}

/** Illuminance at another distance from a small source. Throws RangeError outside its domain. */
export function inverseSquareIlluminance_lx({
  illuminance_lx,
  measuredAt_m,
  distance_m,
}: {
  readonly illuminance_lx: number;
  readonly measuredAt_m: number;
  readonly distance_m: number;
}): number {
  requireNotNegative({ illuminance_lx });
  requirePositive({ measuredAt_m, distance_m });
  return illuminance_lx * (measuredAt_m / distance_m) ** 2;
}

const FOOTCANDLES = 'Footcandles';

export const luxInFootcandles = law(footcandlesOfLux, {
  id: 'footcandles',
  title: 'Lux in footcandles',
  says: 'An illuminance in the footcandles that many fixtures are sold by.',
  equation: '1 fc = 10.7639 lx',
  takes: { illuminance_lx: 'Illuminance' },
  gives: { illuminance_fc: FOOTCANDLES },
  holds: 'By definition: a foot is 0.3048 m.',
  sources: ['footcandle-entry'],
  words: ['fc', 'lux', 'conversion'],
  example: { illuminance_lx: 40_000 },
});

export const footcandlesInLux = law(luxOfFootcandles, {
  id: 'lux',
  title: 'Footcandles in lux',
  says: 'A number of footcandles in lux.',
  equation: '1 fc = 10.7639 lx',
  takes: { illuminance_fc: FOOTCANDLES },
  gives: { illuminance_lx: 'Illuminance' },
  holds: 'By definition: a foot is 0.3048 m.',
  sources: ['footcandle-entry'],
  words: ['fc', 'lux', 'conversion'],
  example: { illuminance_fc: 100 },
});

export const matteLuminance = law(luminanceOfMatte_cd_per_m2, {
  id: 'matte-luminance',
  title: 'Brightness of a matte surface',
  says: 'How bright a matte surface looks in a given light.',
  equation: 'L = ρ · E / π',
  takes: {
    illuminance_lx: 'Illuminance on the surface',
    reflectanceFraction: { title: 'Reflectance', as: 'fraction', note: '0.18 for a grey card' },
  },
  gives: { luminance_cd_per_m2: 'Luminance' },
  holds: 'A surface without sheen, equally bright from every side. Gloss, liquid and glass are not.',
  sources: ['cie-vocabulary', 'paper-exercise'],
  words: ['grey card', 'white card', 'nits', 'bounce', 'reflectance'],
  example: { illuminance_lx: 40_000, reflectanceFraction: 0.18 },
});

export const inverseSquareIlluminance = law(inverseSquareIlluminance_lx, {
  id: 'inverse-square',
  title: 'Light over distance',
  says: 'What a small lamp gives at another distance than the one it was measured at.',
  equation: 'E = E0 · (d0/d)²',
  takes: { illuminance_lx: 'Illuminance measured', measuredAt_m: 'Measured at', distance_m: 'Wanted at' },
  gives: { illuminanceThere_lx: 'Illuminance there' },
  holds:
    'Within 1 % beyond five times the largest dimension of the source. Closer in it promises more than there is; beams formed by a lens or reflector need measuring.',
  sources: ['lighting-textbook', 'ies-inverse-square'],
  cautions: ['intense-light'],
  words: ['falloff', 'move the lamp', 'distance'],
  example: { illuminance_lx: 20_000, measuredAt_m: 3, distance_m: 1.5 },
});
