/**
 * Timecode: labels of hours, minutes, seconds and frames that count at a whole nominal rate, and the exact time base
 * beneath them.
 *
 * A rate of N·1000/1001 is labelled as N, so its labels run 0.1 % slow against the clock. Drop-frame counting skips
 * labels, never frames, to keep pace: the first two of each minute at 30000/1001, the first four at 60000/1001, except
 * in minutes 0, 10, 20, 30, 40 and 50. At 30000/1001 ten minutes then hold 17,982 frames, an hour 107,892, and a day's
 * labels end 86.4 ms before the day does. A drop-frame label is told by the semicolon before its frames.
 *
 * @source smpte-12-1 time and control code for television, with its drop-frame rule
 * @source drop-frame-explained the rule, its skipped labels and frame counts in public explanations
 */
import { requireCount, requirePositive, requireWithin } from '../../base/domain.ts';
import { dividedBy, printRational, ratioOf, rational, type Rational } from '../../base/rational.ts';
import { law } from '../law.ts';

/** Rates above this have no two-digit convention and are capture rates, which are not labelled. */
const HIGHEST_NOMINAL = 120;

interface Count {
  readonly nominal: number;
  /** Labels skipped at the start of each minute that does not end in zero. */
  readonly skipped: number;
}

/** The whole number of frames that a labelled second counts: 24 for 24000/1001. Throws RangeError for other rates. */
export function nominalRate(rate: Rational): number {
  requirePositive({ rate: ratioOf(rate) });
  const { num, den } = rational(rate.num, rate.den);
  const nominal = den === 1 ? num : den === 1001 && num % 1000 === 0 ? num / 1000 : undefined;
  if (nominal === undefined)
    throw new RangeError(`rate must be whole or N·1000/1001 to carry timecode, got ${printRational({ num, den })}`);
  requireWithin(1, HIGHEST_NOMINAL, { 'nominal rate': nominal });
  return nominal;
}

function countOf(rate: Rational, dropFrame: boolean): Count {
  const nominal = nominalRate(rate);
  if (!dropFrame) return { nominal, skipped: 0 };
  const lowest = rational(rate.num, rate.den);
  if (lowest.den !== 1001 || (nominal !== 30 && nominal !== 60))
    throw new RangeError(`dropFrame must be no except at 30000/1001 and 60000/1001, got ${printRational(lowest)}`);
  return { nominal, skipped: nominal / 15 };
}

const framesInTenMinutes = ({ nominal, skipped }: Count): number => 600 * nominal - 9 * skipped;
const framesInDay = (count: Count): number => 144 * framesInTenMinutes(count);
const padded = (value: number, width = 2): string => String(value).padStart(width, '0');
const frameDigits = (nominal: number): number => (nominal > 100 ? 3 : 2);

/** Labels skipped before this frame, so that frame plus skipped is the place of its label in an unbroken count. */
function skippedBefore(frameCount: number, count: Count): number {
  const tens = Math.floor(frameCount / framesInTenMinutes(count));
  const within = frameCount % framesInTenMinutes(count);
  const dropMinute = 60 * count.nominal - count.skipped;
  const minutes = Math.max(0, Math.floor((within - count.skipped) / dropMinute));
  return count.skipped * (9 * tens + minutes);
}

export interface LabelledAt {
  readonly rate: Rational;
  readonly dropFrame: boolean;
}

/**
 * The label of a frame counted from midnight, `00:00:59:29`, or `00:01:00;02` when drop-frame. Throws RangeError for a
 * frame past the day, a rate that carries no timecode, or drop-frame where there is none.
 */
export function timecodeOfFrame({ frameCount, rate, dropFrame }: LabelledAt & { readonly frameCount: number }): {
  readonly timecode: string;
} {
  const count = countOf(rate, dropFrame);
  requireCount({ frameCount });
  requireWithin(0, framesInDay(count) - 1, { frameCount });
  const place = frameCount + skippedBefore(frameCount, count);
  const seconds = Math.floor(place / count.nominal);
  const [h, m, s] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  const frames = padded(place % count.nominal, frameDigits(count.nominal));
  return { timecode: `${padded(h)}:${padded(m)}:${padded(s)}${dropFrame ? ';' : ':'}${frames}` };
}

/**
 * The frame, counted from midnight, that a label names. Throws RangeError for text that is no label, a part out of
 * range, a separator that contradicts `dropFrame`, or a label that drop-frame counting skips.
 */
export function frameOfTimecode({ timecode, rate, dropFrame }: LabelledAt & { readonly timecode: string }): {
  readonly frameCount: number;
} {
  const count = countOf(rate, dropFrame);
  const match = /^(\d\d):(\d\d):(\d\d)([:;])(\d{2,3})$/.exec(timecode);
  if (!match) throw new RangeError(`timecode must read HH:MM:SS:FF, or HH:MM:SS;FF when drop-frame, got ${timecode}`);
  const [hours, minutes, seconds, frames] = [match[1], match[2], match[3], match[5]].map(Number) as [
    number,
    number,
    number,
    number,
  ];
  requireWithin(0, 23, { 'timecode hours': hours });
  requireWithin(0, 59, { 'timecode minutes': minutes, 'timecode seconds': seconds });
  requireWithin(0, count.nominal - 1, { 'timecode frames': frames });
  if ((match[4] === ';') !== dropFrame)
    throw new RangeError(
      `timecode must have ${dropFrame ? '";" before its frames, being' : '":" before its frames, not being'} drop-frame, got ${timecode}`,
    );
  if (seconds === 0 && frames < count.skipped && minutes % 10 !== 0)
    throw new RangeError(`timecode must be a label that drop-frame counting uses; it skips ${timecode}`);
  const minutesInAll = 60 * hours + minutes;
  const skipped = count.skipped * (minutesInAll - Math.floor(minutesInAll / 10));
  return { frameCount: count.nominal * (60 * minutesInAll + seconds) + frames - skipped };
}

/** The exact time at which a frame begins, in seconds from frame 0. Throws RangeError unless both are whole and positive. */
export function exactFrameTime({ frameCount, rate }: { readonly frameCount: number; readonly rate: Rational }): {
  readonly frameTime: Rational;
} {
  requireCount({ frameCount });
  requirePositive({ rate: ratioOf(rate) });
  return { frameTime: dividedBy({ num: frameCount, den: 1 }, rational(rate.num, rate.den)) };
}

const COMMON = {
  holds:
    'Within one day from midnight. Rates that are whole, or N·1000/1001, up to 120; drop-frame only at 30000/1001 and 60000/1001.',
  sources: ['smpte-12-1', 'smpte-12-3', 'drop-frame-explained'],
};
const AT = {
  rate: { title: 'Rate', as: 'rational' },
  dropFrame: { title: 'Drop-frame', as: 'flag' },
} as const;

export const timecodeLabel = law(timecodeOfFrame, {
  id: 'timecode-of-frame',
  title: 'Timecode of a frame',
  says: 'The label a frame carries, counted from midnight.',
  equation: 'label = frame + skipped labels, read in base (60, 60, nominal rate)',
  takes: { frameCount: { title: 'Frame, from 0', as: 'count' }, ...AT },
  gives: { timecode: { title: 'Timecode', as: 'timecode' } },
  words: ['label', 'drop frame', 'non-drop', 'DF', 'NDF', 'TC'],
  example: { frameCount: 1800, rate: { num: 30000, den: 1001 }, dropFrame: true },
  ...COMMON,
});

export const timecodeFrame = law(frameOfTimecode, {
  id: 'frame-of-timecode',
  title: 'Frame of a timecode',
  says: 'The frame that a label names, counted from midnight; labels that drop-frame skips are refused.',
  equation: 'frame = N·(60·M + s) + f − k·(M − ⌊M/10⌋), M whole minutes, k labels skipped a minute',
  takes: { timecode: { title: 'Timecode', as: 'timecode' }, ...AT },
  gives: { frameCount: { title: 'Frame, from 0', as: 'count' } },
  words: ['label', 'drop frame', 'non-drop', 'DF', 'NDF', 'TC'],
  example: { timecode: '01:00:00;00', rate: { num: 30000, den: 1001 }, dropFrame: true },
  ...COMMON,
});

export const frameTime = law(exactFrameTime, {
  id: 'exact-frame-time',
  title: 'Time of a frame, exactly',
  says: 'When a frame begins, in seconds as a ratio of whole numbers, so that nothing drifts.',
  equation: 't = n / F',
  takes: { frameCount: { title: 'Frame, from 0', as: 'count' }, rate: { title: 'Rate', as: 'rational' } },
  gives: { frameTime: { title: 'Time from frame 0, in seconds', as: 'rational' } },
  words: ['time base', 'duration', 'length of a clip'],
  example: { frameCount: 86_400, rate: { num: 24000, den: 1001 } },
  holds: 'Every frame lasts one period of the rate.',
  sources: ['frame-rate-practice'],
});
