/**
 * Stops between two settings: how many times the light is halved in going from the first to the second.
 *
 *     stops = log2(H1/H2) = 2 · log2(N2/N1) = log2(t1/t2) = log2(f2/f1) at one shutter angle
 *
 * H exposure        N stop        t exposure time, s        f frame rate, fps        1 from, 2 to
 *
 * Positive where light is lost, so the result is what must be given back. Exact stops are meant: T5.6 is 5.6569; the
 * number 5.6 itself lies 0.03 stop wider.
 *
 * @source f-number-article a stop is a halving, by a factor √2 in aperture diameter
 * @source ramp-thread the loss from frame rate at one shutter angle
 */
import { requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

/** How many stops one exposure is above another; negative if below. Throws RangeError outside positive inputs. */
export function stopsBetween({ more, less }: { readonly more: number; readonly less: number }): number {
  requirePositive({ more, less });
  return Math.log2(more / less);
}

/** Light lost in going from one stop to another, in stops. Throws RangeError outside positive inputs. */
export function stopsBetweenStops({
  fromStop,
  toStop,
}: {
  readonly fromStop: number;
  readonly toStop: number;
}): number {
  requirePositive({ fromStop, toStop });
  return 2 * Math.log2(toStop / fromStop);
}

/** Light lost in going from one exposure time to another, in stops. Throws RangeError outside positive inputs. */
export function stopsBetweenTimes({
  fromTime_s,
  toTime_s,
}: {
  readonly fromTime_s: number;
  readonly toTime_s: number;
}): number {
  requirePositive({ fromTime_s, toTime_s });
  return Math.log2(fromTime_s / toTime_s);
}

/** Light lost in going from one frame rate to another at one angle, in stops. Throws RangeError outside positive inputs. */
export function stopsOfFrameRates({
  fromRate_fps,
  toRate_fps,
}: {
  readonly fromRate_fps: number;
  readonly toRate_fps: number;
}): number {
  requirePositive({ fromRate_fps, toRate_fps });
  return Math.log2(toRate_fps / fromRate_fps);
}

const LOST = { lost_stops: 'Light lost' };

export const exposureStops = law(stopsBetween, {
  id: 'stops-between',
  title: 'Stops between two lights',
  says: 'How many stops one light or exposure is above another.',
  equation: 'stops = log2(more / less)',
  takes: {
    more: { title: 'The greater', as: 'ratio', note: 'any unit, the same in both' },
    less: { title: 'The lesser', as: 'ratio' },
  },
  gives: { difference_stops: 'Difference' },
  holds: 'Both in one unit, of light or of exposure: lux and lux, seconds and seconds.',
  sources: ['f-number-article'],
  words: ['ratio', 'lighting ratio', 'key to fill', 'doublings', 'EV'],
  example: { more: 40_000, less: 2500 },
});

export const apertureStops = law(stopsBetweenStops, {
  id: 'stops-between-apertures',
  title: 'Stops between two apertures',
  says: 'How much light is lost by stopping down from one aperture to another.',
  equation: 'stops = 2 · log2(N2 / N1)',
  takes: { fromStop: { title: 'From', as: 'tStop' }, toStop: { title: 'To', as: 'tStop' } },
  gives: LOST,
  holds: 'Marked stops are taken as the exact powers of √2 that they stand for.',
  sources: ['f-number-article'],
  words: ['stop down', 'open up', 'iris', 'f-stop'],
  example: { fromStop: 2 ** 1.5, toStop: 8 },
});

export const timeStops = law(stopsBetweenTimes, {
  id: 'stops-between-times',
  title: 'Stops between two exposure times',
  says: 'How much light is lost by shortening the exposure.',
  equation: 'stops = log2(t1 / t2)',
  takes: { fromTime_s: 'From', toTime_s: 'To' },
  gives: LOST,
  holds: 'Steady light. A sensor shows no reciprocity failure at these times; film does.',
  sources: ['f-number-article'],
  words: ['shutter speed', 'shorter shutter'],
  example: { fromTime_s: 1 / 48, toTime_s: 1 / 2000 },
});

export const frameRateStops = law(stopsOfFrameRates, {
  id: 'stops-between-rates',
  title: 'Stops lost to a frame rate',
  says: 'How much light is lost by running faster at the same shutter angle.',
  equation: 'stops = log2(f2 / f1)',
  takes: { fromRate_fps: 'From', toRate_fps: 'To' },
  gives: LOST,
  holds: 'The shutter angle stays as it is, so the exposure time shortens with the frame.',
  sources: ['ramp-thread'],
  words: ['overcrank', 'slow motion', 'high speed compensation', 'ramp'],
  example: { fromRate_fps: 24, toRate_fps: 1000 },
});
