import { describe, expect, test } from 'vitest';
import { accepted, every, iesText, madePhotometry, type Light } from '../../../../test/photometry/files.ts';
import { polarPoints, profileOf } from './profile.ts';
import { readPhotometry } from './read.ts';
import { principalSpreads, spreadOf } from './spread.ts';

const radians = (angle_deg: number) => (angle_deg * Math.PI) / 180;
const lamp = (light: Light, parts: Parameters<typeof iesText>[0] = {}) =>
  accepted(readPhotometry(iesText({ gammas_deg: every(0.5, 0, 90), light, ...parts })));
const cosine =
  (n: number): Light =>
  ({ gamma_deg }) =>
    Math.max(0, Math.cos(radians(gamma_deg))) ** n;

describe('beam and field angles of known lobes', () => {
  test.each([1, 4, 10, 45.28, 180])('cosⁿ with n = %s is half at acos ½^(1/n) and a tenth at acos 0.1^(1/n)', (n) => {
    const { c0, c90 } = principalSpreads(lamp((at) => 5000 * cosine(n)(at)));
    const edge_deg = (share: number) => (2 * Math.acos(share ** (1 / n)) * 180) / Math.PI;
    for (const { beam, field } of [c0, c90]) {
      expect(Math.abs(beam!.width_deg - edge_deg(0.5))).toBeLessThan(0.03);
      expect(Math.abs(field!.width_deg - edge_deg(0.1))).toBeLessThan(0.03);
      expect(beam!.from_deg).toBeCloseTo(-beam!.to_deg, 9);
    }
  });

  test('a matte disc has a beam of 120°', () => {
    expect(principalSpreads(madePhotometry('lambert-1000cd.ies')).c0.beam!.width_deg).toBeCloseTo(120, 2);
  });

  test('a lamp wider one way than the other has a beam angle for each plane', () => {
    const wide = (plane_deg: number) => 20 + 20 * Math.abs(Math.sin(radians(plane_deg)));
    const oval = lamp(({ plane_deg, gamma_deg }) => 1000 * 2 ** -(((2 * gamma_deg) / wide(plane_deg)) ** 2), {
      planes_deg: every(10, 0, 360),
    });
    const { c0, c90 } = principalSpreads(oval);
    expect(c0.beam!.width_deg).toBeCloseTo(20, 1);
    expect(c90.beam!.width_deg).toBeCloseTo(40, 1);
    // For this shape the field is √log₂10 times the beam.
    expect(c90.field!.width_deg / c90.beam!.width_deg).toBeCloseTo(Math.sqrt(Math.log2(10)), 2);
  });

  test('an even lamp down to the horizon stops there at once', () => {
    expect(principalSpreads(lamp(() => 700)).c0).toMatchObject({ beam: { width_deg: 180 }, field: { width_deg: 180 } });
  });

  test('a lamp that is the same all round has neither', () => {
    const bulb = lamp(() => 700, { gammas_deg: every(10, 0, 180) });
    expect(principalSpreads(bulb).c0).toEqual({ beam: undefined, field: undefined });
  });

  test('a beam off the axis is measured about its own brightest direction', () => {
    const aside = lamp(
      ({ plane_deg, gamma_deg }) => (plane_deg === 0 ? Math.max(0, 100 - 10 * Math.abs(gamma_deg - 30)) : 0),
      { planes_deg: every(30, 0, 360) },
    );
    const { beam } = principalSpreads(aside).c0;
    expect(beam).toMatchObject({ from_deg: 25, to_deg: 35, width_deg: 10, hasOtherLobes: false });
  });

  test('a hollow or two-way beam says that there is more than the lobe it measured', () => {
    const hollow = lamp(({ gamma_deg }) => Math.max(0, 100 - 10 * Math.abs(gamma_deg - 30)));
    expect(principalSpreads(hollow).c0.beam).toMatchObject({ width_deg: 10, hasOtherLobes: true });
    const bothWays = lamp(({ gamma_deg }) => Math.cos(radians(gamma_deg)) ** 10, { gammas_deg: every(1, 0, 180) });
    expect(principalSpreads(bothWays).c0.beam).toMatchObject({ hasOtherLobes: true });
  });

  test('an uplight has its beam about the direction straight up', () => {
    const up = lamp(({ gamma_deg }) => Math.abs(Math.cos(radians(gamma_deg))), { gammas_deg: every(1, 90, 180) });
    const { beam } = principalSpreads(up).c0;
    expect(beam!.width_deg).toBeCloseTo(120, 2);
    expect((beam!.from_deg + beam!.to_deg) / 2).toBeCloseTo(beam!.to_deg > 180 ? 180 : -180, 6);
  });

  test('a plane with no light has neither', () => {
    const halved = lamp(({ plane_deg }) => (plane_deg === 90 || plane_deg === 270 ? 0 : 10), {
      planes_deg: [0, 45, 90, 135, 180, 225, 270, 315, 360],
    });
    expect(spreadOf(halved, { plane_deg: 90, share: 0.5 })).toBeUndefined();
  });

  test('a share that is none is refused by name', () => {
    expect(() =>
      spreadOf(
        lamp(() => 1),
        { plane_deg: 0, share: 0 },
      ),
    ).toThrow('share must be positive');
    expect(() =>
      spreadOf(
        lamp(() => 1),
        { plane_deg: 0, share: 2 },
      ),
    ).toThrow('share must be from 0 to 1, got 2');
  });
});

describe('a plane as a line', () => {
  test('runs from −180° to 180°, stepping to nothing where the measurement ends', () => {
    const { angles_deg, intensities_cd } = profileOf(
      lamp(() => 5, { gammas_deg: [0, 45, 90] }),
      0,
    );
    expect([...angles_deg]).toEqual([-180, -90, -90, -45, 0, 45, 90, 90, 180]);
    expect([...intensities_cd]).toEqual([0, 0, 5, 5, 5, 5, 5, 0, 0]);
  });

  test('takes each side from its own plane', () => {
    const leaning = madePhotometry('lean-c90-3.ldt');
    const { angles_deg, intensities_cd } = profileOf(leaning, 90);
    const at = (angle_deg: number) => intensities_cd[angles_deg.indexOf(angle_deg)]!;
    expect(at(45)).toBeCloseTo(500 * Math.SQRT1_2 * (1 + 0.6 * Math.SQRT1_2), 3);
    expect(at(-45)).toBeCloseTo(500 * Math.SQRT1_2 * (1 - 0.6 * Math.SQRT1_2), 3);
  });

  test('draws a matte disc as the circle that its intensities lie on', () => {
    const disc = madePhotometry('lambert-1000cd.ies');
    const points = polarPoints(disc, { plane_deg: 0, outermost_cd: 1000 });
    for (const { across, along } of points) expect(Math.hypot(across, along - 0.5)).toBeCloseTo(0.5, 3);
    expect(points.length).toBeGreaterThan(90);
    for (const [i, { across, along }] of points.entries()) {
      const before = points[i - 1];
      if (before) expect(Math.hypot(across - before.across, along - before.along)).toBeLessThan(0.1);
    }
  });

  test('is not drawn on a circle that stands for nothing', () => {
    expect(() =>
      polarPoints(
        lamp(() => 1),
        { plane_deg: 0, outermost_cd: 0 },
      ),
    ).toThrow('outermost_cd must be positive');
  });
});
