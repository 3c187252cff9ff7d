/** Ask for less room above middle grey: the index may be lower, and bright parts clip sooner. */
import { roundedDown } from '../settable.ts';
import { setQuantity, type Move } from './move.ts';
import { say } from './words.ts';

export const acceptFewerHighlights: Move = {
  id: 'accept-fewer-highlights',
  closes: ['highlights', 'noise'],
  propose(context) {
    const { margin, lack_stops, number } = context;
    const wanted_stops = number('highlightsWanted_stops');
    if (Number.isNaN(wanted_stops)) return [];
    const have_stops = number('headroom_stops');
    const ask_stops = margin.id === 'highlights' ? roundedDown(have_stops) : roundedDown(have_stops - 2 * lack_stops);
    if (!(ask_stops < wanted_stops && ask_stops > 0)) return [];
    return [
      {
        title: `Ask for ${say('stops', ask_stops)} above middle grey`,
        patch: [setQuantity(context, 'highlights', 'stops', ask_stops)],
        gives_stops: wanted_stops - ask_stops,
      },
    ];
  },
};
