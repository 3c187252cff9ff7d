/** Facts of the trade that every crew knows and no paper prints, held against the laws. */
import { describe, expect, test } from 'vitest';
import { stopFromThirds, thirdsAboveOne } from '../src/base/stop.ts';
import { frameBytes } from '../src/laws/buffer/frame.ts';
import { recordTime_s } from '../src/laws/buffer/recordTime.ts';
import { dataRate_B_per_s } from '../src/laws/buffer/save.ts';
import { exposureTimeOfAngle_s } from '../src/laws/exposure/shutter.ts';
import { stopsBetween } from '../src/laws/exposure/stops.ts';
import { playbackSpeedFraction, screenTime_s, timeExpansion } from '../src/laws/time/expansion.ts';
import { FLICKER_GATES_stops } from '../src/laws/flicker/visible.ts';
import type { Written } from '../src/document/written.ts';
import { changed, marginOf, planned, SMALL } from './shoots.ts';

/** A marked stop as the exact number it stands for, and the full stop a meter would be read to. */
const F_5_6 = stopFromThirds(15);
const nearestFullStop = (stop: number): number => Math.round(thirdsAboveOne(stop) / 3);

describe('common practice, no source: shutters at 180°', () => {
  test.each([
    [24, 48],
    [240, 480],
    [1000, 2000],
  ])('common practice, no source: %i fps at 180° is 1/%i s', (frameRate_fps, over) => {
    expect(exposureTimeOfAngle_s({ shutterAngle_deg: 180, frameRate_fps })).toBeCloseTo(1 / over, 15);
  });
});

describe('common practice, no source: slow motion at 24', () => {
  test('common practice, no source: 48 fps played at 24 is half speed', () => {
    expect(playbackSpeedFraction({ captureRate_fps: 48, playRate_fps: 24 })).toBe(0.5);
  });

  test.each([
    [240, 10],
    [960, 40],
  ])('common practice, no source: %i fps played at 24 lasts %i times as long', (captureRate_fps, longer) => {
    expect(timeExpansion({ captureRate_fps, playRate_fps: 24 })).toBe(longer);
    expect(screenTime_s({ captureTime_s: 1, captureRate_fps, playRate_fps: 24 })).toBe(longer);
  });
});

describe('common practice, no source: data', () => {
  test.each([
    [24, 24e6, '24 MB/s'],
    [1000, 1e9, '1 GB/s'],
  ])('common practice, no source: frames of 1 MB at %i fps are %i bytes a second, %s', (frameRate_fps, rate) => {
    expect(dataRate_B_per_s({ frameSize_B: 1e6, frameRate_fps })).toBe(rate);
  });
});

describe('common practice, no source: the light that 800 fps costs at one shutter angle', () => {
  const exposure_s = (frameRate_fps: number): number => exposureTimeOfAngle_s({ shutterAngle_deg: 180, frameRate_fps });
  const lost_stops = stopsBetween({ more: exposure_s(24), less: exposure_s(800) });

  test('common practice, no source: 24 to 800 fps costs five stops, exactly 5.06', () => {
    expect(Math.round(lost_stops)).toBe(5);
    expect(lost_stops).toBeCloseTo(5.06, 2);
  });

  test('common practice, no source: a set lit for f/5.6 at 800 fps would meter about f/32 at 24', () => {
    expect(nearestFullStop(F_5_6 * 2 ** (5 / 2))).toBe(10);
    expect(F_5_6 * 2 ** (5 / 2)).toBeCloseTo(32, 12);
  });

  test('common practice, no source: that set is exactly f/32.66 from an exact f/5.6, f/32.3 from the number 5.6, and f/32 to the nearest full stop', () => {
    expect(F_5_6 * 2 ** (lost_stops / 2)).toBeCloseTo(32.66, 2);
    expect(5.6 * 2 ** (lost_stops / 2)).toBeCloseTo(32.3, 1);
    expect(nearestFullStop(F_5_6 * 2 ** (lost_stops / 2))).toBe(10);
  });

  test('common practice, no source: 100 W must become about 3,200 W by five whole stops, exactly 3,333 W', () => {
    expect(100 * 2 ** Math.round(lost_stops)).toBe(3200);
    expect(100 * 2 ** lost_stops).toBeCloseTo(3333.33, 2);
  });
});

describe('common practice, no source: a memory of 72 GB that holds 5,283 frames of 4096 × 2304, the number given, not derived', () => {
  const memory_B = 72e9;
  const frameSize_B = memory_B / 5283;

  test.each([
    [800, '6.6'],
    [960, '5.5'],
    [240, '22'],
  ])('common practice, no source: at %i fps it lasts %s s', (frameRate_fps, said_s) => {
    const decimals = said_s.split('.')[1]?.length ?? 0;
    expect(recordTime_s({ memory_B, frameSize_B, frameRate_fps }).toFixed(decimals)).toBe(said_s);
  });

  test('common practice, no source: at 24 fps it lasts over three and a half minutes, exactly 220.1 s', () => {
    const lasts_s = recordTime_s({ memory_B, frameSize_B, frameRate_fps: 24 });
    expect(lasts_s).toBeGreaterThan(210);
    expect(lasts_s).toBeCloseTo(220.1, 1);
  });

  test('common practice, no source: half the width and half the height last four times as long at the same rate', () => {
    const lasts_s = (widthCount: number, heightCount: number): number =>
      recordTime_s({
        memory_B,
        frameSize_B: frameBytes({ widthCount, heightCount, bitDepthCount: 12 }),
        frameRate_fps: 800,
      });
    expect(lasts_s(2048, 1152) / lasts_s(4096, 2304)).toBeCloseTo(4, 12);
  });
});

describe('common practice, no source: from which frame rate lamps begin to show at 180°', () => {
  /** Swing of a lamp alone that nobody measured, as a plan takes it. */
  const swing_stops = (lamp: Written, frameRate_fps: number, mains: Written): number =>
    marginOf(planned(changed(SMALL, { '/shots/one/rate': frameRate_fps, '/shots/one/screenTime': undefined, '/shots/one/shutter': '180°', '/shoot/mains': mains, '/kit/lamps': { lamp }, '/lighting/key/lamps': { lamp: { lamp: 'lamp' } } })), 'flicker').have!; // prettier-ignore

  const RATES = [250, 300, 400, 500, 600, 700, 800, 900, 1000, 1250, 1500, 2000, 2500, 3000, 4000, 5000];

  /** The first rate from which every faster one shows it. */
  const showsFrom = (lamp: Written, mains: Written): number => {
    const hidden = RATES.findLastIndex((rate) => swing_stops(lamp, rate, mains) <= FLICKER_GATES_stops.look);
    return RATES[hidden + 1] ?? Infinity;
  };

  const EUROPE = { frequency: '50 Hz', voltage: '230 V' };
  const AMERICA = { frequency: '60 Hz', voltage: '120 V' };

  test.each([EUROPE, AMERICA])('common practice, no source: an electronic discharge lamp above about 600 fps, on $frequency', (mains) => {
    const from = showsFrom({ kind: 'discharge', power: '1.8 kW' }, mains);
    expect(from).toBeGreaterThan(500);
    expect(from).toBeLessThanOrEqual(800);
  });

  test.each([EUROPE, AMERICA])('common practice, no source: many diodes from 800 to 1000 fps, on $frequency', (mains) => {
    const from = showsFrom({ kind: 'led', power: '600 W' }, mains);
    expect(from).toBeGreaterThanOrEqual(800);
    expect(from).toBeLessThanOrEqual(1000);
  });

  test.each([EUROPE, AMERICA])('common practice, no source: a large tungsten lamp at none, on $frequency', (mains) => {
    expect(showsFrom({ kind: 'tungsten', power: '10 kW' }, mains)).toBe(Infinity);
    expect(showsFrom({ kind: 'tungsten', power: '5 kW' }, mains)).toBe(Infinity);
  });

  test('common practice, no source: a household bulb at any rate above its ripple', () => {
    for (const rate of RATES) expect(swing_stops({ kind: 'tungsten', power: '60 W' }, rate, EUROPE)).toBeGreaterThan(0.1);
  });
}); // prettier-ignore
