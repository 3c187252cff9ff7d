/**
 * Shapes: the one table that says, for every key of a shoot, how it is written, what it is called when read, which unit
 * it then has and what it means. The reader, the JSON Schema, the documentation and the types all come from it.
 */
import type { KindName } from '../base/kinds.ts';
import type { Rational } from '../base/rational.ts';

/** A quantity with a unit, written as text, read as a number under a key that ends in the unit. */
export interface QuantityShape {
  readonly shape: 'quantity';
  readonly kind: KindName;
  /** Lowest value in the kind's own unit; `above` excludes the bound itself. */
  readonly least: number;
  readonly above: boolean;
  readonly most: number;
  /** Whether a spread may be written after it: `1.5 m/s ± 0.2 m/s`, `40 klx ± 10 %`. */
  readonly spread: boolean;
}

export interface TextShape {
  readonly shape: 'text';
  readonly longest: number;
}

/** A figure kept as it is written, text or bare number, for whoever knows what it measures. */
export interface FigureShape {
  readonly shape: 'figure';
  readonly longest: number;
}

export interface NumberShape {
  readonly shape: 'number';
  readonly as: 'ratio' | 'fraction' | 'count' | 'isoSpeed';
  readonly least: number;
  readonly most: number;
}

/** An exact ratio, such as a frame rate. */
export interface RateShape {
  readonly shape: 'rate';
}

export interface ChoiceShape<Word extends string = string> {
  readonly shape: 'choice';
  readonly words: Readonly<Record<Word, string>>;
}

export interface FlagShape {
  readonly shape: 'flag';
}

/** A shutter, as a time or as an angle. */
export interface ShutterShape {
  readonly shape: 'shutter';
}

/** Pixels across and down: `4096 x 2304`. */
export interface SizeShape {
  readonly shape: 'size';
}

/** A place in the frame of the table: right, away and up, `0.8 m, -1.2 m, 1.5 m`. */
export interface PositionShape {
  readonly shape: 'position';
}

/** A time of day, `HH:MM`, running past midnight to 35:59. */
export interface ClockShape {
  readonly shape: 'clock';
}

/** The id of an entry of another map, named by its path. */
export interface ReferenceShape {
  readonly shape: 'reference';
  readonly to: string;
}

export interface ListShape<Of extends Shape = Shape> {
  readonly shape: 'list';
  readonly of: Of;
  readonly most: number;
}

/** Entries under permanent ids: a letter, then letters, digits and hyphens. */
export interface MapShape<Of extends Shape = Shape> {
  readonly shape: 'map';
  readonly of: Of;
}

export interface RecordShape<Fields extends FieldTable = FieldTable> {
  readonly shape: 'record';
  readonly fields: Fields;
}

export type Shape =
  | QuantityShape
  | TextShape
  | FigureShape
  | NumberShape
  | RateShape
  | ChoiceShape
  | FlagShape
  | ShutterShape
  | SizeShape
  | PositionShape
  | ClockShape
  | ReferenceShape
  | ListShape
  | MapShape
  | RecordShape;

export interface Field<Key extends string = string, Of extends Shape = Shape> {
  /** The key in the read form; empty when it is the written key. */
  readonly readAs: Key;
  readonly of: Of;
  /** What it is, in a sentence or less. */
  readonly says: string;
}

export type FieldTable = Readonly<Record<string, Field>>;

export type Shutter = { readonly exposureTime_s: number } | { readonly shutterAngle_deg: number };

/** Metres right of the subject point, away from it and above it, as seen from azimuth 0. */
export interface Position {
  readonly right_m: number;
  readonly away_m: number;
  readonly up_m: number;
}

export interface Size {
  readonly widthCount: number;
  readonly heightCount: number;
}

type KeyOf<Written, F> = F extends Field<infer Key> ? (Key extends '' ? Written & string : Key) : never;
type SpreadKey<Key extends string> = Key extends `${infer Name}_${infer Unit}` ? `${Name}Spread_${Unit}` : never;
type Simplify<T> = { [K in keyof T]: T[K] };

/** The read form of a record: everything may be missing; `unread` lists written keys that hold a problem. */
export type ReadRecord<T extends FieldTable> = Simplify<
  {
    readonly [W in keyof T as T[W]['of'] extends MapShape | ListShape | RecordShape ? KeyOf<W, T[W]> : never]: ReadOf<
      T[W]['of']
    >;
  } & {
    readonly [W in keyof T as T[W]['of'] extends MapShape | ListShape | RecordShape ? never : KeyOf<W, T[W]>]?: ReadOf<
      T[W]['of']
    >;
  } & {
    readonly [
      W in keyof T as T[W]['of'] extends { readonly spread: true } ? SpreadKey<KeyOf<W, T[W]>> : never
    ]?: number;
  } & { readonly unread?: readonly string[] }
>;

/** What a shape is once read. Maps, lists and records that are not written are read as empty ones. */
export type ReadOf<S> = S extends { readonly shape: 'quantity' | 'number' | 'clock' }
  ? number
  : S extends { readonly shape: 'text' | 'figure' | 'reference' }
    ? string
    : S extends { readonly shape: 'rate' }
      ? Rational
      : S extends ChoiceShape<infer Word>
        ? Word
        : S extends { readonly shape: 'flag' }
          ? boolean
          : S extends { readonly shape: 'shutter' }
            ? Shutter
            : S extends { readonly shape: 'size' }
              ? Size
              : S extends { readonly shape: 'position' }
                ? Position
                : S extends ListShape<infer Of>
                  ? readonly ReadOf<Of>[]
                  : S extends MapShape<infer Of>
                    ? Readonly<Record<string, ReadOf<Of>>>
                    : S extends RecordShape<infer Fields>
                      ? ReadRecord<Fields>
                      : never;

/** Values beyond these are taken for a slip of the keyboard; in each kind's own unit. */
const SANE: Readonly<Partial<Record<KindName, number>>> = {
  time: 1e6,
  length: 1e4,
  speed: 1e5,
  illuminance: 1e8,
  luminance: 1e10,
  angle: 360,
  bytes: 1e17,
  byteRate: 1e13,
  power: 1e7,
  voltage: 1e5,
  current: 1e5,
  frequency: 1e12,
  rate: 1e7,
  stops: 40,
  decibels: 200,
  pixels: 1e6,
  mass: 1e5,
  density: 1e5,
  viscosity: 1e6,
  temperature: 5000,
  charge: 1e7,
  fStop: 1000,
  tStop: 1000,
  money: 1e9,
};

interface Bounds {
  readonly least?: number;
  readonly most?: number;
  /** Zero, or `least` itself, is allowed. */
  readonly zero?: boolean;
}

function quantityShape(kind: KindName, spread: boolean, { least, most, zero = false }: Bounds): QuantityShape {
  const signed = kind === 'stops' || kind === 'decibels' || kind === 'temperature';
  const ceiling = SANE[kind] ?? 1e12;
  return {
    shape: 'quantity',
    kind,
    spread,
    least: least ?? (signed ? -ceiling : 0),
    above: !zero && !signed && least === undefined,
    most: most ?? ceiling,
  };
}

/** A quantity read under `readAs`, which ends in its unit. */
export function quantity<const Key extends string>(readAs: Key, kind: KindName, says: string, bounds: Bounds = {}) {
  const of = quantityShape(kind, false, bounds) as QuantityShape & { readonly spread: false };
  return { readAs, of, says } satisfies Field;
}

/** A quantity somebody measured or guessed, whose spread may be written beside it. */
export function measured<const Key extends string>(readAs: Key, kind: KindName, says: string, bounds: Bounds = {}) {
  const of = quantityShape(kind, true, bounds) as QuantityShape & { readonly spread: true };
  return { readAs, of, says } satisfies Field;
}

export function text(says: string, longest = 200) {
  return { readAs: '', of: { shape: 'text', longest }, says } as const satisfies Field;
}

export function number<const Key extends string>(
  readAs: Key,
  as: NumberShape['as'],
  says: string,
  { least = as === 'count' ? 0 : 1e-9, most = as === 'fraction' ? 1 : 1e9 }: Bounds = {},
) {
  return { readAs, of: { shape: 'number', as, least, most } as NumberShape, says } satisfies Field;
}

export function rate(says: string) {
  return { readAs: '', of: { shape: 'rate' }, says } as const satisfies Field;
}

export function choice<const Word extends string>(says: string, words: Readonly<Record<Word, string>>) {
  return { readAs: '', of: { shape: 'choice', words } as ChoiceShape<Word>, says } as const;
}

export function flag<const Key extends string>(readAs: Key, says: string) {
  return { readAs, of: { shape: 'flag' } as FlagShape, says } satisfies Field;
}

export function shutter(says: string) {
  return { readAs: '', of: { shape: 'shutter' }, says } as const satisfies Field;
}

export function size<const Key extends string>(readAs: Key, says: string) {
  return { readAs, of: { shape: 'size' } as SizeShape, says } satisfies Field;
}

export function position(says: string) {
  return { readAs: '', of: { shape: 'position' }, says } as const satisfies Field;
}

export function clock<const Key extends string>(readAs: Key, says: string) {
  return { readAs, of: { shape: 'clock' } as ClockShape, says } satisfies Field;
}

export function reference(to: string, says: string) {
  return { readAs: '', of: { shape: 'reference', to } as ReferenceShape, says } as const;
}

export function list<const Of extends Shape>(of: Of, says: string, most = 1000) {
  return { readAs: '', of: { shape: 'list', of, most } as ListShape<Of>, says } as const;
}

export function map<const Of extends Shape>(of: Of, says: string) {
  return { readAs: '', of: { shape: 'map', of } as MapShape<Of>, says } as const;
}

export function record<const Fields extends FieldTable>(fields: Fields, says: string) {
  return { readAs: '', of: recordShape(fields), says } as const;
}

export function recordShape<const Fields extends FieldTable>(fields: Fields): RecordShape<Fields> {
  return { shape: 'record', fields };
}
