/**
 * How long food stands a light before it shows: the shortest time that is credible, for planning how long lights are on.
 *
 *     t = ρ·δ·(c·(T_m − T₀) + x·L) / (a·Eₑ + h·(T_air − T₀))
 *
 * Symbols as for a thin layer. The most that may be absorbed, the air's help at its greatest and no cooling: real pieces
 * last longer, and thin, dark or wet ones not by much. Figures are rounded from tables that differ from one another.
 *
 * @source food-properties densities, heats and melting points
 * @source heat-practice shares absorbed, and what shows first
 */
import { requireFinite, requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { irradianceOfLamp_W_per_m2, LAMPS, type Lamp } from './irradiance.ts';

export interface Product {
  readonly title: string;
  readonly density_kg_per_m3: number;
  readonly specificHeat_J_per_kg_K: number;
  /** 0 where it has changed as soon as it is as warm as that. */
  readonly meltingHeat_J_per_kg: number;
  readonly changes_degC: number;
  readonly absorbed: Readonly<Record<Lamp, number>>;
}

const evenly = (share: number): Product['absorbed'] => ({ tungsten: share, discharge: share, led: share });

/** @source food-properties @source heat-practice */
export const PRODUCTS = {
  'ice-cream': {
    title: 'ice cream: shine at −3 °C',
    density_kg_per_m3: 550,
    specificHeat_J_per_kg_K: 1880,
    meltingHeat_J_per_kg: 222_000,
    changes_degC: -3,
    absorbed: evenly(0.8),
  },
  ice: {
    title: 'clear ice: wet at 0 °C',
    density_kg_per_m3: 917,
    specificHeat_J_per_kg_K: 1958,
    meltingHeat_J_per_kg: 335_000,
    changes_degC: 0,
    absorbed: { tungsten: 0.7, discharge: 0.7, led: 0.1 },
  },
  'dark-chocolate': {
    title: 'dark chocolate: gloss goes from 28 °C',
    density_kg_per_m3: 1300,
    specificHeat_J_per_kg_K: 1700,
    meltingHeat_J_per_kg: 0,
    changes_degC: 28,
    absorbed: evenly(0.9),
  },
  'milk-chocolate': {
    title: 'milk chocolate: gloss goes from 28 °C',
    density_kg_per_m3: 1300,
    specificHeat_J_per_kg_K: 1700,
    meltingHeat_J_per_kg: 0,
    changes_degC: 28,
    absorbed: evenly(0.85),
  },
  butter: {
    title: 'butter: soft edges from 15 °C',
    density_kg_per_m3: 910,
    specificHeat_J_per_kg_K: 2300,
    meltingHeat_J_per_kg: 0,
    changes_degC: 15,
    absorbed: evenly(0.8),
  },
} as const satisfies Record<string, Product>;
export type ProductKind = keyof typeof PRODUCTS;

/** Melt that is seen first, as a share. @source heat-practice */
const SEEN_FRACTION = 0.1;
/** Air that warms something cold, moist air at its most. @source heat-practice */
const WARM_AIR_W_per_m2_K = 10;

export interface ProductGiven {
  readonly product: ProductKind;
  readonly lamp: Lamp;
  readonly illuminance_lx: number;
  readonly start_degC: number;
  readonly air_degC?: number;
  readonly thickness_m?: number;
}

/** Shortest credible time until a product shows the light; 0 where it starts too warm, Infinity in the dark and cold. Throws RangeError outside its domain. */
export function productTime_s(given: ProductGiven): number {
  const { product, lamp, illuminance_lx, start_degC, air_degC = 22, thickness_m = 0.002 } = given;
  requireNotNegative({ illuminance_lx });
  requireFinite({ start_degC, air_degC });
  requirePositive({ thickness_m });
  if (!Object.hasOwn(PRODUCTS, product))
    throw new RangeError(`product must be one of ${Object.keys(PRODUCTS).join(', ')}, got ${product}`);
  const of: Product = PRODUCTS[product];
  if (start_degC >= of.changes_degC) return 0;
  const heat = of.specificHeat_J_per_kg_K * (of.changes_degC - start_degC) + SEEN_FRACTION * of.meltingHeat_J_per_kg;
  const flow =
    of.absorbed[lamp] * irradianceOfLamp_W_per_m2({ illuminance_lx, lamp }) +
    WARM_AIR_W_per_m2_K * Math.max(0, air_degC - start_degC);
  return flow > 0 ? (thickness_m * of.density_kg_per_m3 * heat) / flow : Infinity;
}

const CHOICES = Object.fromEntries(Object.entries(PRODUCTS).map(([key, { title }]) => [key, title])) as Record<
  ProductKind,
  string
>;

export const productTime = law(productTime_s, {
  id: 'product-under-light',
  title: 'How long food stands the light',
  says: 'The shortest time in the light after which food may show it.',
  equation: 't = ρ · δ · (c · (T_m − T₀) + x · L) / (a · Eₑ + h · (T_air − T₀))',
  takes: {
    product: { title: 'Product', choices: CHOICES },
    lamp: { title: 'Lamp', choices: LAMPS },
    illuminance_lx: 'Illuminance',
    start_degC: 'Temperature at the start',
    air_degC: { title: 'Air', default: 22, note: 'assumed' },
    thickness_m: { title: 'Skin that shows', default: 0.002, note: 'assumed' },
  },
  gives: { time_s: 'Time in the light' },
  holds:
    'On the cautious side throughout: all that may be absorbed is, and nothing cools. Figures of foods are rounded from tables that differ. Count focus, count-in and every rehearsal, and try a spare one first.',
  sources: ['heat-practice', 'planck-efficacy'],
  cautions: ['heat'],
  words: ['melt', 'food', 'hero', 'ice cream', 'chocolate', 'butter', 'ice', 'product life', 'hot lights'],
  example: { product: 'ice-cream', lamp: 'led', illuminance_lx: 60_000, start_degC: -18 },
});
