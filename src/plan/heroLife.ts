/** How long a shot's product lasts under its light, taken apart for whoever asks what it rests on. */
import type { Shoot, Shot } from '../document/schema.ts';
import { heatOfAir_W_per_m2, PRODUCTS } from '../laws/heat/products.ts';
import type { Givens } from './givens.ts';
import { HEAT_KINDS, PRODUCT_LIGHT, warmsOf } from './heat.ts';
import { assumptionsOf } from './limits.ts';
import type { Model } from './model.ts';
import type { HeroLife } from './types.ts';

interface WorkedModel {
  readonly model: Model;
  readonly values: Float64Array;
  readonly givens: Givens;
}

/** The life of the product where it is worked out; nothing where it is written, or something it needs is missing. */
export function heroLifeOf(shoot: Shoot, shot: Shot, { model, values, givens }: WorkedModel): { readonly heroLife?: HeroLife } {
  const warms = warmsOf(shoot, shot);
  const number = (name: string): number => values[model.slotOf.get(name) ?? -1] ?? NaN;
  const value = number('heroLife_s');
  if (warms === undefined || Number.isNaN(value)) return {};
  const { absorbed, changes_degC } = PRODUCTS[warms];
  const [start_degC, air_degC, thickness_m, hold_s] = ['productStart_degC', 'air_degC', 'skin_m', 'hold_s'].map(number) as [number, number, number, number];
  const longest = 1 + (givens.get('timesShortestRatio')?.spreadAbove ?? 0);
  const lightOn_s = number('lightOn_s');
  const heat = HEAT_KINDS.flatMap((lamp) => {
    const illuminance_lx = number(PRODUCT_LIGHT[lamp].light);
    const irradiance_W_per_m2 = number(PRODUCT_LIGHT[lamp].heat);
    return illuminance_lx > 0 ? [{ lamp, illuminance_lx, irradiance_W_per_m2, absorbed_W_per_m2: absorbed[lamp] * irradiance_W_per_m2 }] : [];
  });
  return {
    heroLife: {
      warms,
      life: { value, low: value, high: Math.max(value, Math.min(value * longest, Number.isNaN(hold_s) ? Infinity : hold_s)) },
      ...(Number.isNaN(lightOn_s) ? {} : { lightOn_s }),
      heat,
      airHeat_W_per_m2: heatOfAir_W_per_m2({ start_degC, air_degC }),
      start_degC, changes_degC, air_degC, thickness_m,
      isHeld: hold_s < number('shortestLife_s'),
      assumed: assumptionsOf(model, givens, ['heroLife_s']).filter(({ name }) => name !== 'timesShortestRatio'),
    },
  };
} // prettier-ignore
