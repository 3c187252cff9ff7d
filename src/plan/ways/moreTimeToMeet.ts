/** Allow more time between the first and the last arrival. */
import { writeQuantity } from '../../base/quantity.ts';
import { spreadsMeetFraction } from '../../laws/chance/cuesMeet.ts';
import { roundedUp } from '../settable.ts';
import { cueName } from '../timing/steps.ts';
import { meetingPlaces, timingStructureOf } from '../timing/structure.ts';
import { apart_stops, type Move } from './move.ts';
import { closestThat } from './triggerRoom.ts';
import { say } from './words.ts';

/** More spreads than this hold all arrivals there are. */
const WIDEST_SPREADS = 20;

export const moreTimeToMeet: Move = {
  id: 'more-time-to-meet',
  closes: ['meeting'],
  propose({ effective, number }) {
    const spreads = meetingPlaces(timingStructureOf(effective.shot)).map((place) => number(cueName(place, 'Spread_s')));
    const [now_s, wanted] = [number('meetTolerance_s'), number('meetWantedFraction')];
    const widest_s = WIDEST_SPREADS * Math.max(...spreads);
    const enough_s = closestThat((window_s) => spreadsMeetFraction(spreads, window_s) >= wanted, now_s, widest_s);
    if (enough_s === undefined) return [];
    const tolerance_s = roundedUp(enough_s);
    return [
      {
        title: `Let them meet within ${say('time', tolerance_s)}`,
        says: 'further apart in the picture at the moment they meet',
        patch: [{ op: 'add', path: `${effective.at('meeting')}/meeting/tolerance`, value: writeQuantity('time', tolerance_s) }],
        gives_stops: apart_stops(tolerance_s, now_s),
      },
    ];
  },
}; // prettier-ignore
