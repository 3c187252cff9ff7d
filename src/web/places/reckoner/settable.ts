/** Values as a person would set them: what a pointer picks off a picture, and the next value up or down. */
import { KINDS, ownUnit, unitSuffix, type Kind } from '../../../base/kinds.ts';
import { showQuantity, type UnitSystem } from '../../../base/quantity.ts';
import { printStopNumber, stopFromThirds, thirdsAboveOne } from '../../../base/stop.ts';
import type { InputField } from '../../../laws/law.ts';
import { readInput } from '../../../laws/reckon.ts';
import { stepWritten } from '../../parts/stepping.ts';
import { stepFor } from '../shot/steps.ts';
import { isAperture, numberOf, placeOn, roundDown, valueAt, type Axis } from './axis.ts';
import { isShutter } from './lawText.ts';

const THIRDS = [1, 1.25, 1.6, 2, 2.5, 3.2, 4, 5, 6.4, 8, 10] as const;

function nearestThird(value: number): number {
  const decade = 10 ** Math.floor(Math.log10(value));
  const far = (mark: number) => Math.abs(Math.log(value / (mark * decade)));
  const mark = THIRDS.reduce<number>((best, each) => (far(each) < far(best) ? each : best), 1);
  return Number((mark * decade).toPrecision(6));
}

const letterOf = ({ kind }: InputField) => (kind === 'fStop' ? 'f/' : 'T');

/** Rounded to a step of 1, 2 or 5, and printed with no more digits than that step has. */
function printTo(value: number, step: number): string {
  const decimals = Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
  const text = (Math.round(value / step) * step).toFixed(Math.min(12, decimals));
  if (Number(text) === 0) return '0';
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

export interface Picking {
  readonly axis: Axis;
  /** Where on the axis, from 0 to 1. */
  readonly at: number;
  /** The smallest part of the axis that a hand can mean. */
  readonly grain: number;
  readonly system: UnitSystem;
}

/** The text of the settable value nearest to a place on an axis. */
export function pickText(field: InputField, { axis, at, grain, system }: Picking): string {
  const value = valueAt(axis, Math.min(1, Math.max(0, at)));
  if (isAperture(field))
    return `${letterOf(field)}${printStopNumber(stopFromThirds(Math.round(thirdsAboveOne(value))))}`;
  if (field.as === 'isoSpeed' && value > 0) return String(nearestThird(value));
  const size = axis.scale === 'log' ? value * Math.log(axis.to / axis.from) * grain : (axis.to - axis.from) * grain;
  if (field.as === 'count' || field.as === 'rational') return printTo(value, Math.max(1, roundDown(size)));
  if (isShutter(field) && value > 0 && value < 0.25) {
    const over = 1 / value;
    return `1/${printTo(over, Math.max(1, roundDown((over * size) / value)))} s`;
  }
  if (!field.kind) return printTo(value, roundDown(size));
  const own = ownUnit(unitSuffix(field.name));
  if (own) return `${printTo(value, roundDown(size))} ${own.symbol}`;
  const kind: Kind = KINDS[field.kind];
  const symbol = showQuantity(field.kind, value === 0 ? axis.to : value, { system }).unit;
  const unit = kind.units.find((each) => each.symbol === symbol);
  if (!unit) return printTo(value, roundDown(size));
  const number = printTo((value - (unit.offset ?? 0)) / unit.per, roundDown(size / unit.per));
  return symbol === '°' ? `${number}°` : `${number} ${symbol}`;
}

/** Counts up to here go one by one. */
const FEW = 32;

function stepCount(text: string, direction: 1 | -1): string | undefined {
  const count = Number(text.trim());
  if (!Number.isInteger(count)) return undefined;
  const next = count <= FEW ? count + direction : Number(stepWritten(text.trim(), direction) ?? Number.NaN);
  return next >= 0 ? String(Math.round(next)) : undefined;
}

/** The next value up or down from a text, as a crew would set it. */
export function stepText(field: InputField, text: string, direction: 1 | -1): string | undefined {
  if (isAperture(field)) {
    const stepped = stepFor('stop')(text.replace(/^f\s*\/?\s*/i, ''), direction);
    return stepped?.replace(/^T/, letterOf(field));
  }
  if (field.as === 'isoSpeed') return stepFor('index')(text, direction);
  if (isShutter(field)) return stepFor('shutter')(text, direction);
  return field.as === 'count' || field.as === 'rational' ? stepCount(text, direction) : stepWritten(text, direction);
}

export interface Stepping {
  readonly axis: Axis;
  readonly direction: 1 | -1;
  readonly system: UnitSystem;
}

/** Parts of an axis that a key moves by where the value itself has no steps. */
const KEY_STEPS = 40;
/** A step that moves less than this along an axis cannot be seen to move. */
const LEAST_MOVE = 1 / 200;

/** The text one key press further along an axis, never beyond its ends. */
export function stepAlong(field: InputField, text: string, { axis, direction, system }: Stepping): string {
  const placeOf = (written: string): number | undefined => {
    const read = readInput(field, written);
    const number = read.ok ? numberOf(read.value) : undefined;
    return number === undefined ? undefined : placeOn(axis, number);
  };
  const next = stepText(field, text, direction);
  const from = placeOf(text) ?? 0;
  const to = next === undefined ? undefined : placeOf(next);
  const isOn = to !== undefined && to >= -1e-9 && to <= 1 + 1e-9;
  if (next !== undefined && isOn && Math.abs(to - from) >= LEAST_MOVE) return next;
  return pickText(field, { axis, at: from + direction / KEY_STEPS, grain: LEAST_MOVE, system });
}
