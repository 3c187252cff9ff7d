import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../../test/published.ts';
import { every, madePhotometry, MADE_FILES } from '../../../../test/photometry/files.ts';
import { fluxOf_lm } from './flux.ts';
import type { Grid } from './photometry.ts';

const RADIAN_deg = 180 / Math.PI;

/** A rotational grid of some intensities along γ. */
function round(gammas_deg: readonly number[], intensity_cd: (gamma_deg: number) => number): Grid {
  return {
    symmetry: 'rotational',
    planes_deg: Float64Array.of(0),
    gammas_deg: Float64Array.from(gammas_deg),
    intensities_cd: Float64Array.from(gammas_deg, intensity_cd),
  };
}

describe('published values', () => {
  const even = ({ apex_deg, intensity_cd }: { readonly apex_deg: number; readonly intensity_cd: number }) =>
    fluxOf_lm(round([0, apex_deg / 4, apex_deg / 2], () => intensity_cd));
  published('flux of an even cone', even, [
    {
      source: 'candela-lumen-pages',
      at: '100 cd in a cone of 120°',
      given: { apex_deg: 120, intensity_cd: 100 },
      expected: '314.2',
    },
    {
      source: 'candela-lumen-pages',
      at: '400 cd in a cone of 60°',
      given: { apex_deg: 60, intensity_cd: 400 },
      expected: '336.7',
    },
  ]);
});

describe('closed forms', () => {
  test('an even source of intensity I gives 4πI', () => {
    expect(fluxOf_lm(round(every(15, 0, 180), () => 100)) / (400 * Math.PI)).toBeCloseTo(1, 14);
  });

  test('intensity growing evenly with γ from 0 to I at 180° gives 2πI, on whatever angles it is listed', () => {
    // ∫ γ sin γ dγ from 0 to π is π.
    for (const gammas_deg of [[0, 180], every(5, 0, 180), [0, 1e-9, 0.3, 17, 17.001, 89, 179.5, 180]])
      expect(fluxOf_lm(round(gammas_deg, (gamma_deg) => gamma_deg / 180)) / (2 * Math.PI)).toBeCloseTo(1, 12);
  });

  test('intensity falling evenly to 0 at a small angle is met to the last digits', () => {
    // 2π ∫ (1 − γ/a) sin γ dγ from 0 to a = 2π (1 − sin a / a).
    for (const edge_deg of [0.5, 4, 30, 90]) {
      const edge = edge_deg / RADIAN_deg;
      const exact = 2 * Math.PI * (1 - Math.sin(edge) / edge);
      expect(fluxOf_lm(round([0, edge_deg], (gamma_deg) => 1 - gamma_deg / edge_deg)) / exact).toBeCloseTo(1, 9);
    }
  });

  test.each([1, 2, 10, 45.28, 200])(
    'lobes cosⁿ with n = %s give 2πI/(n + 1), ever closer as angles are listed finer',
    (n) => {
      const error = (step: number) =>
        Math.abs(
          fluxOf_lm(round(every(step, 0, 90), (gamma_deg) => Math.max(0, Math.cos(gamma_deg / RADIAN_deg)) ** n)) /
            ((2 * Math.PI) / (n + 1)) -
            1,
        );
      expect(error(0.25)).toBeLessThan(1e-5 * n + 1e-5);
      expect(error(0.25)).toBeLessThan(error(0.5) / 3.5);
      expect(error(0.5)).toBeLessThan(error(1) / 3.5);
    },
  );
});

describe('the made files, from their formulas', () => {
  const EXACT_lm: Readonly<Record<(typeof MADE_FILES)[number], number>> = {
    'lambert-1000cd.ies': 1000 * Math.PI,
    'cos10-10000cd-crlf.ies': (20_000 * Math.PI) / 11,
    'plain-1986.ies': 1000 * Math.PI,
    'table-1991.ies': 1000 * Math.PI,
    'quarter-1995.ies': 1250 * Math.PI,
    'flood-b-2002.ies': 1000 * Math.PI,
    'generated-2019.ies': 400 * Math.PI,
    'oval-0.ldt': 600 * Math.PI,
    'oval-2.ldt': 600 * Math.PI,
    'oval-3.ldt': 600 * Math.PI,
    'oval-4.ldt': 600 * Math.PI,
    'round-1.ldt': 600 * Math.PI,
    'lean-c90-0.ldt': 500 * Math.PI,
    'lean-c90-3.ldt': 500 * Math.PI,
    'lean-c0-2.ldt': 500 * Math.PI,
  };

  test.each(MADE_FILES)(
    '%s gives the flux of its formula, as near as straight lines between its points are',
    (name) => {
      // 0.16 % is what 2.5° steps make of cos¹⁰; the others are well within.
      expect(Math.abs(madePhotometry(name).flux_lm / EXACT_lm[name] - 1)).toBeLessThan(0.0016);
    },
  );

  test('a matte disc listed every 2.5° comes out within 0.02 %', () => {
    expect(Math.abs(madePhotometry('lambert-1000cd.ies').flux_lm / (1000 * Math.PI) - 1)).toBeLessThan(0.0002);
  });
});

describe('true of every grid', () => {
  const inner = fc.uniqueArray(fc.double({ min: 0.01, max: 179.99, noNaN: true }), { minLength: 1, maxLength: 12 });
  const shape = fc.array(fc.double({ min: 0, max: 1e5, noNaN: true }), { minLength: 14, maxLength: 14 });

  test('a point put in on a straight line between two others changes nothing', () => {
    fc.assert(
      fc.property(inner, shape, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (angles, values, share) => {
        const gammas_deg = [0, ...angles.toSorted((a, b) => a - b), 180];
        const value = (i: number) => values[i]! + 1;
        const plain = round(gammas_deg, (gamma_deg) => value(gammas_deg.indexOf(gamma_deg)));
        const [from_deg, to_deg] = [gammas_deg[0]!, gammas_deg[1]!];
        const put_deg = from_deg + share * (to_deg - from_deg);
        const more = round([from_deg, put_deg, ...gammas_deg.slice(1)], (gamma_deg) =>
          gamma_deg === put_deg ? value(0) + share * (value(1) - value(0)) : value(gammas_deg.indexOf(gamma_deg)),
        );
        expect(fluxOf_lm(more) / fluxOf_lm(plain)).toBeCloseTo(1, 10);
      }),
    );
  });

  test('twice the intensity is twice the flux, and no flux is below 0', () => {
    fc.assert(
      fc.property(inner, shape, (angles, values) => {
        const gammas_deg = [0, ...angles.toSorted((a, b) => a - b), 180];
        const once = fluxOf_lm(round(gammas_deg, (gamma_deg) => values[gammas_deg.indexOf(gamma_deg)]!));
        const twice = fluxOf_lm(round(gammas_deg, (gamma_deg) => 2 * values[gammas_deg.indexOf(gamma_deg)]!));
        expect(once).toBeGreaterThanOrEqual(0);
        expect(Math.abs(twice - 2 * once)).toBeLessThanOrEqual(1e-9 * once);
      }),
    );
  });
});
