/** Where everything lies on the two rulers of time, real above and screen below, for a given width. */
import { tickStep_s, ticksWithin } from './ticks.ts';

export interface TimePair {
  readonly screenTime_s: number;
  readonly realTime_s: number;
}

export interface ClockFigures {
  /** Real time that is stretched. */
  readonly spanTime_s: number;
  /** Real time kept before it, and again after it. */
  readonly padTime_s: number;
  readonly screenTime_s: number;
  /** Screen time against real time, both rising from the start to the end of the span. */
  readonly samples: readonly TimePair[];
  /** Real time that can be held at once. */
  readonly heldTime_s?: number;
}

export interface ClockSize {
  readonly left_px: number;
  readonly right_px: number;
}

export interface Mark {
  readonly time_s: number;
  readonly at_px: number;
}

export interface Thread {
  readonly real_px: number;
  readonly screen_px: number;
  /** It ends on a labelled tick of the screen's ruler, or on one of its ends. */
  readonly isMain: boolean;
}

export interface ClockLayout {
  readonly real: { readonly step_s: number; readonly ticks: readonly Mark[] };
  readonly screen: { readonly step_s: number; readonly ticks: readonly Mark[] };
  readonly span: readonly [from_px: number, to_px: number];
  readonly kept: readonly [from_px: number, to_px: number];
  readonly film: readonly [from_px: number, to_px: number];
  readonly held?: { readonly at: readonly [from_px: number, to_px: number]; readonly runsOff: boolean };
  readonly threads: readonly Thread[];
}

/** Room for one label of a ruler; a narrow one is set closer. */
const LABEL_px = 104;
const CLOSE_LABEL_px = 76;
const NARROW_px = 600;
/** The kept span takes this share of the real ruler, so that the stretch is seen; somewhat less, where that shows all that is held. */
const KEPT_SHARE = 0.36;
const LEAST_KEPT_SHARE = 0.18;

/** Real time at a moment of screen time, straight between samples. */
export function realTimeAt_s(samples: readonly TimePair[], screenTime_s: number): number {
  const after = samples.findIndex((sample) => sample.screenTime_s >= screenTime_s);
  const last = samples[samples.length - 1];
  if (!last) return 0;
  if (after < 0) return last.realTime_s;
  const b = samples[after]!;
  const a = samples[after - 1];
  if (!a || b.screenTime_s === a.screenTime_s) return b.realTime_s;
  const share = (screenTime_s - a.screenTime_s) / (b.screenTime_s - a.screenTime_s);
  return a.realTime_s + share * (b.realTime_s - a.realTime_s);
}

function threadTimes_s(screenTime_s: number, step_s: number, most: number): readonly number[] {
  const finest = [10, 5, 4, 2, 1].find((parts) => (screenTime_s / step_s) * parts <= most) ?? 1;
  return ticksWithin({ from_s: 0, to_s: screenTime_s, step_s: step_s / finest });
}

/** Lays out both rulers between `left_px` and `right_px`. The span's real time starts at zero. */
export function layClocks({ spanTime_s, padTime_s, screenTime_s, samples, heldTime_s }: ClockFigures, size: ClockSize): ClockLayout {
  const { left_px, right_px } = size;
  const width_px = right_px - left_px;
  const mostLabels = Math.max(2, Math.floor(width_px / (width_px < NARROW_px ? CLOSE_LABEL_px : LABEL_px)));
  const kept_s = spanTime_s + 2 * padTime_s;

  const shareToShowHeld = heldTime_s ? (0.9 * kept_s) / heldTime_s : KEPT_SHARE;
  const share = shareToShowHeld < LEAST_KEPT_SHARE ? KEPT_SHARE : Math.min(KEPT_SHARE, shareToShowHeld);
  const domain_s = kept_s / share;
  const from_s = spanTime_s / 2 - domain_s / 2;
  const realAt_px = (time_s: number) => left_px + ((time_s - from_s) / domain_s) * width_px;
  const screenAt_px = (time_s: number) => left_px + (time_s / screenTime_s) * width_px;

  const realStep_s = tickStep_s({ span_s: domain_s, most: mostLabels });
  const screenStep_s = tickStep_s({ span_s: screenTime_s, most: mostLabels });
  const marksOf = (times_s: readonly number[], at_px: (time_s: number) => number): readonly Mark[] =>
    times_s.map((time_s) => ({ time_s, at_px: at_px(time_s) }));
  const realTicks = ticksWithin({ from_s, to_s: from_s + domain_s, step_s: realStep_s });
  const screenTicks = ticksWithin({ from_s: 0, to_s: screenTime_s, step_s: screenStep_s });

  const isMain = (time_s: number) =>
    Math.abs(time_s - screenTime_s) < 1e-9 * screenTime_s ||
    screenTicks.some((tick_s) => Math.abs(tick_s - time_s) < 1e-6 * screenStep_s);
  const times_s = [...threadTimes_s(screenTime_s, screenStep_s, Math.floor(width_px / 16))];
  if (times_s.every((time_s) => Math.abs(time_s - screenTime_s) > 1e-9 * screenTime_s)) times_s.push(screenTime_s);

  const half_s = (heldTime_s ?? 0) / 2;
  const heldFrom_px = realAt_px(spanTime_s / 2 - half_s);
  const heldTo_px = realAt_px(spanTime_s / 2 + half_s);
  const runsOff = heldFrom_px < left_px - 0.5;

  return {
    real: { step_s: realStep_s, ticks: marksOf(realTicks, realAt_px) },
    screen: { step_s: screenStep_s, ticks: marksOf(screenTicks, screenAt_px) },
    span: [realAt_px(0), realAt_px(spanTime_s)],
    kept: [realAt_px(-padTime_s), realAt_px(spanTime_s + padTime_s)],
    film: [left_px, right_px],
    ...(heldTime_s === undefined
      ? {}
      : { held: { at: [Math.max(left_px, heldFrom_px), Math.min(right_px, heldTo_px)] as const, runsOff } }),
    threads: times_s.map((time_s) => ({
      real_px: realAt_px(realTimeAt_s(samples, time_s)),
      screen_px: screenAt_px(time_s),
      isMain: isMain(time_s),
    })),
  };
} // prettier-ignore
