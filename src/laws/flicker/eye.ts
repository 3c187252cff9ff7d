/**
 * How small a flicker an eye can see, by its rate: sensitivity, one over the least amplitude seen.
 *
 *     impulse response   S = K·|(1 + i2πfτ)⁻⁹ − ζ·(1 + i2πfκτ)⁻¹⁰|      τ 4.94 ms, κ 1.33, ζ 0.9, K for a peak of 200
 *     noise model        S = (√2/2k)·√(X²·T / (1/(ηpE) + Φ₀/(H₁·(1 − H₂F))²))
 *
 * f rate on the screen, Hz      X angle that is summed over, deg      E light on the retina, Td      H₁, H₂ slow parts of the eye
 *
 * Both fall at low rates for a change of a whole, flat field. Edges, cuts and loops show slow changes all the same, so
 * no credit is given below the peak: there the threshold stays as low as at its lowest. The larger of the two counts.
 *
 * @source transient-response the impulse response and its constants
 * @source eye-choices ζ and the peak, chosen here; the flat threshold below it
 * @source noise-sensitivity the noise model with time, and how a field's size enters it
 */
import { requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

const RESPONSE = { lag_s: 0.00494, slower: 1.33, stages: 9, slowStages: 10 } as const;
/** @source eye-choices */
const TRANSIENCE = 0.9;
const PEAK_SENSITIVITY = 200;

function responseAt(rate_Hz: number): number {
  const turn = 2 * Math.PI * rate_Hz * RESPONSE.lag_s;
  const slowTurn = turn * RESPONSE.slower;
  const size = (1 + turn ** 2) ** (-RESPONSE.stages / 2);
  const slowSize = TRANSIENCE * (1 + slowTurn ** 2) ** (-RESPONSE.slowStages / 2);
  const angle = RESPONSE.stages * Math.atan(turn) - RESPONSE.slowStages * Math.atan(slowTurn);
  return Math.sqrt(Math.max(0, size ** 2 + slowSize ** 2 - 2 * size * slowSize * Math.cos(angle)));
}

/** Highest value of a curve with one peak between two rates, and where it is. */
function peakOf(curve: (rate_Hz: number) => number): { readonly peak_Hz: number; readonly peak: number } {
  let [low, high] = [0, 60];
  for (let step = 0; step < 80; step += 1) {
    const third = (high - low) / 3;
    if (curve(low + third) < curve(high - third)) low += third;
    else high -= third;
  }
  return { peak_Hz: (low + high) / 2, peak: curve((low + high) / 2) };
}

const RESPONSE_PEAK = peakOf(responseAt).peak;

/** Sensitivity by the impulse response, 200 at its peak. Throws RangeError for a rate below 0. */
export function responseSensitivity({ screen_Hz }: { readonly screen_Hz: number }): number {
  requireNotNegative({ screen_Hz });
  return (PEAK_SENSITIVITY * responseAt(screen_Hz)) / RESPONSE_PEAK;
}

export interface Viewing {
  readonly luminance_cd_per_m2?: number;
  /** Angle that the picture fills, side of a square. */
  readonly field_deg?: number;
}

/** A bright monitor, filling a fair part of the view: more sensitive than a dark cinema. @source eye-choices */
export const VIEWING = { luminance_cd_per_m2: 50, field_deg: 20 } as const;

/** Constants of the noise model, named as its author names them. @source noise-sensitivity */
const EYE = { k: 3, T: 0.1, eta: 0.03, phi0: 3e-8, u0: 7, mostAngle: 12, mostCycles: 15, photons: 1.2e6 } as const;

/** Sensitivity by the noise model. Throws RangeError for a rate below 0, no light or no field. */
export function noiseSensitivity(given: Viewing & { readonly screen_Hz: number }): number {
  const { screen_Hz, luminance_cd_per_m2 = VIEWING.luminance_cd_per_m2, field_deg = VIEWING.field_deg } = given;
  requireNotNegative({ screen_Hz });
  requirePositive({ luminance_cd_per_m2, field_deg });
  const pupil_mm = 5 - 3 * Math.tanh(0.4 * Math.log10((luminance_cd_per_m2 * field_deg ** 2) / 1600));
  const rim = 1 - (pupil_mm / 9.7) ** 2 + (pupil_mm / 12.4) ** 4;
  const retina = (Math.PI / 4) * pupil_mm ** 2 * luminance_cd_per_m2 * rim;
  // Disc of the square field's area.
  const disc = (2 * field_deg) / Math.sqrt(Math.PI);
  const quick_s = 0.032 / (1 + 0.55 * Math.log(1 + ((1 + disc) ** 0.6 * retina) / 3.5));
  const slow_s = 0.018 / (1 + 0.37 * Math.log(1 + ((1 + disc / 3.2) ** 5 * retina) / 120));
  const quick = (1 + (2 * Math.PI * screen_Hz * quick_s) ** 2) ** -3.5;
  const slow = (1 + (2 * Math.PI * screen_Hz * slow_s) ** 2) ** -2;
  const cycles = 1 / (2 * field_deg);
  const inhibition = 1 - Math.sqrt(-Math.expm1(-((cycles / EYE.u0) ** 2)));
  const angleSquared = 1 / (1 / field_deg ** 2 + 1 / EYE.mostAngle ** 2 + (cycles / EYE.mostCycles) ** 2);
  const noise = 1 / (EYE.eta * EYE.photons * retina) + EYE.phi0 / (quick * (1 - slow * inhibition)) ** 2;
  return (Math.SQRT2 / (2 * EYE.k)) * Math.sqrt((angleSquared * EYE.T) / noise);
}

export interface EyeThreshold {
  /** Least amplitude over the mean that is seen. */
  readonly amplitudeFraction: number;
  /** The same from dimmest to brightest. */
  readonly peakToPeak_stops: number;
}

/** Stops from dimmest to brightest of a depth, (max − min)/(max + min). */
export function stopsOfDepth(depthFraction: number): number {
  return Math.log2((1 + depthFraction) / (1 - depthFraction));
}

/** The sensitivity that counts, by rate, for one way of viewing; constant below its peak. Throws RangeError as `noiseSensitivity`. */
export function eyeSensitivity(viewing: Viewing = {}): (screen_Hz: number) => number {
  const curves = [
    (screen_Hz: number) => responseSensitivity({ screen_Hz }),
    (screen_Hz: number) => noiseSensitivity({ ...viewing, screen_Hz }),
  ];
  const peaks = curves.map(peakOf);
  return (screen_Hz) =>
    Math.max(...curves.map((curve, i) => (screen_Hz <= peaks[i]!.peak_Hz ? peaks[i]!.peak : curve(screen_Hz))));
}

/** Least flicker that is seen at a rate on the screen. Throws RangeError for a rate below 0, no light or no field. */
export function flickerThreshold(given: Viewing & { readonly screen_Hz: number }): EyeThreshold {
  const { screen_Hz, ...viewing } = given;
  requireNotNegative({ screen_Hz });
  const amplitudeFraction = Math.min(1, 1 / eyeSensitivity(viewing)(screen_Hz));
  return { amplitudeFraction, peakToPeak_stops: stopsOfDepth(Math.min(amplitudeFraction, 1 - Number.EPSILON)) };
}

export const eyeThreshold = law(flickerThreshold, {
  id: 'flicker-threshold',
  title: 'Least flicker that is seen',
  says: 'How small a flicker of the whole picture an eye still sees at a rate on the screen.',
  equation: '1 / max(S_response, S_noise), both held at their peak for slower rates',
  takes: {
    screen_Hz: 'Beat on the screen',
    luminance_cd_per_m2: {
      title: 'Picture’s luminance',
      default: VIEWING.luminance_cd_per_m2,
      note: 'assumed: a monitor; 5 to 20 in a cinema',
    },
    field_deg: { title: 'Angle the picture fills', default: VIEWING.field_deg, note: 'assumed' },
  },
  gives: {
    amplitudeFraction: { title: 'Amplitude over the mean', as: 'fraction' },
    peakToPeak_stops: { title: 'From dimmest to brightest, in stops', as: 'ratio' },
  },
  holds:
    'The whole picture together, a plain background, a typical viewer. Action hides flicker; side by side shows it.',
  sources: ['transient-response', 'noise-sensitivity', 'eye-choices'],
  cautions: ['flashing-light-and-photosensitive-people'],
  words: ['flicker', 'visible', 'threshold', 'contrast sensitivity', 'eye', 'perception'],
  example: { screen_Hz: 2.5 },
});
