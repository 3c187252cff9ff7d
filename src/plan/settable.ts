/** Rounding to what can be set on a camera or a lens, always to the side that keeps the promise. */
import { stopFromThirds, thirdsAboveOne } from '../base/stop.ts';

const INDEX_DECADE = [100, 125, 160, 200, 250, 320, 400, 500, 640, 800];

/** The series from 1 to beyond anything a camera is rated at. */
const INDICES: readonly number[] = Array.from({ length: 100 }, (_, place) =>
  Number((INDEX_DECADE[place % 10]! * 10 ** (Math.floor(place / 10) - 2)).toPrecision(12)),
);

/** The place in the series of the lowest index that is not below `isoSpeed`. */
function placeAtOrAbove(isoSpeed: number): number {
  // The engraved numbers stray from exact tenths of a decade by less than one place.
  let place = Math.max(0, Math.floor(10 * Math.log10(isoSpeed)) - 1);
  while (place < INDICES.length - 1 && INDICES[place]! < isoSpeed * (1 - 1e-9)) place += 1;
  return place;
}

/** The lowest exposure index of the series that is not below `isoSpeed`. */
export function settableIndexAtOrAbove(isoSpeed: number): number {
  return INDICES[placeAtOrAbove(isoSpeed)]!;
}

/** The highest exposure index of the series that is not above `isoSpeed`. */
export function settableIndexAtOrBelow(isoSpeed: number): number {
  const place = placeAtOrAbove(isoSpeed);
  return INDICES[place]! <= isoSpeed * (1 + 1e-9) ? INDICES[place]! : INDICES[Math.max(0, place - 1)]!;
}

/** A whole number of frames a second that is not below the rate wanted; a rate that is whole already stays. */
export function settableRateAtOrAbove(rate_fps: number): number {
  const whole = Math.round(rate_fps);
  return Math.abs(whole - rate_fps) < 1e-6 * rate_fps ? whole : Math.ceil(rate_fps);
}

/** 1/x s with x of two significant figures, not longer than the time wanted. */
export function settableExposureAtOrBelow(exposureTime_s: number): number {
  const over = 1 / exposureTime_s;
  const step = 10 ** Math.max(0, Math.floor(Math.log10(over)) - 1);
  const rounded = Math.ceil(over / step - 1e-9) * step;
  return Math.abs(Math.round(over) - over) < 1e-9 * over && rounded / over > 1.02 ? 1 / Math.round(over) : 1 / rounded;
}

/** The third-stop that is not wider than `stop`. */
export function settableStopAtOrAbove(stop: number): number {
  return stopFromThirds(Math.ceil(thirdsAboveOne(stop) - 1e-6));
}

/** The third-stop that is not narrower than `stop`. */
export function settableStopAtOrBelow(stop: number): number {
  return stopFromThirds(Math.floor(thirdsAboveOne(stop) + 1e-6));
}

/** Two significant figures, up or down: a round number that still keeps the promise. */
export function roundedUp(value: number, digits = 2): number {
  return rounded(value, digits, Math.ceil);
}

export function roundedDown(value: number, digits = 2): number {
  return rounded(value, digits, Math.floor);
}

function rounded(value: number, digits: number, towards: (x: number) => number): number {
  if (value === 0) return 0;
  const step = 10 ** (Math.floor(Math.log10(Math.abs(value))) - digits + 1);
  const at = towards(Number((value / step).toPrecision(12)));
  return Number((at * step).toPrecision(12));
}

/** One coordinate of a stand, in metres: set to a centimetre, and never below nought by nothing. */
export const settablePlace = (value_m: number): number => Math.round(value_m * 100) / 100 + 0;
