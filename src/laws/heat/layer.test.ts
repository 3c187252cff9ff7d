import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import {
  dutyTemperatures,
  layerTemperature_degC,
  steadyTemperature_degC,
  takesBeforeWarmCount,
  timeToCool_s,
  timeToMelt_s,
  timeToWarm_s,
} from './layer.ts';

const DARK = { irradiance_W_per_m2: 0, absorbedFraction: 0 };

describe('published values', () => {
  published('time to warm', timeToWarm_s, [
    {
      source: 'thermocouple-example',
      at: 'sphere of 1 mm (a sixth of it is its layer) to 99 %, printed 10 s',
      given: {
        ...DARK,
        thickness_m: 0.001 / 6,
        density_kg_per_m3: 8500,
        specificHeat_J_per_kg_K: 320,
        heatTransfer_W_per_m2_K: 210,
        air_degC: 100,
        start_degC: 0,
        target_degC: 99,
      },
      expected: '10',
    },
  ]);
  // Cooling at 0.02 a minute: a layer and a loss to the air that make it so.
  const cup = { thickness_m: 0.05, density_kg_per_m3: 1000, specificHeat_J_per_kg_K: 4200 };
  const rate = { heatTransfer_W_per_m2_K: (0.02 / 60) * 0.05 * 1000 * 4200 };
  published(
    'time to cool, in minutes',
    () => timeToCool_s({ ...cup, ...rate, start_degC: 95, target_degC: 61.16, air_degC: 20 }) / 60,
    [
      {
        source: 'cooling-example',
        at: 'coffee from 95 to 61 °C in a room of 20 °C, 0.02 a minute',
        given: {},
        expected: '30',
      },
    ],
  );
  published(
    'temperature after half an hour',
    () => layerTemperature_degC({ ...cup, ...rate, ...DARK, start_degC: 95, air_degC: 20, time_s: 1800 }),
    [{ source: 'cooling-example', at: 'coffee after 30 minutes', given: {}, expected: '61' }],
  );
  published('time to melt', timeToMelt_s, [
    {
      source: 'melting-example',
      at: 'two kilograms of ice by 1000 W, spread over a square metre',
      given: {
        thickness_m: 2 / 917,
        density_kg_per_m3: 917,
        meltingHeat_J_per_kg: 335_000,
        melts_degC: 0,
        irradiance_W_per_m2: 1000,
        absorbedFraction: 1,
        air_degC: 0,
      },
      expected: '670',
    },
  ]);
});

const CHOCOLATE = { thickness_m: 0.002, density_kg_per_m3: 1300, specificHeat_J_per_kg_K: 1700 };

test.each([
  ['tungsten', 100_000 / 27.1, 13],
  ['diodes', 100_000 / 300, 147],
])(
  '2 mm of chocolate warms from 20 to 30 °C by 100 klx of %s with no loss as worked by hand',
  (_, irradiance, time_s) => {
    const given = { ...CHOCOLATE, irradiance_W_per_m2: irradiance, absorbedFraction: 0.9, air_degC: 20 };
    const worked = timeToWarm_s({ ...given, heatTransfer_W_per_m2_K: 0, start_degC: 20, target_degC: 30 });
    expect(Math.abs(worked - time_s)).toBeLessThanOrEqual(0.5);
  },
);

const layer = fc.record({
  thickness_m: fc.double({ min: 0.0005, max: 0.02, noNaN: true }),
  density_kg_per_m3: fc.double({ min: 300, max: 2000, noNaN: true }),
  specificHeat_J_per_kg_K: fc.double({ min: 800, max: 4200, noNaN: true }),
});
const load = fc.record({
  irradiance_W_per_m2: fc.double({ min: 10, max: 8000, noNaN: true }),
  absorbedFraction: fc.double({ min: 0.1, max: 1, noNaN: true }),
  air_degC: fc.double({ min: 10, max: 35, noNaN: true }),
  heatTransfer_W_per_m2_K: fc.double({ min: 1, max: 40, noNaN: true }),
});

test('after the time to a temperature the layer has that temperature, and before long it stays at its last', () => {
  fc.assert(
    fc.property(layer, load, fc.double({ min: 0.01, max: 0.95, noNaN: true }), (of, light, part) => {
      const start_degC = light.air_degC - 5;
      const steady = steadyTemperature_degC(light);
      const target_degC = start_degC + part * (steady - start_degC);
      const time_s = timeToWarm_s({ ...of, ...light, start_degC, target_degC });
      expect(layerTemperature_degC({ ...of, ...light, start_degC, time_s })).toBeCloseTo(target_degC, 6);
      expect(layerTemperature_degC({ ...of, ...light, start_degC, time_s: 1e7 })).toBeCloseTo(steady, 6);
      expect(timeToWarm_s({ ...of, ...light, start_degC, target_degC: steady + 1 })).toBe(Infinity);
    }),
  );
});

test('the swing of lights on and off repeats itself, and lies between the air and the light for long', () => {
  fc.assert(
    fc.property(
      layer,
      load,
      fc.double({ min: 1, max: 600, noNaN: true }),
      fc.double({ min: 0, max: 600, noNaN: true }),
      (of, light, lightOn_s, lightOff_s) => {
        const { peak_degC, rest_degC } = dutyTemperatures({ ...of, ...light, lightOn_s, lightOff_s });
        const up = layerTemperature_degC({ ...of, ...light, start_degC: rest_degC, time_s: lightOn_s });
        const down = layerTemperature_degC({
          ...of,
          ...light,
          irradiance_W_per_m2: 0,
          start_degC: peak_degC,
          time_s: lightOff_s,
        });
        expect(up).toBeCloseTo(peak_degC, 6);
        expect(down).toBeCloseTo(rest_degC, 6);
        expect(rest_degC).toBeGreaterThanOrEqual(light.air_degC);
        expect(peak_degC).toBeLessThanOrEqual(steadyTemperature_degC(light) + 1e-9);
      },
    ),
  );
});

test('takes that one piece stands fall with longer ones, and a light too weak to matter may stay on', () => {
  const given = { ...CHOCOLATE, irradiance_W_per_m2: 1110, absorbedFraction: 0.9, air_degC: 20, start_degC: 20 };
  const takes = (lightOn_s: number, lightOff_s = 60) =>
    takesBeforeWarmCount({ ...given, lightOn_s, lightOff_s, limit_degC: 28 });
  expect(takes(timeToWarm_s({ ...given, target_degC: 28 }) * 1.001)).toBe(0);
  expect(takes(timeToWarm_s({ ...given, target_degC: 28 }) * 0.999, 1e9)).toBe(Infinity);
  for (const on of [5, 10, 20]) expect(takes(on)).toBeGreaterThanOrEqual(takes(on + 5));
  const weak = { ...given, irradiance_W_per_m2: 1, lightOn_s: 60, lightOff_s: 0, limit_degC: 28 };
  expect(takesBeforeWarmCount(weak)).toBe(Infinity);
});

test('half melted takes half the time, colder air slows it, and cold enough stops it', () => {
  const ice = {
    thickness_m: 0.01,
    density_kg_per_m3: 917,
    meltingHeat_J_per_kg: 334_000,
    melts_degC: 0,
    absorbedFraction: 1,
  };
  const whole = timeToMelt_s({ ...ice, irradiance_W_per_m2: 1000, air_degC: 0 });
  expect(whole).toBeCloseTo(3063, 0);
  expect(timeToMelt_s({ ...ice, irradiance_W_per_m2: 1000, air_degC: 0, meltedFraction: 0.5 })).toBeCloseTo(
    whole / 2,
    6,
  );
  expect(timeToMelt_s({ ...ice, irradiance_W_per_m2: 1000, air_degC: -18 })).toBeGreaterThan(whole);
  expect(timeToMelt_s({ ...ice, irradiance_W_per_m2: 10, air_degC: -18 })).toBe(Infinity);
});

test('what is reached already takes no time, and what cannot cool or warm never does', () => {
  const given = { ...CHOCOLATE, irradiance_W_per_m2: 100, absorbedFraction: 0.9, air_degC: 20 };
  expect(timeToWarm_s({ ...given, start_degC: 30, target_degC: 28 })).toBe(0);
  expect(timeToCool_s({ ...CHOCOLATE, start_degC: 20, target_degC: 24, air_degC: 18 })).toBe(0);
  expect(timeToCool_s({ ...CHOCOLATE, start_degC: 26, target_degC: 17, air_degC: 18 })).toBe(Infinity);
  expect(
    timeToCool_s({ ...CHOCOLATE, start_degC: 26, target_degC: 20, air_degC: 18, heatTransfer_W_per_m2_K: 0 }),
  ).toBe(Infinity);
  expect(timeToWarm_s({ ...given, ...DARK, heatTransfer_W_per_m2_K: 0, start_degC: 18, target_degC: 19 })).toBe(
    Infinity,
  );
});

test('what has no meaning is refused by name', () => {
  const given = { ...CHOCOLATE, irradiance_W_per_m2: 100, absorbedFraction: 0.9, air_degC: 20, start_degC: 18 };
  expect(() => layerTemperature_degC({ ...given, time_s: -1 })).toThrow('time_s must be zero or above');
  expect(() => timeToWarm_s({ ...given, absorbedFraction: 1.1, target_degC: 28 })).toThrow('absorbedFraction must be');
  expect(() => timeToWarm_s({ ...given, thickness_m: 0, target_degC: 28 })).toThrow('thickness_m must be positive');
  expect(() => steadyTemperature_degC({ ...given, heatTransfer_W_per_m2_K: 0 })).toThrow(
    'heatTransfer_W_per_m2_K must',
  );
  expect(() => dutyTemperatures({ ...given, lightOn_s: 0, lightOff_s: 1 })).toThrow('lightOn_s must be positive');
  expect(() => takesBeforeWarmCount({ ...given, lightOn_s: 1, lightOff_s: -1, limit_degC: 28 })).toThrow(
    'lightOff_s must',
  );
  expect(() => timeToMelt_s({ ...given, meltingHeat_J_per_kg: 1, melts_degC: 0, meltedFraction: 0 })).toThrow(
    'meltedFraction must be positive',
  );
});
