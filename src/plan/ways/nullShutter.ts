/** Open the shutter for whole periods of the lamps' ripple, where the frame is long enough for one. */
import { showShutter } from '../../base/quantity.ts';
import { sayList } from '../../base/sayList.ts';
import { nullShutters, sharedNullShutters } from '../../laws/flicker/cures.ts';
import { flickerNow, ripplesOf, type FlickerNow } from './flickerNow.ts';
import { apart_stops, setQuantity, type Move, type MoveContext, type Proposal } from './move.ts';

interface Null {
  readonly exposureTime_s: number;
  readonly of: string;
  readonly isMainsLocked: boolean;
}

/** Exposures that hold whole periods of every lamp's ripple; else of the one that flickers most. */
function nullsOf({ lamps, at }: FlickerNow): readonly Null[] {
  const known = lamps.filter(({ isRateKnown }) => isRateKnown);
  const [first] = known;
  if (!first) return [];
  const { frameRate_fps } = at;
  const isLocked = known.every(({ isMainsLocked }) => isMainsLocked);
  const titles = sayList([...new Set(known.map(({ taken }) => taken.title))]);
  const shared = sharedNullShutters({ ripples_Hz: ripplesOf(known), frameRate_fps }).map((exposureTime_s) => ({ exposureTime_s, of: titles, isMainsLocked: isLocked })); // prettier-ignore
  const own = nullShutters({ ripple_Hz: first.ripple_Hz, frameRate_fps }).map(({ exposureTime_s }) => ({ exposureTime_s, of: first.taken.title, isMainsLocked: first.isMainsLocked })); // prettier-ignore
  return shared.length > 0 ? shared : own;
}

/** The nearest on either side of the shutter there is: longer blurs more, shorter asks for more light. */
function nearest(nulls: readonly Null[], exposureTime_s: number, longest_s: number): readonly Null[] {
  const fitting = nulls.filter((of) => of.exposureTime_s <= longest_s * (1 + 1e-9));
  const longer = fitting.find((of) => of.exposureTime_s >= exposureTime_s);
  const shorter = fitting.findLast((of) => of.exposureTime_s < exposureTime_s);
  return [longer, shorter].flatMap((of) => of ?? []);
}

const FORGIVES = ', which forgives mains that drift';
const OWN_RATE =
  '; a rate of their own that is not quite as written leaves some of it: the low end of the band says how much';

export const nullShutter: Move = {
  id: 'null-shutter',
  closes: ['flicker'],
  propose(context: MoveContext): readonly Proposal[] {
    const now = flickerNow(context);
    if (!now) return [];
    const { exposureTime_s } = now.at;
    const isFixed = context.effective.shot.shutter !== undefined;
    return nearest(nullsOf(now), exposureTime_s, context.number('longestExposure_s')).map((of) => ({
      title: `Set the shutter to ${showShutter(of.exposureTime_s).number} s`,
      says: `whole periods of ${of.of} in every exposure${of.isMainsLocked ? FORGIVES : OWN_RATE}${isFixed ? '; changes the shutter that was fixed' : ''}`,
      patch: [setQuantity(context, 'shutter', 'time', of.exposureTime_s)],
      gives_stops: apart_stops(of.exposureTime_s, exposureTime_s) / 2,
      touchesFixed: isFixed,
    }));
  },
};
