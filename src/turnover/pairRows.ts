/** Two measured clips beside each other: each figure of both, and how the second differs from the first, in words. */
import { showNumber, showSigned } from '../base/quantity.ts';
import type { FlickerLine, Measurement } from '../measure/types.ts';
import { pixelSize_m } from './measureAgainst.ts';
import type { MeasuredClip } from './measureReply.ts';
import { isColourSame, neutralSays, pairColour, pairColourWords } from './pairColour.ts';
import { detailRatio, sceneOf, type Pair } from './pairScene.ts';
import { hertz, percent, placeWords, stops, time } from './measureWords.ts';

export interface PairRow {
  readonly title: string;
  readonly of: readonly [first: string, second: string];
  /** Of the second against the first. */
  readonly differs: string;
  readonly isSame: boolean;
}

/** Nearer than these two clips are alike in what measuring can tell, or an eye can see. */
const SAME_stops = 0.05;
const SAME_SHARE = 0.05;

const NOT_TOLD = 'cannot be told';
const ALIKE = 'the same';

const row = (title: string, of: Pair<string>, differs: string): PairRow => ({ title, of, differs, isSame: differs === ALIKE }); // prettier-ignore
const both = <Of, To>([a, b]: Pair<Of>, of: (each: Of) => To): Pair<To> => [of(a), of(b)];

/** "the second 12 % faster", "the second 2.4 times as long". */
function byShare([a, b]: Pair<number>, [more, less, times]: readonly [string, string, string]): string {
  if (a === b || Math.abs(b / a - 1) <= SAME_SHARE) return ALIKE;
  const ratio = b / a;
  if (ratio > 2 || ratio < 0.5) return `the second ${showNumber(ratio, 2)} times ${times}`;
  return `the second ${Math.round(100 * Math.abs(ratio - 1))} % ${ratio > 1 ? more : less}`;
}

/** Brighter or darker by so much. */
function byStops([a, b]: Pair<number>, [more, less]: readonly [string, string]): string {
  if (!(a > 0 && b > 0)) return NOT_TOLD;
  const off = Math.log2(b / a);
  return Math.abs(off) < SAME_stops ? ALIKE : `the second ${stops(Math.abs(off))} ${off > 0 ? more : less}`;
}

/** The deepest wave of a light, where there is one. */
export const strongest = ({ flicker }: Measurement): FlickerLine | undefined =>
  flicker.lines.find(({ looksLike, harmonicOf }) => looksLike !== 'unsure' && harmonicOf === undefined);

function flickerSays(clip: Measurement): string {
  const line = strongest(clip);
  if (clip.flicker.verdict === 'cannot tell') return NOT_TOLD;
  if (clip.flicker.verdict === 'steady' || !line) return 'none found';
  return `${percent(line.depthFraction)} (${stops(line.swing_stops)}) at ${hertz(line.beat_Hz, line.deviation_Hz)}, ${placeWords(line)}`;
}

/** A rate of a lamp that both beats may come from: where the clips were taken at other rates, few are. */
function sharedRate([a, b]: Pair<FlickerLine>): number | undefined {
  const reach_Hz = 4 * Math.hypot(a.deviation_Hz, b.deviation_Hz);
  const of = (rate_Hz: number) => b.candidates.some((other) => Math.abs(other.rate_Hz - rate_Hz) <= reach_Hz + 0.001 * rate_Hz); // prettier-ignore
  return a.candidates.find(({ rate_Hz }) => of(rate_Hz))?.rate_Hz;
}

function flickerDiffers(clips: Pair<Measurement>): string {
  const [a, b] = both(clips, strongest);
  const [is, was] = [clips[1].flicker.verdict, clips[0].flicker.verdict];
  if (is === 'cannot tell' || was === 'cannot tell') return NOT_TOLD;
  if (!a && !b) return ALIKE;
  if (!a || !b) return `only the ${a ? 'first' : 'second'} pulses`;
  const shared = sharedRate([a, b]);
  const rate = shared === undefined ? 'no one lamp would beat so in both' : `a lamp at ${showNumber(shared, 4)} Hz would beat so in both`; // prettier-ignore
  const off = b.swing_stops - a.swing_stops;
  const size = Math.abs(off) < SAME_stops / 2 ? 'as deep' : `the second ${stops(Math.abs(off))} ${off > 0 ? 'deeper' : 'shallower'}`; // prettier-ignore
  return `${size}; ${rate}`;
}

const belowWhite = (light: number): string => (light > 0 ? `${showNumber(Math.log2(1 / light), 2)} stops below white` : 'black'); // prettier-ignore

function focusDiffers(clips: Pair<Measurement>): string {
  const [a, b] = both(clips, ({ focus }) => focus.verdict);
  if (a === 'cannot tell' || b === 'cannot tell') return NOT_TOLD;
  return a === b ? ALIKE : 'not alike';
}

const FOCUS = { steady: 'steady', changes: 'changes', hunts: 'hunts', 'cannot tell': NOT_TOLD } as const;

/** Of what moves fastest, metres a second where both are to scale, else widths of the picture. */
export function speedsOf(clips: Pair<MeasuredClip>): { readonly isScaled: boolean; readonly values: Pair<number | undefined> } {
  const scale = both(clips, ({ shot, measurement }) => shot && pixelSize_m(shot, measurement));
  const isScaled = scale[0] !== undefined && scale[1] !== undefined;
  const values = both([0, 1] as const, (i) => {
    const { motion, frameRate_fps, width } = clips[i].measurement;
    return motion && motion.fastest_px * frameRate_fps * (isScaled ? scale[i]! : 1 / width);
  });
  return { isScaled, values };
} // prettier-ignore

function speeds(clips: Pair<MeasuredClip>): PairRow {
  const { isScaled, values } = speedsOf(clips);
  const says = (value: number | undefined): string =>
    value === undefined ? 'nothing followed' : isScaled ? `${showNumber(value, 2)} m/s` : `${showNumber(value, 2)} widths a second`; // prettier-ignore
  const [a, b] = values;
  return row('Fastest movement', both(values, says), a === undefined || b === undefined ? (a === b ? ALIKE : NOT_TOLD) : byShare([a, b], ['faster', 'slower', 'as fast'])); // prettier-ignore
}

function lengths(clips: Pair<Measurement>): PairRow {
  const values = both(clips, ({ action, frameRate_fps }) => action && (action.end - action.onset + 1) / frameRate_fps);
  const isWhole = clips.every(({ action }) => action === undefined || (action.isBegun && action.isEnded));
  const says = both([0, 1] as const, (i) => {
    const { action } = clips[i];
    if (!action) return 'none found';
    return `${time(values[i]!)}${action.isBegun && action.isEnded ? '' : ', not all of it in the clip'}`;
  });
  const [a, b] = values;
  if (a === undefined || b === undefined) return row('Action', says, a === b ? ALIKE : `only in the ${a === undefined ? 'second' : 'first'}`); // prettier-ignore
  return row('Action', says, isWhole ? byShare([a, b], ['longer', 'shorter', 'as long']) : NOT_TOLD);
}

function noises(clips: Pair<Measurement>): PairRow {
  const values = both(clips, ({ noise }) => noise?.deviationFraction);
  const [a, b] = values;
  const says = both(values, (value) => (value === undefined ? NOT_TOLD : `${percent(value)} of the middle tones`));
  return row('Noise', says, a === undefined || b === undefined ? NOT_TOLD : byShare([a, b], ['more', 'less', 'as much'])); // prettier-ignore
}

const share = (value: number): string => (value > 0 ? percent(value) : 'nothing');

function burnt(clips: Pair<Measurement>): PairRow {
  const [a, b] = both(clips, ({ exposure }) => exposure.clippedFraction);
  const off = b - a;
  // A thousandth of a picture is the least that is called burnt out.
  const differs = Math.abs(off) < 0.001 ? ALIKE : `the second ${percent(Math.abs(off))} of the picture ${off > 0 ? 'more' : 'less'}`; // prettier-ignore
  return row('Burnt out, at most', both([a, b], share), differs);
}

function rates(clips: Pair<Measurement>): PairRow {
  const [a, b] = both(clips, ({ frameRate_fps }) => frameRate_fps);
  const differs = Math.abs(b / a - 1) < 1e-6 ? ALIKE : `${showSigned(b - a, 0)} fps`;
  return row('Taken at', both([a, b], (rate) => `${showNumber(rate, 5)} fps`), differs); // prettier-ignore
}

/** Of what passes for neutral in both; nothing where neither has colours. */
function colours(clips: Pair<Measurement>): readonly PairRow[] {
  if (clips.every(({ colour }) => colour === undefined)) return [];
  const colour = pairColour(clips);
  const differs = !colour ? NOT_TOLD : isColourSame(colour) ? ALIKE : pairColourWords(colour);
  return [row('Colour of what is neutral', both(clips, neutralSays), differs)];
}

const SCENES = {
  same: 'the same scene',
  other: 'of two scenes',
  'cannot tell': 'scenes that cannot be matched',
} as const;

/** Detail of what stands still: of one scene alone, since more to see is not sharper. */
function details(clips: Pair<Measurement>): PairRow {
  const detail = detailRatio(clips);
  const scene = SCENES[sceneOf(clips)];
  const says = (of: string): Pair<string> => [of, of];
  if (detail === undefined) return row('Detail of the set', says(scene), NOT_TOLD);
  return row('Detail of the set', says(scene), byShare([1, detail], ['more', 'less', 'as much']));
}

/** Every figure that two clips have to be compared by. */
export function pairRows(clips: Pair<MeasuredClip>): readonly PairRow[] {
  const of = both(clips, ({ measurement }) => measurement);
  const middles = both(of, ({ exposure }) => exposure.middle);
  const tops = both(of, ({ exposure }) => exposure.brightest);
  const top = tops.every((light) => light >= 1) ? ALIKE : byStops(tops, ['brighter', 'darker']);
  return [
    rates(of),
    row('Flicker', both(of, flickerSays), flickerDiffers(of)),
    row('Middle tones', both(middles, belowWhite), byStops(middles, ['brighter', 'darker'])),
    row('Brightest hundredth', both(tops, (light) => (light >= 1 ? 'at white' : belowWhite(light))), top),
    burnt(of),
    ...colours(of),
    row('Focus, each against itself', both(of, ({ focus }) => FOCUS[focus.verdict]), focusDiffers(of)),
    details(of),
    speeds(clips),
    lengths(of),
    noises(of),
  ];
} // prettier-ignore

/** What has to be known before exposures of two clips are held against each other; empty where nothing does. */
export function pairNotes([a, b]: Pair<MeasuredClip>): readonly string[] {
  return [
    ...(a.curve !== b.curve ? [`The curves differ: ${a.curve} and ${b.curve}. Light is compared, after both are taken off.`] : []),
    ...(a.curveBasis === 'assumed' || b.curveBasis === 'assumed' ? ['A curve is assumed, not known: brightness may be off.'] : []),
    ...(a.frameRateBasis === 'file' || b.frameRateBasis === 'file' ? ['At what rate a clip was taken is not known: its speeds and lengths are those of its file.'] : []),
    ...(a.measurement.colour && b.measurement.colour && a.measurement.colour.primaries !== b.measurement.colour.primaries ? ['Their colours are made of other primaries: where they lie is compared.'] : []),
    ...(a.isWhole && b.isWhole ? [] : ['One was only looked at in part: its figures will change.']),
  ];
} // prettier-ignore
