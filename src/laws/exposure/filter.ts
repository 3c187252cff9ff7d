/**
 * Filters: what a density, a transmittance, a factor and a number of stops are to one another.
 *
 *     τ = 10^−D        stops = D / log10 2 = log2 F        F = 2^stops = 1/τ
 *
 * D optical density        τ transmittance        F filter factor, by which the light is multiplied to make up
 *
 * A density of 0.3 is 0.9966 stop, sold as one. Densities and stops of stacked filters add; factors multiply.
 *
 * @source nd-table densities and stops as makers mark them
 * @source nd-names densities, stops and factors
 */
import { requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

/** Light that a density takes, in stops. Throws RangeError for a negative density. */
export function densityStops({ density }: { readonly density: number }): number {
  requireNotNegative({ density });
  return density / Math.log10(2);
}

/** The fraction of light that a density lets through. Throws RangeError for a negative density. */
export function transmittanceOfDensity({ density }: { readonly density: number }): number {
  requireNotNegative({ density });
  return 10 ** -density;
}

/** By how much the light must be multiplied to make up for a filter. Throws RangeError for a negative loss. */
export function filterFactor({ filterLoss_stops }: { readonly filterLoss_stops: number }): number {
  requireNotNegative({ filterLoss_stops });
  return 2 ** filterLoss_stops;
}

/** The stops that a filter factor stands for. Throws RangeError for a factor below 1. */
export function stopsOfFactor({ filterFactor: factor }: { readonly filterFactor: number }): number {
  requirePositive({ filterFactor: factor });
  if (factor < 1) throw new RangeError(`filterFactor must be 1 or above, got ${factor}`);
  return Math.log2(factor);
}

const SOURCES = ['nd-table', 'nd-names'];
const WORDS = ['ND', 'neutral density', 'filter'];
const DENSITY = { title: 'Density', as: 'ratio', note: '0.3 takes about a stop, 0.6 two, 0.9 three' } as const;
const FACTOR = { title: 'Filter factor', as: 'ratio' } as const;
const ADD =
  'Densities and stops of stacked filters add, factors multiply. A mark is nominal: measure a filter that matters.';

export const stopsOfDensity = law(densityStops, {
  id: 'density-stops',
  title: 'Stops of a density',
  says: 'How many stops a neutral density takes.',
  equation: 'stops = D / log10 2',
  takes: { density: DENSITY },
  gives: { filterLoss_stops: 'Light it costs' },
  holds: ADD,
  sources: SOURCES,
  words: WORDS,
  example: { density: 0.9 },
});

export const densityTransmittance = law(transmittanceOfDensity, {
  id: 'density-transmittance',
  title: 'Transmittance of a density',
  says: 'The share of light that a neutral density lets through.',
  equation: 'τ = 10^−D',
  takes: { density: DENSITY },
  gives: { transmittanceFraction: { title: 'Transmittance', as: 'fraction' } },
  holds: ADD,
  sources: SOURCES,
  words: WORDS,
  example: { density: 0.9 },
});

export const factorOfFilter = law(filterFactor, {
  id: 'filter-factor',
  title: 'Filter factor',
  says: 'By how much the light must be multiplied to make up for a filter.',
  equation: 'F = 2^stops',
  takes: { filterLoss_stops: 'Light it costs' },
  gives: { filterFactor: FACTOR },
  holds: ADD,
  sources: SOURCES,
  words: WORDS,
  example: { filterLoss_stops: 1.5 },
});

export const stopsOfFilterFactor = law(stopsOfFactor, {
  id: 'factor-stops',
  title: 'Stops of a filter factor',
  says: 'How many stops a filter costs that is marked by its factor.',
  equation: 'stops = log2 F',
  takes: { filterFactor: FACTOR },
  gives: { filterLoss_stops: 'Light it costs' },
  holds: ADD,
  sources: SOURCES,
  words: WORDS,
  example: { filterFactor: 8 },
});
