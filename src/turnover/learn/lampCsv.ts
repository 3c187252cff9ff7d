/**
 * One period of a lamp written out as a record of its light over time, so that it is read wherever a meter's record is:
 * as many periods as such a record should have.
 */
import { keptText } from '../../laws/flicker/keptText.ts';
import type { Waveform } from '../../laws/flicker/waveform.ts';

const PERIODS = 21;
/**
 * Samples of a period for each of its cells. A little more than one, so that folding finds as many cells again, each of
 * them with a sample of every period.
 */
const OVER_CELLS = 1.0057;

/** A period as text of time and light; what it is stands in its head. */
export function lampCsv({ period_s, samples }: Waveform, says: string): string {
  const perPeriod = OVER_CELLS * samples.length;
  const count = Math.ceil(PERIODS * perPeriod);
  const times_s = Float64Array.from({ length: count }, (_, i) => (i / perPeriod) * period_s);
  const values = Float64Array.from({ length: count }, (_, i) => {
    const phase = i / perPeriod;
    return samples[Math.min(samples.length - 1, Math.floor((phase - Math.floor(phase)) * samples.length))]!;
  });
  return keptText({ times_s, values }, { head: [says.replaceAll(/[;\t\r\n]+/g, ',')] });
}
