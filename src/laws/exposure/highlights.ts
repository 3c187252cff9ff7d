/**
 * Highlights: the room between middle grey and clipping, as the camera is rated.
 *
 *     room = base room + log2(S / S0) − over        S = S0 · 2^(wanted − base room + over)
 *
 * S exposure index        S0 base index, at which the base room was found        over overexposure of middle grey, stops
 *
 * Clipping is a number of electrons and stays where it is; the index only says where middle grey is put below it. Rated a
 * stop higher, the same sensor is given half the light: middle grey lies a stop lower, with a stop more above it and a
 * stop less below it, nearer the noise. Holds where the index is a note on the recording, or a gain applied after a
 * sensor that clips first. A camera that applies gain before conversion clips at the converter and wins nothing.
 *
 * @source index-rating common practice
 */
import { requireFinite, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

/** Stops between middle grey and clipping; negative once middle grey clips. Throws RangeError outside its domain. */
export function highlightHeadroom_stops({
  baseHeadroom_stops,
  isoSpeed,
  baseIsoSpeed,
  overexposure_stops = 0,
}: {
  readonly baseHeadroom_stops: number;
  readonly isoSpeed: number;
  readonly baseIsoSpeed: number;
  readonly overexposure_stops?: number;
}): number {
  requireFinite({ baseHeadroom_stops, overexposure_stops });
  requirePositive({ isoSpeed, baseIsoSpeed });
  return baseHeadroom_stops + Math.log2(isoSpeed / baseIsoSpeed) - overexposure_stops;
}

/** The lowest index that leaves the room wanted above middle grey. Throws RangeError outside its domain. */
export function lowestIsoSpeed({
  wantedHeadroom_stops,
  baseHeadroom_stops,
  baseIsoSpeed,
  overexposure_stops = 0,
}: {
  readonly wantedHeadroom_stops: number;
  readonly baseHeadroom_stops: number;
  readonly baseIsoSpeed: number;
  readonly overexposure_stops?: number;
}): number {
  requireFinite({ wantedHeadroom_stops, baseHeadroom_stops, overexposure_stops });
  requirePositive({ baseIsoSpeed });
  return baseIsoSpeed * 2 ** (wantedHeadroom_stops - baseHeadroom_stops + overexposure_stops);
}

const CAMERA = {
  baseHeadroom_stops: 'Room above middle grey at the base index',
  baseIsoSpeed: { title: 'Base index', as: 'isoSpeed' },
} as const;
const OVER = {
  overexposure_stops: {
    title: 'Overexposure of middle grey',
    default: 0,
    note: 'how far the light lies above what the index asks for; negative below it',
  },
} as const;

const COMMON = {
  holds: 'The index is a note, or a gain after a sensor that clips first. Gain before conversion wins nothing.',
  sources: ['index-rating'],
  words: ['headroom', 'clip', 'blown out', 'latitude', 'specular', 'EI', 'rating'],
};

export const highlightHeadroom = law(highlightHeadroom_stops, {
  id: 'highlight-room',
  title: 'Room above middle grey',
  says: 'How many stops the highlights may lie above middle grey before they clip.',
  equation: 'room = base room + log2(S / S0) − over',
  takes: { ...CAMERA, isoSpeed: { title: 'Exposure index', as: 'isoSpeed' }, ...OVER },
  gives: { headroom_stops: 'Room above middle grey' },
  example: { baseHeadroom_stops: 5, isoSpeed: 1600, baseIsoSpeed: 500 },
  ...COMMON,
});

export const lowestIndex = law(lowestIsoSpeed, {
  id: 'lowest-index',
  title: 'Lowest index that keeps the highlights',
  says: 'The lowest index that leaves the room wanted above middle grey.',
  equation: 'S = S0 · 2^(wanted − base room + over)',
  takes: { wantedHeadroom_stops: 'Room wanted above middle grey', ...CAMERA, ...OVER },
  gives: { isoSpeed: { title: 'Lowest exposure index', as: 'isoSpeed' } },
  example: { wantedHeadroom_stops: 6, baseHeadroom_stops: 5, baseIsoSpeed: 500 },
  ...COMMON,
});
