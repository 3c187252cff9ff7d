/** Places in the frame of the table: turned about the subject, brought nearer, rounded to what a tape reads. */
import type { Position } from '../../../document/shape.ts';

const DEGREES_per_rad = 180 / Math.PI;

/** The finest anybody sets a stand by hand. */
const FINEST_m = 0.01;

export const SNAP_m = 0.05;
export const SNAP_deg = 15;

export const SUBJECT: Position = { right_m: 0, away_m: 0, up_m: 0 };

const each = (place: Position, change: (value: number) => number): Position => ({
  right_m: change(place.right_m),
  away_m: change(place.away_m),
  up_m: change(place.up_m),
});

/** To a step, without the dust of binary numbers and without a minus before nothing. */
const toStep = (value: number, step: number): number => Number((Math.round(value / step) * step).toFixed(6)) + 0;

export const tidyPlace = (place: Position): Position => each(place, (value) => toStep(value, FINEST_m));

/** On the grid of 5 cm. */
export const snapPlace = (place: Position): Position => each(place, (value) => toStep(value, SNAP_m));

export const movedBy = (place: Position, by: Partial<Position>): Position => ({
  right_m: place.right_m + (by.right_m ?? 0),
  away_m: place.away_m + (by.away_m ?? 0),
  up_m: place.up_m + (by.up_m ?? 0),
});

export const distance_m = (place: Position, to: Position = SUBJECT): number =>
  Math.hypot(place.right_m - to.right_m, place.away_m - to.away_m, place.up_m - to.up_m);

/** Where a place stands about the subject, as a camera's azimuth is counted: 0 in front, 90 to the right. */
export const azimuth_deg = ({ right_m, away_m }: Position): number => Math.atan2(right_m, -away_m) * DEGREES_per_rad;

/** How far above the level of the subject it stands, as an angle. */
export const elevation_deg = ({ right_m, away_m, up_m }: Position): number =>
  Math.atan2(up_m, Math.hypot(right_m, away_m)) * DEGREES_per_rad;

/** At an azimuth, at the level and as far out as it was. */
export function atAzimuth(place: Position, to_deg: number): Position {
  const out_m = Math.hypot(place.right_m, place.away_m);
  const angle = to_deg / DEGREES_per_rad;
  return { right_m: out_m * Math.sin(angle), away_m: -out_m * Math.cos(angle), up_m: place.up_m };
}

/** Walked round the subject; positive goes to the right as the front sees it. */
export const turnedBy = (place: Position, by_deg: number): Position => atAzimuth(place, azimuth_deg(place) + by_deg);

/** At the level and as far out as it was, at the nearest 15° to where somebody points. */
export const snapRound = (place: Position, pointed: Position): Position =>
  atAzimuth(place, toStep(azimuth_deg(pointed), SNAP_deg));

/** On the same line from the subject at another distance; undefined where there is no line. */
export function atDistance(place: Position, to_m: number): Position | undefined {
  const now_m = distance_m(place);
  return now_m > 0 && to_m > 0 ? each(place, (value) => (value * to_m) / now_m) : undefined;
}

/** The aim turned about the lamp, level, by an angle. */
export function aimTurned({ at, aim, by_deg }: { readonly at: Position; readonly aim: Position; readonly by_deg: number }): Position {
  const from = movedBy(aim, { right_m: -at.right_m, away_m: -at.away_m, up_m: -at.up_m });
  return movedBy(turnedBy(from, by_deg), at);
} // prettier-ignore

export const isSamePlace = (a: Position, b: Position): boolean => distance_m(a, b) < 1e-9;
