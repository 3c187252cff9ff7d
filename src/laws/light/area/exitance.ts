/**
 * How bright a lit or shining surface is: luminance and luminous exitance, diffusion lit from behind, the mouth of a lamp.
 *
 *     M = π·L        L = τ·Φ/(π·A)        L = I/A
 *
 * M luminous exitance, lm/m²        L luminance, cd/m²        Φ flux that reaches the diffusion, lm        A area, m²
 * τ share of the flux that comes out at the front        I intensity, cd
 *
 * Matte surfaces are equally bright from every side, and evenly lit here. The mouth of a lamp is brighter in places than
 * its mean, and a reflector or lens shows its source in parts of it.
 *
 * @source cie-vocabulary exitance and luminance of a Lambertian surface
 */
import { requireNotNegative, requirePositive, requireWithin } from '../../../base/domain.ts';
import { law } from '../../law.ts';

/** Exitance of a matte surface of this luminance. Throws RangeError for a negative luminance. */
export function exitanceOfLuminance_lm_per_m2({
  luminance_cd_per_m2,
}: {
  readonly luminance_cd_per_m2: number;
}): number {
  requireNotNegative({ luminance_cd_per_m2 });
  return Math.PI * luminance_cd_per_m2;
}

/** Luminance of a matte surface of this exitance. Throws RangeError for a negative exitance. */
export function luminanceOfExitance_cd_per_m2({ exitance_lm_per_m2 }: { readonly exitance_lm_per_m2: number }): number {
  requireNotNegative({ exitance_lm_per_m2 });
  return exitance_lm_per_m2 / Math.PI;
}

/** Luminance of diffusion lit from behind. Throws RangeError outside its domain. */
export function luminanceOfDiffusion_cd_per_m2(given: {
  readonly flux_lm: number;
  readonly transmittanceFraction: number;
  readonly width_m: number;
  readonly height_m: number;
}): number {
  const { flux_lm, transmittanceFraction, width_m, height_m } = given;
  requireNotNegative({ flux_lm });
  requireWithin(0, 1, { transmittanceFraction });
  requirePositive({ width_m, height_m });
  return (transmittanceFraction * flux_lm) / (width_m * height_m) / Math.PI;
}

/** Mean luminance of a round opening seen along its axis. Throws RangeError outside its domain. */
export function luminanceOfOpening_cd_per_m2(given: {
  readonly illuminance_lx: number;
  readonly measuredAt_m: number;
  readonly openingDiameter_m: number;
}): number {
  const { illuminance_lx, measuredAt_m, openingDiameter_m } = given;
  requireNotNegative({ illuminance_lx });
  requirePositive({ measuredAt_m, openingDiameter_m });
  return (illuminance_lx * measuredAt_m ** 2) / ((Math.PI / 4) * openingDiameter_m ** 2);
}

const WORDS = ['luminance', 'brightness', 'nits', 'lambertian', 'matte'];

export const exitance = law(exitanceOfLuminance_lm_per_m2, {
  id: 'exitance',
  title: 'Light that leaves a matte surface',
  says: 'How much light a square metre of a matte surface sends out in all, from how bright it looks.',
  equation: 'M = π · L',
  takes: { luminance_cd_per_m2: 'Luminance' },
  gives: { exitance_lm_per_m2: 'Luminous exitance' },
  holds: 'A matte surface, equally bright from every side.',
  sources: ['cie-vocabulary'],
  words: WORDS,
  example: { luminance_cd_per_m2: 12_000 },
});

export const exitanceLuminance = law(luminanceOfExitance_cd_per_m2, {
  id: 'exitance-luminance',
  title: 'Brightness from the light that leaves',
  says: 'How bright a matte surface looks that sends out so much light a square metre.',
  equation: 'L = M / π',
  takes: { exitance_lm_per_m2: 'Luminous exitance' },
  gives: { luminance_cd_per_m2: 'Luminance' },
  holds: 'A matte surface, equally bright from every side.',
  sources: ['cie-vocabulary'],
  words: WORDS,
  example: { exitance_lm_per_m2: 30_000 },
});

export const diffusionLuminance = law(luminanceOfDiffusion_cd_per_m2, {
  id: 'diffusion-luminance',
  title: 'Brightness of diffusion lit from behind',
  says: 'How bright a frame of diffusion looks, from the light that reaches it.',
  equation: 'L = τ · Φ / (π · A)',
  takes: {
    flux_lm: { title: 'Light that reaches the diffusion', note: 'not what misses the frame' },
    transmittanceFraction: { title: 'Share that comes out at the front', as: 'fraction', note: 'measure it' },
    width_m: 'Width of the frame',
    height_m: 'Height of the frame',
  },
  gives: { luminance_cd_per_m2: 'Luminance' },
  holds: 'Evenly lit, matte diffusion. A lamp close behind makes a hot middle.',
  sources: ['cie-vocabulary'],
  cautions: ['heat'],
  words: [...WORDS, 'silk', 'frost', 'softbox'],
  example: { flux_lm: 20_000, transmittanceFraction: 0.5, width_m: 1.2, height_m: 0.9 },
});

export const openingLuminance = law(luminanceOfOpening_cd_per_m2, {
  id: 'opening-luminance',
  title: 'Brightness of a lamp’s mouth',
  says: 'How bright it is to look into a lamp, from what it gives at a distance.',
  equation: 'L = E · d² / (π · D² / 4)',
  takes: {
    illuminance_lx: 'Illuminance measured',
    measuredAt_m: { title: 'Measured at', note: 'beyond where the beam has formed' },
    openingDiameter_m: 'Diameter of the opening',
  },
  gives: { luminance_cd_per_m2: 'Mean luminance of the opening' },
  holds: 'The mean over the opening: parts of it can be far brighter. Nobody looks into it to find out.',
  sources: ['cie-vocabulary'],
  cautions: ['intense-light'],
  words: [...WORDS, 'glare', 'eye', 'fixture'],
  example: { illuminance_lx: 200_000, measuredAt_m: 1, openingDiameter_m: 0.1 },
});
