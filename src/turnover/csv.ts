/**
 * Tables as comma-separated values that spreadsheets open as they are: a header row with units in its names, decimal
 * points, lines that end in CR LF, quotes doubled (RFC 4180).
 *
 * Text that a spreadsheet would take for a formula gets an apostrophe before it; numbers do not, so that a negative one
 * stays a number.
 */

export type CsvValue = string | number | boolean | undefined;

export interface CsvColumn<Row> {
  /** With its unit at the end: `fire_s`. */
  readonly name: string;
  readonly of: (row: Row) => CsvValue;
}

const NEEDS_QUOTES = /[",\r\n]/;
const LOOKS_LIKE_FORMULA = /^[=+\-@\t\r]/;

function textCell(text: string): string {
  const plain = LOOKS_LIKE_FORMULA.test(text) ? `'${text}` : text;
  return NEEDS_QUOTES.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}

/** One cell. What is not known, or not finite, is left empty. */
export function csvCell(value: CsvValue): string {
  if (value === undefined) return '';
  if (typeof value === 'number') return Number.isFinite(value) ? String(Number(value.toPrecision(9))) : '';
  return typeof value === 'boolean' ? (value ? 'yes' : 'no') : textCell(value);
}

/** A whole table: the header, then a line for each row. */
export function csvText<Row>(columns: readonly CsvColumn<Row>[], rows: readonly Row[]): string {
  const lines = [
    columns.map(({ name }) => textCell(name)),
    ...rows.map((row) => columns.map(({ of }) => csvCell(of(row)))),
  ];
  return lines.map((cells) => `${cells.join(',')}\r\n`).join('');
}
