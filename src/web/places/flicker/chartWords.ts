/** What the frames show at one rate and shutter, in words; and the same for a table of them. */
import { showNumber, showShutter } from '../../../base/quantity.ts';
import type { SetupGroup } from '../../../plan/flickerGroups.ts';
import { seenFlicker } from '../../../laws/flicker/seen.ts';
import { FLICKER_GATES_stops, judgeFlicker } from '../../../laws/flicker/visible.ts';
import { readInput } from '../../../laws/reckon.ts';
import { numberOf, ticksOf, type Axis } from '../reckoner/axis.ts';
import { RATE, SHUTTER, type ChartAxes, type Standing } from './chartGrid.ts';
import type { Picked } from './pickedWay.ts';

/** A frame this little too short for an exposure still holds it. */
const ROUNDING = 1e-9;

/** The numbers of what was picked; undefined where a text holds none. */
export function standingOf({ rate, shutter }: Picked): Standing | undefined {
  const [read, shut] = [readInput(RATE, rate), readInput(SHUTTER, shutter)];
  const rate_fps = read.ok ? numberOf(read.value) : undefined;
  const exposureTime_s = shut.ok ? numberOf(shut.value) : undefined;
  return rate_fps === undefined || exposureTime_s === undefined ? undefined : { rate_fps, exposureTime_s };
}

export interface Viewed {
  readonly groups: readonly SetupGroup[];
  readonly playback_fps: number;
}

export interface Told {
  readonly says: string;
  /** Whether the shutter fits its frame. */
  readonly fits: boolean;
}

/** What frames taken so show, as it would be judged. */
export function tellAt({ groups, playback_fps }: Viewed, { rate_fps, exposureTime_s }: Standing): Told {
  if (exposureTime_s * rate_fps > 1 + ROUNDING)
    return { says: `Longer than a frame, which lasts ${showShutter(1 / rate_fps).number} s.`, fits: false };
  const seen = seenFlicker(groups, { frameRate_fps: rate_fps, exposureTime_s, playback_fps });
  return { says: judgeFlicker(seen).why, fits: true };
}

/** A swing for eyes: "0.044", "under 0.001", "no limit". */
export function swingWords(stops: number): string {
  if (stops === Infinity) return 'no limit';
  return stops < 0.001 ? 'under 0.001' : showNumber(stops, 2);
}

export interface SwingTable {
  readonly rates: readonly { readonly value: number; readonly label: string }[];
  readonly rows: readonly { readonly shutter: string; readonly cells: readonly string[] }[];
}

const MOST_RATES = 7;
const MOST_SHUTTERS = 9;

const ticksIn = (field: typeof RATE, axis: Axis, most: number) =>
  ticksOf(field, axis, { most, system: 'metric' }).ticks;

/** Where every frame of a take gets the same light and the next take may get another. */
export const IN_STEP = 'in step';

function cellAt({ groups, playback_fps }: Viewed, { rate_fps, exposureTime_s }: Standing): string {
  if (exposureTime_s * rate_fps > 1 + ROUNDING) return 'too long';
  const { worst, betweenTakes, looksLike } = seenFlicker(groups, { frameRate_fps: rate_fps, exposureTime_s, playback_fps }); // prettier-ignore
  const isInStep = looksLike === 'steady' && betweenTakes.peakToPeak_stops > FLICKER_GATES_stops.passes;
  return isInStep ? IN_STEP : swingWords(worst.peakToPeak_stops);
}

/** The chart as a table: round rates and shutters, and where the shot stands. */
export function swingTable({ groups, playback_fps }: Viewed, axes: ChartAxes, now: Standing): SwingTable {
  const standsAmong = (values: readonly number[], value: number) => values.some((each) => Math.abs(each / value - 1) < 0.01); // prettier-ignore
  const rates = ticksIn(RATE, axes.rate, MOST_RATES).map(({ value }) => value);
  const shutters = ticksIn(SHUTTER, axes.shutter, MOST_SHUTTERS).map(({ value }) => value);
  if (!standsAmong(rates, now.rate_fps)) rates.push(now.rate_fps);
  if (!standsAmong(shutters, now.exposureTime_s)) shutters.push(now.exposureTime_s);
  const [across, down] = [rates.sort((a, b) => a - b), shutters.sort((a, b) => b - a)];
  return {
    rates: across.map((value) => ({ value, label: showNumber(value, 4) })),
    rows: down.map((exposureTime_s) => ({
      shutter: `${showShutter(exposureTime_s).number} s`,
      cells: across.map((rate_fps) => cellAt({ groups, playback_fps }, { rate_fps, exposureTime_s })),
    })),
  };
}
