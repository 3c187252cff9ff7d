import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawFour, drawKey } from '../../../base/randomStream.ts';
import { panelCorners, polygonFactor, roundCorners, type Vec3 } from '../area/polygon.ts';
import { factorPast, type Glowing } from './behindFlags.ts';
import { flagAt, type Flag } from './flag.ts';
import { towards } from './source.ts';

const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vec3, b: Vec3): Vec3 => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]; // prettier-ignore
const cornersOf = (list: Float64Array): readonly Vec3[] => Array.from({ length: list.length / 3 }, (_, i) => [list[3 * i]!, list[3 * i + 1]!, list[3 * i + 2]!]); // prettier-ignore

interface Face extends Glowing {
  readonly width_m: number;
  readonly height_m: number;
}

const face = (at: Vec3, facing: Vec3, width_m: number, height_m: number): Face => ({
  at,
  axis: towards([0, 0, 0], facing),
  corners: panelCorners({ centre: at, facing, width_m, height_m }),
  width_m,
  height_m,
});

/** Whether the way from p to q meets a triangle, by the volumes that its corners span with both ends. */
function meets(p: Vec3, q: Vec3, [a, b, c]: readonly [Vec3, Vec3, Vec3]): boolean {
  const volume = (u: Vec3, v: Vec3, w: Vec3, x: Vec3) => Math.sign(dot(minus(x, u), cross(minus(v, u), minus(w, u))));
  if (volume(a, b, c, p) * volume(a, b, c, q) >= 0) return false;
  const sides = [volume(p, q, a, b), volume(p, q, b, c), volume(p, q, c, a)];
  return sides.every((side) => side >= 0) || sides.every((side) => side <= 0);
}

const blocks = (flag: Flag, p: Vec3, q: Vec3): boolean => {
  const [a, b, c, d] = cornersOf(flag.corners) as readonly [Vec3, Vec3, Vec3, Vec3];
  return meets(p, q, [a, b, c]) || meets(p, q, [a, c, d]);
};

/** The same factor as a mean over seeded points, one in each cell of the face, and its standard error as if not in cells. */
function summed({ axis, corners, width_m, height_m }: Face, flags: readonly Flag[], point: Vec3, normal: Vec3, key: string) {
  const drawn = new Float64Array(4);
  const [a, b, , d] = cornersOf(corners) as readonly [Vec3, Vec3, Vec3, Vec3];
  const count = 100;
  let [sum, squares] = [0, 0];
  for (let i = 0; i < count; i += 1)
    for (let j = 0; j < count; j += 1) {
      drawFour(drawKey(1, key), i, j, 0, drawn);
      const [u, v] = [(i + drawn[0]!) / count, (j + drawn[1]!) / count];
      const on: Vec3 = [0, 1, 2].map((k) => a[k]! + u * (b[k]! - a[k]!) + v * (d[k]! - a[k]!)) as unknown as Vec3;
      const ray = minus(on, point);
      const square = dot(ray, ray);
      const value = Math.max(0, dot(ray, normal)) * Math.max(0, -dot(ray, axis)) / square ** 2;
      const counted = value > 0 && !flags.some((flag) => blocks(flag, point, on)) ? value : 0;
      sum += counted;
      squares += counted ** 2;
    }
  const area = width_m * height_m;
  const mean = sum / count ** 2;
  const error = Math.sqrt(Math.max(0, squares / count ** 2 - mean ** 2)) / count;
  return { factor: (mean * area) / Math.PI, error: (error * area) / Math.PI };
} // prettier-ignore

const past = (of: Glowing, flags: readonly Flag[], point: Vec3, normal: Vec3) => factorPast(of, flags, ...point, ...normal); // prettier-ignore

const UP: Vec3 = [0, 0, 1];
const PANEL = face([0, 0, 1], [0, 0, -1], 1, 1);
const whole = (of: Glowing, point: Vec3, normal: Vec3) => Math.max(0, polygonFactor(of.corners, ...point, ...normal));

const within = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });
const place = fc.tuple(within(-1.2, 1.2), within(-1.2, 1.2), within(-1.2, 1.2)) as fc.Arbitrary<Vec3>;
const way = place.filter((v) => Math.hypot(...v) > 0.2);
const anyFlag = fc.tuple(place, way, within(0.05, 1.5), within(0.05, 1.5)).map(([centre, facing, width_m, height_m]) => flagAt({ centre, facing, width_m, height_m })); // prettier-ignore
const anyFace = fc.tuple(place, way, within(0.2, 1.5), within(0.2, 1.5)).map((given) => face(...given));
const anyNormal = way.map((v) => towards([0, 0, 0], v));

/** Seeded places, ways and sizes: evenly spread, so that none of them meets another exactly. */
function drawsOf(case_: number) {
  const [key, four] = [drawKey(1, 'flags'), new Float64Array(4)];
  let block = 0;
  const three = (): Vec3 => {
    drawFour(key, case_, (block += 1), 0, four);
    return [four[0]! - 0.5, four[1]! - 0.5, four[2]! - 0.5];
  };
  const place = (): Vec3 => three().map((value) => 2 * value) as unknown as Vec3;
  const size = (least: number, most: number) => least + (three()[0] + 0.5) * (most - least);
  return { place, way: () => towards([0, 0, 0], three()), size };
}

type Draws = ReturnType<typeof drawsOf>;

const drawnFace = ({ place, way, size }: Draws) => face(place(), way(), size(0.2, 1.5), size(0.2, 1.5));

const between = (a: Vec3, b: Vec3, share: number): Vec3 => [0, 1, 2].map((k) => a[k]! + share * (b[k]! - a[k]!)) as unknown as Vec3; // prettier-ignore

/** Somewhere about the line between two points. */
const drawnFlag = ({ place, way, size }: Draws, from: Vec3, to: Vec3) =>
  flagAt({ centre: between(between(from, to, size(-0.1, 1.1)), place(), 0.2), facing: way(), width_m: size(0.1, 0.7), height_m: size(0.1, 0.7) }); // prettier-ignore

describe('a face behind flags, against light summed over seeded points of it', () => {
  const cases: readonly (readonly [string, Face, readonly Parameters<typeof flagAt>[0][], Vec3, Vec3])[] = [
    ['a flag across one corner', PANEL, [{ centre: [0.35, 0.3, 0.6], facing: [0, 0, 1], width_m: 0.5, height_m: 0.4 }], [0, 0, 0], UP],
    ['a tilted flag, from the side', PANEL, [{ centre: [0.2, 0.1, 0.5], facing: [1, 2, 3], width_m: 0.5, height_m: 0.4 }], [0.4, 0.3, 0.1], towards([0, 0, 0], [-0.5, 0, 1])],
    ['two flags that overlap', PANEL, [{ centre: [0.1, 0, 0.5], facing: [0, 0, 1], width_m: 0.4, height_m: 0.4 }, { centre: [-0.05, 0.1, 0.7], facing: [0, 1, 4], width_m: 0.5, height_m: 0.3 }], [0, 0, 0], UP],
    ['three flags, one of them within another’s shadow', PANEL, [{ centre: [0, 0, 0.8], facing: [0, 0, 1], width_m: 0.3, height_m: 0.3 }, { centre: [0, 0, 0.4], facing: [0, 0, 1], width_m: 0.2, height_m: 0.2 }, { centre: [-0.1, 0, 0.3], facing: [1, 0, 2], width_m: 0.1, height_m: 0.2 }], [0.05, 0, 0], UP],
    ['a flag that reaches through the face', PANEL, [{ centre: [0.1, 0, 1], facing: [1, 0, 0], width_m: 0.6, height_m: 0.6 }], [-0.5, 0.2, 0], UP],
    ['a flag beside and behind the point', PANEL, [{ centre: [0, 0, 0.1], facing: [1, 0, 0.3], width_m: 0.4, height_m: 2 }], [-0.2, 0, 0.1], towards([0, 0, 0], [0.4, 0, 1])],
    ['a face cut by the horizon', face([0.8, 0, 0.1], [-1, 0, 0.2], 0.7, 0.8), [{ centre: [0.4, 0.1, 0.2], facing: [1, 0, 0], width_m: 0.2, height_m: 0.3 }], [0, 0, 0], UP],
  ]; // prettier-ignore

  test.each(cases)('%s', (name, of, given, point, normal) => {
    const flags = given.map(flagAt);
    const { factor, error } = summed(of, flags, point, normal, name);
    const exact = past(of, flags, point, normal);
    // The case hides some of it, or it would prove nothing.
    expect(exact).toBeLessThan(0.98 * whole(of, point, normal));
    expect(exact).toBeGreaterThan(0);
    expect(Math.abs(exact - factor)).toBeLessThan(3 * error);
  });

  test('up to four flags anywhere before any face agree within four standard errors', () => {
    let hiddenCount = 0;
    for (let i = 0; i < 300; i += 1) {
      const draws = drawsOf(i);
      const [of, point] = [drawnFace(draws), draws.place()];
      const normal = towards(point, between(of.at, draws.place(), 0.3));
      const flags = Array.from({ length: 1 + (i % 4) }, () => drawnFlag(draws, point, of.at));
      const all = whole(of, point, normal);
      // So near to a face that a few of its points count for all, a sum over them says little.
      if (!(all > 0.01) || dot(minus(point, of.at), of.axis) < 0.15) continue;
      const exact = past(of, flags, point, normal);
      const { factor, error } = summed(of, flags, point, normal, `any ${i}`);
      if (exact < 0.95 * all) hiddenCount += 1;
      expect(Math.abs(exact - factor), `${i}`).toBeLessThan(4 * error + 1e-4 * all);
    }
    expect(hiddenCount).toBeGreaterThan(60);
  }, 60_000);
}); // prettier-ignore

describe('closed cases', () => {
  test('a flag over half of a face leaves half, by symmetry', () => {
    const flag = flagAt({ centre: [5, 0, 0.5], facing: UP, width_m: 10, height_m: 10 });
    expect(past(PANEL, [flag], [0, 0, 0], UP)).toBeCloseTo(whole(PANEL, [0, 0, 0], UP) / 2, 12);
  });

  test('a small flag close to the point hides as much as a large one far from it on the same lines', () => {
    const [near, far] = [0.2, 0.8].map((up) => flagAt({ centre: [0.25 * up, 0.1 * up, up], facing: UP, width_m: 0.4 * up, height_m: 0.3 * up })); // prettier-ignore
    expect(past(PANEL, [near!], [0, 0, 0], UP)).toBeCloseTo(past(PANEL, [far!], [0, 0, 0], UP), 12);
    // What it hides is the panel that it would be in the plane of the face.
    const shadow = panelCorners({ centre: [0.25, 0.1, 1], facing: [0, 0, -1], width_m: 0.4, height_m: 0.3 });
    const hidden = polygonFactor(shadow, 0, 0, 0, ...UP);
    expect(past(PANEL, [far!], [0, 0, 0], UP)).toBeCloseTo(whole(PANEL, [0, 0, 0], UP) - hidden, 12);
  });

  test('a flag far off, behind the face, behind the point, or met edge on changes nothing at all', () => {
    const asIs = whole(PANEL, [0, 0, 0], UP);
    for (const [centre, facing] of [
      [[9, 0, 0.5], UP],
      [[0, 0, 1.2], UP],
      [[0, 0, -0.3], UP],
      [
        [0, 0, 0.5],
        [1, 0, 0],
      ],
      [[0.9, 0, 0.5], UP],
    ] as const)
      expect(past(PANEL, [flagAt({ centre, facing, width_m: 0.5, height_m: 0.5 })], [0, 0, 0], UP)).toBe(asIs);
  });

  test('a flag before everything leaves nothing, whatever else stands there', () => {
    const all = flagAt({ centre: [0, 0, 0.5], facing: UP, width_m: 3, height_m: 3 });
    const other = flagAt({ centre: [0.1, 0, 0.7], facing: [1, 0, 3], width_m: 0.3, height_m: 0.3 });
    for (const flags of [[all], [other, all], [all, other]]) expect(past(PANEL, flags, [0, 0, 0], UP)).toBe(0);
  });

  test('the same flag twice hides once, and flags side by side hide what one as large would', () => {
    const flag = (x: number, width_m: number) => flagAt({ centre: [x, 0.1, 0.6], facing: UP, width_m, height_m: 0.3 });
    const one = past(PANEL, [flag(0.1, 0.4)], [0, 0, 0], UP);
    expect(past(PANEL, [flag(0.1, 0.4), flag(0.1, 0.4)], [0, 0, 0], UP)).toBeCloseTo(one, 12);
    expect(past(PANEL, [flag(0, 0.2), flag(0.2, 0.2)], [0, 0, 0], UP)).toBeCloseTo(one, 12);
  });

  test('two flags that overlap hide what each hides, less what both do', () => {
    const [a, b, both] = [[-0.1, 0.4], [0.1, 0.4], [0, 0.2]].map(([x, width_m]) => flagAt({ centre: [x!, 0, 0.5], facing: UP, width_m: width_m!, height_m: 0.3 })); // prettier-ignore
    const hidden = (flags: readonly Flag[]) => whole(PANEL, [0, 0, 0], UP) - past(PANEL, flags, [0, 0, 0], UP);
    expect(hidden([a!, b!])).toBeCloseTo(hidden([a!]) + hidden([b!]) - hidden([both!]), 12);
  });

  test('a round face half hidden gives half, and a hole is what is left of it', () => {
    const corners = roundCorners({ centre: [0, 0, 1], facing: [0, 0, -1], width_m: 1, height_m: 1 });
    const round: Glowing = { at: [0, 0, 1], axis: [0, 0, -1], corners };
    const asIs = polygonFactor(corners, 0, 0, 0, ...UP);
    const half = flagAt({ centre: [-4, 0, 0.9], facing: UP, width_m: 8, height_m: 8 });
    expect(past(round, [half], [0, 0, 0], UP)).toBeCloseTo(asIs / 2, 12);
    const square = flagAt({ centre: [0, 0, 0.999], facing: UP, width_m: 0.3 * 0.999, height_m: 0.3 * 0.999 });
    const hole = polygonFactor(panelCorners({ centre: [0, 0, 1], facing: [0, 0, -1], width_m: 0.3, height_m: 0.3 }), 0, 0, 0, ...UP); // prettier-ignore
    expect(past(round, [square], [0, 0, 0], UP)).toBeCloseTo(asIs - hole, 12);
  });
});

describe('whatever stands there', () => {
  const flags = fc.array(anyFlag, { maxLength: 5 });

  test('light never falls below nothing nor rises above that of the whole face, and one flag more never adds', () => {
    fc.assert(
      fc.property(anyFace, flags, anyFlag, place, anyNormal, (of, some, more, point, normal) => {
        const left = past(of, some, point, normal);
        expect(left).toBeGreaterThanOrEqual(0);
        expect(left).toBeLessThanOrEqual(whole(of, point, normal));
        expect(past(of, [...some, more], point, normal)).toBeLessThanOrEqual(left + 1e-9);
      }),
      { numRuns: 1000 },
    );
  });

  test('the order of the flags does not matter', () => {
    fc.assert(
      fc.property(anyFace, flags, place, anyNormal, (of, some, point, normal) => {
        expect(past(of, some.toReversed(), point, normal)).toBeCloseTo(past(of, some, point, normal), 9);
      }),
      { numRuns: 500 },
    );
  });

  test('a face in two halves gives what it gives whole', () => {
    fc.assert(
      fc.property(flags, place, anyNormal, (some, point, normal) => {
        const halves = [-0.25, 0.25].map((x) => face([x, 0, 1], [0, 0, -1], 0.5, 1));
        const sum = halves.reduce((total, half) => total + past(half, some, point, normal), 0);
        expect(sum).toBeCloseTo(past(PANEL, some, point, normal), 9);
      }),
      { numRuns: 500 },
    );
  });
});
