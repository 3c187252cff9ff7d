/**
 * Liquids that are poured, dropped and splashed: density, viscosity and surface tension near 20 °C.
 *
 * Food varies from maker to maker and with every degree: honey is half as thick six degrees warmer. Where a figure
 * matters, weigh a measured volume and time a flow.
 *
 * @source surface-tension-table surface tension of water and ethanol
 * @source drinks-surface-tension surface tension of milk and olive oil
 * @source liquid-practice densities and viscosities, and everything of honey
 */
export interface Liquid {
  readonly title: string;
  readonly density_kg_per_m3: number;
  readonly viscosity_Pa_s: number;
  readonly surfaceTension_N_per_m: number;
}

export const LIQUIDS = {
  water: { title: 'Water', density_kg_per_m3: 998.2, viscosity_Pa_s: 1.002e-3, surfaceTension_N_per_m: 0.0728 },
  milk: { title: 'Whole milk', density_kg_per_m3: 1030, viscosity_Pa_s: 2e-3, surfaceTension_N_per_m: 0.045 },
  ethanol: { title: 'Ethanol', density_kg_per_m3: 789, viscosity_Pa_s: 1.2e-3, surfaceTension_N_per_m: 0.0221 },
  'olive-oil': { title: 'Olive oil', density_kg_per_m3: 910, viscosity_Pa_s: 0.084, surfaceTension_N_per_m: 0.033 },
  honey: { title: 'Honey', density_kg_per_m3: 1400, viscosity_Pa_s: 10, surfaceTension_N_per_m: 0.06 },
} as const satisfies Readonly<Record<string, Liquid>>;

export type LiquidId = keyof typeof LIQUIDS;

const { water } = LIQUIDS;

/** Inputs of laws that a liquid sets, water where nothing is said. */
export const DENSITY_TAKEN = {
  density_kg_per_m3: { title: 'Density of the liquid', default: water.density_kg_per_m3, note: 'water at 20 °C' },
} as const;
export const VISCOSITY_TAKEN = {
  viscosity_Pa_s: { title: 'Viscosity of the liquid', default: water.viscosity_Pa_s, note: 'water at 20 °C' },
} as const;
export const SURFACE_TENSION_TAKEN = {
  surfaceTension_N_per_m: {
    title: 'Surface tension of the liquid',
    default: water.surfaceTension_N_per_m,
    note: 'water at 20 °C; soap solution about 0.03 N/m',
  },
} as const;
