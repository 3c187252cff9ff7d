/** The strips under a clip: what is drawn of each, how high it reaches, and what it is at one frame. */
import { sayShown, showNumber, showQuantity } from '../../../../base/quantity.ts';
import type { Measurement } from '../../../../measure/types.ts';
import { ROUND, roomFor, type Scale } from './stripLayout.ts';

export type StripId = 'light' | 'clipped' | 'focus' | 'motion' | 'activity';

/** faint: the reach from the least to the most. Else a line, the main one strongest. */
export type Look = 'reach' | 'main' | 'second';

export interface Drawn {
  readonly look: Look;
  readonly low: Float64Array;
  readonly high: Float64Array;
}

export interface Strip {
  readonly id: StripId;
  readonly title: string;
  readonly unit: string;
  readonly scale: Scale;
  /** Values that are written at its edge. */
  readonly marks: readonly { readonly value: number; readonly says: string }[];
  readonly drawn: readonly Drawn[];
  /** What it is at a frame: what counts, and the rest of it. */
  readonly at: (frame: number) => { readonly main: string; readonly more?: string };
}

const MISSING = 'missing';
/** Darker than this many stops below white nothing is told apart. */
const DARKEST_stops = -14;

const percent = (fraction: number, digits = 2): string => `${showNumber(100 * fraction, digits)} %`;
const line = (look: Look, values: Float64Array): Drawn => ({ look, low: values, high: values });
const most = (values: Float64Array): number => values.reduce((high, value) => (value > high ? value : high), 0);
const least = (values: Float64Array): number => values.reduce((low, value) => (value < low ? value : low), 0);

function lightStrip(seen: Seen, { frames }: Measurement): Strip {
  const stops = (values: Float64Array) => seen(values).map((value) => Math.max(DARKEST_stops, Math.log2(value)));
  const [mean, darkest, middle, brightest] = [stops(frames.mean), stops(frames.darkest), stops(frames.middle), stops(frames.brightest)]; // prettier-ignore
  const scale = { least: Math.min(-2, Math.floor(least(darkest))), most: Math.ceil(most(brightest)) };
  const below = (value: number) => (value <= DARKEST_stops ? 'black' : value > 0 ? `${showNumber(value, 2)} over` : showNumber(-value, 2)); // prettier-ignore
  return {
    id: 'light',
    title: 'Light',
    unit: 'stops below white',
    scale,
    marks: [{ value: 0, says: 'white' }, { value: scale.least, says: `−${-scale.least}` }],
    drawn: [{ look: 'reach', low: darkest, high: brightest }, line('second', middle), line('main', mean)],
    at: (frame) => ({
      main: `mean ${below(mean[frame]!)}`,
      more: `middle ${below(middle[frame]!)}, darkest ${below(darkest[frame]!)}, brightest ${below(brightest[frame]!)}`,
    }),
  };
} // prettier-ignore

function clippedStrip(seen: Seen, { frames }: Measurement): Strip {
  const clipped = seen(frames.clippedFraction);
  const top = roomFor(Math.max(0.01, most(clipped)), ROUND);
  const scale = { least: 0, most: Math.min(1, top) };
  return {
    id: 'clipped',
    title: 'Burnt out',
    unit: '% of the picture',
    scale,
    marks: [{ value: scale.most, says: percent(scale.most) }],
    drawn: [{ look: 'reach', low: clipped.map((value) => 0 * value), high: clipped }, line('main', clipped)],
    at: (frame) => ({ main: percent(clipped[frame]!), more: `black ${percent(frames.crushedFraction[frame]!)}` }),
  };
}

function focusStrip(seen: Seen, { frames, focus }: Measurement): Strip {
  return {
    id: 'focus',
    title: 'Focus',
    unit: '% of the sharpest frame',
    scale: { least: 0, most: 1 },
    marks: [{ value: 1, says: '100 %' }],
    drawn: [line('main', seen(frames.sharpness))],
    at: (frame) => ({
      main: percent(frames.sharpness[frame]!),
      ...(focus.verdict === 'cannot tell' && { more: 'too little detail that stands still' }),
    }),
  };
}

function motionStrip(seen: Seen, { frames, frameRate_fps }: Measurement, pixel_m: number | undefined): Strip {
  const [typical, fastest] = [seen(frames.speed_px), seen(frames.fastest_px)];
  const scale = { least: 0, most: roomFor(Math.max(1, most(fastest), most(typical)), ROUND) };
  const speed = (px: number) => sayShown(showQuantity('speed', px * pixel_m! * frameRate_fps, { digits: 2 }));
  const metres = (px: number) => (pixel_m === undefined ? '' : `, ${speed(px)}`);
  return {
    id: 'motion',
    title: 'Movement',
    unit: 'px a frame',
    scale,
    marks: [{ value: scale.most, says: `${showNumber(scale.most)} px` }],
    drawn: [line('second', typical), line('main', fastest)],
    at: (frame) => ({
      main: `fastest ${showNumber(fastest[frame]!, 2)} px${metres(fastest[frame]!)}`,
      more: `typical ${showNumber(typical[frame]!, 2)} px`,
    }),
  };
}

function activityStrip(seen: Seen, { frames }: Measurement): Strip {
  const top = most(frames.activity);
  const share = seen(top > 0 ? frames.activity.map((value) => value / top) : frames.activity);
  return {
    id: 'activity',
    title: 'Action',
    unit: '% of the liveliest frame',
    scale: { least: 0, most: 1 },
    marks: [{ value: 1, says: '100 %' }],
    drawn: [{ look: 'reach', low: share.map((value) => 0 * value), high: share }, line('main', share)],
    at: (frame) => ({ main: percent(share[frame]!) }),
  };
}

/** A series with nothing where a frame is missing. */
type Seen = (values: Float64Array) => Float64Array;

/** The strips of a clip; metres a second where a pixel is known in metres. */
export function stripsOf(measurement: Measurement, pixel_m?: number): readonly Strip[] {
  const isMissing = new Uint8Array(measurement.frameCount);
  for (const frame of measurement.missingFrames) isMissing[frame] = 1;
  const seen: Seen = (values) => values.map((value, frame) => (isMissing[frame] ? NaN : value));
  const strips = [lightStrip, clippedStrip, focusStrip, motionStrip, activityStrip].map((of) => of(seen, measurement, pixel_m)); // prettier-ignore
  return strips.map((strip) => ({
    ...strip,
    at: (frame) => (isMissing[frame] ? { main: MISSING } : strip.at(frame)),
  }));
}
