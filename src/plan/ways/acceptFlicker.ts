/** Accept more swing, as far as a grade can still take it out. */
import { showNumber } from '../../base/quantity.ts';
import { FLICKER_GATES_stops } from '../../laws/flicker/visible.ts';
import { roundedUp } from '../settable.ts';
import { apart_stops, setKey, type Move } from './move.ts';

export const acceptFlicker: Move = {
  id: 'accept-flicker',
  closes: ['flicker'],
  propose(context) {
    const { margin } = context;
    const { have = NaN, need = NaN } = margin;
    const swing_stops = roundedUp(have);
    if (!(swing_stops <= FLICKER_GATES_stops.repair && swing_stops > need)) return [];
    return [
      {
        title: `Accept a swing of ${showNumber(swing_stops, 2)} stop`,
        says: `to be taken out in the grade, frame by frame: that holds to about ${FLICKER_GATES_stops.repair} stop, evens out one lamp and not the shadows and highlights of another, and brings back nothing that is clipped`,
        patch: [setKey(context, 'flicker', `${swing_stops} stops`)],
        gives_stops: apart_stops(swing_stops, need),
        touchesFixed: context.effective.shot.flickerAllowed_stops !== undefined,
      },
    ];
  },
};
