/** Focus and rehearse on a stand-in, so that the hero is lit for the roll alone. */
import { gathering, stepTime } from '../day/usual.ts';
import { medianOf_s } from '../day/lasting.ts';
import { roundedUp } from '../settable.ts';
import { apart_stops, setQuantity, type Move } from './move.ts';
import { say } from './words.ts';

export const standIn: Move = {
  id: 'stand-in',
  closes: ['hero-life'],
  propose(context) {
    const { shoot, shotId, margin } = context;
    const { have, need } = margin;
    if (have === undefined || need === undefined) return [];
    // Arming, counting in and rolling, as the shot or the day says, or as is usual.
    const roll_s = roundedUp(medianOf_s(stepTime(shoot, shotId, 'roll', gathering())));
    if (!(roll_s > 0) || roll_s >= need) return [];
    return [
      {
        title: `Light the hero for the roll alone, ${say('time', roll_s)}`,
        says: 'lamps burn in, focus and rehearsal are on a stand-in of the same size and shine; the hero goes in last',
        patch: [setQuantity(context, 'hero/lightOn', 'time', roll_s)],
        gives_stops: Math.min(1, apart_stops(roll_s, need)),
      },
    ];
  },
};
