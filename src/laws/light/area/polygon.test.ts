import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../../test/published.ts';
import { edgeOnDiscFactor, parallelDiscFactor } from './disc.ts';
import { panelCorners, polygonFactor, polygonIlluminance_lx, roundCorners, type Vec3 } from './polygon.ts';
import { parallelPanelFactor, standingPanelFactor } from './rectangle.ts';

/** Twenty even steps of three Gauss points each. */
function integral(from: number, to: number, of: (x: number) => number): number {
  const steps = 20;
  const half = (to - from) / (2 * steps);
  let sum = 0;
  for (let i = 0; i < steps; i += 1) {
    const middle = from + (2 * i + 1) * half;
    const side = half * Math.sqrt(0.6);
    sum += (5 * of(middle - side) + 8 * of(middle) + 5 * of(middle + side)) / 9;
  }
  return half * sum;
}

/** Mean factor over a rectangle in the plane z = 0 that faces up, to a polygon. */
const meanFactor = (corners: readonly Vec3[], x0: number, x1: number, y0: number, y1: number) => {
  const vertices = Float64Array.from(corners.flat());
  const over = integral(x0, x1, (x) => integral(y0, y1, (y) => polygonFactor(vertices, x, y, 0, 0, 0, 1)));
  return over / ((x1 - x0) * (y1 - y0));
};
/** A rectangle above, facing down; and one standing on x = 0, facing along x. */
const above = (x0: number, x1: number, y0: number, y1: number, z: number): readonly Vec3[] => [
  [x0, y1, z],
  [x1, y1, z],
  [x1, y0, z],
  [x0, y0, z],
];
const standing = (y0: number, y1: number, z0: number, z1: number): readonly Vec3[] => [
  [0, y0, z0],
  [0, y1, z0],
  [0, y1, z1],
  [0, y0, z1],
];

describe('published values, by integrating over the receiving rectangle', () => {
  published('parallel rectangles', (z: number) => meanFactor(above(0, 1.5, 0, 1, z), 0, 1.5, 0, 1), [
    { source: 'factor-examples', at: '1 × 1.5, 0.5 apart', given: 0.5, expected: '.4756' },
  ]);
  published('offset parallel rectangles', () => meanFactor(above(0.1, 0.2, 0.1, 0.2, 0.05), 0.1, 0.2, 0.1, 0.2), [
    { source: 'factor-examples', at: '0.1 to 0.2 both ways, 0.05 apart', given: {}, expected: '.4153' },
  ]);
  published('opposite faces of a cube', () => meanFactor(above(0, 1, 0, 1, 1), 0, 1, 0, 1), [
    { source: 'factor-examples', at: 'unit cube', given: {}, expected: '.1998' },
  ]);
  published('strip below a rectangle of 3 × 2, 0.5 apart', () => meanFactor(above(0, 3, 0, 2, 0.5), 0, 1e-6, 0, 2), [
    { source: 'factor-examples', at: 'a 3, b 2, c 0.5', given: {}, expected: '.3886' },
  ]);
});

test('what a cube’s floor sees of roof and walls is all there is', () => {
  const walls = 4 * meanFactor(standing(0, 1, 0, 1), 0, 1, 0, 1);
  expect(meanFactor(above(0, 1, 0, 1, 1), 0, 1, 0, 1) + walls).toBeCloseTo(1, 4);
});

const size = fc.double({ min: 0.05, max: 3, noNaN: true });
const away = fc.double({ min: 0.05, max: 4, noNaN: true });
const along = fc.double({ min: -3, max: 3, noNaN: true });

test('above a level surface a rectangle gives what its closed form says', () => {
  fc.assert(
    fc.property(size, size, away, along, along, (width_m, height_m, distance_m, x, y) => {
      const corners = panelCorners({ centre: [0, 0, distance_m], facing: [0, 0, -1], width_m, height_m });
      const closed = parallelPanelFactor({ width_m, height_m, distance_m, right_m: x, up_m: y });
      expect(polygonFactor(corners, x, y, 0, 0, 0, 1)).toBeCloseTo(closed, 12);
    }),
  );
});

test('a panel that stands on the table, and one that reaches below it, give the closed form of what is above', () => {
  fc.assert(
    fc.property(size, size, away, size, along, (width_m, height_m, distance_m, below_m, right_m) => {
      const corners = Float64Array.from(
        standing(-width_m / 2, width_m / 2, -below_m, height_m).flatMap(([x, y, z]) => [x, y, z]),
      );
      const closed = standingPanelFactor({ width_m, height_m, distance_m, right_m });
      expect(polygonFactor(corners, distance_m, right_m, 0, 0, 0, 1)).toBeCloseTo(closed, 12);
    }),
  );
});

test('a round panel of many sides gives the closed forms of a disc, parallel and edge-on', () => {
  fc.assert(
    fc.property(size, away, size, (diameter_m, distance_m, beyond_m) => {
      const offAxis_m = diameter_m / 2 + beyond_m;
      const given = { diameter_m, distance_m, offAxis_m };
      const place = { width_m: diameter_m, height_m: diameter_m, facing: [0, 0, -1] as Vec3, sideCount: 400 };
      const corners = roundCorners({ ...place, centre: [0, 0, distance_m] });
      const parallel = parallelDiscFactor(given);
      const edgeOn = edgeOnDiscFactor(given);
      expect(Math.abs(polygonFactor(corners, offAxis_m, 0, 0, 0, 0, 1) - parallel)).toBeLessThanOrEqual(
        1e-4 * parallel,
      );
      expect(Math.abs(polygonFactor(corners, offAxis_m, 0, 0, -1, 0, 0) - edgeOn)).toBeLessThanOrEqual(1e-4 * edgeOn);
    }),
  );
});

const direction = fc
  .tuple(fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }))
  .map(([z, turn]): Vec3 => {
    const level = Math.sqrt(1 - z * z);
    return [level * Math.cos(turn), level * Math.sin(turn), z];
  });
const PANEL = { centre: [0.3, -0.2, 0.9] as Vec3, width_m: 1.1, height_m: 0.7 };

test('whatever the tilt, a panel in two halves gives what it gives whole, cut by the horizon or not', () => {
  fc.assert(
    fc.property(direction, direction, fc.double({ min: 0.1, max: 0.9, noNaN: true }), (facing, normal, cut) => {
      const [a, b, c, d] = corners3(panelCorners({ ...PANEL, facing }));
      const mix = (p: Vec3, q: Vec3): Vec3 => [
        p[0] + cut * (q[0] - p[0]),
        p[1] + cut * (q[1] - p[1]),
        p[2] + cut * (q[2] - p[2]),
      ];
      const [m, n] = [mix(a!, b!), mix(d!, c!)];
      const factor = (...corners: readonly Vec3[]) =>
        polygonFactor(Float64Array.from(corners.flat()), 0, 0, 0, ...normal);
      expect(factor(a!, m, n, d!) + factor(m, b!, c!, n)).toBeCloseTo(factor(a!, b!, c!, d!), 10);
    }),
  );
});

function corners3(vertices: Float64Array): readonly Vec3[] {
  return Array.from({ length: vertices.length / 3 }, (_, i) => [
    vertices[3 * i]!,
    vertices[3 * i + 1]!,
    vertices[3 * i + 2]!,
  ]);
}

test('from behind it counts against, by as much; a surface turned away sees nothing; a shape with a notch is whole less notch', () => {
  fc.assert(
    fc.property(direction, direction, (facing, normal) => {
      const corners = corners3(panelCorners({ ...PANEL, facing }));
      const factor = (list: readonly Vec3[]) => polygonFactor(Float64Array.from(list.flat()), 0, 0, 0, ...normal);
      expect(factor(corners.toReversed())).toBeCloseTo(-factor(corners), 12);
      expect(Math.abs(factor(corners))).toBeLessThanOrEqual(1);
      if (corners.every((at) => at[0] * normal[0] + at[1] * normal[1] + at[2] * normal[2] < 0))
        expect(factor(corners)).toBe(0);
      const [a, b, c, d] = corners as [Vec3, Vec3, Vec3, Vec3];
      const middle: Vec3 = [(a[0] + c[0]) / 2, (a[1] + c[1]) / 2, (a[2] + c[2]) / 2];
      expect(factor([a, b, middle, c, d])).toBeCloseTo(factor(corners) - factor([b, c, middle]), 10);
    }),
  );
});

test('a far panel is a point: luminance times area, both leaning, over the distance squared', () => {
  const corners = corners3(panelCorners({ centre: [30, 40, 120], facing: [-1, 0, -2], width_m: 0.3, height_m: 0.5 }));
  const lux = polygonIlluminance_lx({ corners, luminance_cd_per_m2: 8000, point: [0, 0, 0], normal: [0, 0, 3] });
  const cosSource = (30 + 240) / (Math.sqrt(5) * 130);
  expect(lux / ((8000 * 0.15 * cosSource * (120 / 130)) / 130 ** 2)).toBeCloseTo(1, 4);
});

test('a panel that lights both ways lights what stands behind it, and one that does not leaves it dark', () => {
  const corners = corners3(panelCorners({ ...PANEL, facing: [0, 0, 1] }));
  const given = { corners, luminance_cd_per_m2: 100, point: [0, 0, 0], normal: [0, 0, 1] } as const;
  expect(polygonIlluminance_lx(given)).toBe(0);
  expect(polygonIlluminance_lx({ ...given, shines: 'both-sides' })).toBeGreaterThan(0);
});

test('a panel’s corners are its own size apart, face the way they should, and roll about that way', () => {
  const facing: Vec3 = [0, -1, 0];
  const level = corners3(panelCorners({ centre: [0, 5, 1], facing, width_m: 2, height_m: 1 }));
  expect(level.map((at) => at.map((v) => Math.round(1e9 * v) / 1e9 + 0))).toEqual([
    [-1, 5, 0.5],
    [1, 5, 0.5],
    [1, 5, 1.5],
    [-1, 5, 1.5],
  ]);
  const rolled = corners3(panelCorners({ centre: [0, 5, 1], facing, width_m: 2, height_m: 1, roll_rad: Math.PI / 2 }));
  expect(rolled[0]!.map((v) => Math.round(1e9 * v) / 1e9 + 0)).toEqual([0.5, 5, 0]);
  expect(
    polygonIlluminance_lx({ corners: level, luminance_cd_per_m2: 1, point: [0, 0, 1], normal: [0, 1, 0] }),
  ).toBeGreaterThan(0);
});

test('what has no meaning is refused by name', () => {
  const corners = corners3(panelCorners({ ...PANEL, facing: [0, 0, -1] }));
  const given = { corners, luminance_cd_per_m2: 100, point: [0, 0, 0], normal: [0, 0, 1] } as const;
  expect(() => polygonIlluminance_lx({ ...given, corners: corners.slice(2) })).toThrow('cornerCount must be a whole');
  expect(() => polygonIlluminance_lx({ ...given, normal: [0, 0, 0] })).toThrow('normal must point somewhere');
  expect(() => polygonIlluminance_lx({ ...given, point: [NaN, 0, 0] })).toThrow('point must be three finite numbers');
  expect(() => polygonIlluminance_lx({ ...given, luminance_cd_per_m2: -1 })).toThrow(
    'luminance_cd_per_m2 must be zero',
  );
  expect(() => panelCorners({ ...PANEL, facing: [0, 0, -1], width_m: 0 })).toThrow('width_m must be positive');
  expect(() => roundCorners({ ...PANEL, facing: [0, 0, -1], sideCount: 2 })).toThrow(
    'sideCount must be a whole number',
  );
});
