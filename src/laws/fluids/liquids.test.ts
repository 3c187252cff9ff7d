import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { LIQUIDS, type LiquidId } from './liquids.ts';

describe('published values', () => {
  const milliNewtons = (id: LiquidId) => LIQUIDS[id].surfaceTension_N_per_m * 1000;
  published('surface tension', milliNewtons, [
    { source: 'surface-tension-table', at: 'water at 20 °C', given: 'water', expected: '72.8' },
    { source: 'surface-tension-table', at: 'ethanol', given: 'ethanol', expected: '22.1' },
    { source: 'drinks-surface-tension', at: 'whole milk at 20 °C', given: 'milk', expected: '45' },
    { source: 'drinks-surface-tension', at: 'olive oil at 20 °C', given: 'olive-oil', expected: '33' },
  ]);
});

test('honey is the thickest and the heaviest, ethanol the lightest and the weakest skinned', () => {
  const all = Object.values(LIQUIDS);
  expect(Math.max(...all.map((liquid) => liquid.viscosity_Pa_s))).toBe(LIQUIDS.honey.viscosity_Pa_s);
  expect(Math.max(...all.map((liquid) => liquid.density_kg_per_m3))).toBe(LIQUIDS.honey.density_kg_per_m3);
  expect(Math.min(...all.map((liquid) => liquid.density_kg_per_m3))).toBe(LIQUIDS.ethanol.density_kg_per_m3);
  expect(Math.min(...all.map((liquid) => liquid.surfaceTension_N_per_m))).toBe(LIQUIDS.ethanol.surfaceTension_N_per_m);
});
