/**
 * A lamp read at two distances: its intensity, and the point its light seems to come from.
 *
 *     E = I / (d + a)²        k = √(E₁/E₂)        a = (d₂ − k·d₁) / (k − 1)        I = E₁ · ((d₂ − d₁) / (k − 1))²
 *
 * E illuminance, lx      d distance from any mark on the lamp, m      a from that mark back to the apparent source, m
 *
 * Above 0 the source seems to lie behind the mark, as with a reflector or a lens near its lamp; below 0 in front of it, where
 * beams cross. A reading's error counts √(1 + k²)/(k − 1) times in I, so the far reading should be at twice the distance or
 * more. Nearer than the near reading the beam may not have formed, and nothing is said.
 *
 * @source offset-method distance against one over the root of the reading is a line, and its intercept the offset
 * @source distance-readings six readings of a small lamp
 */
import { requirePositive } from '../../../base/domain.ts';
import { law } from '../../law.ts';
import { illuminanceOfIntensity_lx } from './intensity.ts';

export interface TwoReadings {
  readonly nearIlluminance_lx: number;
  readonly nearDistance_m: number;
  readonly farIlluminance_lx: number;
  readonly farDistance_m: number;
}

export interface FittedLamp {
  readonly intensity_cd: number;
  readonly offset_m: number;
  /** How many times over an independent error of each reading counts in the intensity. */
  readonly errorFactor: number;
}

/**
 * The lamp that two readings along its axis describe. Throws RangeError unless the far reading is farther and weaker, both
 * positive.
 */
export function fitTwoReadings(readings: TwoReadings): FittedLamp {
  const { nearIlluminance_lx, nearDistance_m, farIlluminance_lx, farDistance_m } = readings;
  requirePositive({ nearIlluminance_lx, nearDistance_m, farIlluminance_lx, farDistance_m });
  if (farDistance_m <= nearDistance_m)
    throw new RangeError(`farDistance_m must be beyond the near reading, ${nearDistance_m} m, got ${farDistance_m}`);
  if (farIlluminance_lx >= nearIlluminance_lx)
    throw new RangeError(
      `farIlluminance_lx must be below the near reading, ${nearIlluminance_lx} lx, got ${farIlluminance_lx}: light that does not fall with distance has no such source`,
    );
  const ratio = Math.sqrt(nearIlluminance_lx / farIlluminance_lx);
  const apparent_m = (farDistance_m - nearDistance_m) / (ratio - 1);
  return {
    intensity_cd: nearIlluminance_lx * apparent_m ** 2,
    offset_m: apparent_m - nearDistance_m,
    errorFactor: Math.sqrt(1 + ratio ** 2) / (ratio - 1),
  };
}

/**
 * Light at a third distance, by two readings. Throws RangeError as `fitTwoReadings` does, and nearer than the near reading,
 * where readings farther out say nothing.
 */
export function illuminanceByReadings_lx({
  distance_m,
  ...readings
}: TwoReadings & { readonly distance_m: number }): number {
  const { intensity_cd, offset_m } = fitTwoReadings(readings);
  requirePositive({ distance_m });
  if (distance_m < readings.nearDistance_m)
    throw new RangeError(
      `distance_m must not be nearer than the near reading, ${readings.nearDistance_m} m, got ${distance_m}: read the lamp there`,
    );
  return illuminanceOfIntensity_lx({ intensity_cd, distance_m, offset_m });
}

const READINGS = {
  nearIlluminance_lx: 'Near reading',
  nearDistance_m: 'Read at',
  farIlluminance_lx: 'Far reading',
  farDistance_m: 'Read at',
};
const COMMON = {
  holds:
    'Along the axis of the beam, from the near reading outward, with the lamp left as it was. Readings at twice the distance or more apart; stray light shaded off.',
  sources: ['offset-method', 'photometric-distance'],
  cautions: ['intense-light'],
};
const EXAMPLE = { nearIlluminance_lx: 40_000, nearDistance_m: 2, farIlluminance_lx: 12_000, farDistance_m: 4 };

export const twoReadings = law(fitTwoReadings, {
  id: 'two-readings',
  title: 'A lamp from two readings',
  says: 'How strong a lamp is and where its light seems to come from, by its light at two distances.',
  equation: 'k = √(E₁/E₂), a = (d₂ − k·d₁)/(k − 1), I = E₁ · (d₁ + a)²',
  takes: READINGS,
  gives: {
    intensity_cd: 'Intensity',
    offset_m: 'Light seems to come from behind the mark',
    errorFactor: { title: 'A reading’s error counts', as: 'ratio' },
  },
  words: ['virtual source', 'fresnel', 'reflector', 'falloff', 'meter', 'offset'],
  example: EXAMPLE,
  ...COMMON,
});

export const twoReadingsLight = law(illuminanceByReadings_lx, {
  id: 'two-readings-light',
  title: 'Light at a third distance',
  says: 'What a lamp read at two distances gives at another, farther than the nearer of them.',
  equation: 'E = I / (d + a)²',
  takes: { ...READINGS, distance_m: 'Wanted at' },
  gives: { illuminance_lx: 'Illuminance there' },
  words: ['virtual source', 'fresnel', 'reflector', 'falloff', 'move the lamp'],
  example: { ...EXAMPLE, distance_m: 3 },
  ...COMMON,
});
