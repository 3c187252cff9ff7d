import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { accepted, every, iesText, ldtText, madePhotometry, type Light } from '../../../../test/photometry/files.ts';
import { foldPlane_deg, intensityTowards_cd, peakOf } from './intensity.ts';
import { readPhotometry } from './read.ts';
import type { Photometry } from './photometry.ts';

const cos = (angle_deg: number) => Math.cos((angle_deg * Math.PI) / 180);
const sin = (angle_deg: number) => Math.sin((angle_deg * Math.PI) / 180);
const anywhere = fc.record({
  plane_deg: fc.double({ min: -720, max: 720, noNaN: true }),
  gamma_deg: fc.double({ min: 0, max: 180, noNaN: true }),
});

describe('at the points of a file', () => {
  const lights: readonly (readonly [string, Light])[] = [
    ['oval-0.ldt', ({ plane_deg: c, gamma_deg: g }) => 600 * cos(g) * (1 + 0.5 * cos(2 * c) * sin(g) ** 2)],
    ['oval-2.ldt', ({ plane_deg: c, gamma_deg: g }) => 600 * cos(g) * (1 + 0.5 * cos(2 * c) * sin(g) ** 2)],
    ['oval-3.ldt', ({ plane_deg: c, gamma_deg: g }) => 600 * cos(g) * (1 + 0.5 * cos(2 * c) * sin(g) ** 2)],
    ['oval-4.ldt', ({ plane_deg: c, gamma_deg: g }) => 600 * cos(g) * (1 + 0.5 * cos(2 * c) * sin(g) ** 2)],
    ['round-1.ldt', ({ gamma_deg: g }) => 600 * cos(g)],
    ['lean-c90-0.ldt', ({ plane_deg: c, gamma_deg: g }) => 500 * cos(g) * (1 + 0.6 * sin(c) * sin(g))],
    ['lean-c90-3.ldt', ({ plane_deg: c, gamma_deg: g }) => 500 * cos(g) * (1 + 0.6 * sin(c) * sin(g))],
    ['lean-c0-2.ldt', ({ plane_deg: c, gamma_deg: g }) => 500 * cos(g) * (1 + 0.6 * cos(c) * sin(g))],
    ['quarter-1995.ies', ({ plane_deg: c, gamma_deg: g }) => 1000 * cos(g) * (1 + (cos(c) * sin(g)) ** 2)],
  ];

  test.each(lights)('%s gives its formula all round, whatever it left to symmetry', (name, light) => {
    const photometry = madePhotometry(name as 'oval-0.ldt');
    for (const plane_deg of every(15, 0, 345))
      for (const gamma_deg of every(5, 0, 90))
        expect(intensityTowards_cd(photometry, { plane_deg, gamma_deg })).toBeCloseTo(
          light({ plane_deg, gamma_deg }),
          3,
        );
  });

  test('one light written in each range of planes is the same light everywhere', () => {
    const light: Light = ({ plane_deg, gamma_deg }) => 900 * cos(gamma_deg) * (2 + cos(2 * plane_deg) * sin(gamma_deg));
    const ranges = [every(15, 0, 360), every(15, 0, 345), every(15, 0, 180), every(15, 0, 90), every(15, 90, 270)];
    const [whole, ...others] = ranges.map((planes_deg) => accepted(readPhotometry(iesText({ planes_deg, light }))));
    expect(others.map(({ symmetry }) => symmetry)).toEqual(['none', 'about-c0', 'quadrants', 'about-c90']);
    fc.assert(
      fc.property(anywhere, (direction) => {
        for (const other of others)
          expect(intensityTowards_cd(other, direction)).toBeCloseTo(intensityTowards_cd(whole!, direction), 8);
      }),
    );
  });

  test('one light in EULUMDAT at every symmetry is the same as in IES', () => {
    const round: Light = ({ gamma_deg }) => 300 * cos(gamma_deg) ** 3;
    const planes_deg = every(30, 0, 330);
    const stored: Readonly<Record<number, readonly number[]>> = {
      0: planes_deg,
      1: [0],
      2: every(30, 0, 180),
      3: [270, 300, 330, 0, 30, 60, 90],
      4: every(30, 0, 90),
    };
    const ies = accepted(readPhotometry(iesText({ light: round })));
    for (const symmetry of [0, 1, 2, 3, 4]) {
      const ldt = accepted(
        readPhotometry(ldtText({ symmetry, planes_deg, stored_deg: stored[symmetry]!, light: round })),
      );
      expect(ldt.flux_lm / ies.flux_lm, `symmetry ${symmetry}`).toBeCloseTo(1, 12);
      for (const plane_deg of every(17, 0, 357))
        expect(intensityTowards_cd(ldt, { plane_deg, gamma_deg: 33 })).toBeCloseTo(
          intensityTowards_cd(ies, { plane_deg, gamma_deg: 33 }),
          9,
        );
    }
  });
});

describe('between the points', () => {
  const four = accepted(
    readPhotometry(
      iesText({
        planes_deg: [0, 90, 180, 270, 360],
        gammas_deg: [0, 90, 180],
        light: ({ plane_deg, gamma_deg }) => 100 + (plane_deg % 360) / 9 + gamma_deg,
      }),
    ),
  );

  test('it is linear in γ, then linear in C', () => {
    expect(intensityTowards_cd(four, { plane_deg: 45, gamma_deg: 45 })).toBeCloseTo(150, 12);
    expect(intensityTowards_cd(four, { plane_deg: 30, gamma_deg: 60 })).toBeCloseTo(100 + 30 / 9 + 60, 12);
  });

  test('it goes on evenly from the last plane to the first', () => {
    // From 130 cd at C270 to 100 cd at C360.
    expect(intensityTowards_cd(four, { plane_deg: 315, gamma_deg: 0 })).toBeCloseTo(115, 12);
  });

  test('C is periodic, and no direction gives less than nothing or more than the peak', () => {
    const files: readonly Photometry[] = (['lean-c90-3.ldt', 'quarter-1995.ies', 'flood-b-2002.ies'] as const).map(
      madePhotometry,
    );
    fc.assert(
      fc.property(anywhere, fc.integer({ min: -5, max: 5 }), ({ plane_deg, gamma_deg }, turns) => {
        for (const file of files) {
          const here_cd = intensityTowards_cd(file, { plane_deg, gamma_deg });
          expect(here_cd).toBeGreaterThanOrEqual(0);
          expect(here_cd).toBeLessThanOrEqual(peakOf(file).intensity_cd * (1 + 1e-12));
          expect(intensityTowards_cd(file, { plane_deg: plane_deg + 360 * turns, gamma_deg })).toBeCloseTo(here_cd, 6);
        }
      }),
    );
  });

  test('outside the angles measured there is none', () => {
    const lamp = accepted(readPhotometry(iesText({ gammas_deg: every(5, 0, 90) })));
    expect(intensityTowards_cd(lamp, { plane_deg: 0, gamma_deg: 90 })).toBe(1000);
    expect(intensityTowards_cd(lamp, { plane_deg: 0, gamma_deg: 90.001 })).toBe(0);
    const uplight = accepted(readPhotometry(iesText({ gammas_deg: every(5, 90, 180) })));
    expect(intensityTowards_cd(uplight, { plane_deg: 0, gamma_deg: 89.999 })).toBe(0);
    expect(intensityTowards_cd(uplight, { plane_deg: 0, gamma_deg: 180 })).toBe(1000);
  });
});

test('a plane left out is its mirror image', () => {
  expect([0, 80, 100, 190, 280, -10].map((c) => foldPlane_deg('quadrants', c))).toEqual([0, 80, 80, 10, 80, 10]);
  expect([0, 80, 100, 190, 280, -10].map((c) => foldPlane_deg('about-c0', c))).toEqual([0, 80, 100, 170, 80, 10]);
  expect([0, 80, 100, 190, 280, -10].map((c) => foldPlane_deg('about-c90', c))).toEqual([180, 100, 100, 190, 260, 190]);
  expect([0, 400, -90].map((c) => foldPlane_deg('none', c))).toEqual([0, 40, 270]);
  expect(foldPlane_deg('rotational', 123)).toBe(0);
});

test('the peak is told with its direction, of equals the one nearest the axis', () => {
  const tilted = accepted(
    readPhotometry(
      iesText({
        planes_deg: [0, 90, 180, 270, 360],
        light: ({ plane_deg, gamma_deg }) => (plane_deg === 90 && gamma_deg === 20 ? 7000 : 10),
      }),
    ),
  );
  expect(peakOf(tilted)).toEqual({ intensity_cd: 7000, plane_deg: 90, gamma_deg: 20 });
  expect(peakOf(accepted(readPhotometry(iesText())))).toEqual({ intensity_cd: 1000, plane_deg: 0, gamma_deg: 0 });
});

test('a direction that is none is refused by name', () => {
  const lamp = madePhotometry('lambert-1000cd.ies');
  expect(() => intensityTowards_cd(lamp, { plane_deg: NaN, gamma_deg: 0 })).toThrow('plane_deg must be finite');
  expect(() => intensityTowards_cd(lamp, { plane_deg: 0, gamma_deg: 181 })).toThrow(
    'gamma_deg must be from 0 to 180, got 181',
  );
});
