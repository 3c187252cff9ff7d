/** A light record read for its preview: one period with how good it is, or why there is none, and what to draw of it. */
import { measuredWaveformOf, type MeasuredOptions, type MeasuredWaveform } from '../../../laws/flicker/measured.ts';
import { readMeasuredText, type MeasuredRecord } from '../../../laws/flicker/measuredText.ts';
import { traceOf, type Trace } from './recordTrace.ts';

export interface LightRecord {
  readonly measured: MeasuredWaveform;
  /** Its beginning where a period was found, else all of it; absent where the text holds no record. */
  readonly trace?: Trace;
}

const COLUMNS = 600;
const PERIODS_SHOWN = 8;

export function readLightRecord(text: string, { dark = 0, unit_s }: MeasuredOptions = {}): LightRecord {
  let record: MeasuredRecord | undefined;
  const measured = measuredWaveformOf(
    () => {
      record = readMeasuredText(text, unit_s === undefined ? {} : { unit_s });
      return record;
    },
    { dark },
  );
  if (!record) return { measured };
  const to_s = measured.ok ? PERIODS_SHOWN * measured.waveform.period_s : Infinity;
  return { measured, trace: traceOf(record, { to_s, columnCount: COLUMNS }) };
}
