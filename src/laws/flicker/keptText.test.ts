import { describe, expect, test } from 'vitest';
import { readMeasuredWaveform } from './measured.ts';
import { readMeasuredText } from './measuredText.ts';
import { keptText } from './keptText.ts';

const LINES = Array.from({ length: 4000 }, (_, i) => {
  const time_ms = i / 20;
  return `${time_ms},${(0.2 + 1 + 0.3 * Math.cos(2 * Math.PI * 0.1 * time_ms)).toFixed(6)}`;
}).join('\n');

describe('a record as it is kept', () => {
  const record = readMeasuredText(LINES, { unit_s: 1e-3 });

  test('reads by itself as the one brought in reads with its dark and its unit told', () => {
    const told = readMeasuredWaveform(LINES, { unit_s: 1e-3, dark: 0.2 });
    const alone = readMeasuredWaveform(keptText(record, { dark: 0.2 }));
    if (!told.ok || !alone.ok) throw new Error('was refused');
    expect(alone.waveform.period_s).toBeCloseTo(told.waveform.period_s, 9);
    expect(alone.waveform.samples.length).toBe(told.waveform.samples.length);
    alone.waveform.samples.forEach((light, i) => expect(light).toBeCloseTo(told.waveform.samples[i]!, 5));
    expect(alone.waveform.period_s).toBeCloseTo(0.01, 6);
  });

  test('says what was taken away', () => {
    expect(keptText(record, { dark: 0.2 }).split('\n')[0]).toBe('Light over time, a dark reading of 0.2 taken away');
    expect(keptText(record).split('\n').slice(0, 3)).toEqual(['Light over time', 'time (s);light', '0;1.5']);
  });
});
