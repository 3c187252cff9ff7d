/** Let another rig of the kit, one that varies less, fire the cue that varies most. */
import type { Rig } from '../../document/schema.ts';
import { cueName } from '../timing/steps.ts';
import { cuesOf, meetingPlaces, timingStructureOf } from '../timing/structure.ts';
import { usualRig } from '../timing/usual.ts';
import type { Move, MoveContext, Proposal } from './move.ts';
import { say } from './words.ts';

/** Cues beyond these count little. */
const MOST_CUES = 2;

/** How far a rig varies: as somebody says, else as is usual for its kind. */
const jitterOf = (rig: Rig): number => rig.jitter_s ?? usualRig(rig.kind)?.jitter_s.value ?? NaN;

function otherRigs({ shoot, effective, number }: MoveContext, place: number): readonly Proposal[] {
  const [id, cue] = cuesOf(effective.shot)[place]!;
  const taken = new Set(cuesOf(effective.shot).map(([, { rig }]) => rig));
  const now_s = number(cueName(place, 'Jitter_s'));
  return Object.entries(shoot.kit.rigs)
    .filter(([rigId, rig]) => !taken.has(rigId) && rig.availability !== 'unwanted' && jitterOf(rig) < now_s)
    .map(([rigId, rig]) => {
      const isHere = (rig.availability ?? 'here') === 'here';
      const hire = [{ op: 'add' as const, path: `/kit/rigs/${rigId}/availability`, value: 'here' }];
      return {
        title: `${isHere ? 'Fire' : 'Hire and fire'} ${rig.title ?? rigId} for ${cue.title ?? id}`,
        says: `it varies by ${say('time', jitterOf(rig))} in place of ${say('time', now_s)}${rig.jitter_s === undefined ? ', as is usual for its kind' : ''}`,
        patch: [...(isHere ? [] : hire), { op: 'add' as const, path: `${effective.at('cues')}/cues/${id}/rig`, value: rigId }],
        gives_stops: isHere ? 0.3 : 1,
      };
    });
} // prettier-ignore

export const steadierRig: Move = {
  id: 'steadier-rig',
  closes: ['meeting'],
  propose(context) {
    const spread = (place: number) => context.number(cueName(place, 'Spread_s'));
    const worst = [...meetingPlaces(timingStructureOf(context.effective.shot))].sort((a, b) => spread(b) - spread(a));
    return worst.slice(0, MOST_CUES).flatMap((place) => otherRigs(context, place));
  },
};
