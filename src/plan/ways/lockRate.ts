/** Take a frame rate that the ripple of the mains is a multiple of, so that every frame meets the same light. */
import { lockDrift_Hz, lockedRates_fps } from '../../laws/flicker/cures.ts';
import { mainsDrift } from '../flickerFigures.ts';
import { flickerNow, ripplesOf } from './flickerNow.ts';
import { apart_stops, setKey, type Move, type Proposal } from './move.ts';
import { say } from './words.ts';

/** A rate this much slower or faster is another shot. */
const MOST_APART_stops = 1;

export const lockRate: Move = {
  id: 'lock-rate',
  closes: ['flicker'],
  propose(context): readonly Proposal[] {
    const now = flickerNow(context);
    // Lamps with a rate of their own drift too far for any lock.
    if (!now || now.lamps.length === 0 || !now.lamps.every(({ isMainsLocked }) => isMainsLocked)) return [];
    const { frameRate_fps } = now.at;
    const ripple_Hz = Math.min(...ripplesOf(now.lamps));
    const [slowest_fps, fastest_fps] = [frameRate_fps * 2 ** -MOST_APART_stops, frameRate_fps * 2 ** MOST_APART_stops];
    const rates = lockedRates_fps({ ripple_Hz, slowest_fps, fastest_fps });
    const { mains_Hz } = now.found;
    const drift = mainsDrift(context.shoot, mains_Hz);
    const creep_Hz = lockDrift_Hz({ mains_Hz, driftFraction: drift });
    const isFixed = context.effective.shot.rate !== undefined;
    const faster = rates.find((rate) => rate >= frameRate_fps);
    const slower = rates.findLast((rate) => rate < frameRate_fps);
    return [faster, slower]
      .flatMap((rate) => rate ?? [])
      .map((rate) => ({
        title: `Record at ${say('rate', rate)}`,
        says: `every frame meets the same light, which is no average: mains off by ${Number((100 * drift).toPrecision(2))} % creep through the ripple ${Number(creep_Hz.toPrecision(2))} times a second, and takes can differ${isFixed ? '; changes the rate that was fixed' : ''}`,
        patch: [setKey(context, 'rate', Number.isInteger(rate) ? rate : `${ripple_Hz}/${Math.round(ripple_Hz / rate)}`)],
        gives_stops: apart_stops(rate, frameRate_fps),
        touchesFixed: isFixed,
      }));
  },
}; // prettier-ignore
