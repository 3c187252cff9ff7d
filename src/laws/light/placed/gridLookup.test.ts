import fc from 'fast-check';
import { expect, test } from 'vitest';
import { accepted, MADE_FILES, madeBytes } from '../../../../test/photometry/files.ts';
import { intensityTowards_cd } from '../photometry/intensity.ts';
import type { Grid, Symmetry } from '../photometry/photometry.ts';
import { readPhotometry } from '../photometry/read.ts';
import { lookedUp_cd, lookupOf } from './gridLookup.ts';

const RADIANS_per_deg = Math.PI / 180;

function expectSame(grid: Grid, plane_deg: number, gamma_deg: number) {
  const turn = plane_deg * RADIANS_per_deg;
  const [right, up] = [Math.cos(turn), Math.sin(turn)];
  // The plane as it comes back from those parts, so that both are asked the same.
  const asked_deg = Math.atan2(up, right) / RADIANS_per_deg;
  const plain = intensityTowards_cd(grid, { plane_deg: asked_deg, gamma_deg });
  expect(Math.abs(lookedUp_cd(lookupOf(grid), right, up, gamma_deg) - plain)).toBeLessThanOrEqual(1e-9 * Math.max(1, plain));
} // prettier-ignore

test.each(MADE_FILES)('%s has the same intensity every way as the plain interpolation', (name) => {
  const grid = accepted(readPhotometry(madeBytes(name)));
  const angle = fc.double({ min: 0, max: 180, noNaN: true });
  fc.assert(fc.property(fc.double({ min: -360, max: 360, noNaN: true }), angle, (plane_deg, gamma_deg) => expectSame(grid, plane_deg, gamma_deg))); // prettier-ignore
  for (const gamma_deg of grid.gammas_deg) for (const plane_deg of [0, 30, 90, 180, 270]) expectSame(grid, plane_deg, gamma_deg); // prettier-ignore
});

const ENDS: Readonly<Record<Symmetry, readonly [number, number]>> = {
  rotational: [0, 0],
  quadrants: [0, 90],
  'about-c0': [0, 180],
  'about-c90': [90, 270],
  none: [0, 360],
};

/** Ascending angles between two ends, at odd places. */
const angles = (from: number, to: number) =>
  fc.uniqueArray(fc.integer({ min: 1, max: 99 }), { maxLength: 6 }).map((parts) => Float64Array.from([from, ...[...parts].sort((a, b) => a - b).map((part) => from + ((to - from) * part) / 100), to])); // prettier-ignore

const grids: fc.Arbitrary<Grid> = fc.constantFrom(...(Object.keys(ENDS) as Symmetry[])).chain((symmetry) => {
  const [from, to] = ENDS[symmetry];
  const planes = symmetry === 'rotational' ? fc.constant(Float64Array.of(0)) : angles(from, to);
  return fc.tuple(planes, angles(0, 180)).chain(([planes_deg, gammas_deg]) => {
    const count = planes_deg.length * gammas_deg.length;
    return fc
      .array(fc.integer({ min: 0, max: 100_000 }), { minLength: count, maxLength: count })
      .map((values): Grid => ({ symmetry, planes_deg, gammas_deg, intensities_cd: Float64Array.from(values) }));
  });
});

test('uneven angles of every symmetry are met as by the plain interpolation', () => {
  fc.assert(fc.property(grids, fc.double({ min: -180, max: 180, noNaN: true }), fc.double({ min: 0, max: 180, noNaN: true }), expectSame)); // prettier-ignore
});
