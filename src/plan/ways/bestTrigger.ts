/** Set the trigger where the memory holds the action most often. */
import { bestTriggerSettingOf } from '../../laws/chance/triggerCatch.ts';
import type { Move } from './move.ts';
import { keepingIn } from './triggerRoom.ts';

export const bestTrigger: Move = {
  id: 'best-trigger',
  closes: ['trigger-catch'],
  propose(context) {
    const { effective, lack_stops } = context;
    const keeping = keepingIn(context);
    const fixed = effective.shot.trigger.postTriggerFraction;
    if (!keeping || fixed === undefined) return [];
    const { postTriggerFraction } = bestTriggerSettingOf(keeping);
    const percent = `${Math.round(postTriggerFraction * 100)} %`;
    return [
      {
        title: `Keep ${percent} of the memory after the trigger`,
        says: `changes what was fixed, ${Number((fixed * 100).toPrecision(3))} %`,
        patch: [{ op: 'add', path: `${effective.at('trigger')}/trigger/post`, value: percent }],
        gives_stops: Math.min(0.3, lack_stops),
        touchesFixed: true,
      },
    ];
  },
};
