/** Ask for what there is: the limit's own wish, brought down to it. */
import { roundedDown, roundedUp } from '../settable.ts';
import type { KindName } from '../../base/kinds.ts';
import type { LimitId } from '../types.ts';
import { apart_stops, setQuantity, type Move } from './move.ts';
import { say } from './words.ts';

interface Wish {
  readonly key: string;
  readonly kind: KindName;
  readonly title: (said: string) => string;
}

const WISHES: Readonly<Partial<Record<LimitId, Wish>>> = {
  diffraction: { key: 'diffraction', kind: 'pixels', title: (said) => `Accept a diffraction disc of ${said}` },
  clearance: { key: 'clearance', kind: 'length', title: (said) => `Make do with ${said} of clearance` },
  'hero-life': { key: 'hero/lightOn', kind: 'time', title: (said) => `Light it for ${said} a take` },
};

export const askLess: Move = {
  id: 'ask-less',
  closes: ['diffraction', 'clearance', 'hero-life'],
  propose(context) {
    const { margin, number } = context;
    const wish = WISHES[margin.id];
    const { have, need } = margin;
    if (!wish || have === undefined || need === undefined || !(have > 0)) return [];
    if (margin.id === 'clearance' && number('reachTowardsLens_m') > have) return [];
    const value = margin.sense === 'at-most' ? roundedUp(have * 1.03) : roundedDown(have * 0.99);
    return [
      {
        title: wish.title(say(wish.kind, value)),
        ...(margin.id === 'hero-life'
          ? { says: 'focus and rehearse on a stand-in, and strike the lamps between takes' }
          : {}),
        patch: [setQuantity(context, wish.key, wish.kind, value)],
        gives_stops: apart_stops(have, need),
      },
    ];
  },
};
