import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { eyeSensitivity, flickerThreshold, noiseSensitivity, responseSensitivity } from './eye.ts';
import {
  depthInStops,
  depthOf,
  depthOfLight,
  depthOfStops,
  flickerIndexOf,
  ieee1789Levels,
  pulseFlickerIndex,
  stroboscopicThreshold,
  stroboscopicVisibility,
} from './metrics.ts';
import { magneticWaveform } from './discharge.ts';
import { pulseWaveform } from './led.ts';
import { seenFlicker } from './seen.ts';
import { judgeFlicker } from './visible.ts';
import { sineWaveform, type Waveform } from './waveform.ts';

const SINE = sineWaveform({ ripple_Hz: 100, depthFraction: 0.4 });
const PULSES = pulseWaveform({ pulse_Hz: 100, dutyFraction: 0.3, lowFraction: 0.1 });

describe('the eye', () => {
  const at = (screen_Hz: number, expected: string) => ({
    source: 'flicker-numerics',
    at: `${screen_Hz} Hz, 50 cd/m², 20°`,
    given: { screen_Hz },
    expected,
  });
  published('sensitivity by the impulse response', responseSensitivity, [
    at(1, '49.5273'),
    at(5, '165.628'),
    at(10, '195.464'),
    at(20, '79.2543'),
  ]);
  published('sensitivity by noise', (given: { readonly screen_Hz: number }) => noiseSensitivity(given), [
    at(1, '19.6'),
    at(5, '96.1'),
    at(10, '214'),
    at(20, '187'),
  ]);

  test('gets no credit for slow changes: below the peak the threshold stays as low as at it', () => {
    const sensitivity = eyeSensitivity();
    expect(sensitivity(0)).toBe(sensitivity(10));
    expect(sensitivity(0)).toBeGreaterThanOrEqual(200);
    for (let rate = 1; rate < 60; rate += 1)
      expect(sensitivity(rate)).toBeLessThanOrEqual(sensitivity(rate - 1) + 1e-9);
    expect(sensitivity(50)).toBeLessThan(10);
  });

  test('sees less in a dim picture, and about half a per cent at best', () => {
    const dim = flickerThreshold({ screen_Hz: 20, luminance_cd_per_m2: 5 });
    expect(dim.amplitudeFraction).toBeGreaterThan(flickerThreshold({ screen_Hz: 20 }).amplitudeFraction);
    expect(flickerThreshold({ screen_Hz: 2.5 }).amplitudeFraction).toBeLessThan(0.005);
  });
});

describe('the verdict', () => {
  const judged = (depthFraction: number, playback_fps = 25) =>
    judgeFlicker(
      seenFlicker([{ waveform: sineWaveform({ ripple_Hz: 100, depthFraction }), shareFraction: 1 }], {
        frameRate_fps: 1000,
        exposureTime_s: 1e-4,
        playback_fps,
      }),
    );

  test.each([
    [0.001, 'invisible', 'none needed'],
    [0.007, 'marginal', 'look at plain backgrounds'],
    [0.02, 'visible', 'can be repaired'],
    [0.2, 'visible', 'shoot again'],
  ])('of a depth of %d is %s: %s', (depthFraction, verdict, remedy) => {
    expect(judged(depthFraction)).toMatchObject({ verdict, remedy });
  });

  test('says by how much, how often and why in one sentence', () => {
    expect(judged(0.2).why).toMatch(
      /^Frames swing by 0\.58 stop, 2\.5 times a second on the screen, \d+ times what an eye sees\.$/,
    );
  });

  test('grows no milder as the lamp flickers more', () => {
    const order = ['invisible', 'marginal', 'visible'];
    let last = 0;
    for (let depth = 0; depth < 0.5; depth += 0.002) {
      const now = order.indexOf(judged(depth).verdict);
      expect(now).toBeGreaterThanOrEqual(last);
      last = now;
    }
  });

  test('of frames that are dark is to shoot again', () => {
    const dark = pulseWaveform({ pulse_Hz: 100, dutyFraction: 0.3 });
    const verdict = judgeFlicker(
      seenFlicker([{ waveform: dark, shareFraction: 1 }], {
        frameRate_fps: 1000,
        exposureTime_s: 1e-4,
        playback_fps: 25,
      }),
    );
    expect(verdict.remedy).toBe('shoot again');
    expect(verdict.why).toMatch(/^Some frames are dark/);
  });
});

describe('metrics', () => {
  const row = (waveform: Waveform, expected: string) => ({
    source: 'flicker-numerics',
    at: '100 Hz',
    given: waveform,
    expected,
  });
  published('percent flicker', (waveform: Waveform) => 100 * depthOf(waveform), [
    row(SINE, '40.0000'),
    row(PULSES, '81.8182'),
  ]);
  published('flicker index', flickerIndexOf, [row(SINE, '0.127324'), row(PULSES, '0.5108')]);
  published('stroboscopic visibility', stroboscopicVisibility, [
    row(SINE, '1.56082'),
    row(PULSES, '4.9379'),
    row(sineWaveform({ ripple_Hz: 100, depthFraction: 1 }), '3.90205'),
    row(pulseWaveform({ pulse_Hz: 100, dutyFraction: 0.5 }), '4.9704'),
  ]);
  published('flicker index of a full rectified sine', flickerIndexOf, [
    row(magneticWaveform({ mains_Hz: 50, floorFraction: 0, shapeExponent: 1, imbalanceFraction: 0 }), '0.210514'),
  ]);
  const rate = (ripple_Hz: number, expected: string) => ({
    source: 'flicker-numerics',
    at: `${ripple_Hz} Hz`,
    given: { ripple_Hz },
    expected,
  });
  published('threshold of the stroboscopic effect', stroboscopicThreshold, [rate(100, '0.256275')]);
  const percent = (of: keyof ReturnType<typeof ieee1789Levels>) => (given: { readonly ripple_Hz: number }) =>
    100 * ieee1789Levels(given)[of];
  const level = (ripple_Hz: number, expected: string) => ({
    source: 'ieee-1789',
    at: `${ripple_Hz} Hz`,
    given: { ripple_Hz },
    expected,
  });
  published('low risk, %', percent('lowRiskFraction'), [level(100, '8'), level(80, '2.0'), level(120, '9.6')]);
  published('no observable effect, %', percent('noEffectFraction'), [level(100, '3.33333'), level(80, '0.8')]);
  published('stops of a depth', depthInStops, [
    { source: 'flicker-numerics', at: '0.04', given: { depthFraction: 0.04 }, expected: '0.115477' },
  ]);
  published('depth of a swing', depthOfStops, [
    { source: 'flicker-numerics', at: '0.03 stop', given: { swing_stops: 0.03 }, expected: '0.0103968' },
  ]);

  published('flicker index of pulses', pulseFlickerIndex, [
    {
      source: 'flicker-numerics',
      at: 'duty 0.3, 0.1 between',
      given: { dutyFraction: 0.3, lowFraction: 0.1 },
      expected: '0.51081',
    },
  ]);

  test('pulses by formula have the index and depth of their waveform', () => {
    expect(pulseFlickerIndex({ dutyFraction: 0.3, lowFraction: 0.1 })).toBeCloseTo(flickerIndexOf(PULSES), 4);
    expect(depthOfLight({ mostLight_lx: 10, leastLight_lx: 1 })).toBeCloseTo(depthOf(PULSES), 9);
  });

  test('no limit is a level of 1', () => {
    expect(ieee1789Levels({ ripple_Hz: 5000 })).toEqual({ lowRiskFraction: 1, noEffectFraction: 1 });
  });

  test('a ripple above 2 kHz has no stroboscopic effect', () => {
    expect(stroboscopicVisibility(sineWaveform({ ripple_Hz: 5000, depthFraction: 1 }))).toBe(0);
  });

  test('what has no meaning is refused by name', () => {
    expect(() => depthInStops({ depthFraction: 1 })).toThrow('depthFraction must be below 1');
    expect(() => depthOfLight({ mostLight_lx: 1, leastLight_lx: 2 })).toThrow('leastLight_lx');
    expect(() => pulseFlickerIndex({ dutyFraction: 1.2 })).toThrow('dutyFraction');
    expect(() => stroboscopicThreshold({ ripple_Hz: 0 })).toThrow('ripple_Hz');
  });
});
