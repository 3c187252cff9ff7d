/**
 * What scrims, diffusion and gels take from a lamp, in stops, and what several take together.
 *
 *     loss = Σ lossᵢ        share left = 2^(−loss)        loss measured = log2(without / with)
 *
 * The losses listed are what crews reckon with before they have measured. Diffusion spreads as well as it takes, so that
 * its loss on the axis of a narrow beam is far more than its own; a gel takes another share of lamps of another colour.
 * Measure with the meter where the product stands, once without and once with.
 *
 * @source modifier-practice the losses listed
 */
import { requireFinite, requireNotNegative, requirePositive } from '../../../base/domain.ts';
import { law } from '../../law.ts';

interface Loss {
  readonly title: string;
  readonly loss_stops: number;
}

const NONE: Loss = { title: 'none', loss_stops: 0 };

/** @source modifier-practice */
export const SCRIMS = {
  none: NONE,
  single: { title: 'single scrim, ½ stop', loss_stops: 0.5 },
  double: { title: 'double scrim, 1 stop', loss_stops: 1 },
  both: { title: 'single and double, 1½ stops', loss_stops: 1.5 },
} as const satisfies Record<string, Loss>;

/** @source modifier-practice */
export const DIFFUSIONS = {
  none: NONE,
  'light-frost': { title: 'light frost, ½ stop', loss_stops: 0.5 },
  'half-white': { title: 'half white diffusion, 1 stop', loss_stops: 1 },
  'full-white': { title: 'full white diffusion, 2 stops', loss_stops: 2 },
  silk: { title: 'silk, 1 stop', loss_stops: 1 },
  'light-grid': { title: 'light grid cloth, 1 stop', loss_stops: 1 },
  'half-grid': { title: 'half grid cloth, 1½ stops', loss_stops: 1.5 },
  'full-grid': { title: 'full grid cloth, 2 stops', loss_stops: 2 },
} as const satisfies Record<string, Loss>;

/** @source modifier-practice */
export const GELS = {
  none: NONE,
  'quarter-orange': { title: 'quarter orange correction, ⅓ stop', loss_stops: 1 / 3 },
  'half-orange': { title: 'half orange correction, ½ stop', loss_stops: 0.5 },
  'full-orange': { title: 'full orange correction, 1 stop', loss_stops: 1 },
  'quarter-blue': { title: 'quarter blue correction, ⅔ stop', loss_stops: 2 / 3 },
  'half-blue': { title: 'half blue correction, 1 stop', loss_stops: 1 },
  'full-blue': { title: 'full blue correction, 2 stops', loss_stops: 2 },
} as const satisfies Record<string, Loss>;

type Scrim = keyof typeof SCRIMS;
type Diffusion = keyof typeof DIFFUSIONS;
type Gel = keyof typeof GELS;

/** Stops that losses take together. Throws RangeError for a loss that is not finite. */
export function combinedLoss_stops(losses_stops: readonly number[]): number {
  for (const loss_stops of losses_stops) requireFinite({ loss_stops });
  return losses_stops.reduce((sum, loss) => sum + loss, 0);
}

export interface ModifiedGiven {
  readonly illuminance_lx: number;
  readonly scrim?: Scrim;
  readonly diffusion?: Diffusion;
  readonly gel?: Gel;
  readonly otherLoss_stops?: number;
}

/** Light left behind scrims, diffusion and gel. Throws RangeError for a negative illuminance or an unknown modifier. */
export function modifiedLight(given: ModifiedGiven): {
  readonly illuminanceLeft_lx: number;
  readonly loss_stops: number;
  readonly transmittanceFraction: number;
} {
  const { illuminance_lx, scrim = 'none', diffusion = 'none', gel = 'none', otherLoss_stops = 0 } = given;
  requireNotNegative({ illuminance_lx });
  const listed = (name: string, table: Readonly<Record<string, Loss>>, key: string): number => {
    if (!Object.hasOwn(table, key))
      throw new RangeError(`${name} must be one of ${Object.keys(table).join(', ')}, got ${key}`);
    return table[key]!.loss_stops;
  };
  const loss_stops = combinedLoss_stops([
    listed('scrim', SCRIMS, scrim),
    listed('diffusion', DIFFUSIONS, diffusion),
    listed('gel', GELS, gel),
    otherLoss_stops,
  ]);
  const transmittanceFraction = 2 ** -loss_stops;
  return { illuminanceLeft_lx: illuminance_lx * transmittanceFraction, loss_stops, transmittanceFraction };
}

/** Loss that two readings of a meter show. Throws RangeError unless both are positive. */
export function measuredLoss_stops(given: { readonly without_lx: number; readonly with_lx: number }): number {
  const { without_lx, with_lx } = given;
  requirePositive({ without_lx, with_lx });
  return Math.log2(without_lx / with_lx);
}

const titles = <Key extends string>(table: Readonly<Record<Key, Loss>>): Readonly<Record<Key, string>> =>
  Object.fromEntries(Object.entries<Loss>(table).map(([key, { title }]) => [key, title])) as Record<Key, string>;

const WORDS = ['scrim', 'net', 'diffusion', 'frost', 'silk', 'grid cloth', 'gel', 'CTO', 'CTB', 'loss', 'stops'];

export const modifierLoss = law(modifiedLight, {
  id: 'modifier-light',
  title: 'Light left behind scrims, diffusion and gels',
  says: 'What is left of a lamp’s light after what is put before it.',
  equation: 'E_left = E · 2^(−Σ loss)',
  takes: {
    illuminance_lx: 'Illuminance of the bare lamp',
    scrim: { title: 'Scrim', choices: titles(SCRIMS), default: 'none' },
    diffusion: { title: 'Diffusion', choices: titles(DIFFUSIONS), default: 'none' },
    gel: { title: 'Gel', choices: titles(GELS), default: 'none' },
    otherLoss_stops: { title: 'Any other loss', default: 0, note: 'what was measured for this lamp' },
  },
  gives: {
    illuminanceLeft_lx: 'Illuminance left',
    loss_stops: 'Loss',
    transmittanceFraction: { title: 'Share left', as: 'fraction' },
  },
  holds:
    'Losses as crews reckon with them; makes differ by half a stop and more. Diffusion on a narrow beam takes far more than listed, because it spreads it.',
  sources: ['modifier-practice'],
  cautions: ['heat'],
  words: WORDS,
  example: { illuminance_lx: 80_000, scrim: 'single', diffusion: 'half-grid', gel: 'none' },
});

export const measuredLoss = law(measuredLoss_stops, {
  id: 'measured-loss',
  title: 'Loss of a modifier, measured',
  says: 'How many stops something takes, from a reading without it and one with it.',
  equation: 'loss = log2(without / with)',
  takes: { without_lx: 'Illuminance without it', with_lx: 'Illuminance with it' },
  gives: { loss_stops: 'Loss' },
  holds: 'Lamp, distance and dimmer the same, the meter in the same place, the lamp warmed up.',
  sources: ['f-number-article'],
  words: WORDS,
  example: { without_lx: 41_000, with_lx: 17_500 },
});
