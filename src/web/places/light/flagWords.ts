/** What a flag takes away, in words. */
import type { UnitSystem } from '../../../base/quantity.ts';
import type { FlagTakes } from '../../../plan/flagTakes.ts';
import { lightSaid, stopsSaid } from './lightWords.ts';

/** Less than this of the light at the subject is nothing anybody reads. */
const LEAST_stops = 0.005;

/** "takes 8 klx, −1.2 stops"; "takes all the light"; "takes nothing at the subject". */
export function takesSaid({ taken_lx, stops, hidesFace }: FlagTakes, system: UnitSystem): string {
  const face = hidesFace ? ['hides the face behind'] : [];
  if (Number.isNaN(taken_lx)) return face[0] ?? 'not known';
  if (!(stops < -LEAST_stops)) return face[0] ?? 'takes nothing at the subject';
  const light = Number.isFinite(stops) ? `takes ${lightSaid(taken_lx, system)}, ${stopsSaid(stops)}` : 'takes all the light';
  return [light, ...face].join('; ');
} // prettier-ignore
