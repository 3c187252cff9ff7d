/** How good a light record is, in the figures that tell. */
import { showNumber, showQuantity } from '../../../base/quantity.ts';
import type { MeasuredQuality } from '../../../laws/flicker/measured.ts';
import type { Waveform } from '../../../laws/flicker/waveform.ts';

export interface QualityRow {
  readonly title: string;
  readonly says: string;
}

const percent = (fraction: number) => `${showNumber(100 * fraction, 2)} %`;
const shown = (kind: 'time' | 'frequency', value: number, digits: number) => {
  const { number, unit } = showQuantity(kind, value, { digits });
  return `${number} ${unit}`;
};

/** Parts in a million of the period, or per cent where there are many of them. */
const errorSaid = (fraction: number) =>
  fraction >= 1e-3 ? percent(fraction) : `${showNumber(fraction * 1e6, 2)} millionths`;

/** The figures of a record that was read, in the order in which one would ask. */
export function qualityRows(given: { readonly waveform: Waveform; readonly quality: MeasuredQuality; readonly dark: number }): readonly QualityRow[] {
  const { waveform: { period_s, samples }, quality, dark } = given;
  const { sampleRate_Hz, sampleCount, periodCount, periodErrorFraction, residualFraction, jitterFraction } = quality;
  return [
    { title: 'Period', says: `${shown('time', period_s, 6)}, ${shown('frequency', 1 / period_s, 6)}, give or take ${errorSaid(periodErrorFraction)}` },
    { title: 'Whole periods kept', says: `${periodCount}, laid over one another in ${samples.length} steps` },
    { title: 'Samples', says: `${sampleCount} at ${shown('frequency', sampleRate_Hz, 4)}, ${showNumber(sampleRate_Hz * period_s, 3)} a period` },
    { title: 'Jitter', says: jitterFraction < 1e-6 ? 'none: every step is alike' : `${percent(jitterFraction)} of a step` },
    { title: 'Left unexplained', says: `${percent(residualFraction)} of the mean light: noise, and whatever does not repeat` },
    { title: 'Dark', says: dark === 0 ? 'none taken away' : `${dark} taken away` },
  ];
} // prettier-ignore
