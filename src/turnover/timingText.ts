/** A shot's timing as text: the cues with their signals, the meeting, the trigger and the memory, and takes drawn by chance. */
import type { UnitSystem } from '../base/quantity.ts';
import type { CueTiming, MemoryTiming, Meeting, SampledTiming, Share, ShotTiming, TriggerTiming } from '../plan/timing/types.ts'; // prettier-ignore
import { onOneLine, padded, wrapped, type Ink } from './lines.ts';
import { sayOffset, sayShare } from './sheets/cueSheet.ts';
import { numberWords, said } from './words.ts';

export interface TimingTextOptions {
  readonly timing: ShotTiming;
  readonly sampled: SampledTiming | undefined;
  readonly ink: Ink;
  readonly system: UnitSystem;
  readonly indent: number;
}

const time = (value: number): string => said(numberWords({ name: 'time_s', value, kind: 'time' }));
const size = (value: number): string => said(numberWords({ name: 'size_B', value, kind: 'bytes' }));
/** Jitters are told in tenths of a millisecond. */
const jitter = (value_s: number): string => `${(value_s * 1000).toFixed(value_s < 1e-4 ? 2 : 1)} ms`;

/** Lines of a shot's timing, in the order in which a crew needs them. */
export function timingLines({ timing, sampled, ink, indent }: TimingTextOptions): readonly string[] {
  const { cues, meeting, trigger, memory } = timing;
  const pad = ' '.repeat(indent);
  const first_s = cues.find(({ afterFirst_s }) => afterFirst_s === 0)?.fire_s;
  return [
    ...(cues.length > 0 ? [`${pad}${ink.strong('Cues, from the first signal')}`] : []),
    ...cues.flatMap((cue) => cueLines(cue, first_s, ink, indent)),
    ...(meeting ? wrapped(meetingWords(meeting, first_s), indent, indent + 2) : []),
    ...(trigger ? wrapped(triggerWords(trigger), indent, indent + 2) : []),
    ...(memory ? wrapped(memoryWords(memory), indent, indent + 2) : []),
    ...(sampled ? wrapped(sampledWords(sampled), indent, indent + 2) : []),
  ];
}

/** Wide enough for any signal within a minute of the first. */
const OFFSET_COLUMNS = '+10000.0 ms'.length;

function cueLines(cue: CueTiming, first_s: number | undefined, ink: Ink, indent: number): readonly string[] {
  const { title, rigTitle, afterFirst_s, latency_s, travel_s, settle_s, rests_s, spread_s, isApart, missing } = cue;
  const way = [
    latency_s === undefined ? '' : `${jitter(latency_s)} to move`,
    travel_s === undefined || travel_s === 0 ? '' : `${time(travel_s)} on its way`,
    settle_s > 0 ? `${time(settle_s)} at rest` : '',
  ].filter((part) => part !== '');
  const there = rests_s === undefined || first_s === undefined ? '' : sayOffset(rests_s - first_s);
  const spread = spread_s === undefined ? '' : there === '' ? `varies by ${jitter(spread_s)}` : ` ± ${jitter(spread_s)}`;
  const lacks = missing.length === 0 ? '' : `lacks ${[...new Set(missing.map((one) => onOneLine(one.title)))].join(', ')}`;
  const signal = afterFirst_s === undefined ? ink.unknown(padded('unknown', OFFSET_COLUMNS)) : padded(sayOffset(afterFirst_s), OFFSET_COLUMNS);
  const words = [way.join(', '), there === '' ? spread : `there at ${there}${spread}`, lacks].filter((part) => part !== '').join('; ');
  const at = indent + 2 + OFFSET_COLUMNS + 2;
  const [head = '', ...more] = wrapped(`${onOneLine(rigTitle)} for ${onOneLine(title)}${isApart ? ', which need not meet the others' : ''}`, at, at + 2);
  return [`${' '.repeat(indent + 2)}${signal}  ${head.trimStart()}`, ...more, ...(words === '' ? [] : wrapped(words, at, at + 2).map(ink.faint))];
} // prettier-ignore

function meetingWords({ at_s, tolerance_s, chanceFraction, wantedFraction }: Meeting, first_s: number | undefined): string {
  const after = first_s === undefined ? '' : `${time(at_s - first_s)} after the first signal, `;
  const chance = chanceFraction === undefined ? 'how often is not known' : `in ${sayShare(chanceFraction)} of takes`;
  return `They meet ${after}${sayOffset(at_s)} on the clock of the action: within ${time(tolerance_s)} of one another ${chance}, ${sayShare(wantedFraction)} wanted`;
} // prettier-ignore

const BY: Readonly<Record<TriggerTiming['by'], string>> = {
  person: 'a hand on the button',
  electric: 'the signal that fires the rigs',
  beam: 'a light gate',
  sound: 'a sound',
  contact: 'a contact',
  picture: 'a change in the picture',
};

/** Shares below this are never seen in a day. */
const SEEN_FRACTION = 5e-4;

/** Settings of a camera are whole hundredths. */
const percent = (fraction: number): string => `${Number((fraction * 100).toPrecision(3))} %`;

function triggerWords({ by, comes_s, comesLow_s, comesHigh_s, set, best, isFixed, chanceFraction, wantedFraction }: TriggerTiming): string {
  const better = isFixed && best.caughtFraction > set.caughtFraction + 5e-4 ? `; ${percent(best.postTriggerFraction)} would keep it in ${sayShare(best.caughtFraction)}` : '';
  const parts = [['head', set.headLostFraction], ['tail', set.tailLostFraction]] as const;
  const lost = parts.filter(([, fraction]) => fraction >= SEEN_FRACTION).map(([part, fraction]) => `, ${part} lost in ${sayShare(fraction)}`).join('');
  return `Trigger by ${BY[by]}, at ${sayOffset(comes_s)} (${sayOffset(comesLow_s)} to ${sayOffset(comesHigh_s)}): keep ${percent(set.postTriggerFraction)} of the memory after it${isFixed ? ', as fixed' : ''}; whole action in ${sayShare(chanceFraction)} of takes, ${sayShare(wantedFraction)} wanted${lost}${better}`;
} // prettier-ignore

function memoryWords({ recordTime_s, frameCount, partitionCount, trimmedFrameCount, trimmedSize_B, saveTime_s, reset_s, waits_s }: MemoryTiming): string {
  const parts = partitionCount > 1 ? ` in each of ${partitionCount} parts, ${partitionCount} rolls before one must be saved` : '';
  const waits = waits_s === undefined ? '' : waits_s > 0 ? `; the next roll waits ${time(waits_s)} beyond a reset of ${time(reset_s)}` : `, within a reset of ${time(reset_s)}`;
  const saved = saveTime_s === undefined ? '' : `, ${time(saveTime_s)} to save${waits}`;
  return `Memory holds ${time(recordTime_s)}, ${frameCount} frames${parts}; trim to ${trimmedFrameCount} frames, ${size(trimmedSize_B)}${saved}`;
} // prettier-ignore

const shareWords = ({ fraction, standardErrorFraction }: Share): string =>
  `${(fraction * 100).toFixed(1)} ± ${(standardErrorFraction * 100).toFixed(1)} %`;

function sampledWords({ sampleCount, seedCount, meets, inTheFrame, inDepth, inMemory, all, takesAllowedCount }: SampledTiming): string {
  const parts = [
    meets && `all meet in ${shareWords(meets)}`,
    inTheFrame && `in the frame in ${shareWords(inTheFrame)}`,
    inDepth && `in focus in ${shareWords(inDepth)}`,
    inMemory && `in the memory in ${shareWords(inMemory)}`,
  ].filter((part) => part !== undefined);
  const allowed = takesAllowedCount === undefined ? 'no number of takes would do' : `${takesAllowedCount} ${takesAllowedCount === 1 ? 'take' : 'takes'} for one good one, nine days in ten`;
  return `Rolled ${sampleCount} times by chance, seed ${seedCount}: ${parts.join(', ')}; all of it in ${shareWords(all)}: ${allowed}`;
} // prettier-ignore
