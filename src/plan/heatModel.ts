/** The part of a shot's model that tells of heat on the product and of light in the eyes of whoever works there. */
import { blueLightDistance, blueRadiance, infraredEyeLimit, irradianceDistance } from '../laws/heat/eyeLaws.ts';
import { lampHeatOf } from '../laws/heat/irradiance.ts';
import { productTimeOf, type ProductKind } from '../laws/heat/products.ts';
import { NEAREST_LOOK_m } from './eyes.ts';
import { HEAT_KINDS, PRODUCT_LIGHT } from './heat.ts';
import type { Builder } from './model.ts';

/** Nothing is said to last longer than a day in the light. */
const DAY_s = 86_400;

/** How long a product lasts under the light that falls on it: the shortest time that is credible. */
export function addLife(m: Builder, product: ProductKind): void {
  for (const kind of HEAT_KINDS) {
    const { light, heat, says } = PRODUCT_LIGHT[kind];
    m.law(heat, lampHeatOf(kind), { illuminance_lx: light }, `Heat ${says} on the product`);
  }
  m.law(
    'shortestLife_s',
    productTimeOf(product),
    {
      tungsten_W_per_m2: PRODUCT_LIGHT.tungsten.heat,
      discharge_W_per_m2: PRODUCT_LIGHT.discharge.heat,
      led_W_per_m2: PRODUCT_LIGHT.led.heat,
      start_degC: 'productStart_degC',
      air_degC: 'air_degC',
      thickness_m: 'skin_m',
    },
    'Shortest credible time in the light',
  );
  m.choose(
    'heroLife_s',
    {
      title: 'How long the product lasts under the light',
      says: 'from shortest credible time, worked out from the light; no longer than it holds with the lights off, nor than a day',
      optional: ['hold'],
    },
    { shortest: 'shortestLife_s', times: 'timesShortestRatio', hold: 'hold_s' },
    ({ shortest, times, hold }) => Math.min(shortest! * times!, Number.isNaN(hold!) ? Infinity : hold!, DAY_s),
  );
}

/** From how far off the brightest lamps may be looked into for as long as people do, by the limits that are published. */
export function addEyes(m: Builder): void {
  m.given('glareDistance_m');
  m.law(
    'glareBlue_W_per_m2_sr',
    blueRadiance,
    { luminance_cd_per_m2: 'glareLuminance_cd_per_m2', blueEfficacy_lm_per_W: 'glareBlue_lm_per_W' },
    'Radiance, weighted for blue light',
  );
  m.law('blueDistance_m', blueLightDistance, {
    blueRadiance_W_per_m2_sr: 'glareBlue_W_per_m2_sr',
    sourceDiameter_m: 'glareDiameter_m',
    time_s: 'lookTime_s',
  });
  m.law('infraredLimit_W_per_m2', infraredEyeLimit, { time_s: 'lookTime_s' });
  m.law('infraredDistance_m', irradianceDistance, {
    irradiance_W_per_m2: 'infraredAtSubject_W_per_m2',
    measuredAt_m: 'hotLampDistance_m',
    limit_W_per_m2: 'infraredLimit_W_per_m2',
  });
  for (const of of ['blue', 'infrared'] as const)
    m.choose(
      `${of}EyeDistance_m`,
      {
        title: `Distance to keep an eye from it, for its ${of === 'blue' ? 'blue light' : 'infrared'}`,
        says: `where the published limit is met, never nearer than ${NEAREST_LOOK_m} m, from which lamps are judged; an alert, not an assessment`,
      },
      { limit: `${of}Distance_m` },
      ({ limit }) => Math.max(limit!, NEAREST_LOOK_m),
    );
}
