import { describe, expect, test } from 'vitest';
import { waveformOf } from '../../../laws/flicker/lamp.ts';
import { sineWaveform } from '../../../laws/flicker/waveform.ts';
import { framesShown, layFrames, lightUpTo, rangeShown, windowsShown, type FrameFigures } from './frameClocks.ts';

const BOX = { left_px: 20, right_px: 1020, lightTop_px: 30, lightBottom_px: 90, frameTop_px: 150, frameBottom_px: 200 };

const figures = (count: number, depth = 0.2): FrameFigures => {
  const light = (time_s: number) => 1 + depth * Math.cos(2 * Math.PI * 100 * time_s);
  const t_s = Float64Array.from({ length: 4000 }, (_, i) => (i / 4000) * (count / 1000));
  const windows = Array.from({ length: count }, (_, i) => ({ from_s: i / 1000, to_s: i / 1000 + 0.0005 }));
  return {
    mixed: { t_s, light: t_s.map(light) },
    windows,
    frames: Float64Array.from(windows, ({ from_s }) => light(from_s + 0.00025)),
    play_fps: 25,
  };
};

describe('the two clocks of some frames', () => {
  const laid = layFrames(figures(20), BOX);

  test('run over the whole width on the screen and over the middle of it on the set, so that the stretch is seen', () => {
    expect([laid.cells[0]!.from_px, laid.cells.at(-1)!.to_px]).toEqual([20, 1020]);
    expect(laid.real.from_px).toBeCloseTo(190, 9);
    expect(laid.real.to_px).toBeCloseTo(850, 9);
    expect(laid.screen.ticks.at(-1)!.time_s).toBeCloseTo(0.8, 9);
    expect(laid.real.ticks.every(({ time_s }) => time_s <= 0.02)).toBe(true);
  });

  test('join each window of the shutter to its own frame, without crossing', () => {
    expect(laid.threads).toHaveLength(20);
    laid.threads.forEach(({ real_px, screen_px }, i) => {
      expect(real_px).toBeCloseTo((laid.windows[i]!.from_px + laid.windows[i]!.to_px) / 2, 9);
      expect(screen_px).toBeCloseTo((laid.cells[i]!.from_px + laid.cells[i]!.to_px) / 2, 9);
    });
    const order = (of: 'real_px' | 'screen_px') => laid.threads.map((thread) => thread[of]);
    for (const of of ['real_px', 'screen_px'] as const) expect(order(of)).toEqual([...order(of)].sort((a, b) => a - b));
  });

  test('draw half a frame of shutter as half a frame wide', () => {
    const [window] = laid.windows;
    expect(window!.to_px - window!.from_px).toBeCloseTo((660 / 20) * 0.5, 0);
  });

  test('draw the light and the frames within their boxes', () => {
    const heights = (path: string) => [...path.matchAll(/[ML][\d.]+ ([\d.]+)/g)].map(([, y]) => Number(y));
    for (const y of heights(laid.lightLine)) expect(y >= 30 && y <= 90).toBe(true);
    for (const y of heights(laid.frameLine)) expect(y >= 150 && y <= 200).toBe(true);
    expect(heights(laid.frameLine)).toHaveLength(20);
  });
});

describe('how much of the light is shown', () => {
  test('is all of it from dark where it goes deep, and a close-up where it hardly changes', () => {
    expect(rangeShown([0, 2])).toEqual({ least: 0, most: 2.16 });
    const close = rangeShown([0.99, 1.01]);
    expect(close.least).toBeCloseTo(0.987, 6);
    expect(close.most).toBeCloseTo(1.013, 6);
  });

  test('of a steady light is no close-up of its rounding', () => {
    const { least, most } = rangeShown([1, 1 + 1e-12]);
    expect(most - least).toBeGreaterThan(0.004);
  });
});

test('as many frames are shown as hold a beat and a half, as far as the clip goes', () => {
  const clip = { rate_fps: 1000, clipCount: 400 };
  expect(framesShown({ ...clip, alias_Hz: 100 })).toBe(15);
  expect(framesShown({ ...clip, alias_Hz: 5 })).toBe(300);
  expect(framesShown({ ...clip, alias_Hz: 3 })).toBe(400);
  expect(framesShown({ ...clip, alias_Hz: 0 })).toBe(8);
  expect(framesShown({ rate_fps: 1000, clipCount: 3.5, alias_Hz: 100 })).toBe(3);
});

test('more frames than can be told apart are one line, and lie together in cells, none left out', () => {
  const many = figures(1000);
  const laid = layFrames({ ...many, windows: many.windows.slice(0, 4) }, BOX);
  expect(laid.cells.length).toBeLessThanOrEqual(64);
  expect([laid.cells[0]!.from_px, laid.cells.at(-1)!.to_px]).toEqual([20, 1020]);
  expect(laid.frameLine).not.toContain('H');
  expect(laid.threads).toHaveLength(4);
  expect(laid.threads[3]!.screen_px).toBeCloseTo(20 + 3.5, 6);
  const mean = (lights: readonly number[]) => lights.reduce((sum, light) => sum + light, 0) / lights.length;
  expect(mean(laid.cells.slice(0, -1).map(({ light }) => light))).toBeCloseTo(mean(Array.from(many.frames)), 2);
});

describe('the light drawn above the frames', () => {
  const of = { rate_fps: 1000, frameCount: 30, width_px: 900 };

  test('is that of all of them where it ripples slowly, and of the first few where it ripples fast', () => {
    expect(windowsShown({ ...of, ripple_Hz: 100 })).toBe(30);
    expect(windowsShown({ ...of, ripple_Hz: 0 })).toBe(30);
    expect(windowsShown({ ...of, ripple_Hz: 25_000 })).toBe(2);
    expect(windowsShown({ ...of, ripple_Hz: 6000 })).toBe(11);
  });

  test('is fine enough to show every pulse of what is drawn', () => {
    const lamps = [
      { id: 'a', title: 'A', waveform: waveformOf({ kind: 'led-pulses', pulse_Hz: 25_000 }), delay_s: 0, shareFraction: 0.5 },
      { id: 'b', title: 'B', waveform: sineWaveform({ ripple_Hz: 100, depthFraction: 0.2 }), delay_s: 0, shareFraction: 0.5 },
    ]; // prettier-ignore
    const { t_s, light } = lightUpTo(lamps, 0.002);
    const rises = Array.from(light).filter((each, i) => i > 0 && each >= 1 && light[i - 1]! < 1).length;
    expect(rises).toBe(49);
    expect(t_s[t_s.length - 1]).toBeLessThan(0.002);
  });
});
