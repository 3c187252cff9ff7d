/**
 * The edge of a shadow: where a flag or a barn door cuts the light, and how wide the soft edge is.
 *
 *     p = s·b/a        bright to x = (e·(a + b) − s·b/2)/a        dark from x = (e·(a + b) + s·b/2)/a
 *
 * s size of the source across the edge, m        a source to flag, b flag to surface, m        e how far the flag's edge
 * stands off the line from the middle of the source square to the surface, m        p width of the soft edge, m
 *
 * The flag covers what lies beyond its edge. A source behind a lens is as large as its lens; behind diffusion, as large
 * as the diffusion. Barn doors stand so near the lamp that their edge is hardly an edge at all.
 *
 * @source penumbra-examples the soft edge, as radiography and optics give it
 */
import { requireFinite, requireNotNegative, requirePositive } from '../../../base/domain.ts';
import { law } from '../../law.ts';

export interface FlagGiven {
  readonly sourceSize_m: number;
  readonly sourceToFlag_m: number;
  readonly flagToSurface_m: number;
}

/** Width of a shadow's soft edge. Throws RangeError for a size below zero or distances that are not positive. */
export function penumbra_m({ sourceSize_m, sourceToFlag_m, flagToSurface_m }: FlagGiven): number {
  requireNotNegative({ sourceSize_m, flagToSurface_m });
  requirePositive({ sourceToFlag_m });
  return (sourceSize_m * flagToSurface_m) / sourceToFlag_m;
}

/** Where a flag's shadow begins and where it is full. Throws RangeError outside its domain. */
export function flagCutOf(given: FlagGiven & { readonly edgeOffAxis_m: number }): {
  readonly brightTo_m: number;
  readonly darkFrom_m: number;
  readonly penumbra_m: number;
} {
  const { sourceToFlag_m, flagToSurface_m, edgeOffAxis_m } = given;
  requireFinite({ edgeOffAxis_m });
  const width_m = penumbra_m(given);
  const middle_m = edgeOffAxis_m * (1 + flagToSurface_m / sourceToFlag_m);
  return { brightTo_m: middle_m - width_m / 2, darkFrom_m: middle_m + width_m / 2, penumbra_m: width_m };
}

/** Distance from the source at which a flag has a soft edge of this width. Throws RangeError outside positive inputs. */
export function flagDistance_m(given: {
  readonly sourceSize_m: number;
  readonly sourceToSurface_m: number;
  readonly penumbra_m: number;
}): number {
  requirePositive({ ...given });
  return given.sourceToSurface_m / (1 + given.penumbra_m / given.sourceSize_m);
}

const TAKES = {
  sourceSize_m: { title: 'Size of the source', note: 'across the edge: its lens, its mouth or its diffusion' },
  sourceToFlag_m: 'Source to flag',
  flagToSurface_m: 'Flag to surface',
} as const;
const COMMON = {
  holds: 'A source evenly bright over its size and a flag with a straight edge that lets nothing through.',
  sources: ['penumbra-examples'],
  cautions: ['heat'],
  words: ['flag', 'cutter', 'barn door', 'gobo', 'shadow', 'hard', 'soft', 'penumbra'],
};

export const penumbra = law(penumbra_m, {
  id: 'penumbra',
  title: 'Soft edge of a shadow',
  says: 'How wide the soft edge of a flag’s shadow is.',
  equation: 'p = s · b / a',
  takes: TAKES,
  gives: { penumbra_m: 'Width of the soft edge' },
  example: { sourceSize_m: 0.3, sourceToFlag_m: 1.5, flagToSurface_m: 0.4 },
  ...COMMON,
});

export const flagCut = law(flagCutOf, {
  id: 'flag-cut',
  title: 'Where a flag cuts',
  says: 'Up to where a surface keeps the whole lamp, and from where a flag or barn door hides all of it.',
  equation: 'bright to (e · (a + b) − s · b/2) / a, dark from (e · (a + b) + s · b/2) / a',
  takes: {
    ...TAKES,
    edgeOffAxis_m: { title: 'Edge off the axis', note: 'from the middle of the source, square to the surface' },
  },
  gives: { brightTo_m: 'Whole lamp up to', darkFrom_m: 'None of it from', penumbra_m: 'Width of the soft edge' },
  example: { sourceSize_m: 0.3, sourceToFlag_m: 1.5, flagToSurface_m: 0.4, edgeOffAxis_m: 0.12 },
  ...COMMON,
});

export const flagDistance = law(flagDistance_m, {
  id: 'flag-distance',
  title: 'Where to stand a flag',
  says: 'How far from the lamp a flag has the soft edge that is wanted.',
  equation: 'a = D / (1 + p / s)',
  takes: {
    sourceSize_m: TAKES.sourceSize_m,
    sourceToSurface_m: 'Source to surface',
    penumbra_m: 'Soft edge wanted',
  },
  gives: { sourceToFlag_m: 'Source to flag' },
  example: { sourceSize_m: 0.3, sourceToSurface_m: 1.9, penumbra_m: 0.02 },
  ...COMMON,
});
