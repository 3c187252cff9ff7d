import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { doorsOf } from '../../../laws/light/placed/doors.ts';
import { acrossAxis } from '../../../laws/light/placed/source.ts';
import { towardsCamera } from '../../../plan/lighting.ts';
import { coneOutline, flatten, movement, outline, projectionOf, spread } from './projection.ts';
import { fitAll, fromPage, toPage } from './viewport.ts';

describe('the drawings', () => {
  test('from above away is up the page; from the camera its right is right; from the side it stands at the left', () => {
    expect(flatten(projectionOf('above', 30), [1, 2, 3])).toEqual({ x: 1, y: 2 });
    const view = { azimuth_deg: 90, elevation_deg: 0 };
    // A camera at the right of the subject sees what lies behind the subject at its own right.
    expect(flatten(projectionOf('camera', 90), [0, 1, 0.4]).x).toBeCloseTo(1, 12);
    expect(flatten(projectionOf('camera', 90), [0, 1, 0.4]).y).toBe(0.4);
    expect(flatten(projectionOf('side', 90), towardsCamera(view)).x).toBeCloseTo(-1, 12);
  });

  test('what is drawn at a spot lies there', () => {
    const spot = fc.record({ x: fc.double({ min: -9, max: 9, noNaN: true }), y: fc.double({ min: -9, max: 9, noNaN: true }) });
    fc.assert(
      fc.property(spot, fc.constantFrom('above' as const, 'camera' as const, 'side' as const), fc.integer({ min: 0, max: 359 }), (at, looking, azimuth_deg) => {
        const projection = projectionOf(looking, azimuth_deg);
        const back = flatten(projection, spread(projection, at));
        expect(back.x).toBeCloseTo(at.x, 9);
        expect(back.y).toBeCloseTo(at.y, 9);
      }),
    );
  });

  test('a hand moves a lamp over the floor from above, and only up and down seen level', () => {
    expect(movement(projectionOf('above', 0), { x: 0.2, y: 0.1 })).toEqual({ right_m: 0.2, away_m: 0.1 });
    expect(movement(projectionOf('camera', 0), { x: 0.2, y: 0.1 })).toEqual({ up_m: 0.1 });
  });

  test('a level cone of 90° is as wide as twice its length where it ends', () => {
    const points = coneOutline(projectionOf('above', 0), { at: [0, 0, 0], axis: [0, 1, 0], angle_deg: 90, length_m: 2 });
    expect(Math.max(...points.map(({ x }) => x))).toBeCloseTo(2, 1);
    expect(Math.min(...points.map(({ y }) => y))).toBeCloseTo(0, 9);
  });

  test('an outline holds its corners and leaves out what lies inside', () => {
    const corners = [{ x: 0, y: 0 }, { x: 2, y: 0 }, { x: 2, y: 2 }, { x: 0, y: 2 }];
    expect(outline([...corners, { x: 1, y: 1 }])).toEqual(corners);
  });

  test('a cone of light ends where its doors cut it', () => {
    const axis = [0, 1, 0] as const;
    const cone = { at: [0, -2, 0], axis, angle_deg: 60, length_m: 2 } as const;
    const across = acrossAxis(axis);
    const above = projectionOf('above', 0);
    const reach = (angles: Parameters<typeof doorsOf>[1]) => {
      const xs = coneOutline(above, { ...cone, doors: doorsOf(across, angles) }).map(({ x }) => x);
      return [Math.min(...xs), Math.max(...xs)];
    };
    const wide = 2 * Math.tan(Math.PI / 6);
    expect(reach({})).toEqual([-wide, wide].map((x) => expect.closeTo(x, 9) as number));
    expect(reach({ left_deg: 10 })).toEqual([-2 * Math.tan(Math.PI / 18), wide].map((x) => expect.closeTo(x, 9) as number));
    expect(reach({ right_deg: 0, left_deg: 45 })).toEqual([-wide, 0].map((x) => expect.closeTo(x, 9) as number));
    expect(reach({ top_deg: 5 })).toEqual([-wide, wide].map((x) => expect.closeTo(x, 9) as number));
  });

  test('everything fits, the subject too, equally large both ways, and the page leads back to the set', () => {
    const view = fitAll([{ x: 3, y: 1 }, { x: 1, y: -2 }], { width_px: 800, height_px: 500, edge_px: 50 });
    for (const point of [{ x: 3, y: 1 }, { x: 1, y: -2 }, { x: 0, y: 0 }]) {
      const page = toPage(view, point);
      expect(page.x).toBeGreaterThanOrEqual(49.9);
      expect(page.x).toBeLessThanOrEqual(750.1);
      expect(page.y).toBeGreaterThanOrEqual(49.9);
      expect(page.y).toBeLessThanOrEqual(450.1);
      expect(fromPage(view, page).x).toBeCloseTo(point.x, 9);
      expect(fromPage(view, page).y).toBeCloseTo(point.y, 9);
    }
  });
}); // prettier-ignore
