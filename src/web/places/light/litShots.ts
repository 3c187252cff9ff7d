/** Which shots a set-up lights. */
import { withDefaults } from '../../../plan/givens.ts';
import type { OpenShoot } from '../../state/contract.ts';
import type { LitShot } from './lightContext.ts';

/** Shots lit by a set-up, in their order, each with its plan and its margin of light. */
export function shotsLitBy({ shoot, plan }: Pick<OpenShoot, 'shoot' | 'plan'>, setupId: string): readonly LitShot[] {
  return plan.shots.flatMap((each): readonly LitShot[] => {
    if (!shoot.shots[each.id]) return [];
    const { shot } = withDefaults(shoot, each.id);
    if (shot.lighting !== setupId) return [];
    return [{ id: each.id, plan: each, shot, margin: each.margins.find(({ id }) => id === 'light') }];
  });
}

/** Shots that no set-up lights yet, which could be given this one. */
export function shotsUnlit({ shoot, plan }: Pick<OpenShoot, 'shoot' | 'plan'>, setupId: string): readonly { readonly id: string; readonly title: string }[] {
  return plan.shots.filter(({ id }) => shoot.shots[id] && withDefaults(shoot, id).shot.lighting !== setupId);
} // prettier-ignore
