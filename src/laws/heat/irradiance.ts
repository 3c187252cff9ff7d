/**
 * What a light weighs as heat: the power that falls on a square metre beside the lux a meter reads.
 *
 *     Eₑ = E / K
 *
 * Eₑ irradiance, W/m²        E illuminance, lx        K luminous efficacy of the radiation, lm/W
 *
 * K is of the whole radiation, infrared included, not lumens per watt of mains. Where a lamp's own is not known the
 * least of its kind is taken, which gives the most heat. Glass and gels that hold back infrared help; measure, never assume.
 *
 * @source planck-efficacy tungsten and daylight as black bodies
 * @source cie-led-spectra white diodes
 */
import { requireNotNegative, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

/** Least efficacy of the radiation of each kind of lamp, lm/W. */
export const LAMP_EFFICACY_lm_per_W = { tungsten: 27.1, discharge: 90, led: 300 } as const;
export type Lamp = keyof typeof LAMP_EFFICACY_lm_per_W;

export const LAMPS = {
  tungsten: 'tungsten or halogen at 3200 K, 27 lm/W',
  discharge: 'daylight discharge lamp, 90 lm/W',
  led: 'white light-emitting diodes, 300 lm/W',
} as const satisfies Record<Lamp, string>;

/** Irradiance behind an illuminance. Throws RangeError for a negative illuminance or an efficacy that is not positive. */
export function irradianceOfLight_W_per_m2(given: {
  readonly illuminance_lx: number;
  readonly efficacy_lm_per_W: number;
}): number {
  const { illuminance_lx, efficacy_lm_per_W } = given;
  requireNotNegative({ illuminance_lx });
  requirePositive({ efficacy_lm_per_W });
  return illuminance_lx / efficacy_lm_per_W;
}

/** Irradiance from a kind of lamp. Throws RangeError for a negative illuminance or an unknown lamp. */
export function irradianceOfLamp_W_per_m2({
  illuminance_lx,
  lamp,
}: {
  readonly illuminance_lx: number;
  readonly lamp: Lamp;
}): number {
  if (!Object.hasOwn(LAMP_EFFICACY_lm_per_W, lamp))
    throw new RangeError(`lamp must be one of ${Object.keys(LAMP_EFFICACY_lm_per_W).join(', ')}, got ${lamp}`);
  return irradianceOfLight_W_per_m2({ illuminance_lx, efficacy_lm_per_W: LAMP_EFFICACY_lm_per_W[lamp] });
}

const COMMON = {
  gives: { irradiance_W_per_m2: 'Irradiance' },
  cautions: ['heat', 'intense-light'],
  words: ['heat', 'infrared', 'hot lights', 'radiant', 'efficacy', 'lux'],
};

export const lightAsHeat = law(irradianceOfLight_W_per_m2, {
  id: 'light-as-heat',
  title: 'Heat that comes with the light',
  says: 'How many watts fall on a square metre, beside the lux that a meter reads.',
  equation: 'Eₑ = E / K',
  takes: {
    illuminance_lx: 'Illuminance',
    efficacy_lm_per_W: {
      title: 'Efficacy of the radiation',
      note: 'of the light itself, not lumens per watt of mains',
    },
  },
  holds: 'All the radiation that arrives, infrared included.',
  sources: ['planck-efficacy', 'cie-led-spectra'],
  example: { illuminance_lx: 100_000, efficacy_lm_per_W: 90 },
  ...COMMON,
});

export const lampHeat = law(irradianceOfLamp_W_per_m2, {
  id: 'lamp-heat',
  title: 'Heat of a kind of lamp',
  says: 'How much heat tungsten, discharge or diodes bring with the same light.',
  equation: 'Eₑ = E / K, K of its kind',
  takes: { illuminance_lx: 'Illuminance', lamp: { title: 'Lamp', choices: LAMPS } },
  holds: 'The hottest of each kind. Filters that hold back infrared are not reckoned with.',
  sources: ['planck-efficacy', 'heat-practice'],
  example: { illuminance_lx: 100_000, lamp: 'tungsten' },
  ...COMMON,
});

/** The same law for one kind of lamp, as a plan works it. */
export function lampHeatOf(lamp: Lamp) {
  const compute = ({ illuminance_lx }: { readonly illuminance_lx: number }): number =>
    irradianceOfLamp_W_per_m2({ illuminance_lx, lamp });
  return {
    ...lampHeat,
    title: `${lampHeat.title}: ${LAMPS[lamp]}`,
    takes: { illuminance_lx: 'Illuminance' },
    example: { illuminance_lx: 100_000 },
    compute,
  };
}

/**
 * What an irradiance of a kind of lamp weighs beyond the part that is seen: infrared, at its most. Throws RangeError for
 * a negative illuminance or an unknown lamp.
 */
export function infraredOfLamp_W_per_m2(given: { readonly illuminance_lx: number; readonly lamp: Lamp }): number {
  const { illuminance_lx } = given;
  return irradianceOfLamp_W_per_m2(given) - illuminance_lx / LAMP_EFFICACY_lm_per_W.led;
}
