/** How long a product lasts under its light, and what that rests on, in the words of the set. */
import { showNumber, showQuantity, type UnitSystem } from '../../../base/quantity.ts';
import { WARMS } from '../../../document/schema.ts';
import type { HeroLife } from '../../../plan/types.ts';
import { said } from '../../../turnover/words.ts';

/** A time of an estimate: two figures say all it knows. */
export const timeSaid = (time_s: number): string => said(showQuantity('time', time_s, { digits: 2 }));

const OF: Readonly<Record<HeroLife['heat'][number]['lamp'], string>> = {
  tungsten: 'hot filaments',
  discharge: 'arcs and tubes',
  led: 'light-emitting diodes',
};

const watts = (heat_W_per_m2: number): string => `${showNumber(heat_W_per_m2, 2)} W/m²`;

export interface LifeLine {
  readonly label: string;
  readonly value: string;
  readonly says: string;
  /** Its number in the model, for its trace. */
  readonly name: string;
}

const NAMES: Readonly<Record<HeroLife['heat'][number]['lamp'], string>> = {
  tungsten: 'productTungsten_W_per_m2',
  discharge: 'productDischarge_W_per_m2',
  led: 'productLed_W_per_m2',
};

/** What warms the product, hottest first, and what it is warmed through. */
export function lifeLines({ heat, airHeat_W_per_m2, start_degC, changes_degC, air_degC, thickness_m }: HeroLife, system: UnitSystem): readonly LifeLine[] {
  const light = (illuminance_lx: number) => said(showQuantity('illuminance', illuminance_lx, { system, digits: 2 }));
  const length = said(showQuantity('length', thickness_m, { system, digits: 2 }));
  return [
    ...heat.map(({ lamp, illuminance_lx, irradiance_W_per_m2, absorbed_W_per_m2 }): LifeLine => ({
      label: `Light of ${OF[lamp]}`,
      value: watts(absorbed_W_per_m2),
      says: `${light(illuminance_lx)} on its warmest side bring ${watts(irradiance_W_per_m2)}; it takes up ${Math.round((100 * absorbed_W_per_m2) / irradiance_W_per_m2)} % of that`,
      name: NAMES[lamp],
    })),
    ...(airHeat_W_per_m2 > 0 ? [{ label: 'Air', value: watts(airHeat_W_per_m2), says: `at ${showNumber(air_degC, 3)} °C, whatever the light`, name: 'air_degC' }] : []),
    { label: 'Through', value: length, says: 'what must not change; a thicker piece shows it on its skin first', name: 'skin_m' },
    { label: 'From', value: `${showNumber(start_degC, 3)} °C`, says: `its change is seen from ${showNumber(changes_degC, 3)} °C`, name: 'productStart_degC' },
  ];
} // prettier-ignore

/** One sentence that a reader hears before the figures. */
export function saysLife({ warms, life, lightOn_s, isHeld }: HeroLife): string {
  const lasts = `Like ${WARMS[warms]} it lasts ${timeSaid(life.low)} at the shortest${life.high > life.low ? `, and up to ${timeSaid(life.high)} is as credible` : ''}${isHeld ? ', by how long it holds with the lights off' : ''}.`;
  if (lightOn_s === undefined) return `${lasts} How long a take lights it is not written.`;
  const takes = life.low / lightOn_s;
  return `${lasts} A take lights it for ${timeSaid(lightOn_s)}${takes >= 2 ? `, so that one piece may stand ${Math.floor(takes)} takes` : ''}.`;
} // prettier-ignore
