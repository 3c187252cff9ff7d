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

/** What a skin starts from and stands in. */
interface Skin {
  readonly start_degC: number;
  readonly air_degC?: number;
  readonly thickness_m?: number;
}

/** Air and skin where nobody says; assumed. */
export const USUAL_AIR_degC = 22;
export const USUAL_SKIN_m = 0.002;

/** Heat that still air brings to something colder, at its most, W/m². */
export function heatOfAir_W_per_m2({ start_degC, air_degC = USUAL_AIR_degC }: Skin): number {
  return WARM_AIR_W_per_m2_K * Math.max(0, air_degC - start_degC);
}

/**
 * Shortest credible time until a product shows the heat it takes up from all light together; 0 where it starts too warm,
 * Infinity where nothing warms it. Throws RangeError outside its domain.
 */
export function productTimeAt_s(
  given: Skin & { readonly product: ProductKind; readonly absorbed_W_per_m2: number },
): number {
  const { product, absorbed_W_per_m2, start_degC, air_degC = USUAL_AIR_degC, thickness_m = USUAL_SKIN_m } = given;
  requireNotNegative({ absorbed_W_per_m2 });
  requireFinite({ start_degC, air_degC });
  requirePositive({ thickness_m });
  if (!Object.hasOwn(PRODUCTS, product))
    throw new RangeError(`product must be one of ${Object.keys(PRODUCTS).join(', ')}, got ${product}`);
  const of: Product = PRODUCTS[product];
  if (start_degC >= of.changes_degC) return 0;
  const heat = of.specificHeat_J_per_kg_K * (of.changes_degC - start_degC) + SEEN_FRACTION * of.meltingHeat_J_per_kg;
  const flow = absorbed_W_per_m2 + heatOfAir_W_per_m2({ start_degC, air_degC });
  return flow > 0 ? (thickness_m * of.density_kg_per_m3 * heat) / flow : Infinity;
}

export interface ProductGiven extends Skin {
  readonly product: ProductKind;
  readonly lamp: Lamp;
  readonly illuminance_lx: number;
}

/** Shortest credible time until a product shows the light; 0 where it starts too warm, Infinity in the dark and cold. Throws RangeError outside its domain. */
export function productTime_s({ product, lamp, illuminance_lx, ...skin }: ProductGiven): number {
  requireNotNegative({ illuminance_lx });
  const irradiance = irradianceOfLamp_W_per_m2({ illuminance_lx, lamp });
  const absorbed_W_per_m2 = Object.hasOwn(PRODUCTS, product) ? PRODUCTS[product].absorbed[lamp] * irradiance : 0;
  return productTimeAt_s({ product, absorbed_W_per_m2, ...skin });
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
    air_degC: { title: 'Air', default: USUAL_AIR_degC, note: 'assumed' },
    thickness_m: { title: 'Skin that shows', default: USUAL_SKIN_m, note: 'assumed' },
  },
  gives: { time_s: 'Time in the light' },
  holds:
    'On the cautious side throughout: all that may be absorbed is, and nothing cools. Figures of foods are rounded from tables that differ. Count focus, count-in and every rehearsal, and try a spare one first.',
  sources: ['heat-practice', 'planck-efficacy'],
  cautions: ['heat'],
  words: ['melt', 'food', 'hero', 'ice cream', 'chocolate', 'butter', 'ice', 'product life', 'hot lights'],
  example: { product: 'ice-cream', lamp: 'led', illuminance_lx: 60_000, start_degC: -18 },
});

export interface MixedLight extends Required<Skin> {
  readonly tungsten_W_per_m2: number;
  readonly discharge_W_per_m2: number;
  readonly led_W_per_m2: number;
}

/** The same law for one product under all kinds of lamps at once, as a plan works it. */
export function productTimeOf(product: ProductKind) {
  const { absorbed } = PRODUCTS[product];
  const compute = ({ tungsten_W_per_m2, discharge_W_per_m2, led_W_per_m2, ...skin }: MixedLight): number => {
    requireNotNegative({ tungsten_W_per_m2, discharge_W_per_m2, led_W_per_m2 });
    const absorbed_W_per_m2 =
      absorbed.tungsten * tungsten_W_per_m2 + absorbed.discharge * discharge_W_per_m2 + absorbed.led * led_W_per_m2;
    return productTimeAt_s({ product, absorbed_W_per_m2, ...skin });
  };
  const { start_degC, air_degC, thickness_m } = productTime.takes;
  const heatOf = (lamp: Lamp) => ({ title: `Heat of ${LAMPS[lamp]}` });
  return {
    ...productTime,
    title: `${productTime.title}: ${PRODUCTS[product].title}`,
    equation: 't = ρ · δ · (c · (T_m − T₀) + x · L) / (Σ a · Eₑ + h · (T_air − T₀))',
    takes: {
      tungsten_W_per_m2: heatOf('tungsten'),
      discharge_W_per_m2: heatOf('discharge'),
      led_W_per_m2: heatOf('led'),
      start_degC,
      air_degC,
      thickness_m,
    },
    example: {
      tungsten_W_per_m2: 370,
      discharge_W_per_m2: 0,
      led_W_per_m2: 200,
      start_degC: -18,
      air_degC: 22,
      thickness_m: 0.002,
    },
    compute,
  };
}
