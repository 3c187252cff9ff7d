import { expect, test } from 'vitest';
import { sineWaveform } from '../../../laws/flicker/waveform.ts';
import { qualityRows } from './recordWords.ts';

const quality = {
  sampleRate_Hz: 20_000,
  sampleCount: 19_800,
  periodCount: 99,
  periodErrorFraction: 3.2e-6,
  residualFraction: 0.0041,
  jitterFraction: 0.0002,
};

test('the figures of a record say its period, how much of it was kept, and what it leaves open', () => {
  const rows = qualityRows({ waveform: sineWaveform({ ripple_Hz: 100, depthFraction: 0.2 }), quality, dark: 0.02 });
  expect(rows.map(({ title, says }) => `${title}: ${says}`)).toEqual([
    'Period: 10 ms, 100 Hz, give or take 3.2 millionths',
    'Whole periods kept: 99, laid over one another in 8192 steps',
    'Samples: 19800 at 20 kHz, 200 a period',
    'Jitter: 0.02 % of a step',
    'Left unexplained: 0.41 % of the mean light: noise, and whatever does not repeat',
    'Dark: 0.02 taken away',
  ]);
});

test('a period known poorly is told in per cent, and no dark is told as none', () => {
  const waveform = sineWaveform({ ripple_Hz: 100, depthFraction: 0.2 });
  const rows = qualityRows({ waveform, quality: { ...quality, periodErrorFraction: 0.004 }, dark: 0 });
  expect(rows[0]!.says).toMatch(/give or take 0.4 %$/);
  expect(rows.at(-1)!.says).toBe('none taken away');
  const even = qualityRows({ waveform, quality: { ...quality, jitterFraction: 1e-13 }, dark: 0 });
  expect(even.find(({ title }) => title === 'Jitter')!.says).toMatch(/^none/);
});
