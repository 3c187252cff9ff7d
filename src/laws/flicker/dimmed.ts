/**
 * A filament behind a phase-cut dimmer: cooler, and driven by a power with longer gaps.
 *
 *     v = L^(1/3.4)        T/T₀ = v^0.42        1 − α/π + sin 2α/2π = v²
 *     ripple of the power   2·|∫ (1 − cos 2x)·e^(−2ix) dx| / ∫ (1 − cos 2x) dx, from α to π; 1 undimmed
 *
 * L share of the full light      v share of the voltage, root mean square      T colour temperature      α angle cut away
 *
 * The two work against each other: less light of a cooler filament follows its power more slowly, and the cut power swings
 * more. A dimmer that lowers the voltage whole, or runs the lamp from a battery, does neither.
 *
 * @source lamp-rerating light and colour by voltage
 * @source phase-cut the power that a cut half-wave carries, and its first harmonic
 */
import { requirePositive, requireWithin } from '../../base/domain.ts';
import { TUNGSTEN_POWERS } from '../light/modifiers/tungsten.ts';
import { law } from '../law.ts';

const HALVINGS = 50;

/** Share of a half-wave's power that is left when it is lit from this angle on. */
const powerFrom = (cut: number): number => 1 - cut / Math.PI + Math.sin(2 * cut) / (2 * Math.PI);

/** First harmonic of that power over its mean; 1 for a whole half-wave. */
function rippleFrom(cut: number): number {
  const real = -(Math.PI - cut) / 2 - Math.sin(2 * cut) / 2 + Math.sin(4 * cut) / 8;
  const imaginary = -3 / 8 + Math.cos(2 * cut) / 2 - Math.cos(4 * cut) / 8;
  return (2 * Math.hypot(real, imaginary)) / (Math.PI * powerFrom(cut));
}

/** What dimming makes of a filament. Throws RangeError for a share of light beyond 0 to 1, or none. */
export function dimmedFilamentOf({ lightFraction }: { readonly lightFraction: number }) {
  requirePositive({ lightFraction });
  requireWithin(0, 1, { lightFraction });
  const voltageFraction = lightFraction ** (1 / TUNGSTEN_POWERS.light);
  let [low, high] = [0, Math.PI];
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (low + high) / 2;
    if (powerFrom(middle) > voltageFraction ** 2) low = middle;
    else high = middle;
  }
  return { voltageFraction, colourRatio: voltageFraction ** TUNGSTEN_POWERS.colour, rippleRatio: rippleFrom(low) };
}

export const dimmedFilament = law(dimmedFilamentOf, {
  id: 'dimmed-filament',
  title: 'A filament behind a dimmer',
  says: 'How much cooler a dimmed tungsten lamp burns, and how much more its power swings behind a phase-cut dimmer.',
  equation: 'v = L^(1/3.4); T/T₀ = v^0.42; ripple = first harmonic of a half-wave cut to the power v²',
  takes: { lightFraction: { title: 'Light left', as: 'fraction', note: 'of its light at full voltage' } },
  gives: {
    voltageFraction: { title: 'Voltage left, root mean square', as: 'fraction' },
    colourRatio: { title: 'Colour temperature over that at full', as: 'ratio' },
    rippleRatio: { title: 'Ripple of its power over that at full', as: 'ratio' },
  },
  holds: 'A dimmer that cuts each half-wave, and light well above a glow. Other dimmers ripple otherwise: measure.',
  sources: ['lamp-rerating', 'phase-cut'],
  cautions: ['electricity', 'heat'],
  words: ['dimmer', 'phase cut', 'thyristor', 'tungsten', 'colour temperature', 'flicker', 'level'],
  example: { lightFraction: 0.3 },
});
