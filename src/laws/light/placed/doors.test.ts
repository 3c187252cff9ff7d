import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Vec3 } from '../area/polygon.ts';
import type { Grid } from '../photometry/photometry.ts';
import { doorsOf, passesDoors, type DoorAngles } from './doors.ts';
import { acrossAxis, beamSource, lightAt_lx, towards, type GridSource, type LightSource } from './source.ts';

const AXIS = towards([0, 0, 0], [1, 2, -0.5]);
const FRAME = acrossAxis(AXIS);

/** A way so far right and up of the axis, each as an angle in its own plane. */
const off = (right_deg: number, up_deg: number): Vec3 => {
  const [x, y] = [right_deg, up_deg].map((angle) => Math.tan((angle * Math.PI) / 180)) as [number, number];
  return [0, 1, 2].map((k) => AXIS[k]! + x * FRAME.right[k]! + y * FRAME.up[k]!) as unknown as Vec3;
};
const passes = (angles: DoorAngles, [x, y, z]: Vec3) => passesDoors(doorsOf(FRAME, angles), x, y, z, x * AXIS[0] + y * AXIS[1] + z * AXIS[2]); // prettier-ignore

test.each([
  ['left', { left_deg: 15 }, [-14.9, 0], [-15.1, 0]],
  ['right', { right_deg: 15 }, [14.9, 0], [15.1, 0]],
  ['top', { top_deg: 15 }, [0, 14.9], [0, 15.1]],
  ['bottom', { bottom_deg: 15 }, [0, -14.9], [0, -15.1]],
] as const)('a door on the %s cuts beyond its angle on its own side, and nowhere else', (_, angles, [x, y], [bx, by]) => {
  expect(passes(angles, off(x, y))).toBe(true);
  expect(passes(angles, off(bx, by))).toBe(false);
  for (const [right, up] of [[-bx, -by], [by, bx], [-by, -bx], [0, 0]] as const) expect(passes(angles, off(right, up))).toBe(true);
}); // prettier-ignore

test('a door cuts a straight edge: as far off the axis at the top of the beam as in the middle', () => {
  for (const up of [-30, 0, 40]) {
    expect(passes({ left_deg: 20 }, off(-19.9, up))).toBe(true);
    expect(passes({ left_deg: 20 }, off(-20.1, up))).toBe(false);
  }
});

test('a door at 90° cuts only what goes back on its side, and one at nothing cuts the half of its side', () => {
  expect(passes({ right_deg: 90 }, off(89, 0))).toBe(true);
  const back = off(80, 0).map((part, k) => part - 2 * AXIS[k]!) as unknown as Vec3;
  expect(passes({ right_deg: 90 }, back)).toBe(false);
  expect(passes({ left_deg: 90 }, back)).toBe(true);
  expect(passes({ right_deg: 0 }, off(0.1, 0))).toBe(false);
  expect(passes({ right_deg: 0 }, off(0, 0))).toBe(true);
});

test('a door lets through just what lies within its angle on its side, all round', () => {
  const angle = fc.double({ min: 0, max: 90, noNaN: true });
  const part = fc.double({ min: -1, max: 1, noNaN: true });
  fc.assert(
    fc.property(angle, part, part, part, (left_deg, along, right, up) => {
      const leftOff_deg = (Math.atan2(-right, along) * 180) / Math.PI;
      fc.pre(Math.abs(right) > 1e-6 && Math.abs(leftOff_deg - left_deg) > 1e-6);
      const ray = [0, 1, 2].map((k) => along * AXIS[k]! + right * FRAME.right[k]! + up * FRAME.up[k]!) as unknown as Vec3;
      expect(passes({ left_deg }, ray)).toBe(right > 0 || leftOff_deg < left_deg);
    }),
  );
}); // prettier-ignore

test('angles outside 0 to 90° are refused', () => {
  expect(() => doorsOf(FRAME, { top_deg: 91 })).toThrow(RangeError);
  expect(() => doorsOf(FRAME, { top_deg: -1 })).toThrow(RangeError);
});

test('a lamp’s doors cut its light, and leave the rest as it was', () => {
  const beam = beamSource({ at: [0, 0, 0], axis: AXIS, intensity_cd: 900, beamAngle_deg: 40, fieldAngle_deg: 60 });
  const grid: Grid = { symmetry: 'rotational', planes_deg: Float64Array.of(0), gammas_deg: Float64Array.of(0, 90), intensities_cd: Float64Array.of(500, 100) }; // prettier-ignore
  const measured: GridSource = { kind: 'grid', at: [0, 0, 0], axis: AXIS, c0: FRAME.right, c90: FRAME.up, grid, share: 1 }; // prettier-ignore
  const doors = doorsOf(FRAME, { left_deg: 10, bottom_deg: 5 });
  for (const source of [beam, measured]) {
    const at = (of: LightSource, right: number, up: number) => {
      const point = off(right, up);
      return lightAt_lx(of, ...point, ...towards(point, [0, 0, 0]));
    };
    const shut = { ...source, doors };
    expect(at(shut, -9, 3)).toBe(at(source, -9, 3));
    expect(at(source, -9, 3)).toBeGreaterThan(0);
    expect(at(shut, -11, 3)).toBe(0);
    expect(at(shut, 8, -6)).toBe(0);
    expect(at(shut, 40, 40)).toBe(at(source, 40, 40));
  }
});
