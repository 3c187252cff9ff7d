import { describe, expect, test } from 'vitest';
import { measured } from '../../../../../test/footage/measured.ts';
import { GUIDE_SCENE } from '../../../../../test/footage/guideScene.ts';
import { synthetic } from '../../../../../test/footage/synthetic.ts';
import { stripsOf } from './strips.ts';

/** A drop before a card, frames 100 to 102 missing. */
const clip = measured(synthetic('a drop', { ...GUIDE_SCENE, frames: 160, width: 96, height: 64 }), (frame) => (frame < 100 ? frame : frame + 3)); // prettier-ignore
const strips = stripsOf(clip, 0.001);
const strip = (id: string) => strips.find((each) => each.id === id)!;

describe('the strips of a clip', () => {
  test('have a value for every frame, and none where a frame is missing', () => {
    for (const { drawn, at } of strips) {
      for (const { low, high } of drawn) {
        expect([low.length, high.length]).toEqual([163, 163]);
        expect([99, 100, 102, 103].map((frame) => Number.isNaN(high[frame]))).toEqual([false, true, true, false]);
        expect([...low].filter((value) => !Number.isNaN(value) && !Number.isFinite(value))).toEqual([]);
      }
      expect(at(101)).toEqual({ main: 'missing' });
      expect(at(99).main).not.toMatch(/NaN|unknown|Infinity/);
    }
  });

  test('reach as far as what they hold', () => {
    for (const { drawn, scale } of strips)
      for (const value of drawn.flatMap(({ low, high }) => [...low, ...high]).filter((of) => !Number.isNaN(of))) {
        expect(value).toBeGreaterThanOrEqual(scale.least);
        expect(value).toBeLessThanOrEqual(scale.most);
      }
  });

  test('have light in stops below white', () => {
    expect(clip.frames.mean[10]).toBeGreaterThan(0);
    const stops = -Math.log2(clip.frames.mean[10]!);
    expect(strip('light').at(10).main).toBe(`mean ${Number(stops.toPrecision(2))}`);
  });

  test('say movement in metres a second too, where a pixel is known in metres', () => {
    const moving = clip.frames.fastest_px.findIndex((value) => value > 1);
    expect(strip('motion').at(moving).main).toMatch(/^fastest [\d.]+ px, [\d.]+ m\/s$/);
    expect(
      stripsOf(clip)
        .find(({ id }) => id === 'motion')!
        .at(moving).main,
    ).toMatch(/^fastest [\d.]+ px$/);
  });
});
