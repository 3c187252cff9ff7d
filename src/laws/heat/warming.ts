/** The laws of a thin layer under a light, as the Reckoner offers them. The relations stand in `layer.ts`. */
import { law } from '../law.ts';
import {
  dutyTemperatures,
  layerTemperature_degC,
  steadyTemperature_degC,
  STILL_AIR_W_per_m2_K,
  takesBeforeWarmCount,
  timeToCool_s,
  timeToMelt_s,
  timeToWarm_s,
} from './layer.ts';

const THICKNESS = { title: 'Thickness of the layer', note: 'of a thick piece, the skin that shows: 1 to 3 mm' };
const LAYER = {
  thickness_m: THICKNESS,
  density_kg_per_m3: 'Density',
  specificHeat_J_per_kg_K: 'Specific heat',
} as const;
const LIGHT = {
  irradiance_W_per_m2: { title: 'Irradiance', note: 'from the law of heat that comes with the light' },
  absorbedFraction: {
    title: 'Share absorbed',
    as: 'fraction',
    note: '0.9 for dark chocolate, 0.8 for cream and butter',
  },
} as const;
const AIR = {
  air_degC: 'Air',
  heatTransfer_W_per_m2_K: {
    title: 'Heat given to the air',
    default: STILL_AIR_W_per_m2_K,
    note: 'assumed: 5 to 10 in still air, about 25 with a fan',
  },
} as const;
const START = { start_degC: 'Temperature at the start' } as const;
const COMMON = {
  sources: ['heat-textbook', 'thermocouple-example', 'heat-practice'],
  cautions: ['heat', 'glass'],
  words: ['heat', 'melt', 'warm', 'product', 'food', 'hero', 'chocolate', 'ice cream', 'time under light'],
  holds:
    'One temperature through the layer: thin, or the skin of something thick. Try a spare one: what shows first is seldom what melts last.',
};
const CHOCOLATE = { thickness_m: 0.002, density_kg_per_m3: 1300, specificHeat_J_per_kg_K: 1700 };
const LAMP = { irradiance_W_per_m2: 1110, absorbedFraction: 0.9, air_degC: 22 };

export const steadyTemperature = law(steadyTemperature_degC, {
  id: 'steady-temperature',
  title: 'Temperature in the light for long',
  says: 'How warm a surface gets if it stays in the light.',
  equation: 'Tₑ = T_air + a · Eₑ / h',
  takes: { ...LIGHT, ...AIR },
  gives: { temperature_degC: 'Temperature in the end' },
  example: LAMP,
  ...COMMON,
});

export const layerTemperature = law(layerTemperature_degC, {
  id: 'temperature-after',
  title: 'Temperature after a time in the light',
  says: 'How warm a thin layer is after so long in the light.',
  equation: 'T = Tₑ − (Tₑ − T₀) · e^(−t/τ), τ = ρ · δ · c / h',
  takes: { ...LAYER, ...LIGHT, ...AIR, ...START, time_s: 'Time in the light' },
  gives: { temperature_degC: 'Temperature' },
  example: { ...CHOCOLATE, ...LAMP, start_degC: 18, time_s: 20 },
  ...COMMON,
});

export const timeToWarm = law(timeToWarm_s, {
  id: 'time-to-warm',
  title: 'Time until it is too warm',
  says: 'How long a thin layer can stand the light before it reaches a temperature.',
  equation: 't = τ · ln((Tₑ − T₀) / (Tₑ − T))',
  takes: { ...LAYER, ...LIGHT, ...AIR, ...START, target_degC: 'Temperature it must not reach' },
  gives: { time_s: 'Time in the light' },
  example: { ...CHOCOLATE, ...LAMP, start_degC: 18, target_degC: 28 },
  ...COMMON,
});

export const timeToMelt = law(timeToMelt_s, {
  id: 'time-to-melt',
  title: 'Time to melt',
  says: 'How long a layer at its melting point takes to melt in the light.',
  equation: 't = x · ρ · δ · L / (a · Eₑ + h · (T_air − T_m))',
  takes: {
    thickness_m: THICKNESS,
    density_kg_per_m3: 'Density',
    meltingHeat_J_per_kg: { title: 'Heat of melting', note: '335 kJ/kg for ice, times the share of water' },
    melts_degC: 'Melts at',
    meltedFraction: { title: 'Share that has melted', as: 'fraction', default: 1, note: '0.1 is seen' },
    ...LIGHT,
    ...AIR,
  },
  gives: { time_s: 'Time in the light' },
  example: {
    thickness_m: 0.002,
    density_kg_per_m3: 550,
    meltingHeat_J_per_kg: 222_000,
    melts_degC: -3,
    meltedFraction: 0.1,
    irradiance_W_per_m2: 1110,
    absorbedFraction: 0.8,
    air_degC: 22,
  },
  ...COMMON,
  sources: ['melting-example', 'heat-textbook', 'heat-practice'],
});

export const timeToCool = law(timeToCool_s, {
  id: 'time-to-cool',
  title: 'Time to cool again',
  says: 'How long a thin layer takes to cool with the lights off.',
  equation: 't = τ · ln((T₀ − T_air) / (T − T_air)), τ = ρ · δ · c / h',
  takes: { ...LAYER, ...START, target_degC: 'Cool enough', ...AIR },
  gives: { time_s: 'Time with the lights off' },
  example: { ...CHOCOLATE, start_degC: 27, target_degC: 24, air_degC: 20 },
  ...COMMON,
});

export const lightDuty = law(dutyTemperatures, {
  id: 'light-duty',
  title: 'Lights on for takes only',
  says: 'Between what temperatures a surface swings when lights are on for takes and off between.',
  equation: 'peak = T_air + (a · Eₑ / h) · (1 − e^(−t_on/τ)) / (1 − e^(−(t_on + t_off)/τ))',
  takes: { ...LAYER, ...LIGHT, ...AIR, lightOn_s: 'Lights on, each time', lightOff_s: 'Lights off between' },
  gives: { peak_degC: 'Warmest, in the end', rest_degC: 'Coolest, in the end' },
  example: { ...CHOCOLATE, ...LAMP, lightOn_s: 12, lightOff_s: 420 },
  ...COMMON,
});

export const takesBeforeWarm = law(takesBeforeWarmCount, {
  id: 'takes-before-warm',
  title: 'Takes that one piece stands',
  says: 'How many takes one piece can stand before it has been too warm.',
  equation: 'T after each take, lights on for each and off between, until T > limit',
  takes: {
    ...LAYER,
    ...LIGHT,
    ...AIR,
    ...START,
    lightOn_s: { title: 'Lights on, each time', note: 'with focus, count-in and flag' },
    lightOff_s: 'Lights off between',
    limit_degC: 'Temperature it must not reach',
  },
  gives: { takeCount: { title: 'Takes', as: 'count' } },
  example: { ...CHOCOLATE, ...LAMP, start_degC: 18, lightOn_s: 12, lightOff_s: 420, limit_degC: 28 },
  ...COMMON,
});
