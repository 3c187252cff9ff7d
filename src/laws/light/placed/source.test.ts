import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { panelCorners, type Vec3 } from '../area/polygon.ts';
import { acrossAxis, beamSource, lightAt_lx, lightOfAll_lx, luminanceSeen_cd_per_m2, towards, type FaceSource, type GridSource, type LightSource } from './source.ts'; // prettier-ignore

const UP: Vec3 = [0, 0, 1];
const at = (source: LightSource, point: Vec3, normal: Vec3) => lightAt_lx(source, ...point, ...normal);

/** 180 000 cd with a beam of 20°: 20 000 lx at 3 m, the worked entry of a lamp known by one reading. */
const beam = beamSource({ at: [0, 0, 3], axis: [0, 0, -1], intensity_cd: 180_000, beamAngle_deg: 20, fieldAngle_deg: 35 }); // prettier-ignore

const face = (centre: Vec3, facing: Vec3, side_m = 1, luminance_cd_per_m2 = 1000): FaceSource => ({
  kind: 'face',
  at: centre,
  axis: facing,
  corners: panelCorners({ centre, facing, width_m: side_m, height_m: side_m }),
  luminance_cd_per_m2,
});

describe('a beam', () => {
  test('gives the reading it was known by, at its distance, straight on', () => {
    expect(at(beam, [0, 0, 0], UP)).toBeCloseTo(20_000, 6);
  });

  test('falls with the square of the distance and the cosine of the tilt', () => {
    expect(at(beam, [0, 0, -3], UP)).toBeCloseTo(5000, 6);
    const tilted: Vec3 = [Math.sin(Math.PI / 3), 0, Math.cos(Math.PI / 3)];
    expect(at(beam, [0, 0, 0], tilted)).toBeCloseTo(10_000, 6);
  });

  test('gives half at the edge of its beam and a tenth at the edge of its field, as both are defined', () => {
    const off = (degrees: number): Vec3 => [3 * Math.tan((degrees * Math.PI) / 180), 0, 0];
    for (const [degrees, share] of [
      [10, 0.5],
      [17.5, 0.1],
    ] as const) {
      const point = off(degrees);
      const there = lightAt_lx(beam, ...point, ...towards(point, beam.at));
      const cosine = Math.cos((degrees * Math.PI) / 180);
      expect(there / (20_000 * cosine ** 2)).toBeCloseTo(share, 9);
    }
  });

  test('gives nothing to a surface that faces away, nor behind the lamp', () => {
    expect(at(beam, [0, 0, 0], [0, 0, -1])).toBe(0);
    expect(at(beam, [0, 0, 6], [0, 0, -1])).toBe(0);
  });
});

describe('a measured grid', () => {
  /** 1000 cd every way. */
  const sphere: GridSource['grid'] = {
    symmetry: 'rotational',
    planes_deg: Float64Array.of(0),
    gammas_deg: Float64Array.of(0, 90, 180),
    intensities_cd: Float64Array.of(1000, 1000, 1000),
  };
  const lamp = (axis: Vec3, grid = sphere): GridSource => {
    const { right, up } = acrossAxis(axis);
    return { kind: 'grid', at: [0, 0, 2], axis, c0: right, c90: up, grid, share: 0.5 };
  };

  test('that is the same every way gives the same however it is aimed', () => {
    for (const axis of [[0, 0, -1], [1, 0, 0], towards([0, 0, 0], [1, 2, 3])] as const)
      expect(at(lamp(axis), [0, 0, 0], UP)).toBeCloseTo(125, 9);
  });

  test('with one bright plane lights the side that the plane points to', () => {
    const grid: GridSource['grid'] = {
      symmetry: 'none',
      planes_deg: Float64Array.of(0, 90, 180, 270, 360),
      gammas_deg: Float64Array.of(0, 90),
      intensities_cd: Float64Array.of(0, 800, 0, 0, 0, 0, 0, 0, 0, 800),
    };
    const source = lamp([0, 0, -1], grid);
    const [right, left] = ([1, -1] as const).map((side) => {
      const point: Vec3 = [side * source.c0[0], side * source.c0[1], 2 + side * source.c0[2]];
      return lightAt_lx(source, ...point, ...towards(point, source.at));
    });
    expect(right).toBeCloseTo(400, 6);
    expect(left).toBeCloseTo(0, 6);
  });

  /** Energy: all the light of the lamp lands on a closed box about it. */
  test('puts its whole light on a closed box about it, within half a percent', () => {
    const count = 60;
    const source: GridSource = { ...lamp([0, 0, -1]), at: [0.2, -0.1, 0.15], share: 1 };
    const half = 1;
    let flux_lm = 0;
    const cell = (2 * half) / count;
    for (const [axis, side] of [0, 1, 2].flatMap((of) => [[of, 1] as const, [of, -1] as const]))
      for (let i = 0; i < count; i += 1)
        for (let j = 0; j < count; j += 1) {
          const across = [(i + 0.5) * cell - half, (j + 0.5) * cell - half];
          const point = [0, 1, 2].map((of) => (of === axis ? side * half : across.shift()!)) as unknown as Vec3;
          const inward = [0, 1, 2].map((of) => (of === axis ? -side : 0)) as unknown as Vec3;
          flux_lm += lightAt_lx(source, ...point, ...inward) * cell ** 2;
        }
    expect(flux_lm / (4 * Math.PI * 1000)).toBeCloseTo(1, 2.3);
  });
});

describe('a face', () => {
  /** 1 m × 1 m, 1 m away on its axis: E = 0.7523 L, by the closed form of parallel rectangles. */
  test('of a metre, a metre away, gives 0.752 of its luminance', () => {
    expect(at(face([0, 0, 1], [0, 0, -1]), [0, 0, 0], UP) / 1000).toBeCloseTo(0.7523, 4);
  });

  test('gives nothing behind it', () => {
    expect(at(face([0, 0, 1], UP), [0, 0, 0], UP)).toBe(0);
  });

  test('is seen by an eye that looks at its bright side, and hides what is behind it', () => {
    const [near, far] = [face([0, 1, 0], [0, -1, 0], 1, 300), face([0, 2, 0], [0, -1, 0], 4, 900)];
    const seen = (direction: Vec3, sources: readonly LightSource[] = [far, near]) => luminanceSeen_cd_per_m2(sources, [0, -1, 0], direction); // prettier-ignore
    expect(seen([0, 1, 0])).toMatchObject({ luminance_cd_per_m2: 300, distance_m: 2 });
    // Past the edge of the near one: 0.5 m off the axis two metres away.
    expect(seen(towards([0, -1, 0], [0.6, 1, 0]))?.luminance_cd_per_m2).toBe(900);
    expect(seen([0, -1, 0])).toBeUndefined();
    expect(seen([0, 1, 0], [face([0, 1, 0], [0, 1, 0]), beam])).toBeUndefined();
  });
});

test('lamps add', () => {
  const vector = fc.tuple(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: 0.5, max: 3, noNaN: true })); // prettier-ignore
  fc.assert(
    fc.property(vector, vector, (a, b) => {
      const sources = [face(a, towards(a, [0, 0, 0])), beamSource({ at: b, axis: towards(b, [0, 0, 0]), intensity_cd: 5000, beamAngle_deg: 30, fieldAngle_deg: 50 })]; // prettier-ignore
      const each = sources.map((source) => lightAt_lx(source, 0, 0, 0, ...UP));
      expect(lightOfAll_lx(sources, [0, 0, 0], UP)).toBeCloseTo(each[0]! + each[1]!, 9);
    }),
  );
});

test('right and up across an axis are level, upright and square to it', () => {
  for (const axis of [[0, 1, 0], [1, 0, 0], towards([0, 0, 0], [1, 2, 3]), [0, 0, 1]] as const) {
    const { right, up } = acrossAxis(axis);
    const dot = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    expect([dot(right, axis), dot(up, axis), dot(right, up), right[2]].every((value) => Math.abs(value) < 1e-12)).toBe(true); // prettier-ignore
    expect([dot(right, right), dot(up, up)]).toEqual([expect.closeTo(1, 12), expect.closeTo(1, 12)]);
  }
  // Looking away from the camera: right is right, up is up.
  const { right, up } = acrossAxis([0, 1, 0]);
  expect([...right, ...up].map((value) => value + 0)).toEqual([1, 0, 0, 0, 0, 1]);
});
