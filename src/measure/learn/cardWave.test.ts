import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { meanOf, type LampLight } from '../../../test/footage/synthetic.ts';
import { drawFour, drawKey } from '../../base/randomStream.ts';
import { exposureTable, frameLights } from '../../laws/flicker/exposure.ts';
import { betterRate_fps, ordersOf, unbrokenOrders } from './cardOrders.ts';
import { cardWaveOf, highestOrder, type CardWave } from './cardWave.ts';

interface Taken {
  readonly light: LampLight;
  readonly rate_fps: number;
  readonly exposure_s: number;
  readonly frames?: number;
  readonly noise?: number;
  readonly drift?: number;
  readonly strongestOrder?: number;
}

function noiseOf(count: number): Float64Array {
  const key = drawKey(5, 'card');
  const four = new Float64Array(4);
  return Float64Array.from({ length: count }, (_, i) => {
    drawFour(key, i, 0, 0, four);
    return Math.sqrt(-2 * Math.log(four[0]!)) * Math.cos(2 * Math.PI * four[1]!);
  });
}

/** The mean light of each frame, in closed form, with noise. Synthetic: worked out, not filmed. */
function framesOf({ light, rate_fps, exposure_s, frames = 2000, noise = 3e-4, drift = 0 }: Taken): Float64Array {
  const scatter = noiseOf(frames);
  return Float64Array.from({ length: frames }, (_, i) => {
    const mean = meanOf(light, i / rate_fps, i / rate_fps + exposure_s);
    return 0.2 * (1 + (drift * i) / frames) * mean * (1 + noise * scatter[i]!);
  });
}

const rateOf = (light: LampLight): number => (light.kind === 'steady' ? 100 : light.f_Hz);

const waveOf = (taken: Taken, weights?: Float64Array): CardWave | undefined =>
  cardWaveOf({
    light: framesOf(taken),
    weights: weights ?? new Float64Array(taken.frames ?? 2000).fill(1),
    frameRate_fps: taken.rate_fps,
    exposureTime_s: taken.exposure_s,
    rate_Hz: rateOf(taken.light),
    strongestOrder: taken.strongestOrder ?? 1,
  }); // prettier-ignore

const RIPPLE: LampLight = { kind: 'ripple', f_Hz: 100, depth: 0.3 };
const PULSES: LampLight = { kind: 'pulses', f_Hz: 100, duty: 0.4, low: 0.4 };
const FAST: LampLight = { kind: 'pulses', f_Hz: 2000, duty: 0.3, low: 0.2 };

/** From the dimmest to the brightest frame of a second, in stops. */
const swing_stops = (frames: Float64Array): number => Math.log2(Math.max(...frames) / Math.min(...frames));

describe.each([
  { title: 'a ripple, above the mains', taken: { light: RIPPLE, rate_fps: 1070, exposure_s: 1 / 2000 } },
  { title: 'a shallow ripple in noise', taken: { light: { ...RIPPLE, depth: 0.02 }, rate_fps: 960, exposure_s: 1 / 1000, noise: 2e-3 } },
  { title: 'a ripple that drifts', taken: { light: RIPPLE, rate_fps: 1070, exposure_s: 1 / 2000, drift: 0.05 } },
  { title: 'a ripple faster than the frames', taken: { light: { ...RIPPLE, f_Hz: 703 }, rate_fps: 960, exposure_s: 1 / 2000 } },
  { title: 'pulses of the mains', taken: { light: PULSES, rate_fps: 1070, exposure_s: 1 / 4000 } },
  { title: 'pulses off the mains', taken: { light: { ...PULSES, f_Hz: 119.93 }, rate_fps: 1070, exposure_s: 1 / 4000 } },
  { title: 'pulses far faster than the frames', taken: { light: FAST, rate_fps: 1070, exposure_s: 1 / 20_000 } },
] as readonly { readonly title: string; readonly taken: Taken }[])('$title', ({ taken }) => {
  const wave = waveOf(taken)!;

  test('has its rate', () => {
    expect(Math.abs(wave.rate_Hz - rateOf(taken.light))).toBeLessThan(4 * wave.rateDeviation_Hz + 1e-4);
  });

  test('has the harmonics of the lamp itself, what the shutter took given back', () => {
    const { light } = taken;
    const expected = (order: number): number => {
      if (light.kind === 'ripple') return order === 1 ? light.depth : 0;
      if (light.kind === 'steady') return 0;
      const { duty, low = 0 } = light;
      return (2 * (1 - low) * Math.abs(Math.sin(Math.PI * order * duty))) / (Math.PI * order * (duty + (1 - duty) * low));
    };
    const off = wave.harmonics.map(({ order, amplitudeFraction, deviationFraction }) => Math.abs(amplitudeFraction - expected(order)) / deviationFraction);
    expect(Math.max(...off)).toBeLessThan(4.5);
  });

  test.each([
    { rate_fps: 2500, exposure_s: 1 / 5000 },
    { rate_fps: 437, exposure_s: 1 / 900 },
    { rate_fps: 241, exposure_s: 1 / 480 },
  ])('tells what frames at $rate_fps fps would show, within its stated error', ({ rate_fps, exposure_s }) => {
    const truth = framesOf({ ...taken, rate_fps, exposure_s, frames: rate_fps, noise: 0, drift: 0 });
    const table = exposureTable(wave.period);
    const told = frameLights([{ table, shareRatio: 1 }], { start_s: 0, exposureTime_s: exposure_s, frameRate_fps: rate_fps, frameCount: rate_fps });
    const least = Math.min(...told);
    // One error at the brightest and one at the dimmest, in stops of the dimmest.
    const error_stops = (2 * 1.5 * wave.lightDeviationFraction) / least / Math.LN2 + 0.002;
    expect(Math.abs(swing_stops(told) - swing_stops(truth))).toBeLessThan(error_stops);
  });
}); // prettier-ignore

test('a lamp whose halves differ repeats by the mains, though it pulses twice as fast', () => {
  const light = Float64Array.from({ length: 2000 }, (_, i) => {
    const from = i / 1070;
    const of = (f_Hz: number, depth: number) => meanOf({ kind: 'ripple', f_Hz, depth }, from, from + 1 / 2000) - 1;
    return 0.3 * (1 + of(100, 0.3) + of(50, 0.04));
  });
  const wave = cardWaveOf({ light, weights: new Float64Array(2000).fill(1), frameRate_fps: 1070, exposureTime_s: 1 / 2000, rate_Hz: 50, strongestOrder: 2 })!; // prettier-ignore
  expect(wave.rate_Hz).toBeCloseTo(50, 4);
  expect(wave.harmonics.slice(0, 2).map(({ amplitudeFraction }) => amplitudeFraction)).toEqual([
    expect.closeTo(0.04, 4),
    expect.closeTo(0.3, 4),
  ]);
});

test('frames that are missing count for nothing', () => {
  const weights = Float64Array.from({ length: 2000 }, (_, i) => (i % 7 === 3 || (i > 500 && i < 560) ? 0 : 1));
  const wave = waveOf({ light: RIPPLE, rate_fps: 1070, exposure_s: 1 / 2000 }, weights)!;
  expect(Math.abs(wave.depthFraction - 0.3)).toBeLessThan(4 * wave.depthDeviationFraction);
});

test('the error that is stated is the error that is made', () => {
  const off = Array.from({ length: 40 }, (_, i) => {
    const light = framesOf({ light: RIPPLE, rate_fps: 1070, exposure_s: 1 / 2000, noise: 0, frames: 600 });
    const scatter = noiseOf(24_000).subarray(600 * i, 600 * (i + 1));
    const noisy = light.map((value, frame) => value * (1 + 4e-3 * scatter[frame]!));
    const wave = cardWaveOf({ light: noisy, weights: new Float64Array(600).fill(1), frameRate_fps: 1070, exposureTime_s: 1 / 2000, rate_Hz: 100, strongestOrder: 1 })!; // prettier-ignore
    return (wave.harmonics[0]!.amplitudeFraction - 0.3) / wave.harmonics[0]!.deviationFraction;
  });
  const rms = Math.sqrt(off.reduce((sum, times) => sum + times * times, 0) / off.length);
  expect(rms).toBeGreaterThan(0.75);
  expect(rms).toBeLessThan(1.25);
});

describe('harmonics that fall on one another', () => {
  const at = (frameRate_fps: number) => ({ rate_Hz: 100, frameRate_fps, exposureTime_s: 1 / 4000, frameCount: 1000 });

  test('at a multiple of the rate are told as such, and a better rate is found', () => {
    const { seen, unseen } = ordersOf(at(1000));
    expect(seen.map(({ order }) => order)).toEqual([1, 2, 3, 4]);
    expect(seen[0]!.meets.slice(0, 2)).toEqual([9, 11]);
    expect(unseen).toContain(10);
    const better = betterRate_fps(at(1000))!;
    expect(Math.abs(better / 1000 - 1)).toBeLessThanOrEqual(0.15);
    expect(unbrokenOrders(ordersOf(at(better)))).toBeGreaterThan(20);
  });

  test('count in the error of pulses, and not in that of a plain ripple', () => {
    const ripple = waveOf({ light: RIPPLE, rate_fps: 1000, exposure_s: 1 / 4000, frames: 1000 })!;
    expect(highestOrder(ripple)).toBe(1);
    expect(ripple.depthDeviationFraction).toBeLessThan(0.001);
    const pulses = waveOf({ light: PULSES, rate_fps: 1000, exposure_s: 1 / 4000, frames: 1000 })!;
    expect(pulses.depthDeviationFraction).toBeGreaterThan(0.05);
    expect(Math.abs(pulses.depthFraction - 0.6 / 1.4)).toBeLessThan(2 * pulses.depthDeviationFraction);
  });

  test('are never counted as told twice: no two orders of a clip beat alike', () => {
    fc.assert(
      fc.property(fc.integer({ min: 50, max: 5000 }), fc.integer({ min: 20, max: 3000 }), (frameRate_fps, rate_Hz) => {
        const { seen, unseen } = ordersOf({ rate_Hz, frameRate_fps, exposureTime_s: 0.2 / rate_Hz, frameCount: 1000 });
        const beats = seen.map(({ order }) => Math.abs(order * rate_Hz - frameRate_fps * Math.round((order * rate_Hz) / frameRate_fps))).sort((a, b) => a - b); // prettier-ignore
        for (let i = 1; i < beats.length; i += 1) expect(beats[i]! - beats[i - 1]!).toBeGreaterThanOrEqual(2 * (frameRate_fps / 1000) * (1 - 1e-9)); // prettier-ignore
        expect(seen.length + unseen.length).toBe(64);
      }),
    );
  });

  test('and a lamp in step with the frames shows nothing', () => {
    expect(waveOf({ light: RIPPLE, rate_fps: 100, exposure_s: 1 / 4000 })).toBeUndefined();
  });
});
