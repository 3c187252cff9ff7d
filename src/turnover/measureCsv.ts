/** The values of every frame of measured clips as a table. */
import type { Measurement } from '../measure/types.ts';
import { csvText, type CsvColumn } from './csv.ts';

interface Row {
  readonly clip: string;
  readonly frame: number;
  readonly of: Measurement;
  /** By frame, its place in the series of colour; only some frames are sampled. */
  readonly sampled: ReadonlyMap<number, number>;
}

type Series = keyof Measurement['frames'];

const valueOf = (name: string, series: Series): CsvColumn<Row> => ({
  name,
  // What was measured of a frame that is not there is nothing, and not 0.
  of: ({ of, frame }) =>
    of.frames.weight[frame] === 0 && of.missingFrames.includes(frame) ? undefined : of.frames[series][frame],
});

const colourOf = (name: string, series: 'red_stops' | 'blue_stops'): CsvColumn<Row> => ({
  name,
  of: ({ of, frame, sampled }) => {
    const at = sampled.get(frame);
    return at === undefined ? undefined : of.colour?.series[series][at];
  },
});

const COLUMNS: readonly CsvColumn<Row>[] = [
  { name: 'clip', of: ({ clip }) => clip },
  { name: 'frame', of: ({ frame }) => frame },
  { name: 'captureTime_s', of: ({ frame, of }) => frame / of.frameRate_fps },
  { name: 'screenTime_s', of: ({ frame, of }) => frame / of.playback_fps },
  { name: 'isCounted', of: ({ frame, of }) => of.frames.weight[frame]! > 0 },
  valueOf('mean', 'mean'),
  valueOf('darkest', 'darkest'),
  valueOf('middle', 'middle'),
  valueOf('brightest', 'brightest'),
  valueOf('clippedFraction', 'clippedFraction'),
  valueOf('crushedFraction', 'crushedFraction'),
  valueOf('sharpnessFraction', 'sharpness'),
  valueOf('activity', 'activity'),
  valueOf('speed_px', 'speed_px'),
  valueOf('fastest_px', 'fastest_px'),
  valueOf('x_px', 'x_px'),
  valueOf('y_px', 'y_px'),
  colourOf('redOverGreen_stops', 'red_stops'),
  colourOf('blueOverGreen_stops', 'blue_stops'),
];

/** A line a frame, clip after clip. */
export function measureCsv(
  clips: readonly { readonly name: string; readonly measurement: Measurement }[],
): string {
  const rows = clips.flatMap(({ name, measurement }) => {
    const sampled = new Map(Array.from(measurement.colour?.series.places ?? [], (place, i) => [place, i]));
    return Array.from({ length: measurement.frameCount }, (_, frame): Row => ({ clip: name, frame, of: measurement, sampled }));
  });
  return csvText(COLUMNS, rows);
} // prettier-ignore
