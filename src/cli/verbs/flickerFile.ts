/** A measured lamp as `longsecond flicker` tells of it. */
import { showNumber, showQuantity, showShutter, sayShown } from '../../base/quantity.ts';
import type { CameraFacts, MeasuredFacts } from '../../turnover/flickerFacts.ts';
import { onOneLine, padded, wrapped, type Ink } from '../../turnover/lines.ts';

const LABEL_COLUMNS = 16;

/** Harmonics told to eyes. */
const MOST_HARMONICS = 4;

/** Below a thousandth of a per cent a figure says no more than that. */
const percent = (fraction: number): string => (fraction > 0 && fraction < 1e-5 ? 'under 0.001 %' : `${showNumber(100 * fraction, 3)} %`); // prettier-ignore
const hertz = (value: number): string => sayShown(showQuantity('frequency', value, { digits: 6 }));
const time = (value: number): string => sayShown(showQuantity('time', value, { digits: 4 }));
const shutter = (value: number): string => sayShown(showShutter(value));
const stops = (value: number): string =>
  value >= 30 ? 'without end: it is dark in between' : `${showNumber(value, 3)} stops`;

type Row = readonly [title: string, says: string];

function recordRows({ record, period_s, ripple_Hz, depthFraction, swing_stops, harmonics }: MeasuredFacts): readonly Row[] {
  const { sampleCount, sampleRate_Hz, periodCount, periodErrorFraction, residualFraction, jitterFraction, darkRatio } = record;
  const told = harmonics.slice(0, MOST_HARMONICS).map((of) => `${percent(of.amplitudeFraction)} at ${hertz(of.rate_Hz)}`);
  return [
    ['Record', `${sampleCount} samples, ${showNumber(sampleRate_Hz, 4)} a second, ${periodCount} whole periods; steps in time vary by ${percent(jitterFraction)}`],
    ['Dark', darkRatio === 0 ? 'no dark reading taken away' : `${showNumber(darkRatio, 4)} taken away`],
    ['Period', `${time(period_s)}, ${hertz(ripple_Hz)}, to ${percent(periodErrorFraction)}; leaves ${percent(residualFraction)} unexplained`],
    ['Swings by', `${percent(depthFraction)} (brightest less dimmest over their sum), ${stops(swing_stops)} in an exposure of no length`],
    ['Harmonics', told.join(', ') || 'none above 0.1 %'],
  ];
} // prettier-ignore

function roomRows({ room }: MeasuredFacts): readonly Row[] {
  const { percentFlickerFraction, flickerIndexRatio, stroboscopicRatio, ieee1789 } = room;
  const { lowRiskFraction, noEffectFraction, isWithinLowRisk, isWithinNoEffect } = ieee1789;
  const within = isWithinNoEffect ? 'within what it names as without effect' : isWithinLowRisk ? 'within what it names as low risk' : 'above what it names as low risk'; // prettier-ignore
  return [
    ['Percent flicker', percent(percentFlickerFraction)],
    ['Flicker index', showNumber(flickerIndexRatio, 3)],
    ['SVM', `${showNumber(stroboscopicRatio, 3)}; 1 is just seen`],
    ['IEEE 1789', `${within}: ${percent(noEffectFraction)} and ${percent(lowRiskFraction)} at this rate, from memory`],
  ];
}

function cameraRows({ frameRate_fps, exposureTime_s, playback_fps, frameCount, seen, verdict, nullShutters, lockedRates_fps }: CameraFacts): readonly Row[] {
  const clip = frameCount === undefined ? '' : `, ${frameCount} frames`;
  const nulls = nullShutters.map((of) => `${shutter(of.exposureTime_s)}`);
  const rates = lockedRates_fps.map((rate) => showNumber(rate, 4));
  return [
    ['Frames', `${showNumber(frameRate_fps, 4)} fps at ${shutter(exposureTime_s)}, played at ${showNumber(playback_fps, 4)} fps${clip}`],
    ['Swing', `${stops(seen.worst_stops)} where the first frame falls worst, ${stops(seen.best_stops)} where best; takes can differ by ${stops(seen.betweenTakes_stops)}`],
    ['Seen', `${verdict.verdict}, ${verdict.remedy}: ${verdict.why}`],
    ['Null shutters', nulls.length === 0 ? `none: a period is longer than the frame` : nulls.join(', ')],
    ['Locked rates', rates.length === 0 ? 'none' : `${rates.join(', ')} fps; none above the ripple, and a drift of the mains creeps through it`],
  ];
} // prettier-ignore

const told = (rows: readonly Row[]): readonly string[] =>
  rows.flatMap(([title, says]) => wrapped(onOneLine(`${padded(title, LABEL_COLUMNS)}${says}`), 2, 2 + LABEL_COLUMNS));

/** The lines that describe a measured lamp for eyes. */
export function flickerLines(facts: MeasuredFacts, camera: CameraFacts | undefined, ink: Ink): readonly string[] {
  return [
    `${ink.strong(onOneLine(facts.name))}  ${ink.faint('one lamp, alone')}`,
    ...told(recordRows(facts)),
    '',
    ink.strong(`Rated ${facts.room.says}`),
    ...told(roomRows(facts)),
    ...(camera ? ['', ink.strong('What a camera sees of it'), ...told(cameraRows(camera))] : []),
    ...(facts.notices.length > 0
      ? ['', ...facts.notices.flatMap((notice) => wrapped(onOneLine(`Note: ${notice}`), 2, 4))]
      : []),
  ];
}
