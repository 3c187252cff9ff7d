/** What is amiss with a measured clip beside its light and its focus, in sentences. */
import { sayList } from '../base/sayList.ts';
import { sayShown, showNumber, showQuantity } from '../base/quantity.ts';
import type { Bands } from '../measure/bands.ts';
import type { Measurement } from '../measure/types.ts';
import { percent, time } from './measureWords.ts';

/** Frames told one by one; more are counted. */
const MOST_TOLD = 6;

function framesWords(frames: readonly number[], one: string, several: string): string | undefined {
  if (frames.length === 0) return undefined;
  if (frames.length === 1) return `Frame ${frames[0]} ${one}.`;
  const told = frames.length > MOST_TOLD ? `${frames.slice(0, MOST_TOLD).join(', ')} and ${frames.length - MOST_TOLD} more` : sayList(frames.map(String)); // prettier-ignore
  return `Frames ${told} ${several}.`;
}

function swappedWords(frames: readonly number[]): string | undefined {
  if (frames.length === 0) return undefined;
  const pairs = frames.slice(0, MOST_TOLD).map((frame) => `${frame} and ${frame + 1}`);
  const more = frames.length > MOST_TOLD ? `, and ${frames.length - MOST_TOLD} pairs more` : '';
  return `Frames ${pairs.join(', ')}${more} seem to have changed places: the picture steps back and forth there.`;
}

function dustWords(dust: NonNullable<Measurement['dust']>): string | undefined {
  const [deepest] = [...dust].sort((a, b) => b.depthFraction - a.depthFraction);
  if (!deepest) return undefined;
  const where = `${Math.round(deepest.x)} px from the left and ${Math.round(deepest.y)} px from the top`;
  const rest = `whatever passes behind, ${percent(deepest.depthFraction)} of the light`;
  return dust.length === 1 ? `Dust: a spot ${where} takes, ${rest}.` : `Dust: ${dust.length} spots take light away; the deepest, ${where}, takes, ${rest}.`; // prettier-ignore
}

function patternWords({ columnsFraction, rowsFraction }: NonNullable<Measurement['fixedPattern']>): string | undefined {
  const of = [
    ...(columnsFraction === undefined ? [] : [`columns by ${percent(columnsFraction)}`]),
    ...(rowsFraction === undefined ? [] : [`rows by ${percent(rowsFraction)}`]),
  ];
  return of.length === 0 ? undefined : `A pattern of the sensor shows in the dark, the same in every frame: ${of.join(' and ')} of the range from black to white.`; // prettier-ignore
}

/** Frames that are missing, repeated or out of order, and faults of sensor and glass. */
export function faultWords({ missingFrames, repeatedFrames, swappedFrames = [], fixedPixels, dust = [], fixedPattern = {} }: Measurement): readonly string[] {
  const pixels = fixedPixels.length;
  return [
    framesWords(missingFrames, 'is missing', 'are missing'),
    framesWords(repeatedFrames, 'repeats the one before', 'repeat the ones before'),
    swappedWords(swappedFrames),
    pixels === 0 ? undefined : `${pixels === 1 ? 'One pixel stands' : `${pixels} pixels stand`} out in every frame looked at: ${pixels === 1 ? 'a fault' : 'faults'} of the sensor, or fine points of a set that does not move.`,
    dustWords(dust),
    patternWords(fixedPattern),
  ].filter((of) => of !== undefined);
} // prettier-ignore

const NEAR_BANDS = 0.5;

/** Bands that are told nowhere else: those of tiles are waves of the light there already. */
export function bandsOf({ bands = [], flicker }: Measurement): readonly Bands[] {
  return bands.filter(({ bandsPerFrame }) =>
    flicker.lines.every((line) => line.looksLike !== 'bands' || Math.abs((line.bandsPerFrame ?? 0) - bandsPerFrame) > NEAR_BANDS)); // prettier-ignore
}

/** "Bands, 23 in the height of the picture, of 3 %, which …". */
export function bandWords({ bandsPerFrame, depthFraction, stepFraction, candidates }: Bands): string {
  const what = `Bands, ${showNumber(bandsPerFrame, 3)} in the height of the picture, of ${percent(depthFraction)}, go on by ${showNumber(stepFraction, 2)} of a band a frame`; // prettier-ignore
  const rowTime = (value_s: number): string => sayShown(showQuantity('time', value_s, { digits: 2 }));
  const mains = candidates.find(({ mains_Hz }) => mains_Hz !== undefined);
  if (mains)
    return `${what}, as of lamps on mains of ${mains.mains_Hz} Hz where a row takes ${rowTime(mains.rowTime_s)}.`;
  const [first] = candidates;
  if (!first) return `${what}: a lamp that pulses faster than any that is listed.`;
  const rates = candidates.slice(0, 3).map(({ rate_Hz }) => showNumber(rate_Hz, 4));
  const several = rates.length > 1 ? ', or faster still' : '';
  return `${what}, as of a lamp at ${sayList(rates)} Hz${several}; at the first a row takes ${rowTime(first.rowTime_s)}.`;
}

/** Nothing that is shorter than this, in screen time and of the clip, is worth a word. */
const QUIET_s = 1;
const QUIET_SHARE = 0.1;

/** How much of a clip lies before and after its action. */
export function quietOf({ action, frameCount }: Measurement): { readonly head: number; readonly tail: number } | undefined {
  return action && { head: action.onset, tail: frameCount - 1 - action.end };
} // prettier-ignore

/** What at the head and at the tail shows nothing. */
export function quietWords(clip: Measurement): string | undefined {
  const quiet = quietOf(clip);
  if (!quiet) return undefined;
  const { frameCount, playback_fps } = clip;
  const told = ([['first', quiet.head], ['last', quiet.tail]] as const)
    .filter(([, frames]) => frames >= QUIET_SHARE * frameCount && frames >= QUIET_s * playback_fps)
    .map(([name, frames]) => `${name} ${time(frames / playback_fps)}`);
  if (told.length === 0) return undefined;
  const share = Math.round((100 * (quiet.head + quiet.tail)) / frameCount);
  return `Nothing happens in the ${sayList(told)} on the screen; ${share} % of the clip is without action.`;
} // prettier-ignore
