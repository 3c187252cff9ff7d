/** Keep less before and after the action. */
import { roundedDown } from '../settable.ts';
import { setQuantity, type Move, type MoveContext } from './move.ts';
import { catchesEnough, closestThat, keepingIn } from './triggerRoom.ts';
import { say } from './words.ts';

/** The longest handles with which the memory holds the action often enough; none where even none would not do. */
function handlesCaught_s(context: MoveContext): number {
  const keeping = keepingIn(context);
  const holds = (handle_s: number) => keeping !== undefined && catchesEnough(context, { ...keeping, headHandle_s: handle_s, tailHandle_s: handle_s }); // prettier-ignore
  return closestThat(holds, context.number('handles_s'), 0) ?? 0;
}

export const shorterHandles: Move = {
  id: 'shorter-handles',
  closes: ['buffer', 'trigger-catch'],
  propose(context) {
    const { margin, number } = context;
    const handles_s = number('handles_s');
    const room_s =
      margin.id === 'buffer' ? (number('recordTime_s') - number('coveredTime_s')) / 2 : handlesCaught_s(context);
    if (!(handles_s > 0) || room_s >= handles_s) return [];
    const shorter_s = room_s > 0 ? roundedDown(room_s) : 0;
    return [
      {
        title: shorter_s === 0 ? 'Keep no handles' : `Keep handles of ${say('time', shorter_s)}`,
        says: margin.id === 'buffer' ? 'less room for a late trigger' : 'less to choose the cut from',
        patch: [setQuantity(context, 'handles', 'time', shorter_s)],
        gives_stops: shorter_s === 0 ? 2 : Math.log2(handles_s / shorter_s),
      },
    ];
  },
};
