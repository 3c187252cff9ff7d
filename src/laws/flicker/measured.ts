/**
 * A lamp's light as a photodiode or meter recorded it, folded into one period: the best model of a lamp is the lamp.
 *
 *     light at phase x = mean of all samples that fall there, less the dark        sd f = R·√6·s / (π·A·√(N·(N² − 1)))
 *
 * N samples at rate R, Hz      s what the folded wave leaves unexplained      A amplitude of the ripple
 *
 * @source harmonic-fit how well a rate can be known
 * @source flicker-practice ten samples a period, twenty periods, one per cent of jitter
 */
import { Fault } from '../../base/fault.ts';
import { readMeasuredText, refuseMeasured, type MeasuredRecord, type MeasuredRefusal } from './measuredText.ts';
import { repeatRate_Hz, type Sampled } from './period.ts';
import { harmonicAmplitudes, waveformOfSamples, type Waveform } from './waveform.ts';

export interface MeasuredQuality {
  readonly sampleRate_Hz: number;
  readonly sampleCount: number;
  /** Whole periods used. */
  readonly periodCount: number;
  /** One standard deviation of the period over the period, as good as the noise left allows. */
  readonly periodErrorFraction: number;
  /** What the folded wave leaves unexplained, root mean square over the mean light. */
  readonly residualFraction: number;
  /** Spread of the steps in time, over their mean. */
  readonly jitterFraction: number;
}

export type MeasuredWaveform =
  | {
      readonly ok: true;
      readonly waveform: Waveform;
      readonly quality: MeasuredQuality;
      readonly notices: readonly string[];
    }
  | { readonly ok: false; readonly refusal: MeasuredRefusal };

export interface MeasuredOptions {
  /** Reading with the sensor covered, in the unit of the record. */
  readonly dark?: number;
  /** Seconds in the record's unit of time, where its header does not say or says wrong. */
  readonly unit_s?: number;
}

const LEAST_SAMPLES = 64;
const LEAST_PERIODS = 5;
const GOOD_PERIODS = 20;
const LEAST_SAMPLES_A_PERIOD = 10;
const MOST_CELLS = 1024;
const GOOD_JITTER = 0.01;
const MOST_JITTER = 0.5;

function jitterOf({ times_s }: Sampled): number {
  const step_s = times_s.at(-1)! / (times_s.length - 1);
  let sum = 0;
  for (let i = 1; i < times_s.length; i += 1) sum += (times_s[i]! - times_s[i - 1]! - step_s) ** 2;
  return Math.sqrt(sum / (times_s.length - 1)) / step_s;
}

const percent = (fraction: number) => `${Number((100 * fraction).toPrecision(2))} %`;

/** Takes the dark away. Refuses light below it and no light at all; a hair below is noise, and counts as dark. */
function lightOf(values: Float64Array, dark: number): Float64Array {
  const light = values.map((value) => value - dark);
  const mean = light.reduce((sum, value) => sum + value, 0) / light.length;
  if (!(mean > 0))
    refuseMeasured({
      code: 'flicker.no-light',
      what: `The record's mean is ${Number((mean + dark).toPrecision(4))}, which leaves no light above the dark reading of ${dark}`,
      line: 0,
      mend: 'Turn the sensor’s sign round, or give the reading with the sensor covered.',
    });
  return light;
}

interface Folded {
  readonly cells: Float64Array;
  readonly residual: number;
}

/** Mean light at each phase, and what it leaves unexplained, root mean square. */
function fold({ times_s, values }: Sampled, rate_Hz: number, used: number): Folded {
  // At least one sample of every period in each cell, so that none is empty.
  const perPeriod = used / Math.floor(times_s[used - 1]! * rate_Hz + 0.5);
  const cellCount = Math.min(MOST_CELLS, Math.max(8, 2 ** Math.floor(Math.log2(perPeriod))));
  const [sums, counts] = [new Float64Array(cellCount), new Float64Array(cellCount)];
  const cellOf = (i: number) => {
    const phase = times_s[i]! * rate_Hz;
    return Math.min(cellCount - 1, Math.floor((phase - Math.floor(phase)) * cellCount));
  };
  for (let i = 0; i < used; i += 1) {
    const cell = cellOf(i);
    sums[cell] = sums[cell]! + values[i]!;
    counts[cell] = counts[cell]! + 1;
  }
  const cells = sums.map((sum, cell) => sum / counts[cell]!);
  let squares = 0;
  for (let i = 0; i < used; i += 1) squares += (values[i]! - cells[cellOf(i)]!) ** 2;
  return { cells, residual: Math.sqrt(squares / used) };
}

function foldRecord(
  record: MeasuredRecord,
  { dark = 0 }: Pick<MeasuredOptions, 'dark'>,
): MeasuredWaveform & { readonly ok: true } {
  const count = record.times_s.length;
  if (count < LEAST_SAMPLES)
    refuseMeasured({
      code: 'flicker.too-short',
      what: `The record has ${count} samples, fewer than the ${LEAST_SAMPLES} that say anything`,
      line: 0,
      mend: 'Record a second at 20,000 samples a second or more.',
    });
  const sampled = { times_s: record.times_s, values: lightOf(record.values, dark) };
  const sampleRate_Hz = (count - 1) / sampled.times_s.at(-1)!;
  const jitterFraction = jitterOf(sampled);
  if (jitterFraction > MOST_JITTER)
    refuseMeasured({
      code: 'flicker.uneven-times',
      what: `Steps in time vary by ${percent(jitterFraction)} of their mean`,
      line: 0,
      mend: 'Save one record without gaps, with enough figures in its times.',
    });
  const rate_Hz = repeatRate_Hz(sampled);
  if (rate_Hz === undefined)
    refuseMeasured({
      code: 'flicker.no-period',
      what: 'Nothing in the record repeats above its noise',
      line: 0,
      mend: 'If the lamp is steady, describe it as steady. Otherwise bring the sensor nearer, or record longer.',
    });
  const periodCount = Math.floor((sampled.times_s.at(-1)! + 1 / sampleRate_Hz) * rate_Hz + 1e-6);
  if (periodCount < LEAST_PERIODS)
    refuseMeasured({
      code: 'flicker.few-periods',
      what: `The record holds ${periodCount} whole periods of ${Number((1000 / rate_Hz).toPrecision(4))} ms, fewer than ${LEAST_PERIODS}`,
      line: 0,
      mend: 'Record at least 20 periods: a second is plenty on the mains.',
    });
  const perPeriod = sampleRate_Hz / rate_Hz;
  if (perPeriod < LEAST_SAMPLES_A_PERIOD)
    refuseMeasured({
      code: 'flicker.coarse',
      what: `A period holds ${Number(perPeriod.toPrecision(3))} samples, fewer than ${LEAST_SAMPLES_A_PERIOD}: what repeats may be an alias of something faster`,
      line: 0,
      mend: 'Record with more samples a second.',
    });
  // Half a period of samples that is left over would weigh its phases twice.
  let used = count;
  while (used > 0 && sampled.times_s[used - 1]! * rate_Hz >= periodCount) used -= 1;
  const { cells, residual } = fold(sampled, rate_Hz, used);
  const mean = cells.reduce((sum, value) => sum + value, 0) / cells.length;
  const below = Math.min(...cells) / mean;
  if (below < -0.02)
    refuseMeasured({
      code: 'flicker.below-dark',
      what: `At its dimmest the light lies ${percent(-below)} of its mean below the dark reading`,
      line: 0,
      mend: 'Cover the sensor, read it again and give that as the dark reading.',
    });
  const waveform = waveformOfSamples({ period_s: 1 / rate_Hz, samples: cells.map((value) => Math.max(0, value)) });
  const amplitude = mean * harmonicAmplitudes(waveform, 1)[0]!;
  const rateError_Hz =
    (sampleRate_Hz * Math.sqrt(6) * residual) / (Math.PI * amplitude * Math.sqrt(used * (used ** 2 - 1)));
  return {
    ok: true,
    waveform,
    quality: {
      sampleRate_Hz,
      sampleCount: used,
      periodCount,
      periodErrorFraction: rateError_Hz / rate_Hz,
      residualFraction: residual / mean,
      jitterFraction,
    },
    notices: [
      ...record.notices,
      ...(jitterFraction > GOOD_JITTER
        ? [`Steps in time vary by ${percent(jitterFraction)}; each sample counts at its own time.`]
        : []),
      ...(periodCount < GOOD_PERIODS ? [`Only ${periodCount} periods; ${GOOD_PERIODS} or more tell more.`] : []),
      ...(dark === 0
        ? ['No dark reading was taken away: any offset of the sensor makes the ripple look shallower.']
        : []),
      ...(below < 0 ? ['The dimmest light lies a hair below the dark reading and counts as dark.'] : []),
    ],
  };
}

function lineOf({ cause }: Fault): number {
  return typeof cause === 'object' && cause !== null && 'line' in cause ? Number(cause.line) : 0;
}

/** One period of a lamp from a record that has been read, or is as it is asked for; or why not, where and what to do. */
export function measuredWaveformOf(
  record: () => MeasuredRecord,
  options: Pick<MeasuredOptions, 'dark'> = {},
): MeasuredWaveform {
  try {
    return foldRecord(record(), options);
  } catch (error) {
    if (!(error instanceof Fault)) throw error;
    const { code, what, where, mend } = error;
    return { ok: false, refusal: { code, what, where, mend, line: lineOf(error) } };
  }
}

/** One period of a lamp from a text of time and light, with how good it is; or why not, where and what to do. */
export function readMeasuredWaveform(text: string, { dark = 0, unit_s }: MeasuredOptions = {}): MeasuredWaveform {
  return measuredWaveformOf(() => readMeasuredText(text, unit_s === undefined ? {} : { unit_s }), { dark });
}
