/** A photometric file in figures and words: its light, its beam, its opening, for the command and the screens alike. */
import { sayShown, showQuantity, type UnitSystem } from '../base/quantity.ts';
import { FAR_SIZES } from '../laws/light/area/nearness.ts';
import { intensityTowards_cd, peakOf } from '../laws/light/photometry/intensity.ts';
import { largestDimension_m, type Photometry } from '../laws/light/photometry/photometry.ts';
import { principalSpreads, type PlaneSpreads, type Spread } from '../laws/light/photometry/spread.ts';

/** What a file comes to, in the form of `longsecond.light/1`. */
export interface PhotometryFacts {
  readonly name: string;
  readonly format: string;
  readonly symmetry: string;
  readonly planeCount: number;
  readonly gammaCount: number;
  readonly flux_lm: number;
  readonly ratedFlux_lm?: number;
  readonly inputPower_W?: number;
  readonly efficacy_lm_per_W?: number;
  readonly peak: { readonly intensity_cd: number; readonly plane_deg: number; readonly gamma_deg: number };
  readonly onAxis_cd: number;
  readonly beam: { readonly c0_deg?: number; readonly c90_deg?: number };
  readonly field: { readonly c0_deg?: number; readonly c90_deg?: number };
  readonly opening: { readonly shape: string; readonly width_m: number; readonly length_m: number; readonly height_m: number };
  readonly pointFrom_m: number;
  readonly labels: readonly { readonly keyword: string; readonly text: string }[];
  readonly notices: readonly { readonly code: string; readonly what: string; readonly line?: number }[];
} // prettier-ignore

const widths = (c0: Spread | undefined, c90: Spread | undefined) => ({
  ...(c0 ? { c0_deg: c0.width_deg } : {}),
  ...(c90 ? { c90_deg: c90.width_deg } : {}),
});

export function photometryFacts(name: string, photometry: Photometry): PhotometryFacts {
  const { version, symmetry, planes_deg, gammas_deg, flux_lm, ratedFlux_lm, inputPower_W, opening, labels, notices } = photometry; // prettier-ignore
  const { c0, c90 }: { readonly c0: PlaneSpreads; readonly c90: PlaneSpreads } = principalSpreads(photometry);
  const { intensity_cd, plane_deg, gamma_deg } = peakOf(photometry);
  return {
    name,
    format: version,
    symmetry,
    planeCount: planes_deg.length,
    gammaCount: gammas_deg.length,
    flux_lm,
    ...(ratedFlux_lm === undefined ? {} : { ratedFlux_lm }),
    ...(inputPower_W === undefined ? {} : { inputPower_W }),
    ...(inputPower_W === undefined || !(inputPower_W > 0) ? {} : { efficacy_lm_per_W: flux_lm / inputPower_W }),
    peak: { intensity_cd, plane_deg, gamma_deg },
    onAxis_cd: intensityTowards_cd(photometry, { plane_deg: 0, gamma_deg: 0 }),
    beam: widths(c0.beam, c90.beam),
    field: widths(c0.field, c90.field),
    opening: { ...opening },
    pointFrom_m: FAR_SIZES * largestDimension_m(opening),
    labels: labels.map(({ keyword, text }) => ({ keyword, text })),
    notices: notices.map(({ code, what, line }) => ({ code, what, ...(line === undefined ? {} : { line }) })),
  };
}

const SYMMETRIES: Readonly<Record<string, string>> = {
  rotational: 'the same all round',
  quadrants: 'four quarters alike',
  'about-c0': 'mirrored about C0–C180',
  'about-c90': 'mirrored about C90–C270',
  none: 'every side measured',
};

/** Where lamps of the table-top are usually read. */
const READ_AT_m = 3;

const angles = ({ c0_deg, c90_deg }: PhotometryFacts['beam'], share: string): string => {
  const word = (deg: number | undefined) => (deg === undefined ? `never down to ${share}` : `${deg.toFixed(1)}°`);
  return `${word(c0_deg)} across C0, ${word(c90_deg)} across C90`;
};

export interface PhotometryRow {
  readonly title: string;
  readonly says: string;
}

/** What there is to say of a file, a line each. */
export function photometryRows(facts: PhotometryFacts, system: UnitSystem): readonly PhotometryRow[] {
  const q = (kind: 'length' | 'illuminance' | 'power', value: number) => sayShown(showQuantity(kind, value, { system }));
  const lm = (value: number) => `${Math.round(value)} lm`;
  const { flux_lm, ratedFlux_lm, inputPower_W, efficacy_lm_per_W, peak, onAxis_cd, opening } = facts;
  const rated = ratedFlux_lm === undefined || !(ratedFlux_lm > 0) ? '' : `, ${Math.round((100 * flux_lm) / ratedFlux_lm)} % of the ${lm(ratedFlux_lm)} its lamps are rated at`;
  const sizes = [opening.width_m, opening.length_m, opening.height_m].filter((size) => size > 0).map((size) => q('length', size));
  const row = (title: string, says: string): PhotometryRow => ({ title, says });
  return [
    row('Light', `${lm(flux_lm)}${rated}`),
    ...(inputPower_W === undefined ? [] : [row('Draws', `${q('power', inputPower_W)}${efficacy_lm_per_W === undefined ? '' : `, ${Math.round(efficacy_lm_per_W)} lm/W`}`)]),
    row('Peak', `${Math.round(peak.intensity_cd)} cd at C ${peak.plane_deg}°, γ ${peak.gamma_deg}°`),
    row('On its axis', `${Math.round(onAxis_cd)} cd: ${q('illuminance', onAxis_cd / READ_AT_m ** 2)} at ${q('length', READ_AT_m)}`),
    row('Beam, half', angles(facts.beam, 'half')),
    row('Field, tenth', angles(facts.field, 'a tenth')),
    row('Opening', opening.shape === 'point' || sizes.length === 0 ? 'a point' : `${opening.shape.replaceAll('-', ' ')}, ${sizes.join(' × ')}; a point to 1 % from ${q('length', facts.pointFrom_m)} on`),
    row('Measured', `${facts.planeCount} × ${facts.gammaCount} angles, ${SYMMETRIES[facts.symmetry] ?? facts.symmetry}`),
  ];
} // prettier-ignore

/** A notice with its line, as a sentence. */
export function sayNotice({ what, line }: PhotometryFacts['notices'][number]): string {
  return `${line === undefined ? '' : `line ${line}: `}${what.replace(/\.$/, '')}.`;
}

/** What the file says of itself, as written in it. */
export function labelWords({ labels }: PhotometryFacts): readonly string[] {
  return labels.flatMap(({ keyword, text }) => (text.trim() === '' ? [] : [keyword === '' ? text : `${keyword}: ${text}`]));
} // prettier-ignore
