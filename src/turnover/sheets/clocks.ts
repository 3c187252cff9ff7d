/** A shot on its two clocks, laid out for paper. */
import { showNumber } from '../../base/quantity.ts';
import { printRational } from '../../base/rational.ts';
import type { Clocks } from '../../plan/types.ts';
import { sayNumber } from './say.ts';
import type { ClocksBlock, Source } from './sheet.ts';

/** Share of the width that the real time kept takes, so that its stretch is seen. */
const KEPT_SHARE = 0.34;

/** Lines from one ruler to the other. */
const THREADS = 16;

/** "25 times slower", or the range of a profile. */
function sayStretch(slowest: number, fastest: number): string {
  const times = (fraction: number) =>
    fraction > 1 + 1e-9 ? `${showNumber(fraction, 2)} times faster` : `${showNumber(1 / fraction, 2)} times slower`;
  if (Math.abs(slowest / fastest - 1) < 0.005) return Math.abs(slowest - 1) < 0.005 ? 'real time' : times(slowest);
  return `${Math.abs(fastest - 1) < 0.005 ? 'real time' : times(fastest)} to ${times(slowest)}`;
}

function realTimeAt_s({ samples }: Clocks, screenTime_s: number): number {
  const after = samples.findIndex((sample) => sample.screenTime_s >= screenTime_s);
  const [a, b] = [samples[after - 1], samples[after]];
  if (!b) return samples[samples.length - 1]?.realTime_s ?? 0;
  if (!a || b.screenTime_s === a.screenTime_s) return b.realTime_s;
  return a.realTime_s + ((screenTime_s - a.screenTime_s) / (b.screenTime_s - a.screenTime_s)) * (b.realTime_s - a.realTime_s);
} // prettier-ignore

/** Both rulers of a shot; none while either time is not known. */
export function clocksOf(clocks: Clocks | undefined, source: Pick<Source, 'system'>): readonly ClocksBlock[] {
  if (!clocks || !(clocks.actionTime_s > 0) || !(clocks.screenTime_s > 0)) return [];
  const { actionTime_s, handles_s, screenTime_s, playRate, slowestFraction, fastestFraction } = clocks;
  const time = (value: number) => sayNumber(source, 'time_s', value);
  const kept_s = actionTime_s + 2 * handles_s;
  const start = (1 - KEPT_SHARE) / 2;
  const at = (realTime_s: number) => start + ((realTime_s + handles_s) / kept_s) * KEPT_SHARE;
  const threads = Array.from({ length: THREADS + 1 }, (_, i) => ({
    real: at(realTimeAt_s(clocks, (screenTime_s * i) / THREADS)),
    screen: i / THREADS,
  }));
  const real = time(actionTime_s);
  const screen = `${time(screenTime_s)} at ${printRational(playRate)} fps`;
  const handles = handles_s > 0 ? `${time(handles_s)} kept before and after` : '';
  const stretch = sayStretch(slowestFraction, fastestFraction);
  return [
    {
      block: 'clocks',
      says: `${real} on the set${handles === '' ? '' : `, ${handles}`}; ${screen} on screen; ${stretch}`,
      real,
      handles,
      screen,
      stretch,
      kept: [at(-handles_s), at(actionTime_s + handles_s)],
      action: [at(0), at(actionTime_s)],
      threads,
    },
  ];
}
