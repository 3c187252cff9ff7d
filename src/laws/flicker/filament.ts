/**
 * How deeply a filament ripples: it heats and cools with the power of the mains, and its own heat holds it back.
 *
 *     m = γ / (4·√(1 + (2π·f·τ)²))        γ = c₂/(λ·T)        τ = τ₀ · (I/I₀)^(2/3) · (T₀/T)³
 *
 * m depth, (max − min)/(max + min)      f ripple, twice the mains, Hz      τ thermal lag, s      I current, A
 * T colour temperature, K      c₂ 0.014387769 m·K      λ 555 nm      τ₀ 28 ms for a lamp of 60 W on 120 V, T₀ 2800 K
 *
 * A thin wire that loses heat by radiation alone, on plain mains. It runs 1.2 to 2.2 times above the figures handbooks
 * print, so it is an upper bound; coils, gas and thick filaments make it smaller still. Behind a dimmer the filament is
 * cooler and the power of another shape: measure.
 *
 * @source filament-balance the heat balance and how its lag scales
 * @source filament-handbook percent flicker by power, which it stays above
 * @source filament-lag 28 ms for a lamp of 60 W on 120 V, about 20 ms for one on 230 V
 */
import { requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';
import { sineWaveform, waveformOfSum, type Waveform } from './waveform.ts';

const SECOND_RADIATION_m_K = 0.014387769;
const GREEN_m = 555e-9;
/** @source filament-lag */
const ANCHOR = { lag_s: 0.028, current_A: 60 / 120, colour_K: 2800 } as const;

/** Colour temperature of a film lamp at its rated voltage. @source flicker-practice */
export const FILM_LAMP_K = 3200;

/** Time a filament takes to follow a change of power. Throws RangeError outside positive inputs. */
export function filamentLag_s(given: {
  readonly power_W: number;
  readonly supply_V: number;
  readonly colour_K?: number;
}): number {
  const { power_W, supply_V, colour_K = FILM_LAMP_K } = given;
  requirePositive({ power_W, supply_V, colour_K });
  const current_A = power_W / supply_V;
  return ANCHOR.lag_s * (current_A / ANCHOR.current_A) ** (2 / 3) * (ANCHOR.colour_K / colour_K) ** 3;
}

/** Depth of a filament's ripple, from its lag. Throws RangeError outside positive inputs. */
export function filamentDepthFraction(given: {
  readonly ripple_Hz: number;
  readonly lag_s: number;
  readonly colour_K?: number;
}): number {
  const { ripple_Hz, lag_s, colour_K = FILM_LAMP_K } = given;
  requirePositive({ ripple_Hz, lag_s, colour_K });
  const slope = SECOND_RADIATION_m_K / (GREEN_m * colour_K);
  return slope / (4 * Math.hypot(1, 2 * Math.PI * ripple_Hz * lag_s));
}

export interface TungstenLamp {
  readonly power_W: number;
  readonly mains_Hz: number;
  readonly supply_V: number;
  readonly colour_K?: number;
}

/** Depth of the ripple of a filament lamp on the mains, at most. Throws RangeError outside positive inputs. */
export function tungstenRipple({ mains_Hz, ...lamp }: TungstenLamp) {
  requirePositive({ mains_Hz });
  const lag_s = filamentLag_s(lamp);
  const ripple_Hz = 2 * mains_Hz;
  const { colour_K = FILM_LAMP_K } = lamp;
  return { ripple_Hz, lag_s, depthFraction: filamentDepthFraction({ ripple_Hz, lag_s, colour_K }) };
}

/** The light of a filament lamp on the mains, dimmest at the start. Throws RangeError where it would ripple fully. */
export function tungstenWaveform(lamp: TungstenLamp): Waveform {
  const { ripple_Hz, depthFraction } = tungstenRipple(lamp);
  // Refuses a depth that a lamp cannot have, by name.
  if (depthFraction > 1) return sineWaveform({ ripple_Hz, depthFraction });
  return waveformOfSum({
    period_s: 1 / ripple_Hz,
    sumTo: (x) => x - (depthFraction * Math.sin(2 * Math.PI * x)) / (2 * Math.PI),
  });
}

const HOLDS =
  'A thin wire on plain mains: an upper bound, 1.2 to 2.2 times above the figures handbooks print. Behind a dimmer, measure.';
const WORDS = ['tungsten', 'halogen', 'fresnel', 'filament', 'flicker', 'ripple', 'mains', '50 Hz', '60 Hz', 'bulb'];
const COLOUR = {
  title: 'Colour temperature',
  default: FILM_LAMP_K,
  note: 'assumed: a film lamp at full voltage',
} as const;

export const tungstenDepth = law(tungstenRipple, {
  id: 'tungsten-ripple',
  title: 'Ripple of a tungsten lamp',
  says: 'How deeply a filament’s light ripples on the mains, at most: the larger the lamp and its current, the less.',
  equation: 'm = γ / (4 · √(1 + (2π · f · τ)²)), γ = c₂ / (λ · T), τ = 28 ms · (I / 0.5 A)^(2/3) · (2800 K / T)³',
  takes: {
    power_W: 'Power of the lamp',
    mains_Hz: 'Mains',
    supply_V: { title: 'Voltage of the lamp', note: 'a lamp for 120 V draws more current and ripples less' },
    colour_K: COLOUR,
  },
  gives: {
    depthFraction: { title: 'Depth, (max − min)/(max + min)', as: 'fraction' },
    ripple_Hz: 'Ripple',
    lag_s: 'Thermal lag of the filament',
  },
  holds: HOLDS,
  sources: ['filament-balance', 'filament-lag', 'filament-handbook', 'flicker-practice'],
  cautions: ['electricity', 'heat'],
  words: WORDS,
  example: { power_W: 5000, mains_Hz: 50, supply_V: 230 },
});

export const filamentDepth = law(filamentDepthFraction, {
  id: 'filament-depth',
  title: 'Ripple of a filament by its lag',
  says: 'How deeply a filament ripples, when its thermal lag is known.',
  equation: 'm = γ / (4 · √(1 + (2π · f · τ)²)), γ = c₂ / (λ · T)',
  takes: { ripple_Hz: { title: 'Ripple', note: 'twice the mains' }, lag_s: 'Thermal lag', colour_K: COLOUR },
  gives: { depthFraction: { title: 'Depth, (max − min)/(max + min)', as: 'fraction' } },
  holds: HOLDS,
  sources: ['filament-balance'],
  words: WORDS,
  example: { ripple_Hz: 100, lag_s: 0.02, colour_K: 2800 },
});
