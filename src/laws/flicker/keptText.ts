/**
 * A light record as it is kept where a dark reading was taken away or the unit of time was told by hand: it then says so
 * itself, and reads the same wherever it is read.
 */
import type { MeasuredRecord } from './measuredText.ts';

const TIME_DIGITS = 10;
const LIGHT_DIGITS = 7;

/** A record as text that needs nothing told beside it: seconds, and light above dark. `head` is what else is worth saying. */
export function keptText(
  { times_s, values }: Pick<MeasuredRecord, 'times_s' | 'values'>,
  { dark = 0, head = [] }: { readonly dark?: number; readonly head?: readonly string[] } = {},
): string {
  const lines = [
    dark === 0 ? 'Light over time' : `Light over time, a dark reading of ${dark} taken away`,
    ...head,
    'time (s);light',
  ];
  for (let i = 0; i < times_s.length; i += 1)
    lines.push(
      `${Number(times_s[i]!.toPrecision(TIME_DIGITS))};${Number((values[i]! - dark).toPrecision(LIGHT_DIGITS))}`,
    );
  return `${lines.join('\n')}\n`;
}
