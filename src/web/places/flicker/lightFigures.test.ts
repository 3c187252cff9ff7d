import { describe, expect, test } from 'vitest';
import { waveformOf } from '../../../laws/flicker/lamp.ts';
import { sineWaveform, steadyWaveform } from '../../../laws/flicker/waveform.ts';
import { lightFigures } from './lightFigures.ts';

describe('the figures of a period of light', () => {
  test('of a sine are its rate, its depth, and a flicker index of the depth over π', () => {
    const { ripple_Hz, depthFraction, flickerIndexRatio, swing_stops } = lightFigures(
      sineWaveform({ ripple_Hz: 120, depthFraction: 0.4 }),
    );
    expect(ripple_Hz).toBeCloseTo(120, 9);
    expect(depthFraction).toBeCloseTo(0.4, 5);
    expect(flickerIndexRatio).toBeCloseTo(0.4 / Math.PI, 5);
    expect(swing_stops).toBeCloseTo(Math.log2(1.4 / 0.6), 4);
  });

  test('of a lamp whose halves differ are told by its stronger rate, not by its longer period', () => {
    const waveform = waveformOf({ kind: 'magnetic', mains_Hz: 50, imbalanceFraction: 0.1 });
    expect(waveform.period_s).toBeCloseTo(0.02, 9);
    expect(lightFigures(waveform).ripple_Hz).toBeCloseTo(100, 6);
  });

  test('of light that goes dark have a swing without limit', () => {
    expect(lightFigures(waveformOf({ kind: 'led-pulses', pulse_Hz: 1000 })).swing_stops).toBe(Infinity);
  });

  test('of light that does not change have no rate', () => {
    expect(lightFigures(steadyWaveform())).toEqual({ depthFraction: 0, swing_stops: 0, flickerIndexRatio: 0 });
  });
});
