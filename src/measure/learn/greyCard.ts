/**
 * What a second or two of a grey card under one lamp teach: one period of the lamp's light. Refuses, in words, a clip that
 * something else is in: other lamps, movement, light that drifts or clips, too little time, a shutter that hides it.
 *
 * @source flicker-practice one lamp at a time, twenty periods, nothing clipped
 */
import type { FaultDetails } from '../../base/fault.ts';
import { bulkSpreadOf, medianOf } from '../../base/median.ts';
import { sayList } from '../../base/sayList.ts';
import type { FlickerLine, Measurement } from '../types.ts';
import { betterRate_fps, LEAST_LEFT, ordersOf } from './cardOrders.ts';
import { cardWaveOf, type CardWave } from './cardWave.ts';
import { sinc } from '../../laws/flicker/waveform.ts';

export interface CardGiven {
  readonly measurement: Measurement;
  readonly exposureTime_s?: number;
  /** Rate of the lamp where somebody knows it; else that of the mains is taken, where it fits. */
  readonly rate_Hz?: number;
  readonly mains_Hz?: number;
}

export type CardRefusal = Pick<FaultDetails, 'code' | 'what' | 'mend'>;

export type CardReading =
  | { readonly ok: true; readonly wave: CardWave; readonly notices: readonly string[] }
  | { readonly ok: false; readonly refusal: CardRefusal };

/** Periods of the lamp, and frames, below which too little is known. */
const FEWEST_PERIODS = 20;
const FEWEST_FRAMES = 100;
/** Share of the picture clipped that hides what the light does, and light below which a card is all noise. */
const MOST_LOST = 0.001;
const DARKEST = 0.01;
const MOST_DRIFT_stops = 0.1;
/** Share of the tiles that must show it, and how far their depths may differ beyond what noise does. */
const LEAST_EXTENT = 0.8;
const MOST_UNEVEN = 0.1;
/** How well tiles under one lamp keep step. */
const LEAST_IN_STEP = 0.98;
/** How far a lamp strays from the rate that somebody names. */
const STRAYS = 0.01;
const percent = (fraction: number): string => `${Number((100 * fraction).toPrecision(2))} %`;
const hertz = (rate_Hz: number): string => `${Number(rate_Hz.toPrecision(4))} Hz`;

const refusal = (code: string, what: string, mend: string): CardRefusal => ({ code: `card.${code}`, what, mend });

const ONE_LAMP =
  'Light a grey card with this lamp alone, daylight kept out and everything still, and take two seconds of it.';

/** What is wrong with the picture itself, before any rate is looked at. */
function unfit({ exposure, action, shake, flicker, frameCount, frameRate_fps }: Measurement): CardRefusal | undefined {
  if (exposure.clippedFraction > MOST_LOST) return refusal('clipped', `${percent(exposure.clippedFraction)} of the picture is burnt out in frame ${exposure.clippedFrame}: what the lamp does there cannot be seen`, 'Expose the card at or below middle grey and take it again.');
  if (exposure.mean < DARKEST) return refusal('dark', `The picture is darker than ${percent(DARKEST)} of white`, 'Fill the picture with the card, expose it at about middle grey and take it again.');
  if (frameCount < FEWEST_FRAMES) return refusal('short', `The clip has ${frameCount} frames, fewer than ${FEWEST_FRAMES}`, 'Take two seconds of the card.');
  // First of the two: on a plain card there is little else to follow, and what passes is taken for the picture.
  if (action) return refusal('action', `Something moves from frame ${action.onset} to ${action.end}`, ONE_LAMP);
  if (shake.verdict === 'moves' || shake.verdict === 'shakes') return refusal('moves', 'The picture moves', 'Fix the camera and the card, and take it again.');
  if (Math.abs(flicker.drift_stops) > MOST_DRIFT_stops) return refusal('drifts', `The light changes by ${Math.abs(flicker.drift_stops).toFixed(2)} stops from the first to the last tenth of the clip`, 'Let the lamp warm up until it is steady, keep daylight out, and take it again.');
  if (flicker.verdict === 'cannot tell' && flicker.lines.length === 0) return refusal('cannot-tell', `Whether the light pulses cannot be told. ${flicker.why}`, `Take it longer, or at a rate other than ${frameRate_fps} fps.`);
  return undefined;
} // prettier-ignore

/** Noise of the depth of one tile, over the depth. */
const noiseRatioOf = ({ depthDeviationFraction, depthFraction, extentFraction }: FlickerLine, judgedTiles: number): number =>
  (depthDeviationFraction * Math.sqrt(Math.max(1, judgedTiles * extentFraction))) / Math.max(depthFraction, Number.EPSILON); // prettier-ignore

/** Whether one lamp alone lights the card, as far as the tiles can tell. */
function unevenOf(line: FlickerLine, judgedTiles: number): CardRefusal | undefined {
  if (line.looksLike === 'bands') return refusal('bands', 'Rows are exposed one after another, so that the pulse runs down the picture in bands', 'Take the card with a camera or a mode that exposes all rows at once.');
  if (line.looksLike === 'unsure' || line.extentFraction < LEAST_EXTENT) return refusal('uneven', `Only ${percent(line.extentFraction)} of the picture shows the pulse: other light falls on the rest, or something moves`, ONE_LAMP);
  const depths = line.tileDepths.filter((depth) => depth > 0);
  const noise = noiseRatioOf(line, judgedTiles);
  const uneven = Math.sqrt(Math.max(0, (bulkSpreadOf(depths) / medianOf(depths)) ** 2 - noise ** 2));
  // Noise turns each tile a little.
  const inStep = LEAST_IN_STEP - noise ** 2;
  if (line.coherenceFraction < inStep) return refusal('out-of-step', `The pulse does not keep step all over the picture, ${percent(line.coherenceFraction)} where one lamp has 100 %: several lamps light it, or rows are exposed one after another`, `${ONE_LAMP} Use a mode that exposes all rows at once.`);
  if (uneven > MOST_UNEVEN) return refusal('several-lamps', `The pulse is deeper in one part of the picture than in another, by ${percent(uneven)} of itself: several lamps light it`, ONE_LAMP);
  return undefined;
} // prettier-ignore

type Rate = { readonly ok: true; readonly rate_Hz: number } | { readonly ok: false; readonly refusal: CardRefusal };

/** The rate of the strongest line: as somebody says, or of the mains. Never one of several that is merely likely. */
function chosenRate({ candidates, beat_Hz, deviation_Hz }: FlickerLine, { rate_Hz, mains_Hz }: CardGiven): Rate {
  const listed = sayList(candidates.slice(0, 6).map((of) => hertz(of.rate_Hz)));
  const say = (mend: string): Rate => ({ ok: false, refusal: refusal('which-rate', `The light beats at ${hertz(beat_Hz)} from frame to frame, as lamps at ${listed} all would`, mend) }); // prettier-ignore
  if (rate_Hz !== undefined) {
    const [near] = [...candidates].sort((a, b) => Math.abs(a.rate_Hz - rate_Hz) - Math.abs(b.rate_Hz - rate_Hz));
    if (near && Math.abs(near.rate_Hz - rate_Hz) <= STRAYS * rate_Hz + 4 * deviation_Hz) return { ok: true, rate_Hz: near.rate_Hz }; // prettier-ignore
    return say(`It is not ${hertz(rate_Hz)}: name one of these, or leave it out for the mains.`);
  }
  const ofMains = candidates.filter((of) => of.mains_Hz !== undefined);
  const fits = ofMains.find((of) => of.mains_Hz === mains_Hz) ?? (mains_Hz === undefined && ofMains.length === 1 ? ofMains[0] : undefined); // prettier-ignore
  return fits ? { ok: true, rate_Hz: fits.rate_Hz } : say('Say which it is: the maker states the rate of its pulses, and a second clip at another frame rate tells them apart.'); // prettier-ignore
}

/** The period at a rate of the strongest pulse: of the lamp itself, or twice its own where its halves differ. */
function waveAtRate({ measurement }: CardGiven, exposureTime_s: number, met_Hz: number): CardWave | undefined {
  const { frames, frameRate_fps } = measurement;
  const at = (strongestOrder: number): CardWave | undefined => cardWaveOf({ light: frames.mean, weights: frames.weight, frameRate_fps, exposureTime_s, rate_Hz: met_Hz / strongestOrder, strongestOrder }); // prettier-ignore
  const wave = at(1);
  if (!wave || wave.strangers_Hz.length === 0) return wave;
  const halves = at(2);
  return halves?.strangers_Hz.length === 0 ? halves : wave;
}

function withRate(given: CardGiven, line: FlickerLine, exposureTime_s: number, met_Hz: number): CardReading {
  const { flicker, frames, frameRate_fps } = given.measurement;
  const no = (code: string, what: string, mend: string): CardReading => ({ ok: false, refusal: refusal(code, what, mend) }); // prettier-ignore
  const left = Math.abs(sinc(met_Hz * exposureTime_s));
  if (left < LEAST_LEFT || met_Hz * exposureTime_s >= 1) return no('averaged', `The shutter of ${Number((1000 * exposureTime_s).toPrecision(3))} ms leaves ${percent(left)} of a pulse of ${hertz(met_Hz)}: what the lamp does is averaged away`, `Take it with a shutter of ${Number((1000 / (4 * met_Hz)).toPrecision(2))} ms or shorter.`); // prettier-ignore
  const periods = (frames.mean.length / frameRate_fps) * met_Hz;
  if (periods < FEWEST_PERIODS) return no('short', `The clip holds ${Math.floor(periods)} periods of ${hertz(met_Hz)}, fewer than ${FEWEST_PERIODS}`, 'Take two seconds of the card.'); // prettier-ignore
  const wave = waveAtRate(given, exposureTime_s, met_Hz);
  const better_fps = betterRate_fps({ rate_Hz: wave?.rate_Hz ?? met_Hz, frameRate_fps, exposureTime_s, frameCount: frames.mean.length }); // prettier-ignore
  const instead = better_fps === undefined ? 'Take it at another frame rate.' : `Take it at ${better_fps} fps, say, where they lie apart.`; // prettier-ignore
  if (!wave) return no('locked', `At ${frameRate_fps} fps a pulse of ${hertz(met_Hz)} hardly moves from frame to frame`, instead); // prettier-ignore
  if (wave.strangers_Hz.length > 0) return no('several-lamps', `The light beats at ${sayList([line.beat_Hz, ...wave.strangers_Hz].map(hertz))} from frame to frame, which no one lamp of ${hertz(wave.rate_Hz)} does: several are lit`, ONE_LAMP); // prettier-ignore
  if (wave.depthDeviationFraction > wave.depthFraction / 2) return no('unclear', `The depth comes to ${percent(wave.depthFraction)}, give or take ${percent(wave.depthDeviationFraction)}: harmonics fall on one another at ${frameRate_fps} fps`, instead); // prettier-ignore
  // Tiles that do not keep step take from the mean of the picture as much as from their own sum.
  const outOfStep = Math.max(0, 1 - line.coherenceFraction - (noiseRatioOf(line, flicker.judgedTiles) ** 2) / 2);
  const depthDeviationFraction = Math.hypot(wave.depthDeviationFraction, outOfStep * wave.depthFraction);
  return { ok: true, wave: { ...wave, depthDeviationFraction }, notices: noticesOf(given, wave, exposureTime_s, better_fps) };
} // prettier-ignore

function noticesOf({ measurement: { frameRate_fps, frames } }: CardGiven, wave: CardWave, exposureTime_s: number, better_fps: number | undefined): readonly string[] {
  const { seen } = ordersOf({ rate_Hz: wave.rate_Hz, frameRate_fps, exposureTime_s, frameCount: frames.mean.length });
  const last = seen.at(-1)!;
  const met = seen.filter(({ meets }) => meets.length > 0 && meets[0]! <= 12);
  return [
    `Harmonics up to ${hertz(last.order * wave.rate_Hz)} could be told; faster changes of the light, such as the edge of a pulse, are not in it.`,
    ...(met.length === 0 ? [] : [`At ${frameRate_fps} fps ${sayList(met.slice(0, 4).map(({ order, meets }) => `harmonic ${meets[0]!} falls on ${order}`))}: what there is of it counts as error.${better_fps === undefined ? '' : ` At ${better_fps} fps they would lie apart.`}`]),
    ...(wave.belowNoneFraction > 0.02 ? [`Between pulses the harmonics that could be told go ${percent(wave.belowNoneFraction)} below no light; it is cut off there.`] : []),
    'Black must be right: light taken off or added everywhere makes the pulse look deeper or shallower.',
  ];
} // prettier-ignore

/** One period of a lamp from a clip of a grey card; or why not, and what to do. */
export function greyCardOf(given: CardGiven): CardReading {
  const { measurement, exposureTime_s } = given;
  const { flicker, frameRate_fps } = measurement;
  const no = (of: CardRefusal): CardReading => ({ ok: false, refusal: of });
  if (exposureTime_s === undefined || !(exposureTime_s > 0)) return no(refusal('no-shutter', 'With what shutter it was taken is not known, nor then how much of the pulse it took away', 'Give the exposure time, such as 1/2000 s.')); // prettier-ignore
  if (exposureTime_s * frameRate_fps > 1.001) return no(refusal('long-shutter', `A shutter of ${Number((1000 * exposureTime_s).toPrecision(3))} ms does not fit into a frame at ${frameRate_fps} fps`, 'Give rate and exposure time as they were on the camera.')); // prettier-ignore
  const wrong = unfit(measurement);
  if (wrong) return no(wrong);
  const line = flicker.lines.find(({ looksLike }) => looksLike !== 'unsure') ?? flicker.lines[0];
  if (!line) return no(refusal('steady', `No pulse was found; from ${percent(flicker.leastDepthFraction ?? 0)} on, one would have been`, 'Describe the lamp as steady.')); // prettier-ignore
  const uneven = unevenOf(line, flicker.judgedTiles);
  if (uneven) return no(uneven);
  const rate = chosenRate(line, given);
  return rate.ok ? withRate(given, line, exposureTime_s, rate.rate_Hz) : no(rate.refusal);
}
