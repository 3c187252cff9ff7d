/** Leave a deliverable out of this shot, where its crop is what falls short. */
import { deliverablesOf } from '../givens.ts';
import { setKey, type Move } from './move.ts';

export const leaveOut: Move = {
  id: 'leave-out',
  closes: ['picture-size', 'in-the-picture'],
  propose(context) {
    const { shoot, effective, margin } = context;
    const ids = deliverablesOf(shoot, effective.shot);
    const place = /\d+/.exec(margin.needName)?.[0];
    const out = place === undefined ? undefined : ids[Number(place)];
    // The first deliverable frames the shot: without it the shot would be another.
    if (out === undefined || out === ids[0] || ids.length < 2) return [];
    return [
      {
        title: `Leave ${shoot.deliverables[out]?.title ?? out} out of this shot`,
        says: 'that version is cut without it',
        patch: [setKey(context, 'deliverables', ids.filter((id) => id !== out))],
        gives_stops: 2,
      },
    ];
  },
}; // prettier-ignore
