import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { alias_Hz, screenFlickerOf } from './alias.ts';
import { lockDrift_Hz, lockedRates_fps, nullShutterOf, nullShutters, sharedNullShutters } from './cures.ts';
import { magneticWaveform, squareWaveform } from './discharge.ts';
import { exposureTable, frameLights } from './exposure.ts';
import { pulseWaveform } from './led.ts';
import { phasesMet, seenFlicker, type SeenGiven, type Swing } from './seen.ts';
import { sineWaveform, steadyWaveform, type Waveform } from './waveform.ts';
import { judgeFlicker } from './visible.ts';

const one = (waveform: Waveform) => [{ waveform, shareFraction: 1 }];
const CLIP: SeenGiven = { frameRate_fps: 960, exposureTime_s: 0.002, playback_fps: 24 };
const SINE = sineWaveform({ ripple_Hz: 100, depthFraction: 0.4 });
const PULSES = pulseWaveform({ pulse_Hz: 100, dutyFraction: 0.3, lowFraction: 0.1 });
const ARC = magneticWaveform({ mains_Hz: 50, floorFraction: 0.2, shapeExponent: 1, imbalanceFraction: 0 });
const NOTCH = squareWaveform({ square_Hz: 50, notchFraction: 0.06, recovery_s: 0.0008 });

describe('reference values at 100 Hz, 2 ms, every phase', () => {
  const swing =
    (of: keyof Swing, scale = 1) =>
    ({ waveform }: { readonly waveform: Waveform }) =>
      scale * seenFlicker(one(waveform), CLIP).betweenTakes[of];
  const row = (at: string, waveform: Waveform, expected: string) => ({
    source: 'flicker-numerics',
    at,
    given: { waveform },
    expected,
  });
  published('depth, %', swing('depthFraction', 100), [
    row('cosine', SINE, '37.4196'),
    row('pulses', PULSES, '81.8182'),
    row('arc', ARC, '50.496'),
    row('notch', NOTCH, '1.1137'),
  ]);
  published('peak to peak over the mean, %', swing('peakToPeakRatio', 100), [
    row('cosine', SINE, '74.8391'),
    row('pulses', PULSES, '243.24'),
    row('arc', ARC, '93.370'),
    row('notch', NOTCH, '2.2135'),
  ]);
  published('stops', swing('peakToPeak_stops'), [
    row('cosine', SINE, '1.1348'),
    row('pulses', PULSES, '3.32193'),
    row('arc', ARC, '1.6041'),
    row('notch', NOTCH, '0.032136'),
  ]);
});

describe('beats', () => {
  const at = (ripple_Hz: number, expected: string) => ({
    source: 'flicker-numerics',
    at: `${ripple_Hz} Hz at 960 fps, 24 on the screen`,
    given: { ripple_Hz, frameRate_fps: 960, playback_fps: 24 },
    expected,
  });
  published('beat in the frames', (given: Parameters<typeof screenFlickerOf>[0]) => screenFlickerOf(given).alias_Hz, [
    at(100, '100'),
    at(703, '257'),
  ]);
  published('beat on the screen', (given: Parameters<typeof screenFlickerOf>[0]) => screenFlickerOf(given).screen_Hz, [
    at(100, '2.5'),
    at(703, '6.425'),
  ]);

  test('never exceed half the frame rate, and stand still at every whole multiple of it', () => {
    const rate = fc.double({ min: 10, max: 25_000, noNaN: true });
    fc.assert(
      fc.property(rate, fc.double({ min: 0, max: 1e5, noNaN: true }), fc.integer({ min: 1, max: 40 }), (R, f, n) => {
        expect(alias_Hz({ ripple_Hz: f, frameRate_fps: R })).toBeLessThanOrEqual(R / 2);
        expect(alias_Hz({ ripple_Hz: n * R, frameRate_fps: R })).toBe(0);
      }),
    );
  });

  test('are as slow as the frames’ own light shows them to be', () => {
    const frames = frameLights(
      [{ table: exposureTable(sineWaveform({ ripple_Hz: 2003, depthFraction: 0.5 })), shareRatio: 1 }],
      {
        frameRate_fps: 1000,
        exposureTime_s: 1e-5,
        start_s: 0,
        frameCount: 1001,
      },
    );
    let rises = 0;
    for (let i = 1; i < frames.length; i += 1) if (frames[i - 1]! < 1 && frames[i]! >= 1) rises += 1;
    expect(rises).toBe(Math.round(alias_Hz({ ripple_Hz: 2003, frameRate_fps: 1000 })));
  });
});

describe('phases met', () => {
  test('a plain fraction of a cycle a frame meets as many phases as its denominator', () => {
    expect(phasesMet({ cyclesPerFrame: 100 / 960 })).toEqual({ count: 48, arcFraction: 0 });
    expect(phasesMet({ cyclesPerFrame: 2 })).toEqual({ count: 1, arcFraction: 0 });
    expect(phasesMet({ cyclesPerFrame: 0.6 })).toEqual({ count: 5, arcFraction: 0 });
  });

  test('a clip without end meets all of any other, and a short one an arc', () => {
    expect(phasesMet({ cyclesPerFrame: Math.SQRT1_2 })).toBeUndefined();
    const arc = phasesMet({ cyclesPerFrame: 2.000003, frameCount: 1001 })!;
    expect(arc.count).toBe(1);
    expect(arc.arcFraction).toBeCloseTo(0.003, 9);
  });
});

const swingOfFrames = (waveform: Waveform, given: SeenGiven & { readonly frameCount: number }, start_s: number) => {
  const lights = frameLights([{ table: exposureTable(waveform), shareRatio: 1 }], { ...given, start_s });
  return Math.max(...lights) - Math.min(...lights);
};

test('no clip swings further than worst or less than best, wherever its first frame falls', () => {
  const waves = fc.constantFrom(SINE, PULSES, ARC, NOTCH);
  const rate = fc.oneof(
    fc.constantFrom(25, 50, 100, 200, 300, 1000, 960),
    fc.double({ min: 24, max: 3000, noNaN: true }),
  );
  fc.assert(
    fc.property(
      waves,
      rate,
      fc.integer({ min: 1, max: 120 }),
      fc.double({ min: 0, max: 0.01, noNaN: true }),
      (wave, R, n, start_s) => {
        const given = { frameRate_fps: R, exposureTime_s: 0.2 / R, playback_fps: 24, frameCount: n };
        const seen = seenFlicker(one(wave), given);
        const swing = swingOfFrames(wave, given, start_s);
        expect(swing).toBeLessThanOrEqual(seen.worst.peakToPeakRatio + 0.03);
        expect(swing).toBeGreaterThanOrEqual(seen.best.peakToPeakRatio - 0.03);
        expect(swing).toBeLessThanOrEqual(seen.betweenTakes.peakToPeakRatio + 1e-2);
      },
    ),
    { numRuns: 60 },
  );
});

test('a locked rate is steady within a take, though takes can differ', () => {
  const seen = seenFlicker(one(SINE), { ...CLIP, frameRate_fps: 50, exposureTime_s: 0.001 });
  expect(seen.looksLike).toBe('steady');
  expect(seen.worst.peakToPeak_stops).toBeLessThan(1e-9);
  expect(seen.betweenTakes.peakToPeak_stops).toBeGreaterThan(1);
  expect(judgeFlicker(seen)).toMatchObject({ verdict: 'invisible', remedy: 'none needed' });
  expect(judgeFlicker(seen).why).toContain('takes can differ by 1.2 stop');
});

test('a clip shorter than a beat cannot be told from a ramp, and says so', () => {
  const slow = sineWaveform({ ripple_Hz: 20_003, depthFraction: 0.4 });
  const given = { frameRate_fps: 1000, exposureTime_s: 1e-6, playback_fps: 25 };
  const short = seenFlicker(one(slow), { ...given, frameCount: 100 });
  expect(short.dominant?.screen_Hz).toBeCloseTo(0.075, 9);
  expect(short.looksLike).toBe('drift or ramp');
  expect(short.cannotTell).toContain('The clip lasts 0.1 s and one beat 0.333 s');
  expect(short.best.peakToPeak_stops).toBeLessThan(short.worst.peakToPeak_stops);
  expect(seenFlicker(one(slow), { ...given, frameCount: 400 })).toMatchObject({ looksLike: 'flicker' });
});

test('lamps without step to each other swing by the sum, each by its share', () => {
  const groups = [
    { waveform: SINE, shareFraction: 0.7 },
    { waveform: steadyWaveform(), shareFraction: 0.3 },
  ];
  const seen = seenFlicker(groups, CLIP);
  expect(seen.betweenTakes.peakToPeakRatio).toBeCloseTo(0.7 * 0.748391, 5);
  expect(seen.tones[0]!.amplitudeFraction).toBeCloseTo(0.7 * 0.4 * 0.935489, 5);
});

test('a whole period in the exposure leaves nothing to see', () => {
  for (const waveform of [SINE, PULSES, ARC, NOTCH]) {
    const seen = seenFlicker(one(waveform), { frameRate_fps: 48, exposureTime_s: 0.02, playback_fps: 24 });
    expect(seen.looksLike).toBe('steady');
    expect(judgeFlicker(seen)).toMatchObject({ verdict: 'invisible', why: 'Every frame gets the same light.' });
  }
});

test('no lamps and rates that are not positive are refused by name', () => {
  expect(() => seenFlicker([], CLIP)).toThrow('groupCount');
  expect(() => seenFlicker(one(SINE), { ...CLIP, playback_fps: 0 })).toThrow('playback_fps');
  expect(() => seenFlicker(one(SINE), { ...CLIP, frameCount: 0 })).toThrow('frameCount');
});

describe('cures', () => {
  const nth = (at: number, expected: string) => ({
    source: 'flicker-numerics',
    at: `null ${at + 1} of 100 Hz at 19.2 fps`,
    given: { at },
    expected,
  });
  const nulls = nullShutters({ ripple_Hz: 100, frameRate_fps: 19.2 });
  published('null shutter', ({ at }: { readonly at: number }) => nulls[at]!.exposureTime_s, [
    nth(0, '0.01'),
    nth(1, '0.02'),
    nth(2, '0.03'),
    nth(3, '0.04'),
    nth(4, '0.05'),
  ]);
  const page = (mains_Hz: number, periodCount: number, expected: string) => ({
    source: 'null-shutter-page',
    at: `mains of ${mains_Hz} Hz, one over the exposure time`,
    given: { ripple_Hz: 2 * mains_Hz, periodCount },
    expected,
  });
  published(
    'one over a null shutter',
    (given: Parameters<typeof nullShutterOf>[0]) => 1 / nullShutterOf(given).exposureTime_s,
    [page(50, 1, '100'), page(50, 2, '50'), page(60, 1, '120'), page(60, 2, '60')],
  );
  const locks = lockedRates_fps({ ripple_Hz: 100, slowest_fps: 20, fastest_fps: 100 });
  published(
    'locked rates',
    ({ of }: { readonly of: 'count' | 'slowest' }) => (of === 'count' ? locks.length : locks[0]!),
    [
      { source: 'flicker-numerics', at: '100 Hz from 20 to 100 fps, how many', given: { of: 'count' }, expected: '5' },
      {
        source: 'flicker-numerics',
        at: '100 Hz from 20 to 100 fps, slowest',
        given: { of: 'slowest' },
        expected: '20',
      },
    ],
  );
  published(
    'ripple left at a drift of 0.1 %, in per cent',
    (drift: number) => 100 * nullShutterOf({ ripple_Hz: 100, driftFraction: drift }).leftFraction,
    [
      { source: 'flicker-numerics', at: '0.1 %', given: 0.001, expected: '0.0999' },
      { source: 'flicker-numerics', at: '1 %', given: 0.01, expected: '0.99' },
    ],
  );

  test('five nulls at 19.2 fps, and none above the ripple', () => {
    expect(nulls).toHaveLength(5);
    expect(nullShutters({ ripple_Hz: 100, frameRate_fps: 101 })).toEqual([]);
    expect(nullShutters({ ripple_Hz: 100, frameRate_fps: 100 })).toHaveLength(1);
    expect(lockedRates_fps({ ripple_Hz: 100, slowest_fps: 101, fastest_fps: 5000 })).toEqual([]);
  });

  test('every null takes out any waveform, and every lock gives each frame the same', () => {
    for (const { exposureTime_s } of nulls)
      expect(seenFlicker(one(PULSES), { frameRate_fps: 19.2, exposureTime_s, playback_fps: 24 }).looksLike).toBe(
        'steady',
      );
    for (const frameRate_fps of locks)
      expect(seenFlicker(one(PULSES), { frameRate_fps, exposureTime_s: 0.001, playback_fps: 24 }).looksLike).toBe(
        'steady',
      );
  });

  test('times shared by two ripples null both', () => {
    expect(sharedNullShutters({ ripples_Hz: [100, 120], frameRate_fps: 10 })).toEqual([0.05, 0.1]);
    expect(sharedNullShutters({ ripples_Hz: [100, 1000], frameRate_fps: 50 })).toEqual([0.01, 0.02]);
  });

  test('a drift beats twice the mains’ own, harmonic by harmonic', () => {
    expect(lockDrift_Hz({ mains_Hz: 50, driftFraction: 0.002 })).toBeCloseTo(0.2, 12);
    expect(lockDrift_Hz({ mains_Hz: 50, driftFraction: 0.002, harmonicCount: 3 })).toBeCloseTo(0.6, 12);
  });

  test('rates and drifts without meaning are refused by name', () => {
    expect(() => nullShutters({ ripple_Hz: 0, frameRate_fps: 24 })).toThrow('ripple_Hz');
    expect(() => nullShutters({ ripple_Hz: 100, frameRate_fps: 24, driftFraction: 0.9 })).toThrow('driftFraction');
    expect(() => lockedRates_fps({ ripple_Hz: 100, slowest_fps: -1, fastest_fps: 24 })).toThrow('slowest_fps');
    expect(() => sharedNullShutters({ ripples_Hz: [], frameRate_fps: 24 })).toThrow('ripple_Hz');
  });
});
