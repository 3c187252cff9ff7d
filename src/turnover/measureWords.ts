/** What a measured clip comes to, in sentences that a tired person understands. */
import { sayList } from '../base/sayList.ts';
import { sayShown, showNumber, showQuantity } from '../base/quantity.ts';
import { placeOfPart, type ShakePart } from '../measure/shakeParts.ts';
import type { FlickerLine, Measurement } from '../measure/types.ts';
import { SOME_CLIPPED, type Against, type FittingLamp } from './measureAgainst.ts';

/** Below a thousandth of a per cent nothing is told apart. */
export const percent = (fraction: number): string => `${showNumber(100 * Math.max(fraction, 1e-5), 2)} %`;
export const stops = (value: number): string => `${showNumber(value, 2)} ${value === 1 ? 'stop' : 'stops'}`;
export const time = (value: number): string => sayShown(showQuantity('time', value, { digits: 2 }));
const speed = (value: number): string => sayShown(showQuantity('speed', value, { digits: 2 }));
const px = (value: number): string => `${showNumber(value, value < 10 ? 2 : 3)} px`;

/** As many digits as are known of a rate. */
export function hertz(value: number, deviation: number): string {
  const places = Math.max(0, Math.min(2, Math.ceil(-Math.log10(Math.max(deviation, 1e-3)))));
  return `${value.toFixed(places)} Hz`;
}

/** Where in the picture something is. */
export function placeWords({ extentFraction, centre: [across, down] }: Pick<FlickerLine, 'extentFraction' | 'centre'>): string {
  if (extentFraction >= 0.6) return 'all over the picture';
  const beside = across < -0.25 ? 'left' : across > 0.25 ? 'right' : '';
  const above = down < -0.25 ? 'top' : down > 0.25 ? 'bottom' : '';
  if (beside === '' && above === '') return 'in the middle';
  return beside !== '' && above !== '' ? `at the ${above} ${beside}` : above !== '' ? `at the ${above}` : `on the ${beside}`;
} // prettier-ignore

/** Flashes slower than this on the screen, or shallower, trouble few people. */
const FLASHES_Hz = 3;
const FLASHES_DEPTH = 0.1;

/** Whether a line flashes on the screen as photosensitive people may not bear. */
export const isFlashing = ({ depthFraction }: FlickerLine, screen_Hz: number): boolean => screen_Hz >= FLASHES_Hz && depthFraction >= FLASHES_DEPTH; // prettier-ignore

/** What a wave of the light is, and what it may come from. */
export function lineWords(line: FlickerLine, fits: readonly FittingLamp[], screen_Hz: number): string {
  const { beat_Hz, deviation_Hz, depthFraction, swing_stops, looksLike, candidates, bandsPerFrame, harmonicOf } = line;
  const what = looksLike === 'bands' ? `Bands, ${showNumber(bandsPerFrame ?? 0, 2)} in the height of the picture,` : looksLike === 'light' ? 'Pulses' : 'Something repeats by'; // prettier-ignore
  const size = looksLike === 'bands' ? `of ${percent(depthFraction)}` : percent(depthFraction);
  const rate = `${what} ${size} (${stops(swing_stops)}) at ${hertz(beat_Hz, deviation_Hz)}, ${placeWords(line)}; ${showNumber(screen_Hz, 2)} Hz on the screen`;
  const [first, ...others] = fits;
  const mains = candidates.find(({ mains_Hz }) => mains_Hz !== undefined);
  const also = candidates.slice(1, 4).map(({ rate_Hz }) => showNumber(rate_Hz, 4));
  const alike = also.length > 0 ? ` A lamp at ${sayList(also)} Hz would look the same.` : '';
  if (harmonicOf) return `${rate}: a harmonic of the one above.`;
  if (looksLike === 'unsure') return `${rate}: a lamp there or something that moves, which cannot be told.`;
  if (first) return `${rate}: ${first.title} fits${others.length > 0 ? `, and so ${others.length > 1 ? 'do' : 'does'} ${sayList(others.map(({ title }) => title))}` : ''}.${alike}`;
  if (mains?.mains_Hz) return `${rate}: as lamps on mains of ${mains.mains_Hz} Hz do.${alike}`;
  return `${rate}.${alike}`;
} // prettier-ignore

/** Whether the light is steady, and how sure that is. */
export function flickerWords({ flicker }: Measurement): string {
  const { verdict, why, leastDepthFraction, leastDepthFrom_Hz, slowest_Hz, blindTo_Hz } = flicker;
  if (verdict === 'cannot tell') return `Whether it flickers cannot be told. ${why}`;
  const least = leastDepthFraction === undefined ? '' : ` From ${percent(leastDepthFraction)} on, and faster than ${showNumber(leastDepthFrom_Hz ?? slowest_Hz ?? 0, 2)} Hz, it would have been found.`;
  const blind = blindTo_Hz.length > 0 ? ` Lamps that ripple at ${sayList(blindTo_Hz.map(String))} Hz would not: they nearly keep step with the frames.` : '';
  return `No flicker.${least}${blind}`;
} // prettier-ignore

export function exposureWords({ exposure }: Measurement): string {
  const { brightest, clippedFraction, clippedFrame, crushedFraction } = exposure;
  const high = clippedFraction > SOME_CLIPPED ? `${percent(clippedFraction)} of the picture burnt out in frame ${clippedFrame}` : 'nothing burnt out'; // prettier-ignore
  const low = crushedFraction > 0.01 ? `${percent(crushedFraction)} black` : 'nothing lost in black';
  const top = brightest > 0 && brightest < 1 ? `; the brightest hundredth begins ${showNumber(Math.log2(1 / brightest), 2)} stops below white` : ''; // prettier-ignore
  return `Exposure: ${high}, ${low}${top}.`;
}

/** A drift that an eye would see over the clip. */
const SEEN_DRIFT_stops = 0.1;

export function driftWords({ flicker: { drift_stops } }: Measurement): string | undefined {
  if (Math.abs(drift_stops) < SEEN_DRIFT_stops) return undefined;
  return `It ends ${stops(Math.abs(drift_stops))} ${drift_stops > 0 ? 'brighter' : 'darker'} than it began: the light, the iris or the action.`; // prettier-ignore
}

export function focusWords({ focus }: Measurement): string {
  const { verdict, sharpestFrame, changeRatio } = focus;
  if (verdict === 'cannot tell') return 'Focus: nothing that stands still has detail enough to judge by.';
  if (verdict === 'steady') return 'Focus: steady.';
  if (verdict === 'hunts') return `Focus hunts: it goes to and fro, sharpest about frame ${sharpestFrame}.`;
  return `Focus changes: sharpest about frame ${sharpestFrame}; the end has ${showNumber(changeRatio, 2)} times the detail of the beginning.`; // prettier-ignore
}

const DIRECTIONS = ['to the right', 'down to the right', 'down', 'down to the left', 'to the left', 'up to the left', 'up', 'up to the right'] as const; // prettier-ignore

export function motionWords({ motion, shake }: Measurement, speed_m_per_s: number | undefined, smear: number | undefined): string {
  if (!motion) return shake.verdict === 'moves' ? 'Movement: the picture as a whole.' : 'Movement: nothing that could be followed.'; // prettier-ignore
  const way = DIRECTIONS[Math.round(motion.direction_deg / 45) % 8]!;
  const metres = speed_m_per_s === undefined ? '' : `, ${speed(speed_m_per_s)}`;
  const smeared = smear === undefined ? '' : `; its smear is ${px(smear)}`;
  return `Movement: ${px(motion.typical_px)} a frame ${way}, the fastest ${px(motion.fastest_px)}${metres}${smeared}.`;
} // prettier-ignore

export function actionWords({ action, frameRate_fps, playback_fps, frameCount }: Measurement): string {
  if (!action) return 'Action: none found.';
  const { onset, peak, end, isBegun, isEnded, confidence } = action;
  const count = end - onset + 1;
  const seems = confidence === 'likely' ? ', as far as can be told' : '';
  const cut = !isBegun && !isEnded ? ' It runs before and past the clip.' : !isBegun ? ' It began before the clip.' : !isEnded ? ' It runs past the end of the clip.' : ''; // prettier-ignore
  const kept = ` Keep ${action.in} to ${action.out} of ${frameCount}.`;
  return `Action: frames ${onset} to ${end}, most at ${peak}${seems}: ${time(count / frameRate_fps)} on the set, ${time(count / playback_fps)} on the screen.${cut}${kept}`; // prettier-ignore
}

/** When something was fired, as a light in the picture shows it. */
export function signalWords({ signal, frameRate_fps }: Measurement): string | undefined {
  if (!signal) return undefined;
  const { frame, movement } = signal;
  const moved = movement === undefined ? '' : `; the first movement after it is in frame ${movement}, ${time((movement - frame) / frameRate_fps)} later`;
  return `A light comes on in frame ${frame}${moved}.`;
} // prettier-ignore

/** "1.4 px at 31 Hz from frame 61 on". */
function shakeSize({ rms_px, rate_Hz, onset }: Pick<ShakePart, 'rms_px' | 'rate_Hz' | 'onset'>): string {
  const rate = rate_Hz === undefined ? '' : ` at ${showNumber(rate_Hz, 2)} Hz`;
  return `${px(rms_px)}${rate}${onset === undefined ? '' : ` from frame ${onset} on`}`;
}

export function shakeWords({ shake }: Measurement): string {
  const { verdict, drift_px, why, whose, parts } = shake;
  if (verdict === 'still') return 'The picture stands still.';
  if (verdict === 'cannot tell') return 'Whether the picture stands still cannot be told.';
  if (verdict === 'moves') return `The picture moves by ${px(drift_px)}. ${why}`;
  if (whose !== 'parts' || !parts) return `The picture shakes by ${shakeSize(shake)}. ${why}`;
  const [rest, part] = parts as readonly [ShakePart, ShakePart];
  return `The picture shakes in two ways: ${placeOfPart(part.centre)} by ${shakeSize(part)}; the rest by ${shakeSize(rest)}. ${why}`;
}

export function noiseWords({ noise }: Measurement): string | undefined {
  return noise && `Noise: ${percent(noise.deviationFraction)} of the light in the middle tones.`;
}

/** What is held against the plan, as its name. */
export const AGAINST_NAMES: Readonly<Record<Against['what'], string>> = {
  flicker: 'Flicker',
  blur: 'Blur as delivered',
  speed: 'Speed',
  duration: 'Action',
  highlights: 'Highlights',
};

/** The planned or the measured figure of what is held against the plan. */
export function againstFigure({ what, unit }: Pick<Against, 'what' | 'unit'>, value: number): string {
  if (what === 'highlights') return value >= 0 ? `${stops(value)} below white` : `${stops(-value)} over white`;
  if (unit === 'stops') return stops(value);
  return unit === 'px' ? px(value) : unit === 's' ? time(value) : speed(value);
}

/** "Blur as delivered: 2.9 px, planned 2.1 px: worse." */
export function againstWords(against: Against): string {
  const { what, measured, planned, state } = against;
  return `${AGAINST_NAMES[what]}: ${againstFigure(against, measured)}, planned ${againstFigure(against, planned)}: ${state}.`; // prettier-ignore
}
