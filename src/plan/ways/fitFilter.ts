/** Take a filter off where light is short; fit one that is here where highlights are. */
import { setKey, type Move } from './move.ts';

export const fitFilter: Move = {
  id: 'fit-filter',
  closes: ['light', 'noise', 'highlights'],
  propose(context) {
    const { shoot, effective, margin } = context;
    const fitted = effective.shot.attachments;
    const kit = shoot.kit.attachments;
    if (margin.id !== 'highlights')
      return fitted
        .filter((id) => (kit[id]?.loss_stops ?? 0) > 0 && kit[id]?.kind !== 'tube')
        .map((id) => ({
          title: `Take off ${kit[id]?.title ?? id}`,
          says: kit[id]?.kind === 'glass' ? 'nothing then shields the lens: check the splash first' : 'what it was fitted for is lost',
          patch: [setKey(context, 'attachments', fitted.filter((other) => other !== id))],
          gives_stops: kit[id]?.kind === 'glass' ? 2 : 0.5,
        }));
    return Object.entries(kit)
      .filter(([id, { kind, availability }]) => kind === 'nd' && !fitted.includes(id) && (availability ?? 'here') === 'here')
      .map(([id, { title }]) => ({
        title: `Fit ${title ?? id}`,
        patch: [setKey(context, 'attachments', [...fitted, id])],
        gives_stops: 0.1,
      }));
  },
}; // prettier-ignore
