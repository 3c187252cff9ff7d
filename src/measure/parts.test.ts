/** What a frame is taken apart into: cells, tiles, sharpness, activity, noise and pixels out of line. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawFour, drawKey } from '../base/randomStream.ts';
import { createActivityMeter } from './activity.ts';
import { createFrameReader } from './frameReader.ts';
import { gridOf } from './grid.ts';
import { createFixedPixelFinder, createNoiseMeter } from './noise.ts';
import { noiseReadingOf } from './noiseReading.ts';
import { createPercentiles } from './percentiles.ts';
import { codingOf, lightTable } from './transfer.ts';

function normals(seed: number, count: number): Float64Array {
  const key = drawKey(seed, 'pixels');
  const four = new Float64Array(4);
  return Float64Array.from({ length: count }, (_, i) => {
    drawFour(key, i, 0, 0, four);
    return Math.sqrt(-2 * Math.log(four[0]!)) * Math.cos(2 * Math.PI * four[1]!);
  });
}

describe('a grid', () => {
  test('covers every whole cell once, whatever the picture', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5000 }), fc.integer({ min: 1, max: 5000 }), (width, height) => {
        const grid = gridOf(width, height);
        expect(grid.cellColumns <= 384 || grid.cell_px === Math.min(width, height)).toBe(true);
        expect(grid.cellColumns).toBe(Math.floor(width / grid.cell_px));
        expect([grid.columnEdges[0], grid.columnEdges.at(-1)]).toEqual([0, grid.cellColumns]);
        expect([grid.rowEdges[0], grid.rowEdges.at(-1)]).toEqual([0, grid.cellRows]);
        grid.columnOf.forEach((column, x) => {
          expect(x >= grid.columnEdges[column]! && x < grid.columnEdges[column + 1]!).toBe(true);
        });
        expect(grid.columns * grid.rows).toBeLessThanOrEqual(144);
      }),
    );
  });

  test.each([
    [1920, 1080, 8, 12, 7],
    [4096, 2304, 16, 12, 7],
    [1080, 1920, 8, 7, 12],
    [1, 1, 1, 1, 1],
    [3, 700, 2, 1, 12],
  ])('of %d × %d has cells of %d px and %d × %d tiles', (width, height, cell_px, columns, rows) =>
    expect(gridOf(width, height)).toMatchObject({ cell_px, columns, rows }),
  );

  test('of no picture is refused', () => expect(() => gridOf(0, 10)).toThrow(/width/));
});

const TABLE = lightTable({ kind: 'linear' }, codingOf('full', 12));
const readerOf = (width: number, height: number) =>
  createFrameReader({ grid: gridOf(width, height), table: TABLE, clippedFrom: 4095, crushedTo: 0 });

describe('a frame', () => {
  test.each([
    [60, 40],
    [800, 500],
    [1001, 13],
  ])('of %d × %d has the mean light of its tiles, and counts what is clipped and crushed', (width, height) => {
    const data = Uint16Array.from({ length: width * height }, (_, i) => (i % width < width / 2 ? 0 : i % 3 === 0 ? 4095 : 1000)); // prettier-ignore
    const { light, clipped, crushed } = readerOf(width, height).read({ data, width, height });
    const mean = (of: Float32Array) => of.reduce((sum, value) => sum + value, 0) / of.length;
    expect(light[0]).toBe(0);
    expect(mean(light)).toBeCloseTo((0.5 * (4095 / 3 + (1000 * 2) / 3)) / 4095, 1);
    expect(mean(clipped)).toBeCloseTo(1 / 6, 1);
    expect(mean(crushed)).toBeCloseTo(0.5, 1);
    expect(Math.max(...clipped, ...crushed)).toBeLessThanOrEqual(1);
  });

  test('has the gradient and Laplacian that its slopes and bends have', () => {
    const [width, height] = [40, 30];
    const ramp = Uint16Array.from({ length: width * height }, (_, i) => 100 + 20 * (i % width) + 10 * Math.floor(i / width)); // prettier-ignore
    const first = readerOf(width, height).read({ data: ramp, width, height });
    // A slope of one a pixel gives Sobel's operator eight.
    for (const of of first.gradient) expect(of / ((8 * 20) ** 2 + (8 * 10) ** 2) / (1 / 4095) ** 2).toBeCloseTo(1, 4);
    for (const of of first.laplacian) expect(of).toBeLessThan(1e-12);
    const bowl = Uint16Array.from({ length: width * height }, (_, i) => 100 + (i % width) ** 2);
    const second = readerOf(width, height).read({ data: bowl, width, height });
    for (const of of second.laplacian) expect(of / (2 / 4095) ** 2).toBeCloseTo(1, 3);
  });

  test('of noise alone has 24 and 20 times its variance as gradient and Laplacian', () => {
    const [width, height] = [300, 200];
    const data = Uint16Array.from(normals(1, width * height), (value) => Math.round(2000 + 100 * value));
    const { gradient, laplacian } = readerOf(width, height).read({ data, width, height });
    const mean = (of: Float32Array) => of.reduce((sum, value) => sum + value, 0) / of.length / (100 / 4095) ** 2;
    expect(mean(gradient) / 24).toBeCloseTo(1, 1);
    expect(mean(laplacian) / 20).toBeCloseTo(1, 1);
  });

  test('too small for any of it is read all the same', () => {
    for (const [width, height] of [[1, 1], [1, 9], [2, 2], [5, 1]] as const) {
      const reading = readerOf(width, height).read({ data: new Uint16Array(width * height).fill(500), width, height });
      for (const of of reading.light) expect(of).toBeCloseTo(500 / 4095, 6);
      for (const of of reading.gradient) expect(of).toBe(0);
    }
  }); // prettier-ignore
});

test('percentiles are the codes below which so many pixels lie', () => {
  const sample = Uint16Array.from({ length: 1000 }, (_, i) => (i * 7919) % 1000);
  expect(createPercentiles(12)(sample)).toEqual([9, 499, 989]);
  expect(createPercentiles(8)(new Uint16Array(10).fill(255))).toEqual([255, 255, 255]);
});

describe('activity', () => {
  const grid = gridOf(96, 64);
  const size = 96 * 64;
  const still = normals(4, size).map((value) => 0.5 + 0.05 * value);
  const noisy = (seed: number, gain = 1) =>
    Float32Array.from(normals(seed, size), (value, i) => Math.sqrt(gain) * still[i]! + 0.01 * value);
  const total = (of: Float32Array) => of.reduce((sum, value) => sum + value, 0);

  test('of noise is next to none, whatever the light does', () => {
    const meter = createActivityMeter(grid);
    meter.next(noisy(10));
    for (let k = 0; k < 20; k += 1) {
      const lively = meter.next(noisy(11 + k, 1 + 0.3 * Math.sin(k)));
      expect(total(lively) / lively.length).toBeLessThan(0.1 * meter.noise());
    }
  });

  test('is that of the tile in which something moves, by as much as it changes', () => {
    const meter = createActivityMeter(grid);
    meter.next(noisy(50));
    const moved = noisy(51);
    for (let y = 20; y < 30; y += 1) for (let x = 40; x < 48; x += 2) moved[y * 96 + x]! += 0.3;
    const lively = meter.next(moved);
    const liveliest = lively.indexOf(Math.max(...lively));
    expect([liveliest % grid.columns, Math.floor(liveliest / grid.columns)]).toEqual([5, 3]);
    expect(total(lively)).toBeGreaterThan(100 * meter.noise() / Math.sqrt(lively.length));
  }); // prettier-ignore

  test('of the first frame is none', () =>
    expect(total(createActivityMeter(grid).next(noisy(1)))).toBe(0));
}); // prettier-ignore

describe('noise', () => {
  const COUNT = 8000;
  const codes = (seed: number, deviation: (code: number) => number, gain = 1) =>
    Uint16Array.from(normals(seed, COUNT), (value, i) => {
      const code = 200 + ((i * 3500) / COUNT) * gain;
      return Math.max(0, Math.round(code + deviation(code) * value));
    });

  test('is known at each level, and does not see the light change', () => {
    const meter = createNoiseMeter({ ...codingOf('full', 12), blackCode: 200 }, COUNT);
    for (let k = 0; k < 12; k += 1) meter.next(codes(k, (code) => Math.sqrt(code), 1 + 0.05 * Math.sin(k)));
    const levels = meter.levels();
    expect(levels.length).toBeGreaterThan(10);
    for (const { code, deviation_codes } of levels)
      expect(Math.abs(deviation_codes / Math.sqrt(code) - 1)).toBeLessThan(0.15);
  });

  test('in light is a line through the variances: reading and photons', () => {
    const levels = [400, 1200, 2000, 3000].map((code) => ({
      code,
      deviation_codes: Math.sqrt(30 + 0.5 * code),
      pixels: 10_000,
    }));
    const { varianceAt, reading } = noiseReadingOf(levels, TABLE, 0.25);
    for (const light of [0.1, 0.5]) expect(varianceAt(light) * 4095 ** 2).toBeCloseTo(30 + 0.5 * light * 4095, 0);
    expect(reading!.deviationFraction).toBeCloseTo(Math.sqrt(varianceAt(0.25)) / 0.25, 9);
  });

  test('is not told where everything moves, or where nothing was seen', () => {
    const meter = createNoiseMeter(codingOf('full', 12), COUNT);
    for (let k = 0; k < 6; k += 1) meter.next(Uint16Array.from(normals(90 + k, COUNT), (value) => Math.max(0, 2000 + 900 * value))); // prettier-ignore
    expect(meter.levels()).toEqual([]);
    expect(noiseReadingOf([], TABLE, 0.2).varianceAt(0.5)).toBe(0);
  });
});

describe('pixels out of line', () => {
  const [width, height] = [80, 60];
  const frame = (seed: number, hot: readonly number[], dead: readonly number[] = []) => {
    const data = Uint16Array.from(normals(seed, width * height), (value, i) => Math.round(1500 + 5 * (i % width) + 20 * value)); // prettier-ignore
    for (const at of hot) data[at] = 3600;
    for (const at of dead) data[at] = 10;
    return { data, width, height };
  };
  const [fixed, dark] = [31 * width + 17, 8 * width + 60];

  test('are found where they are in every frame, and not where they come and go', () => {
    const finder = createFixedPixelFinder(12);
    for (let k = 0; k < 5; k += 1) finder.look(frame(k, k === 0 ? [fixed, 45 * width + 9] : [fixed], [dark]));
    expect(finder.found()).toEqual([
      { x: 60, y: 8, kind: 'dark' },
      { x: 17, y: 31, kind: 'bright' },
    ]);
  });

  test('are none in noise, nor before three frames were seen', () => {
    const finder = createFixedPixelFinder(12);
    finder.look(frame(1, [fixed]));
    finder.look(frame(2, [fixed]));
    expect(finder.found()).toEqual([]);
    const noise = createFixedPixelFinder(12);
    for (let k = 0; k < 4; k += 1) noise.look(frame(k, []));
    expect(noise.found()).toEqual([]);
  });
});
