/**
 * Whose shake it is: windows that go with the whole picture and windows that do not are told apart, and each lot is judged
 * by itself. Where everything goes together, the camera shakes or all that it sees does, and one view cannot tell which.
 * Where something stands, the camera does, and it is the other part that shakes.
 */
import { medianOf } from '../base/median.ts';
import { KEPT_OF_WINDOW } from './anchors.ts';
import { shakeOf, type Shake, type ShakeGiven } from './shake.ts';

export interface ShakePart extends Pick<Shake, 'rms_px' | 'most_px' | 'rate_Hz' | 'onset'> {
  /** Where its middle lies: −1 left to 1 right, −1 top to 1 bottom. */
  readonly centre: readonly [across: number, down: number];
  /** Windows that it shows in, and whether it stands. */
  readonly windows: number;
  readonly isStill: boolean;
}

/** Whose shake: of everything together, of a part while the rest stands, or of two parts each its own way. */
export type Whose = 'all' | 'part' | 'parts';

export interface WindowShake extends Shake {
  /** Absent where nothing shakes, or too few windows can be followed. */
  readonly whose?: Whose;
  /** The part that goes with most of the picture and the one that does not, where there are two. */
  readonly parts?: readonly ShakePart[];
}

export interface WindowsGiven extends ShakeGiven {
  /** Of each frame, window by window from the top left: where it lies across and down, px, and 1 where that could be told. */
  readonly windows: Float32Array;
  readonly across: number;
  readonly down: number;
}

/** Share of the frames in which a window must be found again: what changes in itself is no part that shakes. */
const FOUND_AGAIN = 0.7;
/** Windows that must agree on a shake of their own; one alone is a thing that moves. */
const FEWEST_WINDOWS = 2;
/** Agreement of two windows: what they do together over what they do at all. */
const TOGETHER = 0.7;

interface Place extends Pick<ShakeGiven, 'x_px' | 'y_px' | 'weights'> {
  readonly centre: readonly [across: number, down: number];
}

function placesOf({ windows, across, down, weights }: WindowsGiven): readonly Place[] {
  const [stride, frames] = [KEPT_OF_WINDOW * across * down, weights.length];
  const counted = weights.reduce((sum, weight) => sum + weight, 0);
  const middle = (at: number, count: number): number => (count > 1 ? (2 * at) / (count - 1) - 1 : 0);
  return Array.from({ length: across * down }, (_, window): Place => {
    const column = (of: number) => Float64Array.from({ length: frames }, (__, frame) => windows[frame * stride + KEPT_OF_WINDOW * window + of]!); // prettier-ignore
    const told = column(2).map((is, frame) => is * weights[frame]!);
    const centre = [middle(window % across, across), middle(Math.floor(window / across), down)] as const;
    return { x_px: column(0), y_px: column(1), weights: told, centre };
  }).filter(({ weights: told }) => told.reduce((sum, weight) => sum + weight, 0) > FOUND_AGAIN * counted);
}

/** A place as it lies against another. */
const against = (place: Place, { x_px, y_px, weights }: Pick<ShakeGiven, 'x_px' | 'y_px' | 'weights'>): Place => ({
  ...place,
  x_px: place.x_px.map((x, i) => x - x_px[i]!),
  y_px: place.y_px.map((y, i) => y - y_px[i]!),
  weights: place.weights.map((weight, i) => weight * Math.min(1, weights[i]!)),
});

/** How far two places do the same, frame by frame: 1 where they do nothing else. */
function togetherness(a: Place, b: Place): number {
  let [same, squares] = [0, 0];
  const [ax, ay, bx, by] = [medianOf(a.x_px), medianOf(a.y_px), medianOf(b.x_px), medianOf(b.y_px)];
  for (let i = 0; i < a.x_px.length; i += 1) {
    const weight = a.weights[i]! * b.weights[i]!;
    const [x, y, u, v] = [a.x_px[i]! - ax, a.y_px[i]! - ay, b.x_px[i]! - bx, b.y_px[i]! - by];
    same += weight * (x * u + y * v);
    squares += (weight * (x * x + y * y + u * u + v * v)) / 2;
  }
  return squares > 0 ? same / squares : 0;
}

/** Several places as one: the middle of those that could be told. */
function middleOf(places: readonly Place[]): Place {
  const count = places[0]!.weights.length;
  const [x_px, y_px, weights] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  for (let i = 0; i < count; i += 1) {
    const told = places.filter((place) => place.weights[i]! > 0);
    if (told.length < Math.max(1, places.length / 2)) continue;
    x_px[i] = medianOf(told.map((place) => place.x_px[i]!));
    y_px[i] = medianOf(told.map((place) => place.y_px[i]!));
    weights[i] = 1;
  }
  const mean = (axis: 0 | 1): number => places.reduce((sum, { centre }) => sum + centre[axis], 0) / places.length;
  return { x_px, y_px, weights, centre: [mean(0), mean(1)] };
}

/** Words for where a part lies on a set: what stands on a table is low in the picture and in its middle. */
export function placeOfPart([across, down]: ShakePart['centre']): string {
  const beside = across < -0.4 ? ' left' : across > 0.4 ? ' right' : '';
  if (down > 0.25) return beside === '' ? 'at the bottom, where the table is' : `at the bottom${beside}`;
  if (down < -0.25) return `at the top${beside}`;
  return beside === '' ? 'in the middle' : `on the${beside}`;
}

const whatLies = ({ centre }: ShakePart): string => {
  const place = placeOfPart(centre);
  return `What lies ${place}${place.includes(',') ? ',' : ''}`;
};

function partOf(places: readonly Place[], given: ShakeGiven): ShakePart & { readonly verdict: Shake['verdict'] } {
  const { frameRate_fps, cell_px } = given;
  const { centre, ...series } = middleOf(places);
  const { verdict, rms_px, most_px, rate_Hz, onset } = shakeOf({ ...series, frameRate_fps, cell_px });
  return {
    centre,
    windows: places.length,
    verdict,
    isStill: verdict === 'still',
    rms_px,
    most_px,
    ...(rate_Hz !== undefined && { rate_Hz }),
    ...(onset !== undefined && { onset }),
  };
}

const WHY_ALL = 'Everything moves by the same: the camera, or the table with all that is seen; which, cannot be told from one view.'; // prettier-ignore

/** The shake of a clip and whose it is. */
export function windowShakeOf(given: WindowsGiven): WindowShake {
  const whole = shakeOf(given);
  const isAll = whole.verdict === 'shakes';
  const all: WindowShake = isAll ? { ...whole, whose: 'all', why: WHY_ALL } : whole;
  if (whole.verdict === 'cannot tell') return whole;
  const places = placesOf(given);
  const apart = places.map((place) => ({ place, off: against(place, given) }));
  const strays = apart.filter(({ off }) => shakeOf({ ...off, frameRate_fps: given.frameRate_fps, cell_px: given.cell_px }).verdict === 'shakes'); // prettier-ignore
  const own = strays.filter((one) => strays.some((other) => other !== one && togetherness(one.off, other.off) > TOGETHER)); // prettier-ignore
  const others = apart.filter((one) => !strays.includes(one));
  if (places.length < 2 * FEWEST_WINDOWS && isAll) return { ...whole, why: 'Too few parts of the picture can be followed to tell whose shake it is.' }; // prettier-ignore
  if (own.length < FEWEST_WINDOWS || others.length < FEWEST_WINDOWS) return all;
  const [rest, part] = [others, own].map((of) => partOf(of.map(({ place }) => place), given)); // prettier-ignore
  const told = [rest!, part!].map(({ verdict: _, ...of }): ShakePart => of);
  if (rest!.verdict === 'moves' || part!.verdict === 'moves') return all;
  if (rest!.isStill && part!.isStill) return all;
  if (!rest!.isStill && !part!.isStill)
    return { ...whole, verdict: 'shakes', whose: 'parts', parts: told, why: `${whatLies(part!)} shakes otherwise than the rest: the camera may shake, and that part does by itself.` }; // prettier-ignore
  const shaking = rest!.isStill ? part! : rest!;
  const { rms_px, most_px, rate_Hz, onset } = shaking;
  const { rate_Hz: _, onset: __, ...sizes } = whole;
  return {
    ...sizes,
    verdict: 'shakes',
    whose: 'part',
    parts: told,
    rms_px,
    most_px,
    ...(rate_Hz !== undefined && { rate_Hz }),
    ...(onset !== undefined && { onset }),
    why: `${whatLies(shaking)} shakes while the rest stands: not the camera.`,
  };
}
