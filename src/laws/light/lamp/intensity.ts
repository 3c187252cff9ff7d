/**
 * A lamp known by one reading: its intensity, and its light at another distance.
 *
 *     I = E · (d + a)²        E = I / (d + a)²
 *
 * I intensity along the beam, cd      E illuminance of a surface facing the lamp, lx      d distance from the lamp, m
 * a how far behind the lamp its light seems to come from, m; 0 for a bare lamp, found by two readings for one with a lens
 *
 * @source photometric-distance the law, and that it is for small sources
 * @source distance-example 100 cd at two and three metres
 */
import { requireFinite, requireNotNegative, requirePositive } from '../../../base/domain.ts';
import { law } from '../../law.ts';

export interface Throw {
  readonly distance_m: number;
  readonly offset_m?: number;
}

/** Distance from where the light seems to come. Throws RangeError unless it is positive. */
function apparentDistance_m({ distance_m, offset_m = 0 }: Throw): number {
  requirePositive({ distance_m });
  requireFinite({ offset_m });
  const apparent_m = distance_m + offset_m;
  if (!(apparent_m > 0))
    throw new RangeError(
      `distance_m must be beyond the point the light seems to come from, ${-offset_m} m, got ${distance_m}`,
    );
  return apparent_m;
}

/** Intensity that a reading stands for. Throws RangeError outside its domain. */
export function intensityOfReading_cd({ illuminance_lx, ...at }: Throw & { readonly illuminance_lx: number }): number {
  requireNotNegative({ illuminance_lx });
  return illuminance_lx * apparentDistance_m(at) ** 2;
}

/** Light on a surface facing a lamp of known intensity. Throws RangeError outside its domain. */
export function illuminanceOfIntensity_lx({ intensity_cd, ...at }: Throw & { readonly intensity_cd: number }): number {
  requireNotNegative({ intensity_cd });
  return intensity_cd / apparentDistance_m(at) ** 2;
}

const OFFSET = {
  title: 'Light seems to come from',
  default: 0,
  note: 'behind the lamp, found by two readings; 0 for a bare lamp',
};
const COMMON = {
  holds:
    'From five times the largest dimension of the lamp on. Beams formed by a lens or reflector keep it only beyond where they have formed: read them twice.',
  sources: ['photometric-distance', 'ies-inverse-square'],
  cautions: ['intense-light'],
};

export const lampIntensity = law(intensityOfReading_cd, {
  id: 'lamp-intensity',
  title: 'Intensity from a reading',
  says: 'How strong a lamp is, from its light at one distance.',
  equation: 'I = E · (d + a)²',
  takes: { illuminance_lx: 'Illuminance read', distance_m: 'Read at', offset_m: OFFSET },
  gives: { intensity_cd: 'Intensity' },
  words: ['candela', 'candlepower', 'photometrics', 'fixture', 'throw'],
  example: { illuminance_lx: 20_000, distance_m: 3 },
  ...COMMON,
});

export const lampLight = law(illuminanceOfIntensity_lx, {
  id: 'lamp-light',
  title: 'Light of a lamp at a distance',
  says: 'What a lamp of known intensity gives on a surface that faces it.',
  equation: 'E = I / (d + a)²',
  takes: { intensity_cd: 'Intensity', distance_m: 'Distance', offset_m: OFFSET },
  gives: { illuminance_lx: 'Illuminance' },
  words: ['candela', 'candlepower', 'photometrics', 'fixture', 'throw', 'lux'],
  example: { intensity_cd: 180_000, distance_m: 1.5 },
  ...COMMON,
});
