import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { layerTemperature_degC } from './layer.ts';
import { irradianceOfLamp_W_per_m2 } from './irradiance.ts';
import {
  heatOfAir_W_per_m2,
  PRODUCTS,
  productTime_s,
  productTimeAt_s,
  productTimeOf,
  type ProductKind,
} from './products.ts';

describe('published values', () => {
  published('heat of melting by its water, kJ/kg', () => 335 * 0.66, [
    { source: 'food-properties', at: 'ice cream of 66 % water is listed with 222', given: {}, expected: '2.2e2' },
  ]);
  published('heat of melting of ice cream, kJ/kg', () => PRODUCTS['ice-cream'].meltingHeat_J_per_kg / 1000, [
    { source: 'food-properties', at: 'ice cream', given: {}, expected: '222' },
  ]);
  published('specific heat of ice, kJ/(kg·K)', () => PRODUCTS.ice.specificHeat_J_per_kg_K / 1000, [
    { source: 'food-properties', at: 'ice', given: {}, expected: '1.958' },
  ]);
});

const kinds = Object.keys(PRODUCTS) as ProductKind[];
const given = fc.record({
  product: fc.constantFrom(...kinds),
  lamp: fc.constantFrom('tungsten' as const, 'discharge' as const, 'led' as const),
  illuminance_lx: fc.double({ min: 100, max: 300_000, noNaN: true }),
  start_degC: fc.double({ min: -25, max: -4, noNaN: true }),
});

test('2 mm of ice cream from −18 °C under 100 klx of diodes may show after about nine seconds a tenth melted, worked by hand', () => {
  // 1.1 kg/m² · (1880 · 15 + 22 200) J/kg over 0.8 · 333 + 10 · 40 W/m².
  const time_s = productTime_s({ product: 'ice-cream', lamp: 'led', illuminance_lx: 1e5, start_degC: -18 });
  expect(time_s).toBeCloseTo((1.1 * (1880 * 15 + 22_200)) / ((0.8 * 1e5) / 300 + 400), 6);
});

test('twice the light, a warmer start or a thinner skin never lasts longer, and tungsten is never the kindest', () => {
  fc.assert(
    fc.property(given, fc.double({ min: 0.1, max: 1, noNaN: true }), (of, warmer) => {
      const time_s = productTime_s(of);
      expect(productTime_s({ ...of, illuminance_lx: 2 * of.illuminance_lx })).toBeLessThan(time_s);
      expect(productTime_s({ ...of, start_degC: of.start_degC + warmer, air_degC: 22 + warmer })).toBeLessThan(time_s);
      expect(productTime_s({ ...of, thickness_m: 0.001 })).toBeCloseTo(time_s / 2, 6);
      expect(productTime_s({ ...of, lamp: 'tungsten' })).toBeLessThanOrEqual(productTime_s({ ...of, lamp: 'led' }));
    }),
  );
});

test('it is never longer than a thin layer that also cools would take to get as warm', () => {
  fc.assert(
    fc.property(given, (of) => {
      const product = PRODUCTS[of.product];
      const time_s = productTime_s(of);
      const reached = layerTemperature_degC({
        ...product,
        thickness_m: 0.002,
        irradiance_W_per_m2: irradianceOfLamp_W_per_m2(of),
        absorbedFraction: product.absorbed[of.lamp],
        air_degC: 22,
        heatTransfer_W_per_m2_K: 10,
        start_degC: of.start_degC,
        time_s: product.meltingHeat_J_per_kg > 0 ? 0 : time_s,
      });
      expect(reached).toBeLessThanOrEqual(product.changes_degC + 1e-9);
    }),
  );
});

test('under all kinds of lamps at once the heat of each adds up, taken up by its own share', () => {
  const skin = { start_degC: -1, air_degC: 0, thickness_m: 0.01 };
  const none = { tungsten_W_per_m2: 0, discharge_W_per_m2: 0, led_W_per_m2: 0 };
  const time = (more: Partial<typeof none>) => productTimeOf('ice').compute({ ...none, ...more, ...skin });
  // Ice takes up seven tenths of a filament and a tenth of diodes.
  expect(time({ tungsten_W_per_m2: 100, led_W_per_m2: 300 })).toBeCloseTo(
    productTimeAt_s({ product: 'ice', absorbed_W_per_m2: 100, ...skin }),
    9,
  );
  expect(time({ discharge_W_per_m2: 100 })).toBeCloseTo(time({ tungsten_W_per_m2: 100 }), 9);
  // One kind alone is the law as it stands.
  const alone = productTime_s({ product: 'ice', lamp: 'led', illuminance_lx: 90_000, ...skin });
  expect(time({ led_W_per_m2: 300 })).toBeCloseTo(alone, 9);
});

// Worked in the project's reference: 10 mm of ice take 3063 s of 1000 W/m² to melt through at 334 kJ/kg; a tenth shows.
test('ice of 10 mm that takes up 1000 W/m² may show after a tenth of its 51 minutes', () => {
  const time_s = productTimeAt_s({
    product: 'ice',
    absorbed_W_per_m2: 1000,
    start_degC: -1e-6,
    air_degC: -1e-6,
    thickness_m: 0.01,
  });
  expect(time_s * (334 / 335)).toBeCloseTo(306.3, 1);
});

test('air warms what is colder, and takes nothing away', () => {
  expect(heatOfAir_W_per_m2({ start_degC: -18, air_degC: 22 })).toBe(400);
  expect(heatOfAir_W_per_m2({ start_degC: 30, air_degC: 22 })).toBe(0);
});

test('what starts too warm has no time, and in the dark and cold there is no end to it', () => {
  expect(productTime_s({ product: 'butter', lamp: 'led', illuminance_lx: 1e5, start_degC: 15 })).toBe(0);
  expect(productTime_s({ product: 'ice', lamp: 'led', illuminance_lx: 0, start_degC: -5, air_degC: -10 })).toBe(
    Infinity,
  );
});

test('what has no meaning is refused by name', () => {
  const bad = { product: 'butter', lamp: 'led', illuminance_lx: 1e5, start_degC: 5 } as const;
  expect(() => productTime_s({ ...bad, product: 'lard' as 'butter' })).toThrow('product must be one of ice-cream');
  expect(() => productTime_s({ ...bad, lamp: 'candle' as 'led' })).toThrow('lamp must be one of tungsten');
  expect(() => productTime_s({ ...bad, thickness_m: 0 })).toThrow('thickness_m must be positive');
  expect(() => productTimeAt_s({ product: 'butter', start_degC: 5, absorbed_W_per_m2: -1 })).toThrow(
    'absorbed_W_per_m2 must',
  );
  expect(() => productTime_s({ ...bad, illuminance_lx: -1 })).toThrow('illuminance_lx must be zero or above');
});
