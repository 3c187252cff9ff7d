/**
 * A lamp known by its beam and field angle: how its light falls off to the side, and how much light it is in all.
 *
 *     s(θ) = exp(−ln 2 · (2θ/θb)^p)        p = ln(ln 10 / ln 2) / ln(θf/θb)        Φ = 2π · I ∫ s sin θ dθ, 0 to 90°
 *
 * s share of the intensity on the axis     θ angle from the axis     θb beam angle, to half     θf field angle, to a tenth
 *
 * The lobe is 1 on the axis, exactly ½ at half the beam angle and exactly 0.1 at half the field angle; between and beyond it
 * is a smooth guess. Where no field angle is stated, p = 2 (a bell) gives θf = θb · √(log₂ 10), 1.823 of the beam. Lamps with
 * hard edges, hot centres or rings are not so shaped: their measured file is better.
 *
 * @source beam-angle-entry half and a tenth
 * @source stage-angles half and a tenth, as stage lamps are measured
 * @source lobe-practice the shape between them
 */
import { requireNotNegative, requirePositive, requireWithin } from '../../../base/domain.ts';
import { law } from '../../law.ts';

const RADIANS_per_deg = Math.PI / 180;

/** Field over beam angle of a bell-shaped lobe: √(log₂ 10). @source lobe-practice */
export const BELL_RATIO = Math.sqrt(Math.log2(10));

export interface LobeAngles {
  readonly beamAngle_deg: number;
  readonly fieldAngle_deg: number;
}

function requireLobe({ beamAngle_deg, fieldAngle_deg }: LobeAngles): void {
  requirePositive({ beamAngle_deg, fieldAngle_deg });
  requireWithin(0, 360, { beamAngle_deg, fieldAngle_deg });
  if (fieldAngle_deg <= beamAngle_deg)
    throw new RangeError(`fieldAngle_deg must be above the beam angle, ${beamAngle_deg}, got ${fieldAngle_deg}`);
}

/** Field angle of a bell-shaped lobe, to be used where none is stated. Throws RangeError unless the beam is 0 to 180°. */
export function usualFieldAngle_deg({ beamAngle_deg }: { readonly beamAngle_deg: number }): number {
  requirePositive({ beamAngle_deg });
  requireWithin(0, 180, { beamAngle_deg });
  return BELL_RATIO * beamAngle_deg;
}

/** The exponent of the lobe through both angles; 2 is a bell, more is flatter with a harder edge. */
export function lobeExponent(angles: LobeAngles): number {
  requireLobe(angles);
  return Math.log(Math.log(10) / Math.LN2) / Math.log(angles.fieldAngle_deg / angles.beamAngle_deg);
}

/** Share of the axis's intensity off the axis. Throws RangeError unless the field is wider than the beam. */
export function lobeShare({ offAxis_deg, ...angles }: LobeAngles & { readonly offAxis_deg: number }): number {
  requireWithin(0, 180, { offAxis_deg });
  return Math.exp(-Math.LN2 * ((2 * offAxis_deg) / angles.beamAngle_deg) ** lobeExponent(angles));
}

/** Share and loss in stops off the axis. Throws RangeError as `lobeShare` does. */
export function lobeFalloff(given: LobeAngles & { readonly offAxis_deg: number }): {
  readonly shareFraction: number;
  readonly loss_stops: number;
} {
  const { offAxis_deg, ...angles } = given;
  const shareFraction = lobeShare(given);
  // Not log2 of the share, which is 0 where the lobe has long faded.
  return { shareFraction, loss_stops: ((2 * offAxis_deg) / angles.beamAngle_deg) ** lobeExponent(angles) };
}

/** Panels of the quadrature; even. Against closed forms it is right to 1 part in 10⁶ from beams of half a degree on. */
const PANELS = 2000;
/** Where a lobe has faded to this share it adds nothing more. */
const FADED = 1e-12;

/**
 * Light of a round lobe over the half sphere before the lamp, which is to be held against the lumens of the lamp in it.
 * Throws RangeError outside its domain.
 */
export function lobeFlux_lm({ intensity_cd, ...angles }: LobeAngles & { readonly intensity_cd: number }): number {
  requireNotNegative({ intensity_cd });
  const exponent = lobeExponent(angles);
  const half = (angles.beamAngle_deg / 2) * RADIANS_per_deg;
  const end = Math.min(Math.PI / 2, half * (-Math.log(FADED) / Math.LN2) ** (1 / exponent));
  const height = (theta: number) => Math.exp(-Math.LN2 * (theta / half) ** exponent) * Math.sin(theta);
  let sum = height(0) + height(end);
  for (let i = 1; i < PANELS; i += 1) sum += (i % 2 === 0 ? 2 : 4) * height((end * i) / PANELS);
  return (2 * Math.PI * intensity_cd * sum * end) / (3 * PANELS);
}

/** Width of a beam or field on a surface that faces the lamp. Throws RangeError unless the angle is 0 to below 180°. */
export function beamWidth_m({
  distance_m,
  spread_deg,
}: {
  readonly distance_m: number;
  readonly spread_deg: number;
}): number {
  requirePositive({ distance_m, spread_deg });
  requireWithin(0, 179, { spread_deg });
  return 2 * distance_m * Math.tan((spread_deg / 2) * RADIANS_per_deg);
}

const ANGLES = {
  beamAngle_deg: { title: 'Beam angle', note: 'to half of the brightest, edge to edge' },
  fieldAngle_deg: { title: 'Field angle', note: 'to a tenth of the brightest, edge to edge' },
};

export const usualFieldAngle = law(usualFieldAngle_deg, {
  id: 'usual-field-angle',
  title: 'Field angle of a bell-shaped beam',
  says: 'The field angle to reckon with where a lamp states only its beam angle.',
  equation: 'θf = θb · √(log₂ 10) = 1.823 · θb',
  takes: { beamAngle_deg: ANGLES.beamAngle_deg },
  gives: { fieldAngle_deg: 'Field angle' },
  holds: 'A beam that falls off as a bell. Hard-edged spots have field angles much nearer to their beam angle.',
  sources: ['lobe-practice'],
  words: ['beam', 'field', 'spread', 'photometrics'],
  example: { beamAngle_deg: 20 },
});

export const lobe = law(lobeFalloff, {
  id: 'beam-falloff',
  title: 'Falloff across a beam',
  says: 'How much less light there is beside the middle of a beam.',
  equation: 's = 2^−(2θ/θb)^p, p = ln(ln 10 / ln 2) / ln(θf/θb)',
  takes: { ...ANGLES, offAxis_deg: { title: 'Away from the axis', note: 'as an angle seen from the lamp' } },
  gives: { shareFraction: { title: 'Share of the middle', as: 'fraction' }, loss_stops: 'Loss in stops' },
  holds: 'A smooth round beam: exactly half at the beam’s edge and a tenth at the field’s, a guess elsewhere.',
  sources: ['beam-angle-entry', 'lobe-practice'],
  words: ['beam angle', 'field angle', 'edge', 'evenness', 'photometrics'],
  example: { beamAngle_deg: 20, fieldAngle_deg: 35, offAxis_deg: 5 },
});

export const lobeFlux = law(lobeFlux_lm, {
  id: 'beam-lumens',
  title: 'Lumens in a beam',
  says: 'How much light a beam is in all, to hold against the lumens of the lamp in it.',
  equation: 'Φ = 2π · I · ∫ s(θ) · sin θ dθ',
  takes: { intensity_cd: 'Intensity on the axis', ...ANGLES },
  gives: { flux_lm: 'Light of the beam' },
  holds:
    'A smooth round beam. More lumens than the lamp is rated for mean that a reading, a distance or an angle is wrong.',
  sources: ['beam-angle-entry', 'lobe-practice'],
  words: ['lumens', 'candela', 'output', 'sanity check', 'photometrics'],
  example: { intensity_cd: 180_000, beamAngle_deg: 20, fieldAngle_deg: 36.5 },
});

export const beamWidth = law(beamWidth_m, {
  id: 'beam-width',
  title: 'Width of a beam at a distance',
  says: 'How wide a pool of light a lamp makes on a surface that faces it.',
  equation: 'w = 2 · d · tan(θ/2)',
  takes: { distance_m: 'Distance', spread_deg: { title: 'Beam or field angle', note: 'edge to edge' } },
  gives: { width_m: 'Width of the pool' },
  holds: 'From where the beam seems to come; a lens lamp’s own size adds to it close by.',
  sources: ['pool-factors'],
  words: ['pool', 'coverage', 'throw', 'diameter'],
  example: { distance_m: 3, spread_deg: 20 },
});
