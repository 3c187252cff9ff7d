/** The one axis that everything of a clip is drawn on: frames, which are real time above and screen time below. */
import { labelTick, ticksWithin, tickStep_s } from '../../../parts/ticks.ts';

/** Frames that are in sight. Frame n takes up the place from n to n + 1. */
export interface View {
  readonly from: number;
  readonly to: number;
}

/** Closer than this nothing more is seen. */
export const FEWEST_SHOWN = 8;

export const wholeOf = (frameCount: number): View => ({ from: 0, to: Math.max(1, frameCount) });

export const clampFrame = (frame: number, frameCount: number): number =>
  Math.min(Math.max(0, frameCount - 1), Math.max(0, Math.round(frame)));

/** As many frames as can be shown of so many that are asked for. */
const shownOf = (span: number, frameCount: number): number =>
  Math.min(frameCount, Math.max(Math.min(FEWEST_SHOWN, frameCount), span));

/** A view of so many frames that begins at a frame, moved so that it lies within the clip. */
function within(from: number, span: number, frameCount: number): View {
  const shown = shownOf(span, frameCount);
  const first = Math.min(frameCount - shown, Math.max(0, from));
  return { from: first, to: first + shown };
}

/** Closer by a factor above 1, farther by one below, about a frame that keeps its place. */
export function zoomed({ from, to }: View, { factor, about, frameCount }: { readonly factor: number; readonly about: number; readonly frameCount: number }): View {
  const span = shownOf((to - from) / factor, frameCount);
  const share = Math.min(1, Math.max(0, (about - from) / (to - from)));
  return within(about - share * span, span, frameCount);
} // prettier-ignore

/** Nearer to each other two fingers tell no distance. */
const LEAST_APART = 0.02;

/** The view in which the frames that two fingers took hold of lie under them again; places are shares of the width. */
export function pinched({ from, to }: View, { held, now, frameCount }: { readonly held: readonly [number, number]; readonly now: readonly [number, number]; readonly frameCount: number }): View {
  const apart = ([a, b]: readonly [number, number]) => Math.max(LEAST_APART, Math.abs(b - a));
  const middle = ([a, b]: readonly [number, number]) => (a + b) / 2;
  const span = shownOf(((to - from) * apart(held)) / apart(now), frameCount);
  return within(from + middle(held) * (to - from) - middle(now) * span, span, frameCount);
} // prettier-ignore

export const movedBy = ({ from, to }: View, frames: number, frameCount: number): View =>
  within(from + frames, to - from, frameCount);

/** A stretch of frames with some room on both sides. */
export function about(first: number, last: number, frameCount: number): View {
  const room = Math.max(2, 0.04 * (last - first + 1));
  const [from, to] = [Math.max(0, first - room), Math.min(frameCount, last + 1 + room)];
  return within(from, to - from, frameCount);
}

/** The view moved no more than it takes for a frame to be in sight. */
export function showing(view: View, frame: number, frameCount: number): View {
  const span = view.to - view.from;
  if (frame < view.from) return within(frame - 0.1 * span, span, frameCount);
  return frame + 1 > view.to ? within(frame + 1 - 0.9 * span, span, frameCount) : view;
}

/** Where the start of a frame lies, in hundredths of the width; beyond 0 and 100 where it is out of sight. */
export const placeOf = (frame: number, { from, to }: View): number => (100 * (frame - from)) / (to - from);

/** The frame at a share of the width, within the clip. */
export const frameAt = (share: number, { from, to }: View, frameCount: number): number =>
  clampFrame(Math.floor(from + share * (to - from)), frameCount);

export interface Tick {
  /** In hundredths of the width. */
  readonly at: number;
  readonly says: string;
}

export interface RulerAsk {
  readonly view: View;
  /** Frames in a second of this ruler's time. */
  readonly rate_fps: number;
  readonly mostCount: number;
}

/** Round times of one of the two clocks; both start with the clip. */
export function rulerOf({ view, rate_fps, mostCount }: RulerAsk): readonly Tick[] {
  const [from_s, to_s] = [view.from / rate_fps, view.to / rate_fps];
  const step_s = tickStep_s({ span_s: to_s - from_s, most: Math.max(2, mostCount) });
  return ticksWithin({ from_s, to_s, step_s }).map((time_s) => ({
    at: placeOf(time_s * rate_fps, view),
    says: labelTick({ time_s, step_s, secondsFrom_s: 0.5 }),
  }));
}
