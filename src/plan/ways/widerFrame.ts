/** Frame it wider: everything smaller in the picture, sharper in depth, calmer in movement, farther from the lens. */
import { roundedUp } from '../settable.ts';
import { apart_stops, setQuantity, type Move, type MoveContext } from './move.ts';
import { say } from './words.ts';

/** How much wider the frame must be, by how each limit goes with it. */
function factorFor({ margin, lack_stops, number }: MoveContext): number {
  if (margin.id === 'depth') return 2 ** (lack_stops / 2) * (number('magnificationRatio') > 0.3 ? 1.15 : 1.02);
  if (margin.id === 'clearance') return (number('objectDistance_m') + number('clearanceNeeded_m') - number('workingDistance_m')) / number('objectDistance_m') * 1.1;
  if (margin.id === 'focus') return number('magnificationRatio') / number('nearestMagnificationRatio');
  return 2 ** lack_stops;
} // prettier-ignore

export const widerFrame: Move = {
  id: 'wider-frame',
  closes: ['depth', 'blur', 'in-the-picture', 'clearance', 'focus'],
  propose(context) {
    const width_m = context.number('frameWidth_m');
    const factor = factorFor(context);
    if (!(width_m > 0 && factor > 1 && factor < 20)) return [];
    const wider_m = roundedUp(width_m * factor);
    return [
      {
        title: `Frame ${say('length', wider_m)} wide`,
        patch: [setQuantity(context, 'frameWidth', 'length', wider_m)],
        gives_stops: 2 * apart_stops(wider_m, width_m),
      },
    ];
  },
};
