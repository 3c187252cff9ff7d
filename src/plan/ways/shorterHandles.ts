/** Keep less before and after the action. */
import { roundedDown } from '../settable.ts';
import { setQuantity, type Move } from './move.ts';
import { say } from './words.ts';

export const shorterHandles: Move = {
  id: 'shorter-handles',
  closes: ['buffer'],
  propose(context) {
    const { number } = context;
    const handles_s = number('handles_s');
    const room_s = (number('recordTime_s') - number('coveredTime_s')) / 2;
    if (!(handles_s > 0) || room_s >= handles_s) return [];
    const shorter_s = room_s > 0 ? roundedDown(room_s) : 0;
    return [
      {
        title: shorter_s === 0 ? 'Keep no handles' : `Keep handles of ${say('time', shorter_s)}`,
        says: 'less room for a late trigger',
        patch: [setQuantity(context, 'handles', 'time', shorter_s)],
        gives_stops: shorter_s === 0 ? 2 : Math.log2(handles_s / shorter_s),
      },
    ];
  },
};
