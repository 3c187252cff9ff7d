import { describe, expect, test } from 'vitest';
import { measured } from '../../../../../test/footage/measured.ts';
import { GUIDE_SCENE } from '../../../../../test/footage/guideScene.ts';
import { synthetic } from '../../../../../test/footage/synthetic.ts';
import { gridOf } from '../../../../measure/grid.ts';
import { spectrumOf } from '../../../../measure/flicker/spectrum.ts';
import { acrossOf, decadesOf, depthTicks, downOf, lampTicks, rateTicks, spectrumPath } from './spectrumLayout.ts';
import { levelOf, mapsOf, placesOf } from './tileMap.ts';

/** A drop, and from the left a lamp that ripples at 100 Hz. */
const clip = measured(synthetic('guide', GUIDE_SCENE));

describe('maps over the picture', () => {
  const maps = mapsOf(clip, 0);
  test('are of flicker, sharpness, movement and what burnt out, a figure a tile', () => {
    expect(maps.map(({ id }) => id)).toEqual(['flicker', 'sharpness', 'movement', 'clipped']);
    for (const { values } of maps) expect(values).toHaveLength(clip.tileColumns * clip.tileRows);
  });

  test('have rising steps, and show most of the lamp on the left where it shines', () => {
    for (const { steps } of maps) expect([...steps].sort((a, b) => a - b)).toEqual(steps);
    const flicker = maps[0]!;
    const level = (column: number) =>
      Math.max(...Array.from({ length: clip.tileRows }, (_, row) => levelOf(flicker, flicker.values[row * clip.tileColumns + column]!))); // prettier-ignore
    expect(level(1)).toBe(5);
    expect(level(clip.tileColumns - 1)).toBeLessThan(3);
  });

  test('have no flicker where there is no line', () => {
    expect(mapsOf(clip, 9).map(({ id }) => id)).toEqual(['sharpness', 'movement', 'clipped']);
  });

  test('are without what was not kept of older clips', () => {
    const { tiles: _, ...older } = clip;
    expect(mapsOf(older, 0).map(({ id }) => id)).toEqual(['flicker', 'sharpness']);
  });

  test('say what cannot be judged, and give it no step', () => {
    expect([maps[0]!.say(NaN), levelOf(maps[0]!, NaN), maps[0]!.say(0.123)]).toEqual(['not judged', 0, '12 %']);
  });

  test('lie where the measurer cut the picture', () => {
    const places = placesOf(clip);
    const { columnEdges, cell_px } = gridOf(clip.width, clip.height);
    expect(places).toHaveLength(clip.tileColumns * clip.tileRows);
    expect(places[3]!.left).toBeCloseTo((100 * columnEdges[3]! * cell_px) / clip.width, 9);
    const odd = placesOf({ ...clip, tileColumns: 4, tileRows: 2 });
    expect(odd.at(-1)).toEqual({ left: 75, top: 50, width: 25, height: 50 });
  });
});

describe('the spectrum drawn', () => {
  const spectrum = spectrumOf({ light: clip.frames.mean, frameWeights: clip.frames.weight, frameRate_fps: 1000 })!;
  const decades = decadesOf(spectrum);

  test('has room for its deepest line', () => {
    const deepest = Math.max(...spectrum.depthFraction);
    expect(deepest).toBeLessThanOrEqual(10 ** decades.most);
    expect(downOf(deepest, decades)).toBeLessThan(50);
    expect(depthTicks(decades).at(-1)!.down).toBe(0);
  });

  test('stands up highest at the rate of the lamp', () => {
    const path = spectrumPath(spectrum, decades, 500, 100);
    const points = [...path.matchAll(/L([\d.]+) ([\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const).slice(10, -1); // prettier-ignore
    const [x] = points.reduce((a, b) => (b[1] < a[1] ? b : a));
    expect(Math.abs(x - 5 * acrossOf(100, 1000))).toBeLessThan(3);
    expect(spectrumPath(spectrum, decades, 0, 100)).toBe('');
  });

  test('has ticks at round rates up to half the frame rate', () => {
    expect(rateTicks(1000, 6).map(({ says }) => says)).toEqual(['0 Hz', '100 Hz', '200 Hz', '300 Hz', '400 Hz', '500 Hz']); // prettier-ignore
    expect(rateTicks(24_000, 5).at(-1)!.says).toBe('10000 Hz');
  });

  test('has the ripples of the plan where the frames fold them', () => {
    const lamp = (id: string, ripple_Hz: number) => ({ id, title: id.toUpperCase(), ripple_Hz, depthFraction: 0.1 });
    const ticks = lampTicks([lamp('a', 100), lamp('b', 1900), lamp('c', 100)], 1000);
    expect(ticks.map(({ beat_Hz, lamps }) => [Number(beat_Hz.toFixed(6)), lamps.map(({ id }) => id).join(' ')])).toEqual([[100, 'a c'], [100, 'b']]); // prettier-ignore
    expect(ticks[0]!.at).toBeCloseTo(20, 9);
  });
});
