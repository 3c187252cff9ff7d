/** Where the light on the set, the shutter's windows on it, and the frames they become lie on the two clocks. */
import { exposureTable, frameLights } from '../../../laws/flicker/exposure.ts';
import type { FlickerPicture } from '../../../plan/flickerPicture.ts';
import { tickStep_s, ticksWithin } from '../../parts/ticks.ts';

export interface FrameFigures {
  /** The mixed light over real time. */
  readonly mixed: { readonly t_s: ArrayLike<number>; readonly light: ArrayLike<number> };
  /** When the shutter is open, frame after frame, in real time. */
  readonly windows: readonly { readonly from_s: number; readonly to_s: number }[];
  /** Light of each frame, 1 the mean. */
  readonly frames: ArrayLike<number>;
  readonly play_fps: number;
}

export interface FrameBox {
  readonly left_px: number;
  readonly right_px: number;
  readonly lightTop_px: number;
  readonly lightBottom_px: number;
  readonly frameTop_px: number;
  readonly frameBottom_px: number;
}

export interface Marked {
  readonly time_s: number;
  readonly at_px: number;
}

export interface FrameLayout {
  readonly real: { readonly from_px: number; readonly to_px: number; readonly step_s: number; readonly ticks: readonly Marked[] };
  readonly screen: { readonly step_s: number; readonly ticks: readonly Marked[] };
  /** Light over time, as a path. */
  readonly lightLine: string;
  /** Light of frame after frame as steps, as a path. */
  readonly frameLine: string;
  readonly windows: readonly { readonly from_px: number; readonly to_px: number }[];
  readonly cells: readonly { readonly from_px: number; readonly to_px: number; readonly light: number }[];
  /** From the middle of each window to the middle of its frame; there may be more frames than windows. */
  readonly threads: readonly { readonly real_px: number; readonly screen_px: number }[];
  /** Heights of the mean. */
  readonly lightMean_px: number;
  readonly frameMean_px: number;
  readonly lightRange: LightRange;
  readonly frameRange: LightRange;
} // prettier-ignore

/** The light at the foot and at the head of a drawing. */
export interface LightRange {
  readonly least: number;
  readonly most: number;
}

/** On a narrow screen real time takes nearly all of the width; on a wide one the stretch is seen. */
const REAL_SHARE = 0.66;
const NARROW_SHARE = 0.9;
const NARROW_px = 560;
const LABEL_px = 84;

/** A small swing is drawn large, never so large that rounding would look like flicker. */
const LEAST_SPAN = 0.004;

const round = (value: number) => Math.round(value * 10) / 10;

/** A range with room around it; from dark where the light goes near it. */
export function rangeShown(lights: ArrayLike<number>): LightRange {
  let [least, most] = [Infinity, -Infinity];
  for (let i = 0; i < lights.length; i += 1) {
    least = Math.min(least, lights[i]!);
    most = Math.max(most, lights[i]!);
  }
  if (!(most >= least)) return { least: 0, most: 1.25 };
  if (least < 0.4 * most) return { least: 0, most: most * 1.08 };
  const span = Math.max(most - least, LEAST_SPAN);
  const middle = (most + least) / 2;
  return { least: middle - 0.65 * span, most: middle + 0.65 * span };
}

/** Least and most of each pixel's stretch, joined in their order. */
function lineOf({ t_s, light }: FrameFigures['mixed'], x: (time_s: number) => number, y: (light: number) => number): string {
  const points: string[] = [];
  let [at, low, high] = [NaN, 0, 0];
  const put = () => {
    for (const i of low === high ? [low] : [Math.min(low, high), Math.max(low, high)]) points.push(`${round(x(t_s[i]!))} ${round(y(light[i]!))}`);
  };
  for (let i = 0; i < t_s.length; i += 1) {
    const pixel = Math.floor(x(t_s[i]!));
    if (pixel === at) {
      if (light[i]! < light[low]!) low = i;
      if (light[i]! > light[high]!) high = i;
      continue;
    }
    if (i > 0) put();
    [at, low, high] = [pixel, i, i];
  }
  if (t_s.length > 0) put();
  return points.length === 0 ? '' : `M${points.join('L')}`;
} // prettier-ignore

/** Frames narrower than this are one line rather than steps. */
const LEAST_STEP_px = 4;
const MOST_CELLS = 64;

/** Frames beside one another, or so many together where there are more than can be told apart. */
function cellsOf(
  frames: ArrayLike<number>,
): readonly { readonly from: number; readonly to: number; readonly light: number }[] {
  const together = Math.ceil(frames.length / MOST_CELLS);
  return Array.from({ length: Math.ceil(frames.length / together) }, (_, i) => {
    const [from, to] = [i * together, Math.min(frames.length, (i + 1) * together)];
    let sum = 0;
    for (let frame = from; frame < to; frame += 1) sum += frames[frame]!;
    return { from, to, light: sum / (to - from) };
  });
}

/** Lays out some frames with the light they were taken in. */
export function layFrames({ mixed, windows, frames, play_fps }: FrameFigures, box: FrameBox): FrameLayout {
  const { left_px, right_px, lightTop_px, lightBottom_px, frameTop_px, frameBottom_px } = box;
  const width_px = right_px - left_px;
  const share = width_px < NARROW_px ? NARROW_SHARE : REAL_SHARE;
  const from_px = left_px + (width_px * (1 - share)) / 2;
  const to_px = right_px - (width_px * (1 - share)) / 2;
  const start_s = windows[0]?.from_s ?? 0;
  const end_s = Math.max(windows.at(-1)?.to_s ?? 0, mixed.t_s[mixed.t_s.length - 1] ?? 0, start_s + 1e-12);
  const screen_s = frames.length / play_fps;
  const realAt = (time_s: number) => from_px + ((time_s - start_s) / (end_s - start_s)) * (to_px - from_px);
  const screenAt = (time_s: number) => left_px + (time_s / screen_s) * width_px;
  const lightRange = rangeShown(mixed.light);
  const frameRange = rangeShown(frames);
  const heightOf = ({ least, most }: LightRange, top_px: number, bottom_px: number) => (light: number) =>
    bottom_px - ((light - least) / (most - least)) * (bottom_px - top_px);
  const lightY = heightOf(lightRange, lightTop_px, lightBottom_px);
  const frameY = heightOf(frameRange, frameTop_px, frameBottom_px);
  const realStep_s = tickStep_s({ span_s: end_s - start_s, most: Math.max(2, (to_px - from_px) / LABEL_px) });
  const screenStep_s = tickStep_s({ span_s: screen_s, most: Math.max(2, width_px / LABEL_px) });
  const cells = cellsOf(frames).map(({ from, to, light }) => ({
    from_px: screenAt(from / play_fps),
    to_px: screenAt(to / play_fps),
    light,
  }));
  const middleOf = (i: number) => screenAt((i + 0.5) / play_fps);
  const steps = Array.from(frames, (light, i) => `${i === 0 ? 'M' : 'L'}${round(screenAt(i / play_fps))} ${round(frameY(light))}H${round(screenAt((i + 1) / play_fps))}`);
  return {
    real: {
      from_px,
      to_px,
      step_s: realStep_s,
      ticks: ticksWithin({ from_s: start_s, to_s: end_s, step_s: realStep_s }).map((time_s) => ({
        time_s,
        at_px: realAt(time_s),
      })),
    },
    screen: {
      step_s: screenStep_s,
      ticks: ticksWithin({ from_s: 0, to_s: screen_s, step_s: screenStep_s }).map((time_s) => ({
        time_s,
        at_px: screenAt(time_s),
      })),
    },
    lightLine: lineOf(mixed, realAt, lightY),
    frameLine:
      frames.length * LEAST_STEP_px <= width_px
        ? steps.join('')
        : lineOf({ t_s: Array.from(frames, (_, i) => (i + 0.5) / play_fps), light: frames }, screenAt, frameY),
    windows: windows.map((window) => ({ from_px: realAt(window.from_s), to_px: realAt(window.to_s) })),
    cells,
    threads: windows.slice(0, frames.length).map((window, i) => ({
      real_px: realAt((window.from_s + window.to_s) / 2),
      screen_px: middleOf(i),
    })),
    lightMean_px: lightY(1),
    frameMean_px: frameY(1),
    lightRange,
    frameRange,
  };
} // prettier-ignore

export interface Beating {
  readonly rate_fps: number;
  /** Beat from frame to frame, in the time of the set; 0 where nothing beats. */
  readonly alias_Hz: number;
  /** Frames of the clip. */
  readonly clipCount: number;
}

const LEAST_FRAMES = 8;
const MOST_FRAMES = 20_000;

/** How many frames show a beat and a half, as far as the clip goes. */
export function framesShown({ rate_fps, alias_Hz, clipCount }: Beating): number {
  const wanted = alias_Hz > 0 ? Math.max(LEAST_FRAMES, Math.ceil((1.5 * rate_fps) / alias_Hz)) : LEAST_FRAMES;
  return Math.max(1, Math.min(wanted, Math.floor(clipCount), MOST_FRAMES));
}

/** Room that a period of the fastest ripple needs to be seen. */
const PERIOD_px = 9;
/** Fewer windows than this tell nothing of how they fall. */
const LEAST_WINDOWS = 2;

export interface CloseUp {
  readonly rate_fps: number;
  /** The fastest ripple that counts; 0 where nothing ripples. */
  readonly ripple_Hz: number;
  readonly frameCount: number;
  readonly width_px: number;
}

/** How many of the frames have their light drawn: all, or so few that a fast ripple is seen to meet the shutter. */
export function windowsShown({ rate_fps, ripple_Hz, frameCount, width_px }: CloseUp): number {
  const room = (width_px * (width_px < NARROW_px ? NARROW_SHARE : REAL_SHARE)) / PERIOD_px;
  const fit = ripple_Hz > 0 ? Math.floor((room * rate_fps) / ripple_Hz) : frameCount;
  return Math.min(frameCount, Math.max(LEAST_WINDOWS, fit));
}

/** Points of the light over time. */
const MIXED_COUNT = 2048;

/** The first of the frames' light, finely enough to draw. */
export function lightUpTo(lamps: FlickerPicture['lamps'], to_s: number): FrameFigures['mixed'] {
  const parts = lamps.map(({ waveform, delay_s, shareFraction }) => ({
    table: exposureTable(waveform),
    delay_s,
    shareRatio: shareFraction,
  }));
  const step_s = to_s / MIXED_COUNT;
  const light = frameLights(parts, { start_s: 0, exposureTime_s: step_s, frameRate_fps: 1 / step_s, frameCount: MIXED_COUNT }); // prettier-ignore
  return { t_s: light.map((_, i) => i * step_s), light };
}
