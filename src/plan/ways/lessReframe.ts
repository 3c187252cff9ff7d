/** Hold back less of the picture for repositioning. */
import { setKey, type Move } from './move.ts';

export const lessReframe: Move = {
  id: 'less-reframe',
  closes: ['picture-size', 'in-the-picture'],
  propose(context) {
    const { lack_stops, number } = context;
    const held = number('reframeFraction');
    if (!(held > 0)) return [];
    const kept = Math.max(0, Math.floor((1 - (1 - held) * 2 ** lack_stops) * 100) / 100);
    return [
      {
        title:
          kept === 0
            ? 'Hold nothing back for repositioning'
            : `Hold back ${Math.round(kept * 100)} % for repositioning`,
        patch: [setKey(context, 'reframe', kept === 0 ? 0 : `${Math.round(kept * 100)} %`)],
        gives_stops: 0.5,
      },
    ];
  },
};
