/**
 * Noise in light from noise in code values: at each level times the slope of the curve there, then a straight line through
 * the variances, as photons and reading make it.
 *
 *     variance = r + p·L, neither below 0
 *
 * r of reading        p of photons        L light
 *
 * @source sensor-noise-article shot noise grows as the root of the light, read noise is the same everywhere
 */
import type { NoiseLevel } from './noise.ts';
import type { NoiseReading } from './types.ts';

export interface NoiseInLight {
  /** Variance of a pixel at this light; 0 where nothing is known. */
  readonly varianceAt: (light: number) => number;
  readonly reading?: NoiseReading;
}

interface Level {
  readonly light: number;
  readonly variance: number;
  readonly weight: number;
}

function lightOfLevel({ code, deviation_codes, pixels }: NoiseLevel, table: Float32Array): Level {
  const at = Math.round(code);
  const reach = Math.max(1, Math.round(deviation_codes));
  const [low, high] = [Math.max(0, at - reach), Math.min(table.length - 1, at + reach)];
  const slope = (table[high]! - table[low]!) / (high - low);
  const variance = (deviation_codes * slope) ** 2;
  // How well a variance is known goes with itself: each level counts by how many pixels it has, over its square.
  return { light: Math.max(0, table[at]!), variance, weight: pixels / Math.max(variance, 1e-20) ** 2 };
}

/** The line through variances that lies above 0 at both ends. */
function lineThrough(levels: readonly Level[]): { readonly read: number; readonly photon: number } {
  let [w, x, y, xx, xy] = [0, 0, 0, 0, 0];
  for (const { light, variance, weight } of levels) {
    w += weight;
    x += weight * light;
    y += weight * variance;
    xx += weight * light * light;
    xy += weight * light * variance;
  }
  const whole = w * xx - x * x;
  const photon = whole > 1e-12 * w * xx ? (w * xy - x * y) / whole : 0;
  const read = (y - photon * x) / w;
  if (photon < 0) return { read: y / w, photon: 0 };
  return read < 0 ? { read: 0, photon: xy / xx } : { read, photon };
}

/** The noise of a clip in light, and at its middle. */
export function noiseReadingOf(levels: readonly NoiseLevel[], table: Float32Array, middle: number): NoiseInLight {
  if (levels.length === 0) return { varianceAt: () => 0 };
  const inLight = levels.map((level) => lightOfLevel(level, table));
  const { read, photon } = lineThrough(inLight);
  const varianceAt = (light: number): number => read + photon * Math.max(0, light);
  return {
    varianceAt,
    reading: {
      deviationFraction: middle > 0 ? Math.sqrt(varianceAt(middle)) / middle : 0,
      levels: inLight.map(({ light, variance }) => ({ light, deviation: Math.sqrt(variance) })),
    },
  };
}
