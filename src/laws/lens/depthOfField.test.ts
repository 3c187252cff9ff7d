import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import {
  depthFar_m,
  depthNear_m,
  depthOfField_m,
  fNumberForDepth,
  hyperfocal_m,
  macroDepthOfField_m,
  type DepthSetting,
} from './depthOfField.ts';

type Hyperfocal = Parameters<typeof hyperfocal_m>[0];
type Macro = Parameters<typeof macroDepthOfField_m>[0];

/** A lens focused on a subject this far from its principal plane, in the classical terms. */
function focusedAt(distance_m: number, given: Hyperfocal): DepthSetting {
  const focalLength_m = given.focalLength_mm / 1000;
  return { ...given, magnificationRatio: focalLength_m / (distance_m - focalLength_m) };
}

describe('published values', () => {
  published('hyperfocal in mm', (given: Hyperfocal) => 1000 * hyperfocal_m(given), [
    {
      source: 'hyperfocal-algebra',
      at: '25 mm, f/16, 0.015 mm',
      given: { focalLength_mm: 25, fNumber: 16, circleOfConfusion_m: 1.5e-5 },
      expected: '2629.1666666667',
    },
    {
      source: 'pupil-blog',
      at: '12 mm, f/16, 0.03 mm',
      given: { focalLength_mm: 12, fNumber: 16, circleOfConfusion_m: 3e-5 },
      expected: '312',
    },
  ]);

  published('hyperfocal in m', hyperfocal_m, [
    {
      source: 'hyperfocal-program',
      at: '35 mm, f/11, 0.03 mm',
      given: { focalLength_mm: 35, fNumber: 11, circleOfConfusion_m: 3e-5 },
      expected: '3.75',
    },
  ]);

  published(
    'hyperfocal less one focal length, in mm',
    (given: Hyperfocal) => 1000 * hyperfocal_m(given) - given.focalLength_mm,
    [
      {
        source: 'hyperfocal-page',
        at: '50 mm, f/8, 0.033 mm',
        given: { focalLength_mm: 50, fNumber: 8, circleOfConfusion_m: 3.3e-5 },
        expected: '9470',
      },
      {
        source: 'hyperfocal-examples',
        at: '50 mm, f/8, 0.02 mm',
        given: { focalLength_mm: 50, fNumber: 8, circleOfConfusion_m: 2e-5 },
        expected: '15625',
      },
      {
        source: 'hyperfocal-examples',
        at: '35 mm, f/11, 0.03 mm',
        given: { focalLength_mm: 35, fNumber: 11, circleOfConfusion_m: 3e-5 },
        expected: '3712.12',
      },
    ],
  );

  published(
    'hyperfocal less one focal length, in feet',
    (given: Hyperfocal) => (hyperfocal_m(given) - given.focalLength_mm / 1000) / 0.3048,
    [
      {
        source: 'hyperfocal-army',
        at: 'two inches, f/8, 0.002 inch',
        given: { focalLength_mm: 50.8, fNumber: 8, circleOfConfusion_m: 0.002 * 0.0254 },
        expected: '20.8',
      },
    ],
  );

  published(
    'hyperfocal less one focal length, in m',
    (given: Hyperfocal) => hyperfocal_m(given) - given.focalLength_mm / 1000,
    [
      {
        source: 'circles-per-diagonal',
        at: '60 × 70 mm, normal lens, f/8',
        given: { focalLength_mm: 92.2, fNumber: 8, circleOfConfusion_m: 0.052683e-3 },
        expected: '20.17',
      },
      {
        source: 'circles-per-diagonal',
        at: '4 × 5 inches, normal lens, f/8',
        given: { focalLength_mm: 162.64, fNumber: 8, circleOfConfusion_m: 0.092937e-3 },
        expected: '35.58',
      },
    ],
  );

  published(
    'the near side of the hyperfocal focus in mm',
    (given: Hyperfocal) => 1000 * depthNear_m(focusedAt(hyperfocal_m(given), given)),
    [
      {
        source: 'pupil-blog',
        at: '12 mm, f/16, 0.03 mm, like pupils',
        given: { focalLength_mm: 12, fNumber: 16, circleOfConfusion_m: 3e-5 },
        expected: '156',
      },
    ],
  );

  const table = (magnificationRatio: number, fNumber: number, expected: string) => ({
    source: 'macro-depth-table',
    at: `magnification ${magnificationRatio}, f/${fNumber}`,
    given: { magnificationRatio, fNumber, circleOfConfusion_m: 1.9e-5 },
    expected,
  });
  published('macroDepthOfField in mm', (given: Macro) => 1000 * macroDepthOfField_m(given), [
    {
      source: 'macro-depth-forum',
      at: 'five times life size, f/2.8, 0.018 mm',
      given: { magnificationRatio: 5, fNumber: 2.8, circleOfConfusion_m: 1.8e-5 },
      expected: '0.0242',
    },
    {
      source: 'macro-depth-forum',
      at: 'five times life size, f/4, 0.018 mm',
      given: { magnificationRatio: 5, fNumber: 4, circleOfConfusion_m: 1.8e-5 },
      expected: '0.0346',
    },
    table(0.1, 2.8, '12'),
    table(0.3, 2, '1.1'),
    table(0.5, 4, '0.91'),
    table(0.75, 1.4, '0.17'),
    table(1.5, 2.8, '0.12'),
    table(2.5, 2, '0.043'),
    table(7.5, 4, '0.023'),
    table(40, 4, '0.0039'),
  ]);

  test('unlike pupils change the macro depth by (m + p)/(p · (m + 1)), as the pupil-blog says', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 5, noNaN: true }),
        fc.double({ min: 0.3, max: 4, noNaN: true }),
        (magnificationRatio, pupilMagnificationRatio) => {
          const like = { magnificationRatio, fNumber: 5.6, circleOfConfusion_m: 1.8e-5 };
          const change = macroDepthOfField_m({ ...like, pupilMagnificationRatio }) / macroDepthOfField_m(like);
          const told =
            (magnificationRatio + pupilMagnificationRatio) / (pupilMagnificationRatio * (magnificationRatio + 1));
          expect(change / told).toBeCloseTo(1, 12);
        },
      ),
    );
  });
});

describe('independent computation', () => {
  test.each([
    { focalLength_mm: 50, fNumber: 8, circle_mm: 0.025, subject_mm: 3000, near_mm: 2427.2, far_mm: 3926.7, digits: 1 },
    {
      focalLength_mm: 100,
      fNumber: 5.6,
      circle_mm: 0.025,
      subject_mm: 1000,
      near_mm: 987.56,
      far_mm: 1012.76,
      digits: 2,
    },
  ])(
    'the limits of $focalLength_mm mm at f/$fNumber, focused at $subject_mm mm, agree with an independent computation',
    ({ focalLength_mm, fNumber, circle_mm, subject_mm, near_mm, far_mm, digits }) => {
      const setting = focusedAt(subject_mm / 1000, { focalLength_mm, fNumber, circleOfConfusion_m: circle_mm / 1000 });
      expect(subject_mm - 1000 * depthNear_m(setting)).toBeCloseTo(near_mm, digits);
      expect(subject_mm + 1000 * depthFar_m(setting)).toBeCloseTo(far_mm, digits);
    },
  );

  test.each([
    { magnificationRatio: 1, pupilMagnificationRatio: 1, fNumber: 8, circle_mm: 0.025, depth_mm: 0.8, digits: 2 },
    { magnificationRatio: 1, pupilMagnificationRatio: 0.7, fNumber: 8, circle_mm: 0.025, depth_mm: 0.97, digits: 2 },
    { magnificationRatio: 0.5, pupilMagnificationRatio: 1, fNumber: 8, circle_mm: 0.025, depth_mm: 2.4, digits: 2 },
    { magnificationRatio: 2, pupilMagnificationRatio: 1, fNumber: 5.6, circle_mm: 0.018, depth_mm: 0.151, digits: 3 },
  ])(
    'the macro depth at $magnificationRatio, pupils $pupilMagnificationRatio, agrees with an independent computation',
    ({ circle_mm, depth_mm, digits, ...given }) => {
      expect(1000 * macroDepthOfField_m({ ...given, circleOfConfusion_m: circle_mm / 1000 })).toBeCloseTo(
        depth_mm,
        digits,
      );
    },
  );
});

const focalLength_mm = fc.double({ min: 12, max: 300, noNaN: true });
const magnificationRatio = fc.double({ min: 0.02, max: 5, noNaN: true });
const pupilMagnificationRatio = fc.double({ min: 0.4, max: 3, noNaN: true });
const fNumber = fc.double({ min: 1.2, max: 45, noNaN: true });
const circleOfConfusion_m = fc.double({ min: 2e-6, max: 5e-5, noNaN: true });
const anySetting = fc.record({
  focalLength_mm,
  magnificationRatio,
  pupilMagnificationRatio,
  fNumber,
  circleOfConfusion_m,
});

/**
 * An optical bench that knows neither pupils nor magnification formulas: a thin lens, a round stop before or behind
 * it, a sensor. Rays are straight lines, bent at the lens by height over focal length; distances are from the lens.
 */
interface Bench {
  readonly focal_m: number;
  /** Positive before the lens, negative behind it. */
  readonly stopBefore_m: number;
  readonly stopRadius_m: number;
}

const bent = (slope: number, height_m: number, { focal_m }: Bench) => slope - height_m / focal_m;

/** Height in the stop of a ray that leaves the axis at a distance with slope 1. */
function heightInStop_m(from_m: number, bench: Bench): number {
  if (bench.stopBefore_m >= 0) return from_m - bench.stopBefore_m;
  return from_m + bent(1, from_m, bench) * -bench.stopBefore_m;
}

/** Diameter on the sensor of the light of a point on the axis, from the two rays that touch the edge of the stop. */
function blur_m(from_m: number, sensor_m: number, bench: Bench): number {
  const slope = bench.stopRadius_m / heightInStop_m(from_m, bench);
  const atLens_m = slope * from_m;
  return 2 * Math.abs(atLens_m + bent(slope, atLens_m, bench) * sensor_m);
}

/** The point between two where a growing function passes zero. */
function crossing(low: number, high: number, grows: (at: number) => number): number {
  for (let i = 0; i < 200; i += 1) {
    const middle = (low + high) / 2;
    if (grows(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function benchOf(setting: Required<DepthSetting>): Bench {
  const focal_m = setting.focalLength_mm / 1000;
  const pupils = setting.pupilMagnificationRatio;
  // A stop before the lens is its own entrance pupil, seen enlarged from behind; one behind it is the exit pupil.
  const stopBefore_m = pupils >= 1 ? focal_m * (1 - 1 / pupils) : -focal_m * (1 - pupils);
  const open: Bench = { focal_m, stopBefore_m, stopRadius_m: 1 };
  // The f-number is the focal length over the width of the parallel beam that just fills the stop.
  const beamHeightInStop = stopBefore_m >= 0 ? 1 : 1 + bent(0, 1, open) * -stopBefore_m;
  return { ...open, stopRadius_m: (beamHeightInStop * focal_m) / (2 * setting.fNumber) };
}

/** Where the subject stands and the sensor, found by rays: the middle ray gives the size, the axis point the focus. */
function focusedBench(setting: Required<DepthSetting>) {
  const bench = benchOf(setting);
  const { focal_m } = bench;
  const imageOf_m = (from_m: number) => -from_m / bent(1, from_m, bench);
  const subject_m = crossing(
    focal_m * 1.0001,
    focal_m * 1000,
    (at_m) => setting.magnificationRatio - imageOf_m(at_m) / at_m,
  );
  return { bench, subject_m, sensor_m: imageOf_m(subject_m) };
}

describe('against rays traced through a lens and a stop', () => {
  test('the point in front whose two marginal rays land one circle of confusion apart is at the near limit', () => {
    fc.assert(
      fc.property(anySetting, (setting) => {
        const { bench, subject_m, sensor_m } = focusedBench(setting);
        const nearest_m = Math.max(0, bench.stopBefore_m);
        const limit_m = crossing(
          nearest_m,
          subject_m,
          (at_m) => setting.circleOfConfusion_m - blur_m(at_m, sensor_m, bench),
        );
        expect((subject_m - limit_m) / depthNear_m(setting)).toBeCloseTo(1, 5);
      }),
    );
  });

  test('the point behind whose two marginal rays land one circle of confusion apart is at the far limit', () => {
    fc.assert(
      fc.property(anySetting, (setting) => {
        const { bench, subject_m, sensor_m } = focusedBench(setting);
        const beyond_m = subject_m * 1e6;
        fc.pre(blur_m(beyond_m, sensor_m, bench) > setting.circleOfConfusion_m * 1.001);
        const limit_m = crossing(
          subject_m,
          beyond_m,
          (at_m) => blur_m(at_m, sensor_m, bench) - setting.circleOfConfusion_m,
        );
        expect((limit_m - subject_m) / depthFar_m(setting)).toBeCloseTo(1, 4);
      }),
    );
  });

  test('the far side is endless exactly where a parallel beam lands within one circle of confusion', () => {
    fc.assert(
      fc.property(anySetting, fc.double({ min: 0.2, max: 5, noNaN: true }), (any, times) => {
        // Circles about the deciding one, or nearly every setting would have a far limit.
        const focal_m = any.focalLength_mm / 1000;
        const setting = { ...any, circleOfConfusion_m: (times * any.magnificationRatio * focal_m) / any.fNumber };
        const { bench, sensor_m } = focusedBench(setting);
        const beam_m = focal_m / setting.fNumber;
        const spot_m = Math.abs(beam_m + bent(0, beam_m, bench) * sensor_m);
        fc.pre(Math.abs(spot_m / setting.circleOfConfusion_m - 1) > 1e-6);
        expect(depthFar_m(setting) === Infinity).toBe(spot_m < setting.circleOfConfusion_m);
        expect(depthOfField_m(setting) === Infinity).toBe(spot_m < setting.circleOfConfusion_m);
      }),
    );
  });
});

describe('true at every setting', () => {
  const isFinite = (setting: DepthSetting) => depthOfField_m(setting) < Infinity;

  test('the depth in all is the depth in front and behind', () => {
    fc.assert(
      fc.property(anySetting, (setting) => {
        fc.pre(isFinite(setting));
        expect((depthNear_m(setting) + depthFar_m(setting)) / depthOfField_m(setting)).toBeCloseTo(1, 9);
      }),
    );
  });

  test('the f-number asked for a depth gives that depth', () => {
    const lens = { focalLength_mm, magnificationRatio, pupilMagnificationRatio, circleOfConfusion_m };
    fc.assert(
      fc.property(fc.record(lens), fc.double({ min: 1e-5, max: 10, noNaN: true }), (focused, depthWanted_m) => {
        const stop = fNumberForDepth({ ...focused, depthWanted_m });
        // Where the depth is nearly endless, it hangs on the last digit of the f-number.
        fc.pre(depthWanted_m < 1000 * depthNear_m({ ...focused, fNumber: stop }));
        expect(depthOfField_m({ ...focused, fNumber: stop }) / depthWanted_m).toBeCloseTo(1, 6);
      }),
    );
  });

  test('a wider stop than the one asked for holds less than the depth', () => {
    fc.assert(
      fc.property(anySetting, fc.double({ min: 1e-5, max: 1, noNaN: true }), (setting, depthWanted_m) => {
        const stop = fNumberForDepth({ ...setting, depthWanted_m });
        expect(depthOfField_m({ ...setting, fNumber: stop * 0.999 })).toBeLessThan(depthWanted_m);
      }),
    );
  });

  test('stopping down never loses depth, and going closer never gains any', () => {
    fc.assert(
      fc.property(anySetting, fc.double({ min: 1.001, max: 4, noNaN: true }), (setting, times) => {
        const depth_m = depthOfField_m(setting);
        expect(depthOfField_m({ ...setting, fNumber: setting.fNumber * times })).toBeGreaterThanOrEqual(depth_m);
        const closer = { ...setting, magnificationRatio: setting.magnificationRatio * times };
        expect(depthOfField_m(closer)).toBeLessThanOrEqual(depth_m);
      }),
    );
  });

  test('the macro form falls short by the square of the circle over the pupil, as drawn in the plane of focus', () => {
    fc.assert(
      fc.property(anySetting, (setting) => {
        fc.pre(isFinite(setting));
        const pupil_m = setting.focalLength_mm / 1000 / setting.fNumber;
        const short = (setting.circleOfConfusion_m / setting.magnificationRatio / pupil_m) ** 2;
        expect(macroDepthOfField_m(setting) / depthOfField_m(setting)).toBeCloseTo(1 - short, 9);
      }),
    );
  });

  test('far above life size the exact depth and the macro form are one', () => {
    const setting = { focalLength_mm: 65, magnificationRatio: 5, fNumber: 4, circleOfConfusion_m: 1.8e-5 };
    expect(depthOfField_m(setting) / macroDepthOfField_m(setting)).toBeCloseTo(1, 6);
  });

  test('with like pupils the limits are the classical ones, s·(H − f)/(H + s − 2f) and s·(H − f)/(H − s)', () => {
    const distance_m = fc.double({ min: 0.7, max: 20, noNaN: true });
    fc.assert(
      fc.property(focalLength_mm, fNumber, circleOfConfusion_m, distance_m, (focal_mm, stop, circle_m, subject_m) => {
        const given = { focalLength_mm: focal_mm, fNumber: stop, circleOfConfusion_m: circle_m };
        const focal_m = focal_mm / 1000;
        const hyper_m = focal_m ** 2 / (stop * circle_m) + focal_m;
        const setting = focusedAt(subject_m, given);
        const near_m = (subject_m * (hyper_m - focal_m)) / (hyper_m + subject_m - 2 * focal_m);
        expect((subject_m - depthNear_m(setting)) / near_m).toBeCloseTo(1, 9);
        if (subject_m < hyper_m * 0.999) {
          const far_m = (subject_m * (hyper_m - focal_m)) / (hyper_m - subject_m);
          expect((subject_m + depthFar_m(setting)) / far_m).toBeCloseTo(1, 9);
        }
        if (subject_m > hyper_m * 1.001) expect(depthFar_m(setting)).toBe(Infinity);
      }),
    );
  });

  test('at the hyperfocal distance the near limit is half as far from the entrance pupil as the subject', () => {
    fc.assert(
      fc.property(anySetting, (setting) => {
        const focal_m = setting.focalLength_mm / 1000;
        const atHyperfocal = { ...setting, ...focusedAt(hyperfocal_m(setting), setting) };
        const toPupil_m = hyperfocal_m(setting) - focal_m * (1 - 1 / setting.pupilMagnificationRatio);
        expect(depthNear_m(atHyperfocal) / toPupil_m).toBeCloseTo(1 / 2, 9);
      }),
    );
  });

  test('pupils that are not given are alike', () => {
    const { pupilMagnificationRatio: _, ...alike } = {
      focalLength_mm: 60,
      magnificationRatio: 0.7,
      pupilMagnificationRatio: 1,
      fNumber: 11,
      circleOfConfusion_m: 2e-5,
    };
    expect(depthOfField_m(alike)).toBe(depthOfField_m({ ...alike, pupilMagnificationRatio: 1 }));
  });
});

describe('refused by name', () => {
  const setting = { focalLength_mm: 60, magnificationRatio: 0.7, fNumber: 11, circleOfConfusion_m: 2e-5 };

  test.each(['focalLength_mm', 'magnificationRatio', 'pupilMagnificationRatio', 'fNumber', 'circleOfConfusion_m'])(
    'a %s of nothing, in every form of the depth',
    (name) => {
      const wrong = { ...setting, [name]: 0 };
      const told = `${name} must be positive and finite, got 0`;
      expect(() => depthNear_m(wrong)).toThrow(told);
      expect(() => depthFar_m(wrong)).toThrow(told);
      expect(() => depthOfField_m(wrong)).toThrow(told);
      if (name !== 'focalLength_mm') expect(() => macroDepthOfField_m(wrong)).toThrow(told);
    },
  );

  test('an endless depth wanted, for which the hyperfocal distance answers', () => {
    expect(() => fNumberForDepth({ ...setting, depthWanted_m: Infinity })).toThrow(
      'depthWanted_m must be positive and finite, got Infinity',
    );
  });

  test('a hyperfocal distance without a stop', () => {
    expect(() => hyperfocal_m({ focalLength_mm: 50, fNumber: NaN, circleOfConfusion_m: 2e-5 })).toThrow(
      'fNumber must be positive and finite, got NaN',
    );
  });
});
