import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { areasAbove, areasWithout, isolines, type Grid, type GridPoint } from './contour.ts';

function gridOf(columns: number, rows: number, value: (x: number, y: number) => number): Grid {
  const values = Float64Array.from({ length: columns * rows }, (_, i) => value(i % columns, Math.floor(i / columns)));
  return { columns, rows, values };
}

const areaOf = (points: readonly GridPoint[]) =>
  Math.abs(
    points.reduce((sum, { x, y }, i) => {
      const next = points[(i + 1) % points.length]!;
      return sum + x * next.y - next.x * y;
    }, 0),
  ) / 2;

const lengthOf = (points: readonly GridPoint[]) =>
  points.slice(1).reduce((sum, { x, y }, i) => sum + Math.hypot(x - points[i]!.x, y - points[i]!.y), 0);

const sum = (values: readonly number[]) => values.reduce((all, each) => all + each, 0);

describe('on a slope', () => {
  const slope = gridOf(5, 4, (x) => x);

  test('a level is one straight line from edge to edge, where the slope has that value', () => {
    const lines = isolines(slope, 1.25);
    expect(lines).toHaveLength(1);
    expect(lines[0]!.isClosed).toBe(false);
    expect(lines[0]!.points).toHaveLength(4);
    for (const { x } of lines[0]!.points) expect(x).toBeCloseTo(1.25, 12);
  });

  test('the area above it is the rest of the grid', () => {
    expect(sum(areasAbove(slope, 1.25).map(areaOf))).toBeCloseTo((4 - 1.25) * 3, 12);
  });

  test('a level beyond all values has no line, and all or nothing above it', () => {
    expect(isolines(slope, 9)).toEqual([]);
    expect(areasAbove(slope, 9)).toEqual([]);
    expect(sum(areasAbove(slope, -1).map(areaOf))).toBe(12);
  });
});

describe('around a hill', () => {
  const radius = 20;
  const hill = gridOf(61, 61, (x, y) => -((x - 30) ** 2 + (y - 30) ** 2));

  test('a level is one closed ring with the length and area of a circle', () => {
    const lines = isolines(hill, -(radius ** 2));
    expect(lines).toHaveLength(1);
    expect(lines[0]!.isClosed).toBe(true);
    expect(lengthOf(lines[0]!.points)).toBeCloseTo(2 * Math.PI * radius, 0);
    expect(sum(areasAbove(hill, -(radius ** 2)).map(areaOf)) / (Math.PI * radius ** 2)).toBeCloseTo(1, 2);
  });
});

describe('at a saddle', () => {
  const at = (a: number, b: number, c: number, d: number) =>
    gridOf(
      2,
      2,
      (x, y) =>
        [
          [a, b],
          [d, c],
        ][y]![x]!,
    );

  test('high corners are joined where the middle is high, and parted where it is low', () => {
    expect(sum(areasAbove(at(1, 0, 1, 0), 0.4).map(areaOf))).toBeGreaterThan(0.6);
    expect(areasAbove(at(1, 0, 1, 0), 0.4)).toHaveLength(1);
    expect(areasAbove(at(1, 0, 1, 0), 0.6)).toHaveLength(2);
    expect(isolines(at(1, 0, 1, 0), 0.4)).toHaveLength(2);
    expect(isolines(at(0, 1, 0, 1), 0.6)).toHaveLength(2);
  });
});

describe('where values are missing', () => {
  const holed = gridOf(6, 6, (x, y) => (x === 3 && y === 3 ? Number.NaN : x + y));

  test('the four cells around the gap are empty, and the rest is not', () => {
    expect(sum(areasWithout(holed).map(areaOf))).toBe(4);
    expect(sum(areasAbove(holed, -1).map(areaOf))).toBe(25 - 4);
  });

  test('no line runs through the gap', () => {
    for (const line of isolines(holed, 6))
      for (const { x, y } of line.points) expect(x > 2 && x < 4 && y > 2 && y < 4).toBe(false);
  });
});

describe('on any grid', () => {
  const values = fc.array(
    fc.oneof(
      { weight: 9, arbitrary: fc.double({ min: 0, max: 1, noNaN: true }) },
      { weight: 1, arbitrary: fc.constant(Number.NaN) },
    ),
    { minLength: 30, maxLength: 30 },
  );
  const grid = values.map((all): Grid => ({ columns: 6, rows: 5, values: Float64Array.from(all) }));
  const level = fc.double({ min: 0.05, max: 0.95, noNaN: true });

  test('the areas above shrink as the level rises, and never cover a gap', () => {
    fc.assert(
      fc.property(grid, level, level, (each, a, b) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        const above = (at: number) => sum(areasAbove(each, at).map(areaOf));
        expect(above(high)).toBeLessThanOrEqual(above(low) + 1e-9);
        expect(above(low) + sum(areasWithout(each).map(areaOf))).toBeLessThanOrEqual(20 + 1e-9);
      }),
    );
  });

  test('lines and areas tell the same: as much line as the areas have edge inside the grid', () => {
    fc.assert(
      fc.property(grid, level, (each, at) => {
        const line = sum(isolines(each, at).map(({ points }) => lengthOf(points)));
        const inside = areasAbove(each, at).flatMap((polygon) =>
          polygon.flatMap((from, i) => {
            const to = polygon[(i + 1) % polygon.length]!;
            // Sides along the grid belong to the cell; only those across it are of the level.
            const isAcross = Math.abs(from.x - to.x) > 1e-12 && Math.abs(from.y - to.y) > 1e-12;
            return isAcross ? [Math.hypot(from.x - to.x, from.y - to.y)] : [];
          }),
        );
        expect(sum(inside)).toBeLessThanOrEqual(line + 1e-6);
      }),
    );
  });

  test('an open line ends at the edge of the grid or of a gap', () => {
    fc.assert(
      fc.property(grid, level, (each, at) => {
        const isMissing = (x: number, y: number) => {
          if (x < 0 || y < 0 || x >= each.columns - 1 || y >= each.rows - 1) return true;
          return [0, 1].some((i) => [0, 1].some((j) => Number.isNaN(each.values[(y + j) * each.columns + x + i]!)));
        };
        for (const { points, isClosed } of isolines(each, at)) {
          if (isClosed) continue;
          for (const { x, y } of [points[0]!, points.at(-1)!]) {
            const cells = [-1e-9, 1e-9].flatMap((dx) =>
              [-1e-9, 1e-9].map((dy) => isMissing(Math.floor(x + dx), Math.floor(y + dy))),
            );
            expect(cells).toContain(true);
          }
        }
      }),
    );
  });
});
