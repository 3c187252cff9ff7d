/**
 * How a line of a measured record writes its two numbers: the delimiter, the decimal mark, and the unit of time that a
 * header names.
 *
 * @source flicker-practice how meters write their records
 */
type Delimiter = '\t' | ';' | ',' | ' ';

export interface Form {
  readonly delimiter: Delimiter;
  readonly hasDecimalComma: boolean;
}

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d{1,3})?$/i;

export const fieldsOf = (text: string, { delimiter }: Pick<Form, 'delimiter'>): readonly string[] =>
  (delimiter === ' ' ? text.split(/\s+/) : text.split(delimiter)).map((field) =>
    field.trim().replace(/^"(.*)"$/, '$1'),
  );

export function numberIn(
  field: string | undefined,
  { hasDecimalComma }: Pick<Form, 'hasDecimalComma'>,
): number | undefined {
  if (field === undefined) return undefined;
  const plain = hasDecimalComma ? field.replace(',', '.') : field;
  const value = NUMBER.test(plain) ? Number(plain) : NaN;
  return Number.isFinite(value) ? value : undefined;
}

/** How a line writes two numbers, or undefined where it does not. */
export function formOf(text: string): Form | undefined {
  for (const delimiter of ['\t', ';', ' ', ','] as const) {
    if (!text.includes(delimiter) && !(delimiter === ' ' && /\s/.test(text))) continue;
    for (const hasDecimalComma of delimiter === ',' ? [false] : [false, true]) {
      const form = { delimiter, hasDecimalComma };
      const [time, value] = fieldsOf(text.replace(delimiter === ' ' ? /,\s+/g : /$^/, ' '), form);
      if (numberIn(time, form) !== undefined && numberIn(value, form) !== undefined) {
        // Spaces after commas: a comma delimits, and the spaces are for looks.
        return delimiter === ' ' && /,\s/.test(text) ? { delimiter: ',', hasDecimalComma: false } : form;
      }
    }
  }
  return undefined;
}

const UNITS: readonly (readonly [RegExp, number])[] = [
  [/(?:^|[\s([_/])(?:µs|μs|us|usec|microseconds?)(?:$|[\s)\]])/i, 1e-6],
  [/(?:^|[\s([_/])(?:ms|msec|milliseconds?)(?:$|[\s)\]])/i, 1e-3],
  [/(?:^|[\s([_/])(?:s|sec|seconds?)(?:$|[\s)\]])/i, 1],
];

/** Seconds in the unit that a header names for its first column, last line first. */
export function unitIn(header: readonly string[], delimiter: Delimiter): number | undefined {
  for (const line of [...header].reverse()) {
    const first = delimiter === ' ' ? line : (fieldsOf(line, { delimiter })[0] ?? '');
    for (const [pattern, unit_s] of UNITS) if (pattern.test(first)) return unit_s;
  }
  return undefined;
}
