import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import {
  exposedShare,
  exposureTable,
  frameLights,
  meanLight,
  rowLights,
  threePhaseDelays_s,
  threePhaseDepthFraction,
} from './exposure.ts';
import { gatherLamps, mixedLamp } from './mix.ts';
import { depthOf } from './metrics.ts';
import { rollingBandsOf } from './rolling.ts';
import { sineWaveform, steadyWaveform } from './waveform.ts';
import { waveformOf } from './lamp.ts';

const SINE = exposureTable(sineWaveform({ ripple_Hz: 100, depthFraction: 0.4 }));
const MIX = [
  { table: SINE, shareRatio: 0.7, delay_s: -0.1 / 100 },
  { table: exposureTable(steadyWaveform()), shareRatio: 0.3 },
];

describe('reference values', () => {
  published('share left', exposedShare, [
    {
      source: 'flicker-numerics',
      at: '100 Hz, 2 ms',
      given: { ripple_Hz: 100, exposureTime_s: 0.002 },
      expected: '0.935489',
    },
    {
      source: 'flicker-numerics',
      at: '100 Hz, 0.5 ms',
      given: { ripple_Hz: 100, exposureTime_s: 0.0005 },
      expected: '0.996',
    },
  ]);
  const frame = (at: number, expected: string) => ({
    source: 'flicker-numerics',
    at: `frame ${at} of a mix`,
    given: { at },
    expected,
  });
  const lights = frameLights(MIX, { frameRate_fps: 960, exposureTime_s: 0.002, start_s: 0, frameCount: 4 });
  published('light of a frame', ({ at }: { readonly at: number }) => lights[at]!, [
    frame(0, '1.08094'),
    frame(1, '0.912564'),
    frame(2, '0.780321'),
    frame(3, '0.73887'),
  ]);
  const bands = (of: keyof ReturnType<typeof rollingBandsOf>) => () =>
    rollingBandsOf({ ripple_Hz: 100, rowTime_s: 1e-5, rowCount: 1080, frameRate_fps: 960 })[of];
  const band = (expected: string) => ({ source: 'flicker-numerics', at: '100 Hz, 10 µs a row', given: {}, expected });
  published('rows a band', bands('rowsPerBand'), [band('1000')]);
  published('bands a frame', bands('bandsPerFrame'), [band('1.08')]);
  published('cycles a frame', bands('cyclesPerFrame'), [band('0.104167')]);
  published('rows a frame', bands('rowsPerFrame'), [band('-104.167')]);
  published('depth left by three phases', threePhaseDepthFraction, [
    {
      source: 'flicker-numerics',
      at: 'shares 2, 1, 1',
      given: { depthFraction: 0.4, firstShareRatio: 2, secondShareRatio: 1, thirdShareRatio: 1 },
      expected: '0.1',
    },
  ]);
});

const start = fc.double({ min: -5, max: 5, noNaN: true });
const time = fc.double({ min: 1e-5, max: 0.1, noNaN: true });

describe('exactly', () => {
  test('the mean of a cosine is its cosine at the middle, times the share left', () => {
    fc.assert(
      fc.property(start, time, (start_s, exposureTime_s) => {
        const middle_s = start_s + exposureTime_s / 2;
        const share = Math.sin(Math.PI * 100 * exposureTime_s) / (Math.PI * 100 * exposureTime_s);
        const exact = 1 + 0.4 * share * Math.cos(2 * Math.PI * 100 * middle_s);
        expect(meanLight(SINE, { start_s, exposureTime_s })).toBeCloseTo(exact, 6);
      }),
    );
  });

  test('a whole number of periods gives the mean, whatever the lamp and the start', () => {
    const table = exposureTable(waveformOf({ kind: 'led-pulses', pulse_Hz: 200, dutyFraction: 0.13 }));
    fc.assert(
      fc.property(start, fc.integer({ min: 1, max: 20 }), (start_s, periods) => {
        expect(meanLight(table, { start_s, exposureTime_s: periods / 200 })).toBeCloseTo(1, 9);
      }),
    );
  });

  test('two exposures end to end are one of both', () => {
    const table = exposureTable(waveformOf({ kind: 'square', notchFraction: 0.1 }));
    fc.assert(
      fc.property(start, time, time, (start_s, first_s, second_s) => {
        const first = meanLight(table, { start_s, exposureTime_s: first_s });
        const second = meanLight(table, { start_s: start_s + first_s, exposureTime_s: second_s });
        const both = meanLight(table, { start_s, exposureTime_s: first_s + second_s });
        expect((first * first_s + second * second_s) / (first_s + second_s)).toBeCloseTo(both, 6);
      }),
    );
  });
});

test('an exposure of no time is the light itself', () => {
  expect(meanLight(SINE, { start_s: 0.02, exposureTime_s: 0 })).toBeCloseTo(1.4, 5);
  expect(meanLight(SINE, { start_s: 0.005, exposureTime_s: 0 })).toBeCloseTo(0.6, 5);
});

test('rows of a rolling shutter see what frames at the row rate would', () => {
  const rows = rowLights(MIX, { rowTime_s: 1e-4, rowCount: 30, exposureTime_s: 0.001, start_s: 0.3 });
  const frames = frameLights(MIX, { frameRate_fps: 1e4, frameCount: 30, exposureTime_s: 0.001, start_s: 0.3 });
  for (let i = 0; i < 30; i += 1) expect(rows[i]).toBeCloseTo(frames[i]!, 12);
});

describe('three phases', () => {
  const lamp = { kind: 'led-ripple', mains_Hz: 50, depthFraction: 0.4 } as const;
  const phase = (mainsPhase: 0 | 1 | 2, shareRatio = 1) => mixedLamp({ lamp, mainsPhase, shareRatio });

  test('cancel a ripple of equal thirds and halve that of two', () => {
    expect(depthOf(gatherLamps([phase(0), phase(1), phase(2)])[0]!.waveform)).toBeLessThan(1e-6);
    expect(depthOf(gatherLamps([phase(0), phase(1)])[0]!.waveform)).toBeCloseTo(0.2, 5);
    expect(threePhaseDepthFraction({ depthFraction: 0.4, thirdShareRatio: 0 })).toBeCloseTo(0.2, 12);
  });

  test('leave what the law says of unequal shares', () => {
    expect(depthOf(gatherLamps([phase(0, 2), phase(1), phase(2)])[0]!.waveform)).toBeCloseTo(0.1, 5);
  });

  test('begin a third of the mains period apart', () => {
    expect(threePhaseDelays_s({ mains_Hz: 50 })[2]).toBeCloseTo(0.04 / 3, 12);
  });
});

test('lamps on the mains gather to one waveform, a pulsed lamp of the same rate stays apart', () => {
  const groups = gatherLamps([
    mixedLamp({ lamp: { kind: 'tungsten', power_W: 1000, mains_Hz: 50 }, shareRatio: 1 }),
    mixedLamp({ lamp: { kind: 'magnetic', mains_Hz: 50, imbalanceFraction: 0.1 }, shareRatio: 1 }),
    mixedLamp({ lamp: { kind: 'led-pulses', pulse_Hz: 100 }, shareRatio: 2 }),
    mixedLamp({ lamp: { kind: 'steady' }, shareRatio: 0 }),
  ]);
  expect(groups.map(({ shareFraction }) => shareFraction)).toEqual([0.5, 0.5]);
  expect(groups.map(({ waveform }) => Math.round(1 / waveform.period_s)).sort((a, b) => a - b)).toEqual([50, 100]);
});

test('no light, shares below 0 and clips without rate are refused by name', () => {
  const clip = { frameRate_fps: 1000, exposureTime_s: 0.001, start_s: 0, frameCount: 3 };
  expect(() => frameLights([], clip)).toThrow('sumOfShares must be positive');
  expect(() => frameLights([{ table: SINE, shareRatio: -1 }], clip)).toThrow('shareRatio');
  expect(() => frameLights(MIX, { ...clip, frameRate_fps: 0 })).toThrow('frameRate_fps');
  expect(() => frameLights(MIX, { ...clip, frameCount: 1e9 })).toThrow('count must be at most 2000000');
  expect(() => meanLight(SINE, { start_s: 0, exposureTime_s: -1 })).toThrow('exposureTime_s');
  expect(() => gatherLamps([])).toThrow('sumOfShares');
});
