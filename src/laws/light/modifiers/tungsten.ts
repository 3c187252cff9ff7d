/**
 * A filament lamp at another voltage: how much light, of what colour, for what power, and how long it lasts.
 *
 *     r = V/V₀        light r^3.4        colour temperature r^0.42        power r^1.6        current r^0.55        life r^−13
 *
 * r applied over rated voltage, root mean square behind a dimmer
 *
 * The powers are fitted near the rated voltage, from 0.9 to 1.1 of it. Further down they are a guess that errs on the
 * bright side, and halogen lamps differ: 3.0 to 3.4 for their light. A filament that is dimmed also ripples more.
 *
 * @source lamp-rerating the powers
 * @source illumination-guide a lamp worked at another current
 * @source dimmer-practice how a level becomes a voltage
 */
import { requirePositive, requireWithin } from '../../../base/domain.ts';
import { law } from '../../law.ts';

/** @source lamp-rerating */
export const TUNGSTEN_POWERS = { light: 3.4, colour: 0.42, power: 1.6, current: 0.55, life: -13 } as const;

const LEAST_VOLTAGE = 0.1;
const MOST_VOLTAGE = 1.2;

export interface TungstenGiven {
  readonly voltageFraction: number;
  readonly ratedColour_K?: number;
  readonly lightPowerRatio?: number;
}

export interface Tungsten {
  readonly lightFraction: number;
  readonly light_stops: number;
  readonly colour_K: number;
  readonly powerFraction: number;
  readonly currentFraction: number;
  readonly lifeRatio: number;
}

/** A filament lamp at a share of its voltage. Throws RangeError outside 0.1 to 1.2 of it. */
export function tungstenAt(given: TungstenGiven): Tungsten {
  const { voltageFraction, ratedColour_K = 3200, lightPowerRatio = TUNGSTEN_POWERS.light } = given;
  requireWithin(LEAST_VOLTAGE, MOST_VOLTAGE, { voltageFraction });
  requirePositive({ ratedColour_K });
  requireWithin(2, 5, { lightPowerRatio });
  const lightFraction = voltageFraction ** lightPowerRatio;
  return {
    lightFraction,
    light_stops: Math.log2(lightFraction),
    colour_K: ratedColour_K * voltageFraction ** TUNGSTEN_POWERS.colour,
    powerFraction: voltageFraction ** TUNGSTEN_POWERS.power,
    currentFraction: voltageFraction ** TUNGSTEN_POWERS.current,
    lifeRatio: voltageFraction ** TUNGSTEN_POWERS.life,
  };
}

const CURVES = {
  voltage: 'the level is the share of the voltage',
  square: 'the light follows the square of the level',
  light: 'the level is the share of the light',
} as const;
type Curve = keyof typeof CURVES;

/** A filament lamp at a dimmer's level. Throws RangeError for a level that dims it below a tenth of its voltage. */
export function tungstenDimmed(given: {
  readonly levelFraction: number;
  readonly curve?: Curve;
  readonly ratedColour_K?: number;
  readonly lightPowerRatio?: number;
}): Tungsten & { readonly voltageFraction: number } {
  const { levelFraction, curve = 'square', lightPowerRatio = TUNGSTEN_POWERS.light } = given;
  requirePositive({ levelFraction });
  requireWithin(0, 1, { levelFraction });
  requireWithin(2, 5, { lightPowerRatio });
  const power = { voltage: 1, square: 2 / lightPowerRatio, light: 1 / lightPowerRatio }[curve];
  if (power === undefined)
    throw new RangeError(`curve must be one of ${Object.keys(CURVES).join(', ')}, got ${String(curve)}`);
  const voltageFraction = levelFraction ** power;
  return { voltageFraction, ...tungstenAt({ ...given, voltageFraction }) };
}

/** Share of the voltage that dims a filament lamp by so many stops. Throws RangeError outside a tenth to 1.2 of the voltage. */
export function tungstenVoltageFraction(given: {
  readonly dim_stops: number;
  readonly lightPowerRatio?: number;
}): number {
  const { dim_stops, lightPowerRatio = TUNGSTEN_POWERS.light } = given;
  requireWithin(2, 5, { lightPowerRatio });
  const voltageFraction = 2 ** (-dim_stops / lightPowerRatio);
  if (!(voltageFraction >= LEAST_VOLTAGE && voltageFraction <= MOST_VOLTAGE))
    throw new RangeError('dim_stops must leave from a tenth to 1.2 of the voltage');
  return voltageFraction;
}

const LAMP = {
  ratedColour_K: { title: 'Colour temperature at full voltage', default: 3200 },
  lightPowerRatio: {
    title: 'Power of the voltage that light follows',
    as: 'ratio',
    default: TUNGSTEN_POWERS.light,
    note: '3.0 to 3.4 for halogen lamps',
  },
} as const;
const GIVES = {
  lightFraction: { title: 'Share of the light', as: 'fraction' },
  light_stops: 'Light, in stops',
  colour_K: 'Colour temperature',
  powerFraction: { title: 'Share of the power', as: 'fraction' },
  currentFraction: { title: 'Share of the current', as: 'fraction' },
  lifeRatio: { title: 'Times its rated life', as: 'ratio' },
} as const;
const COMMON = {
  holds:
    'Fitted from 0.9 to 1.1 of the voltage; a guess below it. A dimmer that cuts the wave also makes light flicker more: test it at the frame rate.',
  sources: ['lamp-rerating', 'illumination-guide', 'dimmer-practice'],
  cautions: ['electricity', 'heat', 'flashing-light-and-photosensitive-people'],
  words: ['tungsten', 'halogen', 'dimmer', 'filament', 'colour temperature', 'voltage drop', 'warm', 'life'],
};

export const tungstenVoltage = law(tungstenAt, {
  id: 'tungsten-voltage',
  title: 'Tungsten at another voltage',
  says: 'What a filament lamp does on more or less than its voltage, as at the end of a long cable.',
  equation: 'light r^3.4, colour r^0.42, power r^1.6, current r^0.55, life r^−13, r = V/V₀',
  takes: { voltageFraction: { title: 'Share of the rated voltage', as: 'fraction' }, ...LAMP },
  gives: GIVES,
  example: { voltageFraction: 0.95 },
  ...COMMON,
});

export const tungstenLevel = law(tungstenDimmed, {
  id: 'tungsten-dimmed',
  title: 'Tungsten on a dimmer',
  says: 'How bright and how warm a filament lamp is at a dimmer’s level.',
  equation: 'r = level, level^(2/3.4) or level^(1/3.4); light r^3.4, colour r^0.42',
  takes: {
    levelFraction: { title: 'Level', as: 'fraction' },
    curve: { title: 'Curve of the dimmer', choices: CURVES, default: 'square', note: 'assumed' },
    ...LAMP,
  },
  gives: { voltageFraction: { title: 'Share of the voltage', as: 'fraction' }, ...GIVES },
  example: { levelFraction: 0.8 },
  ...COMMON,
});

export const tungstenVoltageForStops = law(tungstenVoltageFraction, {
  id: 'tungsten-voltage-for-stops',
  title: 'Voltage that dims tungsten by stops',
  says: 'What share of its voltage takes a filament lamp down so many stops.',
  equation: 'r = 2^(−stops / 3.4)',
  takes: { dim_stops: 'Stops down', lightPowerRatio: LAMP.lightPowerRatio },
  gives: { voltageFraction: { title: 'Share of the voltage', as: 'fraction' } },
  example: { dim_stops: 1 },
  ...COMMON,
});
