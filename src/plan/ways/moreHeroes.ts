/** Enough pieces for the takes: prepare more, or keep fewer takes. */
import { takesAtConfidenceCount } from '../../laws/chance/takes.ts';
import { setKey, type Move } from './move.ts';

const pieces = (count: number): string => (count === 1 ? '1 piece' : `${count} pieces`);

export const prepareMore: Move = {
  id: 'prepare-more',
  closes: ['heroes'],
  propose({ effective, number }) {
    const id = effective.shot.hero.product;
    const onHand = number('pieceCount');
    const wanted = Math.ceil(number('piecesNeededCount') + number('piecesElsewhereCount'));
    if (id === undefined || !(onHand >= 0) || !(wanted > onHand)) return [];
    return [
      {
        title: `Prepare ${pieces(wanted - onHand)} more`,
        says: 'bought, dressed and kept fresh by somebody; for every shot that uses it',
        patch: [{ op: 'add', path: `/kit/products/${id}/pieces`, value: wanted }],
        gives_stops: onHand > 0 ? Math.log2(wanted / onHand) : 1,
      },
    ];
  },
};

export const keepFewer: Move = {
  id: 'keep-fewer',
  closes: ['heroes'],
  propose(context) {
    const { number } = context;
    const [good, share, each, left] = [number('goodTakeCount'), number('goodTakeFraction'), number('perTakeCount'), number('piecesLeftCount')]; // prettier-ignore
    for (let kept = good - 1; kept >= 1; kept -= 1) {
      let takes: number;
      try {
        takes = takesAtConfidenceCount({ goodTakeCount: kept, goodTakeFraction: share });
      } catch (error) {
        if (error instanceof RangeError) return [];
        throw error;
      }
      if (takes * each > left) continue;
      return [
        {
          title: kept === 1 ? 'Be content with 1 good take' : `Be content with ${kept} good takes`,
          says: 'fewer to choose from in the edit',
          // The share that comes out good stays what it was, whoever worked it out.
          patch: [setKey(context, 'kept', kept), setKey(context, 'good', `${Number((share * 100).toPrecision(4))} %`)],
          gives_stops: Math.log2(good / kept),
        },
      ];
    }
    return [];
  },
};
