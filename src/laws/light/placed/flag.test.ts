import fc from 'fast-check';
import { expect, test } from 'vitest';
import { panelCorners, type Vec3 } from '../area/polygon.ts';
import { flagAt, hides } from './flag.ts';
import { beamSource, lightAt_lx, lightOfAll_lx, luminanceSeen_cd_per_m2, towards, unshaded, type FaceSource } from './source.ts'; // prettier-ignore

/** Upright before the camera, a metre away: 400 mm wide, 600 mm high. */
const FLAG = flagAt({ centre: [0, -1, 0], facing: [0, 1, 0], width_m: 0.4, height_m: 0.6 });
const between = (p: Vec3, q: Vec3, flag = FLAG) => hides(flag, ...p, ...q);

test('stands between what lies on either side of it, and hides along its own width and height', () => {
  expect(between([0, 0, 0], [0, -2, 0])).toBe(true);
  // Halfway a line shifts by half of what its far end does.
  for (const [far, isHidden] of [
    [[0.39, -2, 0], true],
    [[0.41, -2, 0], false],
    [[0, -2, -0.59], true],
    [[0, -2, 0.61], false],
  ] as const)
    expect(between([0, 0, 0], far), far.join()).toBe(isHidden);
});

test('hides nothing of two points on one side of it, nor where it is met edge on', () => {
  expect(between([0, 0, 0], [0, -0.9, 0])).toBe(false);
  expect(between([0, -1.1, 0], [0, -3, 0])).toBe(false);
  expect(between([-3, -1, 0], [3, -1, 0])).toBe(false);
});

test('is the same from both sides, and whichever way round it is said to face', () => {
  const place = fc.tuple(...Array.from({ length: 3 }, () => fc.double({ min: -2, max: 2, noNaN: true }))) as unknown as fc.Arbitrary<Vec3>; // prettier-ignore
  const round = flagAt({ centre: [0, -1, 0], facing: [0, -7, 0], width_m: 0.4, height_m: 0.6 });
  fc.assert(
    fc.property(place, place, (p, q) => {
      expect(between(q, p)).toBe(between(p, q));
      expect(between(p, q, round)).toBe(between(p, q));
    }),
  );
});

test('has its width level and the corners of a panel that faces as it does', () => {
  const given = { centre: [1, 2, 3] as Vec3, facing: [1, 1, 1] as Vec3, width_m: 0.4, height_m: 0.6 };
  const flag = flagAt(given);
  expect(flag.right[2]).toBeCloseTo(0, 12);
  expect([...flag.corners]).toEqual([...panelCorners(given)]);
  expect(flag.radius_m).toBeCloseTo(Math.hypot(0.2, 0.3), 12);
  // One that lies flat has its width along x.
  expect(flagAt({ ...given, facing: [0, 0, 2] }).right.map(Math.abs)).toEqual([1, 0, 0]);
});

test('has a size and a way to face, or is refused', () => {
  const given = { centre: [0, 0, 0] as Vec3, facing: [0, 0, 1] as Vec3, width_m: 1, height_m: 1 };
  expect(() => flagAt({ ...given, width_m: 0 })).toThrow(RangeError);
  expect(() => flagAt({ ...given, facing: [0, 0, 0] })).toThrow(RangeError);
});

const UP: Vec3 = [0, 0, 1];
const spot = beamSource({ at: [0, -2, 0], axis: [0, 1, 0], intensity_cd: 8000, beamAngle_deg: 20, fieldAngle_deg: 35 });
const panel: FaceSource = {
  kind: 'face',
  at: [0, 1, 0],
  axis: [0, -1, 0],
  corners: panelCorners({ centre: [0, 1, 0], facing: [0, -1, 0], width_m: 1, height_m: 1 }),
  luminance_cd_per_m2: 500,
};

test('takes the light of a lamp away where it stands between, and leaves it elsewhere', () => {
  const flagged = { ...spot, flags: [FLAG] };
  expect(lightAt_lx(spot, 0, 0, 0, 0, -1, 0)).toBeCloseTo(2000, 9);
  expect(lightAt_lx(flagged, 0, 0, 0, 0, -1, 0)).toBe(0);
  expect(lightAt_lx(flagged, 0.5, 0, 0, 0, -1, 0)).toBe(lightAt_lx(spot, 0.5, 0, 0, 0, -1, 0));
  expect(lightAt_lx(unshaded(flagged), 0, 0, 0, 0, -1, 0)).toBeCloseTo(2000, 9);
  // On the lamp's side of it, it is as bright as ever.
  expect(lightAt_lx(flagged, 0, -1.2, 0, 0, -1, 0)).toBe(lightAt_lx(spot, 0, -1.2, 0, 0, -1, 0));
});

test('lamps behind one flag add as lamps do', () => {
  const low = flagAt({ centre: [0, 0.5, -0.4], facing: [0, 1, 0], width_m: 2, height_m: 0.6 });
  const sources = [
    { ...panel, flags: [low] },
    { ...spot, flags: [low] },
  ];
  const [a, b] = sources.map((source) => lightAt_lx(source, 0.1, 0, 0.05, ...UP));
  expect(a).toBeGreaterThan(0);
  expect(lightOfAll_lx(sources, [0.1, 0, 0.05], UP)).toBe(a! + b!);
});

test('hides a face from an eye that looks at it, and not one that stands before the flag', () => {
  const flag = flagAt({ centre: [0.3, 0.5, 0], facing: [0, 1, 0], width_m: 0.4, height_m: 0.4 });
  const far = { ...panel, flags: [flag] };
  const near: FaceSource = { ...panel, at: [0, 0.2, 0], corners: panelCorners({ centre: [0, 0.2, 0], facing: [0, -1, 0], width_m: 1, height_m: 1 }), luminance_cd_per_m2: 40, flags: [flag] }; // prettier-ignore
  const look = (x: number, sources: readonly FaceSource[]) => luminanceSeen_cd_per_m2(sources, [0, 0, 0], towards([0, 0, 0], [x, 1, 0]))?.luminance_cd_per_m2; // prettier-ignore
  expect(look(0, [far])).toBe(500);
  expect(look(0.4, [far])).toBeUndefined();
  expect(look(0.4, [far, near])).toBe(40);
});
