/**
 * Axes of the pictures: how far each runs, whether by steps or by doublings, and where its ticks lie. Values are in the
 * unit of the field's name; ticks are round in the unit that is shown.
 */
import { KINDS, ownUnit, unitSuffix, type Kind, type KindName, type Unit } from '../../../base/kinds.ts';
import { showQuantity, type UnitSystem } from '../../../base/quantity.ts';
import type { InputField, LawValue } from '../../../laws/law.ts';
import { showField } from '../../../laws/reckon.ts';
import { isShutter } from './lawText.ts';

export interface Axis {
  readonly scale: 'linear' | 'log';
  readonly from: number;
  readonly to: number;
}

/** What an axis needs to know of an input or a result. */
export type Scaled = Pick<InputField, 'name' | 'kind' | 'as'>;

/** Where a value lies: 0 at the axis's start, 1 at its end, beyond them outside. */
export function placeOn({ scale, from, to }: Axis, value: number): number {
  return scale === 'log' ? Math.log(value / from) / Math.log(to / from) : (value - from) / (to - from);
}

export function valueAt({ scale, from, to }: Axis, fraction: number): number {
  return scale === 'log' ? from * (to / from) ** fraction : from + (to - from) * fraction;
}

const LEADS = [1, 2, 5, 10] as const;

const decadeOf = (size: number) => 10 ** Math.floor(Math.log10(size) + 1e-12);

const tidy = (value: number) => Number(value.toPrecision(12));

/** The round number (1, 2 or 5 and noughts) at or below a positive one, and at or above it. */
export function roundDown(size: number): number {
  const decade = decadeOf(size);
  return tidy(decade * LEADS.findLast((lead) => lead * decade <= size * (1 + 1e-9))!);
}

export function roundUp(size: number): number {
  const decade = decadeOf(size);
  return tidy(decade * LEADS.find((lead) => lead * decade >= size * (1 - 1e-9))!);
}

export const isAperture = ({ kind }: Pick<Scaled, 'kind'>): boolean => kind === 'fStop' || kind === 'tStop';

/** A number whose steps along a picture mean something; words and timecodes have none. */
export function numberOf(value: LawValue | undefined): number | undefined {
  if (typeof value === 'object') return value.num / value.den;
  return typeof value === 'number' && Number.isFinite(value) ? value : undefined;
}

export const isDrawable = ({ as }: Pick<Scaled, 'as'>): boolean =>
  as !== 'choice' && as !== 'flag' && as !== 'timecode';

/** Kinds that a crew compares by how many times, not by how much. */
const BY_TIMES: ReadonlySet<KindName> = new Set<KindName>([
  'time',
  'illuminance',
  'luminance',
  'luminanceExposure',
  'exposure',
  'bytes',
  'byteRate',
  'power',
  'frequency',
  'rate',
  'viscosity',
  'charge',
  'imageSpeed',
]);

/** Above this, a count or a plain number is thought of by how many times. */
const MANY = 20;

function isByTimes({ kind, as }: Scaled, value: number): boolean {
  if (as === 'isoSpeed' || as === 'rational') return true;
  if (kind) return BY_TIMES.has(kind) || (kind === 'pixels' && value > MANY);
  return (as === 'count' || as === 'ratio') && value > MANY;
}

const fullStop = (value: number, round: (halves: number) => number) => 2 ** (round(2 * Math.log2(value)) / 2);

const DARKEST_STOP = 64;
const FASTEST_STOP = 2 ** -0.5;

function stopAxis(value: number, reach: number): Axis {
  const from = fullStop(value / 4 ** reach, Math.floor);
  const to = fullStop(value * 4 ** reach, Math.ceil);
  return {
    scale: 'log',
    from: value >= FASTEST_STOP ? Math.max(from, FASTEST_STOP / Math.SQRT2) : from,
    to: value <= DARKEST_STOP ? Math.min(to, DARKEST_STOP * Math.SQRT2) : to,
  };
}

/** A part of a linear axis on both sides of a value, for a closer look. */
function closeUp(value: number, span: number): Axis {
  const step = roundUp(span / 10);
  return {
    scale: 'linear',
    from: tidy(Math.floor((value - span) / step) * step),
    to: tidy(Math.ceil((value + span) / step) * step),
  };
}

/** From nought to well beyond a positive value, or as far on both sides of a value below it. */
function linearAxis(value: number, likely: number, reach: number): Axis {
  if (value > 0 && reach < 1) return closeUp(value, value * reach);
  const size = (Math.abs(value) || Math.abs(likely) || 0.5) * reach;
  if (value < 0) return { scale: 'linear', from: -roundUp(size * 2), to: roundUp(size * 2) };
  return { scale: 'linear', from: 0, to: roundUp(size * 2) };
}

/** The same, with an end that is never passed: a whole turn, or everything. */
function boundedAxis(value: number, most: number, reach: number): Axis {
  const { from, to } = linearAxis(value, most / 2, reach);
  return { scale: 'linear', from, to: Math.min(most, to) };
}

export interface Around {
  readonly value: number;
  /** A value this field may well hold, for the width of an axis around nought. */
  readonly likely?: number | undefined;
  /** Given a default that is seldom left. */
  readonly isConstant?: boolean;
  /** 1 as a rule; more shows more. */
  readonly reach?: number;
}

/** How far an input's axis runs around the value it has. */
export function inputAxis(field: Scaled, { value, likely = 0, isConstant = false, reach = 1 }: Around): Axis {
  const { kind, as } = field;
  if (isAperture(field) && value > 0) return stopAxis(value, reach);
  if (as === 'fraction' && value >= 0 && value <= 1)
    return reach < 1 ? boundedAxis(value, 1, reach) : { scale: 'linear', from: 0, to: 1 };
  if (kind === 'stops' || kind === 'decibels') {
    const span = (kind === 'stops' ? 4 : 20) * reach;
    const step = kind === 'stops' ? 1 : 5;
    return {
      scale: 'linear',
      from: Math.floor((value - span) / step) * step,
      to: Math.ceil((value + span) / step) * step,
    };
  }
  if (kind === 'temperature')
    return {
      scale: 'linear',
      from: Math.floor(value / 10 - 3 * reach) * 10,
      to: Math.ceil(value / 10 + 3 * reach) * 10,
    };
  if (kind === 'angle' && value >= 0 && value <= 360) return boundedAxis(value, 360, reach);
  if (as === 'count' && value <= MANY)
    return { scale: 'linear', from: 1, to: Math.max(4, Math.ceil(value * 2 * Math.max(1, reach))) };
  if (value > 0 && !isConstant && isByTimes(field, value)) {
    const times = (as === 'isoSpeed' || isShutter(field) || as === 'count' ? 8 : 10) ** reach;
    return { scale: 'log', from: roundDown(value / times), to: roundUp(value * times) };
  }
  return linearAxis(value, likely, reach);
}

/** Results that reach over no more than this many times are never drawn by doublings. */
const MOST_LINEAR_TIMES = 25;
/** A result that runs away near a pole is cut off this many times from where it stands. */
const MOST_TIMES = 300;
const MOST_STOPS = 8;

const middleOf = (sorted: readonly number[]) => sorted[Math.floor(sorted.length / 2)]!;

/** A run to a pole takes up few of the samples and most of the range: what lies beyond this share of them may be cut off. */
const OUTER_SHARE = 0.03;
/** Ends are shown whole where they add no more than this to the range of the rest. */
const WHOLE_ENDS = 1.4;

/** The least and the greatest result to show: all of them, unless the outermost few would flatten the rest. */
function shownRange(sorted: readonly number[], at: number | undefined): readonly [low: number, high: number] {
  const cut = Math.floor(sorted.length * OUTER_SHARE);
  const [least, most] = [sorted[0]!, sorted.at(-1)!];
  const [low, high] = [sorted[cut]!, sorted[sorted.length - 1 - cut]!];
  const isEven = least > 0 && Math.log(most / least) <= WHOLE_ENDS * Math.log(high / low);
  if (isEven || most - least <= WHOLE_ENDS * (high - low)) return [least, most];
  const inner = at === undefined ? [low, high] : [Math.min(low, at), Math.max(high, at)];
  return [
    Math.max(least, inner[0]! - (inner[1]! - inner[0]!) / 10),
    Math.min(most, inner[1]! + (inner[1]! - inner[0]!) / 10),
  ];
}

function logAxis(low: number, high: number): Axis {
  if (high / low < 3) return { scale: 'log', from: low / 1.15, to: high * 1.15 };
  return { scale: 'log', from: roundDown(low), to: roundUp(high) };
}

function linearResultAxis(low: number, high: number): Axis {
  const from = low >= 0 && low < 0.6 * high ? 0 : low;
  const span = high - from || Math.abs(high) || 1;
  const step = roundUp(span / 8);
  if (high === low) return { scale: 'linear', from: low - span / 2, to: high + span / 2 };
  return { scale: 'linear', from: tidy(Math.floor(from / step) * step), to: tidy(Math.ceil(high / step) * step) };
}

/** A picture is flat where more than this share of it lies in the lowest tenth. */
const FLAT_SHARE = 0.6;

/** Whether equal steps would press most of the results flat. */
function isFlattened(sorted: readonly number[], low: number, high: number, isAlongLog: boolean): boolean {
  if (!(low > 0) || high / low <= MOST_LINEAR_TIMES) return false;
  if (isAlongLog) return true;
  const lowest = sorted.filter((value) => value < high / 10).length;
  return lowest / sorted.length > FLAT_SHARE;
}

/** Kinds of result that are steps already: a log of a log helps nobody. */
function isByStep({ kind, as }: Scaled, high: number): boolean {
  if (kind === 'stops' || kind === 'decibels') return true;
  return (kind === 'angle' && high <= 360) || (as === 'fraction' && high <= 1.2);
}

export interface ResultsShown {
  /** Where the law stands now. */
  readonly at?: number | undefined;
  /** The results lie along an axis of doublings. */
  readonly isAlongLog?: boolean;
}

/** The axis that shows these results; undefined where there are none. */
export function resultAxis(
  field: Scaled,
  results: readonly number[],
  { at, isAlongLog = false }: ResultsShown = {},
): Axis | undefined {
  const sorted = [...results].sort((a, b) => a - b);
  if (sorted.length === 0) return undefined;
  const [low, high] = shownRange(sorted, at);
  const centre = at ?? middleOf(sorted);
  if (isAperture(field) && low > 0) {
    const from = fullStop(Math.max(low, centre * 2 ** (-MOST_STOPS / 2)), Math.floor);
    const to = fullStop(Math.min(high, centre * 2 ** (MOST_STOPS / 2)), Math.ceil);
    return { scale: 'log', from: from / 2 ** 0.25, to: to * 2 ** 0.25 };
  }
  if (!isByStep(field, high) && isFlattened(sorted, low, high, isAlongLog))
    return logAxis(Math.max(low, centre / MOST_TIMES), Math.min(high, centre * MOST_TIMES));
  return linearResultAxis(low, high);
}

export interface Tick {
  readonly value: number;
  readonly label: string;
}

export interface Ticks {
  readonly ticks: readonly Tick[];
  /** The unit of all labels; empty where each carries its own, or none has one. */
  readonly unit: string;
}

export interface TickRoom {
  /** As many as there is room for. */
  readonly most: number;
  readonly system: UnitSystem;
}

const PLAIN_UNIT: Unit = { symbol: '', per: 1 };

/** The unit in which a field's value of this size is shown. */
function unitFor({ name, kind }: Scaled, size: number, system: UnitSystem): Unit {
  const own = ownUnit(unitSuffix(name));
  if (own) return { symbol: own.symbol, per: 1 };
  if (!kind) return PLAIN_UNIT;
  const { units }: Kind = KINDS[kind];
  const symbol = showQuantity(kind, size, { system }).unit;
  return units.find((unit) => unit.symbol === symbol) ?? PLAIN_UNIT;
}

function printStep(value: number, step: number): string {
  const decimals = Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

function linearTicks(field: Scaled, { from, to }: Axis, { most, system }: TickRoom): Ticks {
  const unit = unitFor(field, Math.max(Math.abs(from), Math.abs(to)), system);
  const inUnit = (value: number) => (value - (unit.offset ?? 0)) / unit.per;
  const [low, high] = [inUnit(from), inUnit(to)];
  const isWhole = field.as === 'count';
  const step = Math.max(roundUp((high - low) / Math.max(1, most)), isWhole ? 1 : 0);
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  const ticks = Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => {
    const shown = first + i === 0 ? 0 : tidy((first + i) * step);
    return { value: shown * unit.per + (unit.offset ?? 0), label: printStep(shown, step) };
  });
  return { ticks, unit: unit.symbol };
}

function thinned<T>(all: readonly T[], most: number, isKept: (item: T, every: number) => boolean): readonly T[] {
  for (let every = 1; every <= 64; every *= 2) {
    const kept = all.filter((item) => isKept(item, every));
    if (kept.length <= Math.max(2, most)) return kept;
  }
  return all.slice(0, 2);
}

/** Multiples of one value by powers of a base that lie on an axis, thinned to the room. */
function powerTicks(
  { from, to }: Axis,
  { one, base, most }: { readonly one: number; readonly base: number; readonly most: number },
): readonly number[] {
  const power = (value: number) => Math.log(value / one) / Math.log(base);
  const first = Math.ceil(power(from) - 1e-9);
  const last = Math.floor(power(to) + 1e-9);
  const powers = Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => first + i);
  return thinned(powers, most, (each, every) => each % every === 0).map((each) => one * base ** each);
}

const isPowerOfTen = (ratio: number) => Math.abs(Math.log10(ratio) - Math.round(Math.log10(ratio))) < 1e-9;

/** 1, 2, 5 to the decade while there is room, then the decades alone, then every second. */
function decadeTicks(field: Scaled, { from, to }: Axis, { most, system }: TickRoom): Ticks {
  const unit = unitFor(field, Math.sqrt(from * to), system);
  const [low, high] = [from / unit.per, to / unit.per];
  const first = Math.floor(Math.log10(low));
  const decades = Array.from({ length: Math.ceil(Math.log10(high)) - first + 1 }, (_, i) => 10 ** (first + i));
  const onAxis = (value: number) => value >= low * (1 - 1e-9) && value <= high * (1 + 1e-9);
  const with125 = decades.flatMap((decade) => [1, 2, 5].map((lead) => lead * decade)).filter(onAxis);
  const whole = decades.filter(onAxis);
  const values =
    with125.length <= most || whole.length < 2
      ? with125
      : thinned(whole, most, (each, every) => Math.round(Math.log10(each)) % every === 0);
  const labelled = values.map((shown) => {
    const value = tidy(shown * unit.per);
    const own = unitFor(field, value, system);
    const of = isPowerOfTen(own.per / unit.per) ? own : unit;
    return {
      value,
      number: showField({ name: 'plain', kind: undefined }, tidy(value / of.per)).number,
      symbol: of.symbol,
    };
  });
  const isOneUnit = labelled.every(({ symbol }) => symbol === labelled[0]!.symbol);
  return {
    ticks: labelled.map(({ value, number, symbol }) => ({
      value,
      label: isOneUnit || symbol === '' ? number : `${number} ${symbol}`,
    })),
    unit: isOneUnit ? (labelled[0]?.symbol ?? '') : '',
  };
}

/** The narrowest axis that is divided by decades; below it, equal steps read better. */
const LEAST_DECADE_TIMES = 6;

/** Ticks of an axis: stops at full stops, shutters and indices by doublings, everything else round. */
export function ticksOf(field: Scaled, axis: Axis, { most, system }: TickRoom): Ticks {
  if (axis.scale === 'linear') return linearTicks(field, axis, { most, system });
  if (isAperture(field)) {
    const values = powerTicks(axis, { one: 1, base: Math.SQRT2, most });
    return { ticks: values.map((value) => ({ value, label: showField(field, value).number })), unit: '' };
  }
  if (field.as === 'isoSpeed') {
    const values = powerTicks(axis, { one: 100, base: 2, most });
    return { ticks: values.map((value) => ({ value, label: showField(field, value).number })), unit: '' };
  }
  if (isShutter(field) && axis.to <= 0.5) {
    const values = powerTicks(axis, { one: 1e-3, base: 2, most });
    return { ticks: values.map((value) => ({ value, label: `1/${Math.round(1 / value)}` })), unit: 's' };
  }
  if (axis.to / axis.from < LEAST_DECADE_TIMES) return linearTicks(field, axis, { most, system });
  return decadeTicks(field, axis, { most, system });
}
