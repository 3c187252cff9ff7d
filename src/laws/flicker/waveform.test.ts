import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { filamentDepthFraction, tungstenRipple } from './filament.ts';
import { assumedOf, FLICKER_DEFAULTS, isMainsLocked, waveformOf, type FlickerKind, type LampFlicker } from './lamp.ts';
import { pulseHarmonicFraction } from './led.ts';
import { depthOf } from './metrics.ts';
import { harmonicAmplitudes, steadyWaveform, waveformAtDrift, waveformOfSamples } from './waveform.ts';

const LAMPS: Record<FlickerKind, LampFlicker> = {
  steady: { kind: 'steady' },
  tungsten: { kind: 'tungsten', power_W: 2000, mains_Hz: 50 },
  magnetic: { kind: 'magnetic', mains_Hz: 60 },
  square: { kind: 'square' },
  fluorescent: { kind: 'fluorescent', mains_Hz: 50 },
  'electronic-tube': { kind: 'electronic-tube', mains_Hz: 50 },
  'led-steady': { kind: 'led-steady', mains_Hz: 50 },
  'led-ripple': { kind: 'led-ripple', mains_Hz: 50 },
  'led-pulses': { kind: 'led-pulses', pulse_Hz: 2000 },
  'led-interleaved': { kind: 'led-interleaved', pulse_Hz: 500, channelCount: 4, dutyFraction: 0.3 },
  measured: { kind: 'measured', waveform: steadyWaveform(), isMainsLocked: false },
};
const EACH = Object.entries(LAMPS).map(([kind, lamp]) => ({ kind, lamp }));

describe('filaments', () => {
  published(
    'depth of a filament',
    (given: Parameters<typeof filamentDepthFraction>[0]) => filamentDepthFraction(given),
    [
      {
        source: 'flicker-numerics',
        at: 'lag 20 ms, 2800 K, 100 Hz',
        given: { ripple_Hz: 100, lag_s: 0.02, colour_K: 2800 },
        expected: '0.183612',
      },
    ],
  );
  const percent = (given: Parameters<typeof tungstenRipple>[0]) => 100 * tungstenRipple(given).depthFraction;
  const lamp = (power_W: number, supply_V: number, mains_Hz: number, colour_K: number, expected: string) => ({
    source: 'flicker-numerics',
    at: `${power_W} W, ${supply_V} V, ${mains_Hz} Hz`,
    given: { power_W, supply_V, mains_Hz, colour_K },
    expected,
  });
  published('percent flicker of a lamp', percent, [
    lamp(60, 120, 60, 2800, '11.0'),
    lamp(60, 120, 50, 2800, '13.1'),
    lamp(1000, 120, 60, 3200, '2.2'),
    lamp(1000, 120, 50, 3200, '2.6'),
    lamp(1000, 230, 60, 3200, '3.4'),
    lamp(1000, 230, 50, 3200, '4.1'),
    lamp(5000, 230, 60, 3200, '1.2'),
    lamp(5000, 230, 50, 3200, '1.4'),
  ]);

  test.each([
    [60, 2800, 8],
    [100, 2850, 5],
    [300, 2900, 3],
    [1000, 3000, 1],
  ])(
    '%d W at 120 V is an upper bound on the handbooks’ figure, by no more than 2.6 times',
    (power_W, colour_K, handbook) => {
      const ours = percent({ power_W, supply_V: 120, mains_Hz: 60, colour_K });
      expect(ours).toBeGreaterThan(handbook);
      expect(ours).toBeLessThan(2.6 * handbook);
    },
  );

  test('a larger lamp, and one for a lower voltage, ripples less', () => {
    const base = { power_W: 1000, supply_V: 230, mains_Hz: 50 };
    expect(percent({ ...base, power_W: 5000 })).toBeLessThan(percent(base));
    expect(percent({ ...base, supply_V: 120 })).toBeLessThan(percent(base));
    expect(percent({ ...base, mains_Hz: 60 })).toBeLessThan(percent(base));
  });
});

describe.each(EACH)('$kind', ({ kind, lamp }) => {
  test('has a mean of 1, no light below 0, and a period', () => {
    const { samples, period_s } = waveformOf(lamp);
    expect(samples.reduce((sum, light) => sum + light, 0) / samples.length).toBeCloseTo(1, 12);
    expect(Math.min(...samples)).toBeGreaterThanOrEqual(0);
    expect(period_s).toBeGreaterThan(0);
  });

  test('names what it assumes, and giving that changes nothing', () => {
    const assumed = assumedOf(lamp);
    for (const { note, source } of Object.values(assumed)) {
      expect(note).not.toBe('');
      expect(source).toMatch(/^(flicker-practice|fluorescent-depth)$/);
    }
    const filled = Object.fromEntries(Object.entries(assumed).map(([name, { value }]) => [name, value]));
    const full = { ...lamp, ...filled };
    expect(assumedOf(full)).toEqual({});
    expect(waveformOf(full)).toEqual(waveformOf(lamp));
    expect(Object.keys(FLICKER_DEFAULTS)).toContain(kind);
  });
});

test('magnetic, square and pulsed lamps have the ripple rates of their supplies', () => {
  const rate = (lamp: LampFlicker) => 1 / waveformOf(lamp).period_s;
  expect(rate({ kind: 'magnetic', mains_Hz: 50 })).toBeCloseTo(100, 9);
  expect(rate({ kind: 'magnetic', mains_Hz: 50, imbalanceFraction: 0.05 })).toBeCloseTo(50, 9);
  expect(rate({ kind: 'square', square_Hz: 300 })).toBeCloseTo(600, 9);
  expect(rate({ kind: 'led-pulses', pulse_Hz: 1200 })).toBeCloseTo(1200, 9);
});

test('lamps on the mains keep step with it, ballasts and pulses do not', () => {
  expect(EACH.filter(({ lamp }) => !isMainsLocked(lamp)).map(({ kind }) => kind)).toEqual([
    'square',
    'led-pulses',
    'led-interleaved',
    'measured',
  ]);
});

test('unlike electrodes add the rate of the mains itself', () => {
  const even = harmonicAmplitudes(waveformOf({ kind: 'magnetic', mains_Hz: 50, imbalanceFraction: 0 }), 1);
  const uneven = harmonicAmplitudes(waveformOf({ kind: 'magnetic', mains_Hz: 50, imbalanceFraction: 0.1 }), 2);
  expect(uneven[0]).toBeGreaterThan(0.02);
  expect(uneven[1]! / even[0]!).toBeCloseTo(1, 2);
});

test('a tube’s default depth lies where handbooks put it, and no lag at all gives a full rectified wave', () => {
  const depth = depthOf(waveformOf({ kind: 'fluorescent', mains_Hz: 50 }));
  expect(depth).toBeGreaterThan(0.2);
  expect(depth).toBeLessThan(0.4);
  expect(depthOf(waveformOf({ kind: 'fluorescent', mains_Hz: 50, phosphorLag_s: 0 }))).toBeGreaterThan(0.999);
});

test('a rectified driver has the depth asked for', () => {
  const lamp = { kind: 'led-ripple', mains_Hz: 50, depthFraction: 0.35, shape: 'rectified' } as const;
  expect(depthOf(waveformOf(lamp))).toBeCloseTo(0.35, 3);
});

test('harmonics of pulses are those of the series', () => {
  const waveform = waveformOf({ kind: 'led-pulses', pulse_Hz: 1000, dutyFraction: 0.3, lowFraction: 0.1 });
  const amplitudes = harmonicAmplitudes(waveform, 6);
  for (let order = 1; order <= 6; order += 1) {
    const series = pulseHarmonicFraction({
      pulse_Hz: 1000,
      dutyFraction: 0.3,
      lowFraction: 0.1,
      exposureTime_s: 1e-12,
      harmonicCount: order,
    });
    expect(amplitudes[order - 1]).toBeCloseTo(series, 5);
  }
});

test('equal channels leave only the harmonics their number divides', () => {
  const amplitudes = harmonicAmplitudes(waveformOf(LAMPS['led-interleaved']), 8);
  for (const order of [1, 2, 3, 5, 6, 7]) expect(amplitudes[order - 1]).toBeLessThan(1e-6);
  expect(amplitudes[3]).toBeGreaterThan(0.1);
});

test('mains that run fast shorten the period by as much', () => {
  expect(waveformAtDrift({ waveform: steadyWaveform({ period_s: 0.01 }), driftRatio: 0.002 }).period_s).toBeCloseTo(
    0.01 / 1.002,
    12,
  );
});

test('any light scales to a mean of 1', () => {
  const light = fc.array(fc.double({ min: 0.001, max: 1e6, noNaN: true }), { minLength: 8, maxLength: 64 });
  fc.assert(
    fc.property(light, (values) => {
      const { samples } = waveformOfSamples({ period_s: 0.01, samples: Float64Array.from(values) });
      expect(samples.reduce((sum, value) => sum + value, 0) / samples.length).toBeCloseTo(1, 9);
    }),
  );
});

test.each<[string, LampFlicker, string]>([
  ['no power', { kind: 'tungsten', power_W: 0, mains_Hz: 50 }, 'power_W'],
  ['a filament thin as nothing', { kind: 'tungsten', power_W: 1e-9, mains_Hz: 50, colour_K: 1500 }, 'depthFraction'],
  ['no mains', { kind: 'magnetic', mains_Hz: 0 }, 'mains_Hz'],
  ['a floor above the light', { kind: 'magnetic', mains_Hz: 50, floorFraction: 1.2 }, 'floorFraction'],
  ['a notch deeper than dark', { kind: 'square', notchFraction: 1.1 }, 'notchFraction'],
  ['no recovery', { kind: 'square', recovery_s: 0 }, 'recovery_s'],
  ['a phosphor before its arc', { kind: 'fluorescent', mains_Hz: 50, phosphorLag_s: -1 }, 'phosphorLag_s'],
  ['a depth beyond 1', { kind: 'led-ripple', mains_Hz: 50, depthFraction: 2 }, 'depthFraction'],
  [
    'a rectified depth beyond 1',
    { kind: 'led-ripple', mains_Hz: 50, depthFraction: 2, shape: 'rectified' },
    'depthFraction',
  ],
  ['a duty of none', { kind: 'led-pulses', pulse_Hz: 500, dutyFraction: 0 }, 'dutyFraction'],
  ['no channels', { kind: 'led-interleaved', pulse_Hz: 500, channelCount: 0 }, 'channelCount'],
])('%s is refused by name', (_, lamp, name) => {
  expect(() => waveformOf(lamp)).toThrow(RangeError);
  expect(() => waveformOf(lamp)).toThrow(name);
});

test('light below 0, dark throughout, or in too few cells is refused', () => {
  const of = (values: readonly number[]) => () =>
    waveformOfSamples({ period_s: 0.01, samples: Float64Array.from(values) });
  expect(of([1, 1, 1, -1, 1, 1, 1, 1])).toThrow('light must be zero or above');
  expect(of([0, 0, 0, 0, 0, 0, 0, 0])).toThrow('mean must be positive');
  expect(of([1, 2])).toThrow('sampleCount must be from 8');
});
