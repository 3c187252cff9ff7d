/** Share lamps that ripple in step out over the three phases of the mains, so that their ripples fill each other's gaps. */
import type { PatchOperation } from '../types.ts';
import { flickerNow, type FlickeringLamp } from './flickerNow.ts';
import { alsoLights, type Move, type Proposal } from './move.ts';

/** More lamps than this are shared out one after the other, brightest first, each to where it helps most. */
const MOST_TRIED = 6;

/** The ripple turns twice as fast as the mains: phases a third apart lie two thirds apart in it. */
const TURN = [0, 1, 2].map((phase) => [Math.cos((4 * Math.PI * phase) / 3), Math.sin((4 * Math.PI * phase) / 3)]);

/** What is left of the ripple of lamps on these phases, over what one phase would leave. */
function leftOf(weights: readonly number[], phases: readonly number[]): number {
  const sum = (axis: 0 | 1) => weights.reduce((total, weight, i) => total + weight * TURN[phases[i]!]![axis]!, 0);
  return Math.hypot(sum(0), sum(1));
}

/** The phases that leave least: all there are for a few lamps, else one lamp at a time. */
function bestPhases(weights: readonly number[]): readonly number[] {
  if (weights.length > MOST_TRIED)
    return weights.reduce<number[]>((phases, _, i) => {
      const left = [0, 1, 2].map((phase) => leftOf(weights.slice(0, i + 1), [...phases, phase]));
      return [...phases, left.indexOf(Math.min(...left))];
    }, []);
  let best: readonly number[] = weights.map(() => 0);
  for (let code = 0; code < 3 ** (weights.length - 1); code += 1) {
    const phases = weights.map((_, i) => (i === 0 ? 0 : Math.floor(code / 3 ** (i - 1)) % 3));
    if (leftOf(weights, phases) < leftOf(weights, best) - 1e-12) best = phases;
  }
  return best;
}

export const splitPhases: Move = {
  id: 'split-phases',
  closes: ['flicker'],
  propose(context): readonly Proposal[] {
    const now = flickerNow(context);
    if (!now || (context.shoot.shoot.mains.phaseCount ?? 1) < 3) return [];
    const { setupId } = now;
    const names = new Set(now.lamps.filter(({ isMainsLocked }) => isMainsLocked).map(({ taken }) => taken.inStepWith));
    const moved = [...names].flatMap((name) => rearranged(now.lamps.filter(({ taken }) => taken.inStepWith === name)));
    if (moved.length === 0) return [];
    const patch = moved.map(({ id, phase }): PatchOperation => ({ op: 'add', path: `/lighting/${setupId}/lamps/${id}/phase`, value: phase + 1 })); // prettier-ignore
    return [
      {
        title: `Feed the lamps from ${new Set(moved.map(({ phase }) => phase)).size + 1} phases`,
        says: `shadows and highlights of one lamp keep its ripple; three-phase supplies, the neutral under harmonics and the voltage between neighbouring stands are for a licensed electrician, under the code that holds there${alsoLights(context, setupId)}`,
        patch,
        gives_stops: 0.3,
      },
    ];
  },
}; // prettier-ignore

/** Lamps of one kind that change phase; none where that would not halve what is left. */
function rearranged(lamps: readonly FlickeringLamp[]): readonly { readonly id: string; readonly phase: number }[] {
  if (lamps.length < 2) return [];
  const weights = lamps.map(({ shareFraction }) => shareFraction);
  const now = lamps.map(({ taken }) => taken.phase);
  const best = bestPhases(weights);
  if (!(leftOf(weights, best) < leftOf(weights, now) / 2 + 1e-12)) return [];
  return lamps.flatMap(({ taken }, i) => (best[i] === taken.phase ? [] : [{ id: taken.id, phase: best[i]! }]));
}
