/** The next value up or down that a crew would set: thirds of a stop, the shutter's series, indices, round numbers. */
import { parseQuantity } from '../../../base/quantity.ts';
import { parseStopNumber, printStopNumber, stopFromThirds, thirdsAboveOne } from '../../../base/stop.ts';
import { stepWritten } from '../../parts/stepping.ts';

type Direction = 1 | -1;

/** Next third-stop: up is narrower. */
function stepStop(text: string, direction: Direction): string | undefined {
  const read = parseStopNumber(text.trim().replace(/^T\s*\/?\s*/i, ''));
  if (!read.ok) return undefined;
  const thirds = thirdsAboveOne(read.value);
  const next = direction > 0 ? Math.floor(thirds + 1e-6) + 1 : Math.ceil(thirds - 1e-6) - 1;
  return `T${printStopNumber(stopFromThirds(next))}`;
}

const LEADS = [1, 1.25, 1.6, 2, 2.5, 3.2, 4, 5, 6.4, 8];

/** The ten steps to the decade that shutters and indices are marked in: a third of a stop each. */
function stepThirds(value: number, direction: Direction): number {
  const decade = 10 ** Math.floor(Math.log10(value) + 1e-9);
  const marks = [decade / 10, decade, decade * 10].flatMap((scale) => LEADS.map((lead) => lead * scale));
  const next =
    direction > 0 ? marks.find((mark) => mark > value * 1.02) : marks.findLast((mark) => mark < value / 1.02);
  return Number((next ?? value).toPrecision(6));
}

/** Up is a longer time: 1/2000 s becomes 1/1600 s. */
function stepShutter(text: string, direction: Direction): string | undefined {
  const body = text.trim();
  if (/°|deg/i.test(body)) return stepWritten(body, direction);
  const read = parseQuantity('time', body);
  if (!read.ok || !(read.value > 0)) return undefined;
  if (read.value >= 0.5) return stepWritten(body, direction);
  return `1/${Math.round(stepThirds(1 / read.value, direction > 0 ? -1 : 1))} s`;
}

function stepIndex(text: string, direction: Direction): string | undefined {
  const value = Number(text.trim().replace(/^(EI|ISO)\s*/i, ''));
  return value > 0 ? String(Math.round(stepThirds(value, direction))) : undefined;
}

function stepCount(text: string, direction: Direction): string | undefined {
  const count = Number(text.trim());
  return Number.isInteger(count) && count + direction >= 0 ? String(count + direction) : undefined;
}

/** The stepping of one key of a shot. */
export function stepFor(key: string): (text: string, direction: Direction) => string | undefined {
  switch (key) {
    case 'stop':
      return stepStop;
    case 'shutter':
      return stepShutter;
    case 'index':
      return stepIndex;
    case 'takes':
    case 'kept':
    case 'hero/perTake':
      return stepCount;
    default:
      return stepWritten;
  }
}
