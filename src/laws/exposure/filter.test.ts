import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { densityStops, filterFactor, stopsOfFactor, transmittanceOfDensity } from './filter.ts';

describe('published values', () => {
  published('filter factor', filterFactor, [
    { source: 'nd-names', at: '1 stop', given: { filterLoss_stops: 1 }, expected: '2' },
    { source: 'nd-names', at: '3 stops', given: { filterLoss_stops: 3 }, expected: '8' },
    { source: 'nd-names', at: '10 stops', given: { filterLoss_stops: 10 }, expected: '1024' },
    { source: 'nd-names', at: '13 stops', given: { filterLoss_stops: 13 }, expected: '8192' },
  ]);
  published('transmittance', transmittanceOfDensity, [
    { source: 'nd-names', at: 'density 0.3, printed as 50 %', given: { density: 0.3 }, expected: '50e-2' },
    { source: 'nd-names', at: 'density 0.6, printed as 25 %', given: { density: 0.6 }, expected: '25e-2' },
  ]);

  published('one over the transmittance', (given: { readonly density: number }) => 1 / transmittanceOfDensity(given), [
    { source: 'nd-names', at: 'density 4.0', given: { density: 4 }, expected: '10000' },
    { source: 'nd-names', at: 'density 5.0', given: { density: 5 }, expected: '100000' },
  ]);

  test.each([
    [0.1, 1],
    [0.2, 2],
    [0.3, 3],
    [0.4, 4],
    [0.7, 7],
    [1, 10],
    [1.8, 18],
    [2, 20],
    [3, 30],
  ])('a density of %s takes %s thirds of a stop to the nearest third, as nd-table prints', (density, thirds) => {
    expect(Math.round(3 * densityStops({ density }))).toBe(thirds);
  });
});

describe('true of every filter', () => {
  const density = fc.double({ min: 0, max: 6, noNaN: true });

  test('stops, factor and transmittance of a density agree', () => {
    fc.assert(
      fc.property(density, (one) => {
        const filterLoss_stops = densityStops({ density: one });
        expect(filterFactor({ filterLoss_stops }) * transmittanceOfDensity({ density: one })).toBeCloseTo(1, 9);
        expect(stopsOfFactor({ filterFactor: filterFactor({ filterLoss_stops }) })).toBeCloseTo(filterLoss_stops, 9);
      }),
    );
  });

  test('stacked filters add their stops and multiply what they let through', () => {
    fc.assert(
      fc.property(density, density, (one, other) => {
        const both = one + other;
        expect(densityStops({ density: both })).toBeCloseTo(
          densityStops({ density: one }) + densityStops({ density: other }),
          9,
        );
        const through = transmittanceOfDensity({ density: one }) * transmittanceOfDensity({ density: other });
        expect(transmittanceOfDensity({ density: both }) / through).toBeCloseTo(1, 9);
      }),
    );
  });
});

test('a filter that gives light is refused by name', () => {
  expect(() => densityStops({ density: -0.3 })).toThrow('density must be zero or above and finite, got -0.3');
  expect(() => transmittanceOfDensity({ density: NaN })).toThrow('density must be zero or above');
  expect(() => filterFactor({ filterLoss_stops: -1 })).toThrow('filterLoss_stops must be zero or above');
  expect(() => stopsOfFactor({ filterFactor: 0.5 })).toThrow('filterFactor must be 1 or above, got 0.5');
  expect(() => stopsOfFactor({ filterFactor: Infinity })).toThrow('filterFactor must be positive and finite');
});
