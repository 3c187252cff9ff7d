/** Let the controller that fires the rigs trigger the camera too: with its first signal, or with one as the action starts. */
import type { Written } from '../../document/written.ts';
import { cuesOf } from '../timing/structure.ts';
import type { Move, Proposal } from './move.ts';

export const electricTrigger: Move = {
  id: 'electric-trigger',
  closes: ['trigger-catch'],
  propose({ effective, number }) {
    const { shot } = effective;
    if (shot.trigger.by === 'electric' || cuesOf(shot).length === 0 || !Number.isFinite(number('firstSignal_s'))) return [];
    const to = (title: string, value: Written): Proposal => ({
      title,
      says: 'a lead from the controller to the camera; what was written of the other trigger goes',
      patch: [{ op: 'add', path: `${effective.at('trigger')}/trigger`, value }],
      gives_stops: 0.4,
      touchesFixed: shot.trigger.postTriggerFraction !== undefined,
    });
    return [
      to('Trigger by the first signal to the rigs', { by: 'electric' }),
      to('Trigger by a signal of the controller as the action starts', { by: 'electric', answers: '0 s' }),
    ];
  },
}; // prettier-ignore
