/** Be content with fewer takes that meet or are kept, and roll more of them. */
import { setKey, type Move } from './move.ts';

export const fewerGoodTakes: Move = {
  id: 'fewer-good-takes',
  closes: ['meeting', 'trigger-catch'],
  propose(context) {
    const { margin, effective, lack_stops } = context;
    const { have, need } = margin;
    const percent = Math.floor((have ?? 0) * 100 + 1e-9);
    if (have === undefined || need === undefined || percent < 1) return [];
    const isMeeting = margin.id === 'meeting';
    const path = isMeeting ? `${effective.at('meeting')}/meeting/chance` : `${effective.at('catchFraction')}/catch`;
    const planned = effective.shot.takeCount;
    const takes = planned === undefined ? undefined : Math.ceil((planned * need) / have - 1e-9);
    const more = takes === undefined || takes === planned ? '' : `, and plan ${takes} takes`;
    return [
      {
        title: `Be content with ${percent} % of takes${isMeeting ? ' that meet' : ' kept whole'}${more}`,
        says: 'more resets, more pieces and a longer day',
        patch: [{ op: 'add', path, value: `${percent} %` }, ...(more === '' ? [] : [setKey(context, 'takes', takes!)])],
        gives_stops: lack_stops + Math.log2(need / have),
      },
    ];
  },
};
