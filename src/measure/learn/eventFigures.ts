/**
 * How fast, how long and how far an action went, from one take or several: only what was measured well, each with the
 * spread between takes, or where there is one take with how well it was told.
 *
 *     duration = frames of it/R        speed = px a frame · metres a px · R        reach = px touched · metres a px
 *
 * @source motion-activity
 */
import { medianOf } from '../../base/median.ts';
import { NINETIETH_SPREADS } from '../../laws/chance/normal.ts';
import type { Measurement } from '../types.ts';

export interface EventClip {
  readonly name: string;
  readonly measurement: Measurement;
  /** Metres that a pixel of it shows at the subject; undefined where nobody knows. */
  readonly pixel_m: number | undefined;
}

export type EventFigureName = 'duration' | 'speed' | 'width' | 'height';

export interface EventFigure {
  readonly name: EventFigureName;
  /** In seconds, metres a second or metres: the middle of the takes. */
  readonly value: number;
  /** How far either way eight takes in ten lie; of one take, how far off it may be told. */
  readonly spread: number;
  readonly clips: readonly string[];
}

export interface EventReading {
  readonly figures: readonly EventFigure[];
  /** What was not taken, and why. */
  readonly leftOut: readonly { readonly name: EventFigureName; readonly clip: string; readonly why: string }[];
}

/** How well a beginning or an end is told, in frames, and a movement, in px a frame; one standard deviation. */
const END_FRAMES = 2;
const MOVEMENT_px = 0.1;
/** Slower than this, px a frame, a movement is told too badly. */
const SLOWEST_px = 0.5;

interface Taken {
  readonly value: number;
  /** One standard deviation of telling it. */
  readonly error: number;
}

type Look = (clip: EventClip) => Taken | string;

const duration: Look = ({ measurement: { action, frameRate_fps } }) => {
  if (!action) return 'no action was found in it';
  if (!action.isBegun || !action.isEnded) return action.isBegun ? 'the action runs past its end' : 'the action began before it'; // prettier-ignore
  const frames = action.end - action.onset + 1;
  return { value: frames / frameRate_fps, error: (Math.SQRT2 * END_FRAMES) / frameRate_fps };
};

const NO_SCALE = 'how much of the scene its picture shows is not known';

const speed: Look = ({ measurement: { motion, frameRate_fps }, pixel_m }) => {
  if (pixel_m === undefined) return NO_SCALE;
  if (!motion) return 'nothing that moves could be followed in it';
  if (motion.fastest_px < SLOWEST_px) return `it moves ${motion.fastest_px.toFixed(2)} px a frame, too little to be told well`; // prettier-ignore
  return { value: motion.fastest_px * pixel_m * frameRate_fps, error: MOVEMENT_px * pixel_m * frameRate_fps };
};

const reachOf =
  (side: 'width' | 'height'): Look =>
  ({ measurement: { reach, shake, width, height }, pixel_m }) => {
    if (pixel_m === undefined) return NO_SCALE;
    if (!reach) return 'nothing was touched by an action in it';
    if (shake.verdict === 'moves' || shake.verdict === 'shakes') return 'the picture itself moves';
    const [from, to, most] = side === 'width' ? [reach.left_px, reach.right_px, width] : [reach.top_px, reach.bottom_px, height]; // prettier-ignore
    if (from <= 0 || to >= most) return 'it reaches the edge of the picture, and may reach beyond';
    return { value: (to - from) * pixel_m, error: pixel_m };
  };

const LOOKS: Readonly<Record<EventFigureName, Look>> = {
  duration,
  speed,
  width: reachOf('width'),
  height: reachOf('height'),
};

function figureOf(name: EventFigureName, taken: readonly (Taken & { readonly clip: string })[]): EventFigure {
  const values = taken.map(({ value }) => value);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const between = values.length > 1 ? Math.sqrt(squares / (values.length - 1)) : 0;
  const error = medianOf(taken.map((of) => of.error));
  return {
    name,
    value: medianOf(values),
    spread: NINETIETH_SPREADS * Math.max(between, error),
    clips: taken.map(({ clip }) => clip),
  };
}

/** What takes of one action teach of it. */
export function eventFiguresOf(clips: readonly EventClip[]): EventReading {
  const names = Object.keys(LOOKS) as readonly EventFigureName[];
  const looked = names.map((name) => ({ name, taken: clips.map((clip) => ({ clip: clip.name, told: LOOKS[name](clip) })) }));
  return {
    figures: looked.flatMap(({ name, taken }) => {
      const told = taken.flatMap(({ clip, told: of }) => (typeof of === 'string' ? [] : [{ clip, ...of }]));
      return told.length === 0 ? [] : [figureOf(name, told)];
    }),
    leftOut: looked.flatMap(({ name, taken }) =>
      taken.flatMap(({ clip, told }) => (typeof told === 'string' ? [{ name, clip, why: told }] : []))),
  };
} // prettier-ignore
