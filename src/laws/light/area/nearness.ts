/**
 * How near a source may be taken for a point: what the inverse square promises too much of, and from how far it holds.
 *
 *     disc   promised/true − 1 = (D / 2d)²        square   from the panel's closed form
 *
 * D diameter, or side of the square        d distance, both m; on the axis of a matte, evenly bright source
 *
 * At five times the diameter a disc is 1 % out, which is the usual rule. A lens or a reflector forms its beam only tens
 * of its diameters away: there the maker's distances count, and nothing is read inward of the nearest.
 *
 * @source ies-inverse-square the rule
 * @source configuration-factors what is true
 */
import { requirePositive, requireWithin } from '../../../base/domain.ts';
import { law } from '../../law.ts';
import { parallelPanelFactor } from './rectangle.ts';

/** The usual rule: a source nearer than this many times its largest size is no point. @source ies-inverse-square */
export const FAR_SIZES = 5;

const SHAPES = { disc: 'round, size is its diameter', square: 'square, size is its side' } as const;
type Shape = keyof typeof SHAPES;

export interface NearGiven {
  readonly size_m: number;
  readonly distance_m: number;
  readonly shape?: Shape;
}

export interface Nearness {
  readonly sizesAwayRatio: number;
  /** The inverse square's promise less the truth, as a share of the truth. */
  readonly overstatedFraction: number;
  readonly overstated_stops: number;
  /** Nearer than five times its size: the inverse square does not hold to 1 %. */
  readonly isNear: boolean;
}

/** What the inverse square promises too much of at a distance. Throws RangeError unless size and distance are positive. */
export function nearnessOf({ size_m, distance_m, shape = 'disc' }: NearGiven): Nearness {
  requirePositive({ size_m, distance_m });
  const sizes = distance_m / size_m;
  const overstatedFraction =
    shape === 'disc'
      ? 1 / (4 * sizes ** 2)
      : 1 / (Math.PI * sizes ** 2 * parallelPanelFactor({ width_m: 1, height_m: 1, distance_m: sizes })) - 1;
  return {
    sizesAwayRatio: sizes,
    overstatedFraction,
    overstated_stops: Math.log2(1 + overstatedFraction),
    isNear: sizes < FAR_SIZES * (1 - 1e-12),
  };
}

/** Distance from which a disc is a point to within a share. Throws RangeError for a size or share that is not positive. */
export function pointDistance_m({
  size_m,
  allowedFraction = 0.01,
}: {
  readonly size_m: number;
  readonly allowedFraction?: number;
}): number {
  requirePositive({ size_m, allowedFraction });
  requireWithin(0, 1, { allowedFraction });
  return size_m / (2 * Math.sqrt(allowedFraction));
}

const COMMON = {
  sources: ['ies-inverse-square', 'configuration-factors'],
  cautions: ['intense-light', 'heat'],
  words: ['inverse square', 'five times', 'softbox', 'falloff', 'near field', 'far field', 'crossover'],
};

export const nearSource = law(nearnessOf, {
  id: 'near-source',
  title: 'Too near for the inverse square',
  says: 'How much too much the inverse square promises of a large source close by.',
  equation: 'disc: (D / 2d)²',
  takes: {
    size_m: { title: 'Size of the source', note: 'the largest way across' },
    distance_m: 'Distance',
    shape: { title: 'Shape', choices: SHAPES, default: 'disc' },
  },
  gives: {
    sizesAwayRatio: { title: 'Times its own size away', as: 'ratio' },
    overstatedFraction: { title: 'Promised too much', as: 'fraction' },
    overstated_stops: 'Promised too much, in stops',
    isNear: { title: 'Nearer than five times its size', as: 'flag' },
  },
  holds: 'On the axis of a matte, evenly bright source. Lenses and reflectors need far more distance than this.',
  example: { size_m: 1, distance_m: 1.5, shape: 'square' },
  ...COMMON,
});

export const pointDistance = law(pointDistance_m, {
  id: 'point-distance',
  title: 'Distance that makes a lamp a point',
  says: 'From how far off a source may be reckoned with the inverse square.',
  equation: 'd = D / (2 · √e)',
  takes: {
    size_m: { title: 'Size of the source', note: 'the largest way across' },
    allowedFraction: { title: 'Error allowed', as: 'fraction', default: 0.01, note: '1 % gives five times its size' },
  },
  gives: { distance_m: 'Distance' },
  holds: 'A matte disc; a square of that diagonal is nearer to a point still. Not for lenses and reflectors.',
  example: { size_m: 0.9 },
  ...COMMON,
});
