import { describe, expect, test } from 'vitest';
import { waveformOf } from '../laws/flicker/lamp.ts';
import { gatherLamps, mixedLamp, type LightGroup } from '../laws/flicker/mix.ts';
import { seenFlicker } from '../laws/flicker/seen.ts';
import { sineWaveform } from '../laws/flicker/waveform.ts';
import { flickerChart } from './flickerChart.ts';

const only = (waveform: LightGroup['waveform']): readonly LightGroup[] => [{ waveform, shareFraction: 1 }];

/** A notch, deep pulses and an arc on the mains; one lamp of each. */
const MIXED: readonly LightGroup[] = [
  { waveform: waveformOf({ kind: 'square' }), shareFraction: 0.5 },
  { waveform: waveformOf({ kind: 'led-pulses', pulse_Hz: 2000, dutyFraction: 0.3 }), shareFraction: 0.2 },
  { waveform: waveformOf({ kind: 'magnetic', mains_Hz: 50, imbalanceFraction: 0.2 }), shareFraction: 0.3 },
];
const THREE_PHASES = gatherLamps(([0, 1, 2] as const).map((mainsPhase) => mixedLamp({ lamp: { kind: 'fluorescent', mains_Hz: 60 }, mainsPhase }))); // prettier-ignore

const RATES = [24, 25, 48, 50, 59.94, 60, 96, 100, 120, 150, 240, 300, 599, 600, 960, 1000, 1100, 2000, 4000, 24_999];
const EXPOSURES = [1e-6, 1e-5, 3.3e-5, 1e-4, 2.5e-4, 5e-4, 1 / 1500, 1e-3, 2e-3, 1 / 300, 0.005, 1 / 120, 0.01, 0.0119, 1 / 60, 0.02]; // prettier-ignore

describe.each([
  ['three lamps that keep no step', MIXED],
  ['one lamp on each phase', THREE_PHASES],
  ['deep pulses alone', only(waveformOf({ kind: 'led-pulses', pulse_Hz: 1237, dutyFraction: 0.11, lowFraction: 0.05 }))],
])('the chart of %s', (_, groups) => {
  const chart = flickerChart(groups, { rates_fps: RATES, exposures_s: EXPOSURES, playback_fps: 25 });

  test.each(RATES)('agrees with the clip itself at %d fps, to 0.005 stop or 3 %%', (frameRate_fps) => {
    EXPOSURES.forEach((exposureTime_s, j) => {
      const cell = chart[RATES.indexOf(frameRate_fps) * EXPOSURES.length + j]!;
      if (exposureTime_s * frameRate_fps > 1 + 1e-9) {
        expect([exposureTime_s, cell]).toEqual([exposureTime_s, NaN]);
        return;
      }
      const seen = seenFlicker(groups, { frameRate_fps, exposureTime_s, playback_fps: 25 }).worst.peakToPeak_stops;
      expect(Math.abs(cell - seen)).toBeLessThanOrEqual(Math.max(0.005, 0.03 * seen));
    });
  });
}); // prettier-ignore

describe('a chart', () => {
  const sine = only(sineWaveform({ ripple_Hz: 100, depthFraction: 0.4 }));
  const cell = (rate_fps: number, exposure_s: number) => flickerChart(sine, { rates_fps: [rate_fps], exposures_s: [exposure_s], playback_fps: 25 })[0]!; // prettier-ignore

  test('is a row of exposures for each rate', () => {
    const chart = flickerChart(sine, { rates_fps: [1000, 25], exposures_s: [1e-4, 0.01, 0.02], playback_fps: 25 });
    expect([...chart].map((stops) => Number(stops.toFixed(3)))).toEqual([1.222, NaN, NaN, 0, 0, 0]);
  });

  test('shows the null shutter and the locked rate as nothing, and no rate above the ripple as nothing', () => {
    expect(cell(96, 0.01)).toBeLessThan(1e-6);
    expect(cell(50, 1e-4)).toBeLessThan(1e-6);
    for (const rate of [101, 200, 400, 1000, 1200, 5000]) expect(cell(rate, 1e-4)).toBeGreaterThan(0.9);
  });

  test('of frames that can be dark is without end, and of no rates is empty', () => {
    const dark = only(waveformOf({ kind: 'led-pulses', pulse_Hz: 200, dutyFraction: 0.2 }));
    expect(flickerChart(dark, { rates_fps: [1001], exposures_s: [1e-5], playback_fps: 25 })[0]).toBe(Infinity);
    expect(flickerChart(dark, { rates_fps: [], exposures_s: [1e-5], playback_fps: 25 })).toHaveLength(0);
  });
});
