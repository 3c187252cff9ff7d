/** The read form written back as people write it: the other direction of the table. */
import { KINDS, type Kind, type KindName } from '../base/kinds.ts';
import { parseQuantity, writeQuantity } from '../base/quantity.ts';
import { printRational, type Rational } from '../base/rational.ts';
import { fieldAt, readKeyOf } from './fieldAt.ts';
import { spreadKey } from './read.ts';
import { unitsPerRead } from './readValue.ts';
import type { NumberShape, Position, RecordShape, Shape, Shutter, Size } from './shape.ts';
import { memberOf, setMember, type Written } from './written.ts';

export { fieldAt } from './fieldAt.ts';

type ReadMap = Readonly<Record<string, unknown>>;

/** Two numbers that a quantity written to 15 digits cannot tell apart. */
const isAlike = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-14 * Math.abs(b);

/** Beyond this many characters it is worth looking whether another unit has fewer digits. */
const LONG_QUANTITY = 14;

/**
 * The shortest of the ways to write a quantity that reads back to it (to 15 digits): "100 s" rather than
 * "1.66666666666667 min".
 */
function quantityText(kindName: KindName, value: number): string {
  const usual = writeQuantity(kindName, value);
  const kind: Kind = KINDS[kindName];
  if (usual.length <= LONG_QUANTITY || kind.units.length === 0) return usual;
  const others = kind.units
    .filter(({ symbol, per, offset }) => offset === undefined && (per === 1 || kind.show.metric.includes(symbol)))
    .map(({ symbol, per }) => `${Number((value / per).toPrecision(15))} ${symbol}`);
  let best = usual;
  for (const text of kindName === 'angle' ? [] : others) {
    const read = parseQuantity(kindName, text);
    if (text.length < best.length && read.ok && isAlike(read.value, value)) best = text;
  }
  return best;
}

function writeKind(kind: KindName, value: number): string | number {
  return KINDS[kind].units.length === 0 && kind !== 'tStop' && kind !== 'fStop' ? value : quantityText(kind, value);
}

/** Ratios such as 0.025 are written as the crew says them, 1/40. */
function writeNumber(value: number, as: NumberShape['as']): Written {
  const over = Math.round(1 / value);
  return as === 'ratio' && value < 1 && over <= 10_000 && 1 / over === value ? `1/${over}` : value;
}

const twoDigits = (value: number): string => String(value).padStart(2, '0');

/** "25:15" from 90,900 seconds after midnight. */
export function writeClock(dayTime_s: number): string {
  const minutes = Math.round(dayTime_s / 60);
  return `${twoDigits(Math.floor(minutes / 60))}:${twoDigits(minutes % 60)}`;
}

/** "0.8 m, -1.2 m, 1.5 m". */
export function writePosition({ right_m, away_m, up_m }: Position): string {
  return [right_m, away_m, up_m].map((value) => quantityText('length', value)).join(', ');
}

function writeShutter(shutter: Shutter): string {
  return 'exposureTime_s' in shutter
    ? quantityText('time', shutter.exposureTime_s)
    : writeQuantity('angle', shutter.shutterAngle_deg);
}

function writeRate(rate: Rational): Written {
  return rate.den === 1 ? rate.num : printRational(rate);
}

function writeRecord({ fields }: RecordShape, value: ReadMap): Written {
  const record: Record<string, Written> = {};
  for (const [key, field] of Object.entries(fields)) {
    const readKey = readKeyOf(key, field);
    const item = memberOf(value, readKey);
    if (item === undefined) continue;
    const written = writeAny(field.of, item, readKey, memberOf(value, spreadKey(readKey)));
    const isEmpty = typeof written === 'object' && written !== null && Object.keys(written).length === 0;
    if (!isEmpty) record[key] = written;
  }
  return record;
}

function writeMap(of: Shape, value: ReadMap): Written {
  const entries: Record<string, Written> = {};
  for (const [id, item] of Object.entries(value)) setMember(entries, id, writeAny(of, item, ''));
  return entries;
}

/** What a shape's type says of its value is taken as true here: the callers' types hold it. */
function writeAny(of: Shape, value: unknown, readKey: string, spread?: unknown): Written {
  switch (of.shape) {
    case 'quantity': {
      const per = unitsPerRead(readKey);
      const text = writeKind(of.kind, (value as number) * per);
      return typeof spread === 'number' ? `${text} ± ${writeKind(of.kind, spread * per)}` : text;
    }
    case 'number':
      return writeNumber(value as number, of.as);
    case 'rate':
      return writeRate(value as Rational);
    case 'shutter':
      return writeShutter(value as Shutter);
    case 'size':
      return `${(value as Size).widthCount} x ${(value as Size).heightCount}`;
    case 'position':
      return writePosition(value as Position);
    case 'clock':
      return writeClock(value as number);
    case 'list':
      return (value as readonly unknown[]).map((item) => writeAny(of.of, item, ''));
    case 'map':
      return writeMap(of.of, value as ReadMap);
    case 'record':
      return writeRecord(of, value as ReadMap);
    default:
      return value as string | boolean;
  }
}

/**
 * The written form of what a shape reads (`ReadOf<typeof of>`), numbers to 15 digits. Empty sections are left out, as
 * what is not written is read as empty; `unread` keys have no value to write.
 */
export function writtenValue(of: Shape, value: unknown): Written {
  return writeAny(of, value, '');
}

/** A value as it is read at some place: a number in the unit of the read key, a word, a rate, a size, a shutter. */
export type ReadValue = number | string | boolean | Rational | Size | Shutter;

/**
 * The written form of a value read at a JSON Pointer: `writtenAt('/shots/pour-1/depth', 0.008)` → `8 mm`; with its
 * spread in the same unit if it has one. Throws RangeError for a pointer that the form does not have.
 */
export function writtenAt(pointer: string, value: ReadValue, spread?: number): Written {
  const field = fieldAt(pointer);
  if (!field) throw new RangeError(`the form has no ${pointer}`);
  const key = pointer.slice(pointer.lastIndexOf('/') + 1);
  return writeAny(field.of, value, readKeyOf(key, field), spread);
}
