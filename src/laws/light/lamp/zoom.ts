/**
 * A lamp between its stated settings, spot to flood: the intensity at a beam angle, on straight lines between settings drawn
 * with both scales logarithmic.
 *
 *     ln I = ln I₁ + (ln I₂ − ln I₁) · (ln θ − ln θ₁) / (ln θ₂ − ln θ₁)
 *
 * A lamp whose light stays the same while its beam widens has I in proportion to 1/θ², which such a line holds exactly. Real
 * lamps lose light towards spot; with a setting stated in between they are followed closer. Beyond the stated settings
 * nothing is said.
 *
 * @source zoom-practice the interpolation
 */
import { requirePositive } from '../../../base/domain.ts';
import { law } from '../../law.ts';
import { BELL_RATIO } from './lobe.ts';

/** A lamp as stated at one setting. */
export interface LampSetting {
  readonly beamAngle_deg: number;
  readonly intensity_cd: number;
  /** Where none is stated the beam is taken for a bell. */
  readonly fieldAngle_deg?: number;
}

export interface LampAtSetting {
  readonly intensity_cd: number;
  readonly fieldAngle_deg: number;
}

/** Between two values in equal ratios. */
const between = (from: number, to: number, share: number): number => from * (to / from) ** share;

/**
 * A lamp at a beam angle between stated settings. Throws RangeError unless settings are at least two, ascend in beam angle,
 * are positive, and reach round the angle wanted.
 */
export function lampAtBeam(settings: readonly LampSetting[], beamAngle_deg: number): LampAtSetting {
  requirePositive({ beamAngle_deg });
  if (settings.length < 2) throw new RangeError(`settings must be at least 2, got ${settings.length}`);
  for (const [i, setting] of settings.entries()) {
    requirePositive({
      [`settings[${i}].beamAngle_deg`]: setting.beamAngle_deg,
      [`settings[${i}].intensity_cd`]: setting.intensity_cd,
    });
    const before = settings[i - 1];
    if (before && setting.beamAngle_deg <= before.beamAngle_deg)
      throw new RangeError(
        `settings[${i}].beamAngle_deg must be above ${before.beamAngle_deg}, got ${setting.beamAngle_deg}`,
      );
  }
  const [first, last] = [settings[0]!, settings.at(-1)!];
  if (beamAngle_deg < first.beamAngle_deg || beamAngle_deg > last.beamAngle_deg)
    throw new RangeError(
      `beamAngle_deg must be within the settings, ${first.beamAngle_deg} to ${last.beamAngle_deg}, got ${beamAngle_deg}`,
    );
  const next = Math.max(
    1,
    settings.findIndex((setting) => beamAngle_deg <= setting.beamAngle_deg),
  );
  const [narrow, wide] = [settings[next - 1]!, settings[next]!];
  const share = Math.log(beamAngle_deg / narrow.beamAngle_deg) / Math.log(wide.beamAngle_deg / narrow.beamAngle_deg);
  const ratioOf = ({ beamAngle_deg: beam_deg, fieldAngle_deg }: LampSetting) =>
    fieldAngle_deg === undefined ? BELL_RATIO : fieldAngle_deg / beam_deg;
  return {
    intensity_cd: between(narrow.intensity_cd, wide.intensity_cd, share),
    fieldAngle_deg: beamAngle_deg * between(ratioOf(narrow), ratioOf(wide), share),
  };
}

/** Intensity between two stated settings. Throws RangeError as `lampAtBeam` does. */
export function spotToFlood_cd(given: {
  readonly spotBeamAngle_deg: number;
  readonly spotIntensity_cd: number;
  readonly floodBeamAngle_deg: number;
  readonly floodIntensity_cd: number;
  readonly beamAngle_deg: number;
}): number {
  const { spotBeamAngle_deg, spotIntensity_cd, floodBeamAngle_deg, floodIntensity_cd, beamAngle_deg } = given;
  requirePositive({ spotBeamAngle_deg, spotIntensity_cd, floodBeamAngle_deg, floodIntensity_cd });
  if (floodBeamAngle_deg <= spotBeamAngle_deg)
    throw new RangeError(`floodBeamAngle_deg must be above the spot, ${spotBeamAngle_deg}, got ${floodBeamAngle_deg}`);
  const settings = [
    { beamAngle_deg: spotBeamAngle_deg, intensity_cd: spotIntensity_cd },
    { beamAngle_deg: floodBeamAngle_deg, intensity_cd: floodIntensity_cd },
  ];
  return lampAtBeam(settings, beamAngle_deg).intensity_cd;
}

export const spotToFlood = law(spotToFlood_cd, {
  id: 'spot-to-flood',
  title: 'A lamp between spot and flood',
  says: 'How strong a focusable lamp is at a beam angle between two that are stated.',
  equation: 'I = I₁ · (I₂/I₁)^x, x = ln(θ/θ₁) / ln(θ₂/θ₁)',
  takes: {
    spotBeamAngle_deg: 'Beam angle at spot',
    spotIntensity_cd: 'Intensity at spot',
    floodBeamAngle_deg: 'Beam angle at flood',
    floodIntensity_cd: 'Intensity at flood',
    beamAngle_deg: 'Beam angle wanted',
  },
  gives: { intensity_cd: 'Intensity' },
  holds:
    'Between the two settings only. Most lamps are a little weaker midway than this where much light is lost at spot.',
  sources: ['zoom-practice'],
  words: ['fresnel', 'zoom', 'focus', 'flood', 'spot', 'photometrics'],
  example: {
    spotBeamAngle_deg: 10,
    spotIntensity_cd: 320_000,
    floodBeamAngle_deg: 50,
    floodIntensity_cd: 24_000,
    beamAngle_deg: 25,
  },
});
