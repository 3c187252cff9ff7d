/** Fit a tube that is here, to focus nearer; take one off, to focus farther. */
import { setKey, type Move } from './move.ts';

export const fitTube: Move = {
  id: 'fit-tube',
  closes: ['focus'],
  propose(context) {
    const { shoot, effective, margin } = context;
    const fitted = effective.shot.attachments;
    const kit = shoot.kit.attachments;
    if (margin.needName === 'farthestFocus_m')
      return fitted
        .filter((id) => kit[id]?.kind === 'tube')
        .map((id) => ({
          title: `Take off ${kit[id]?.title ?? id}`,
          patch: [setKey(context, 'attachments', fitted.filter((other) => other !== id))],
          gives_stops: 0.1,
        }));
    return Object.entries(kit)
      .filter(([id, { kind, availability }]) => kind === 'tube' && !fitted.includes(id) && (availability ?? 'here') === 'here')
      .map(([id, { title }]) => ({
        title: `Fit ${title ?? id}`,
        patch: [setKey(context, 'attachments', [...fitted, id])],
        gives_stops: 0.2,
      }));
  },
}; // prettier-ignore
