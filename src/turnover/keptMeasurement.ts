/**
 * What was measured of a clip as text to keep: JSON in which lists of numbers that were typed arrays say which, so that
 * they come back as they were whatever a measurement holds besides.
 */
import { Fault } from '../base/fault.ts';
import type { MeasuredClip } from './measureReply.ts';

/** To be raised whenever a measurement kept before lacks something that is read of every one. */
const FORM = 1;
/** Of the numbers of long lists: finer than anything is measured. */
const DIGITS = 6;

const ARRAYS = { Int8Array, Uint8Array, Uint8ClampedArray, Int16Array, Uint16Array, Int32Array, Uint32Array, Float32Array, Float64Array } as const; // prettier-ignore
type ArrayName = keyof typeof ARRAYS;
type NumberArray = InstanceType<(typeof ARRAYS)[ArrayName]>;

/** JSON has no numbers beyond numbers; they are kept as their names. */
const keptNumber = (value: number): number | string => (Number.isFinite(value) ? value : String(value));
const keptShort = (value: number): number | string =>
  Number.isInteger(value) ? value : keptNumber(Number(value.toPrecision(DIGITS)));

const arrayName = (value: object): ArrayName | undefined =>
  (Object.keys(ARRAYS) as ArrayName[]).find((name) => value instanceof ARRAYS[name]);

function kept(value: unknown): unknown {
  if (typeof value === 'number' && !Number.isFinite(value)) return { $: String(value) };
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map(kept);
  const name = arrayName(value);
  if (name) return { $: name, values: Array.from(value as NumberArray, keptShort) };
  return Object.fromEntries(Object.entries(value).map(([key, of]) => [key, kept(of)]));
}

function read(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map(read);
  if ('$' in value) {
    const name = value.$ as string;
    if (!Object.hasOwn(ARRAYS, name)) return Number(name);
    const { values } = value as unknown as { readonly values: readonly (number | string)[] };
    return ARRAYS[name as ArrayName].from(values.map(Number));
  }
  return Object.fromEntries(Object.entries(value).map(([key, of]) => [key, read(of)]));
}

function refuse(what: string, cause?: unknown): never {
  throw new Fault({
    code: 'measure.kept-form',
    what,
    where: 'what was measured of this clip',
    mend: 'Measure it again.',
    cause,
  });
}

/** What was measured, apart from the shot that it is held against, which changes with the plan. */
export function writeKept(clip: Omit<MeasuredClip, 'shot'>): string {
  const { shot: _, ...rest } = clip as MeasuredClip;
  return JSON.stringify({ form: FORM, clip: kept(rest) });
}

/** What `writeKept` wrote. Throws Fault `measure.kept-form` for text of another form, or of none. */
export function readKept(text: string): MeasuredClip {
  let whole: unknown;
  try {
    whole = JSON.parse(text);
  } catch (cause) {
    refuse('It was kept in a form that cannot be read', cause);
  }
  const { form, clip } = (typeof whole === 'object' && whole !== null ? whole : {}) as { readonly form?: unknown; readonly clip?: unknown }; // prettier-ignore
  if (form === FORM && typeof clip === 'object' && clip !== null) return read(clip) as MeasuredClip;
  return refuse(typeof form === 'number' ? `It was kept in form ${form}, and form ${FORM} is read` : 'It was kept in a form that cannot be read'); // prettier-ignore
}
