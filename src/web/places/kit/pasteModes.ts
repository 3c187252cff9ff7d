/**
 * A table of camera modes as it comes from a spreadsheet, a data sheet or a message, read into the columns of the mode
 * grid. Cells that cannot be read stay as they were typed: whoever shows them says what is wrong.
 */
import papaparse from 'papaparse';
import { MODE_KEYS, type ModeKey } from './modeKeys.ts';
import { columnOfHeading, type Column } from './pasteHeadings.ts';
import { decimalMarkOf, looksNumeric, readCell, readSizeCell, type DecimalMark } from './pasteCells.ts';

export type PastedRow = Readonly<Partial<Record<ModeKey, string>>>;

export interface PastedTable {
  /** Blank lines left out; only columns that were found. */
  readonly rows: readonly PastedRow[];
  /** The same cells as they were typed, where reading changed more than spaces and units. */
  readonly typed: readonly PastedRow[];
  readonly hasHeadings: boolean;
  /** Columns go by where it was pasted; rows are then meant to go there too. */
  readonly isLaid: boolean;
  /** Columns that are none of ours, by heading or by place. */
  readonly leftOut: readonly string[];
  readonly columns: readonly Column[];
}

type Lines = readonly (readonly string[])[];

/** One number a line, with commas in it, is a column and not a table. */
const LONE_NUMBERS = /^\s*\d{1,3}(?:,\d{3})*(?:,\d{1,2})?\s*(?:fps)?\s*$/;

function delimiterOf(lines: readonly string[]): string {
  const share = (mark: string) => lines.filter((line) => line.includes(mark)).length / Math.max(1, lines.length);
  if (share('\t') > 0) return '\t';
  if (share(';') >= 0.5) return ';';
  if (share('|') >= 0.5) return '|';
  if (share(',') > 0 && !lines.every((line) => LONE_NUMBERS.test(line))) return ',';
  return '\t';
}

/** Text set in columns with spaces, as data sheets come, where nothing else parts the cells. */
function partedBySpaces(lines: readonly string[]): readonly string[] {
  return lines.map((line) => line.trim().replace(/ {2,}/g, '\t'));
}

interface Split {
  readonly lines: Lines;
  readonly delimiter: string;
}

/** The cells of a text, trimmed; lines with nothing in them left out. */
export function splitTable(text: string): Split {
  const body = text.replaceAll('\r\n', '\n').replaceAll('\r', '\n');
  const raw = body.split('\n').filter((line) => line.trim() !== '');
  const delimiter = delimiterOf(raw);
  const isSpaced = delimiter === '\t' && !body.includes('\t') && raw.some((line) => / {2,}/.test(line.trim()));
  const source = isSpaced ? partedBySpaces(raw).join('\n') : body;
  const { data } = papaparse.parse<readonly string[]>(source, { delimiter, skipEmptyLines: 'greedy' });
  const lines = data.map((line) => line.map((cell) => cell.trim()));
  // Rows of a table drawn with bars begin and end with one, and have a line of dashes under the headings.
  const isDrawn = delimiter === '|';
  return {
    delimiter,
    lines: lines
      .map((line) => (isDrawn ? line.slice(line[0] === '' ? 1 : 0, line.at(-1) === '' ? -1 : undefined) : line))
      .filter((line) => line.some((cell) => cell !== '' && !/^:?-{2,}:?$/.test(cell))),
  };
}

/** Headings stand in one of the first lines; a caption may stand above them. */
const DEEPEST_HEADING = 5;

function headingAt(lines: Lines): number | undefined {
  const at = lines.slice(0, DEEPEST_HEADING).findIndex((line, i) => {
    if (line.some(looksNumeric)) return false;
    const found = line.filter((cell) => columnOfHeading(cell) !== undefined).length;
    return found >= (i === 0 ? 1 : 2);
  });
  return at < 0 ? undefined : at;
}

/** Each column at most once: what comes again is left out, and width or height alone is no size. */
function onceEach(columns: readonly Column[]): readonly Column[] {
  const seen = new Set<Column>();
  const once = columns.map((column) => {
    if (column === undefined || seen.has(column)) return undefined;
    seen.add(column);
    return column;
  });
  const isPaired = once.includes('width') && once.includes('height') && !once.includes('pixels');
  return once.map((column) => ((column === 'width' || column === 'height') && !isPaired ? undefined : column));
}

const cellsOf = (lines: Lines, at: number) => lines.map((line) => line[at] ?? '').filter((cell) => cell !== '');

const most = (cells: readonly string[], is: (cell: string) => boolean) =>
  cells.length > 0 && cells.filter(is).length * 2 > cells.length;

const hasRateUnit = (cell: string) => /\d\s*(?:k?fps|f\/s|hz|frames)\b/i.test(cell);

/** Whether a column of cells may stand in a column of the grid. */
function fits(key: ModeKey, cells: readonly string[]): boolean {
  if (cells.length === 0 || key === 'title') return true;
  if (key === 'pixels') return most(cells, (cell) => readSizeCell(cell) !== undefined);
  return most(cells, (cell) => looksNumeric(cell) && readSizeCell(cell) === undefined);
}

/** What columns without headings hold, judged by their cells. */
function guessed(lines: Lines, mark: DecimalMark): readonly Column[] {
  const width = Math.max(0, ...lines.map((line) => line.length));
  const columns: Column[] = Array.from({ length: width }, () => undefined);
  const all = columns.map((_, at) => cellsOf(lines, at));
  const take = (column: Column, is: (cells: readonly string[]) => boolean) => {
    if (columns.includes(column)) return;
    const at = all.findIndex((cells, i) => columns[i] === undefined && cells.length > 0 && is(cells));
    if (at >= 0) columns[at] = column;
  };
  const isNumeric = (cells: readonly string[]) =>
    most(cells, (cell) => looksNumeric(cell) && readSizeCell(cell) === undefined);
  const numbers = (cells: readonly string[]) => cells.map((cell) => Number(readCell('bits', cell, mark)));
  const within = (cells: readonly string[], least: number, most_: number) =>
    isNumeric(cells) && numbers(cells).every((value) => Number.isInteger(value) && value >= least && value <= most_);
  take('pixels', (cells) => most(cells, (cell) => readSizeCell(cell) !== undefined));
  take('rate', (cells) => most(cells, hasRateUnit));
  take('bits', (cells) => most(cells, (cell) => /^\d+[\s-]*bits?$/i.test(cell)));
  const isLarge = (cells: readonly string[]) => isNumeric(cells) && !within(cells, 1, 32);
  const largeCount = all.filter((cells, i) => columns[i] === undefined && isLarge(cells)).length;
  if (!columns.includes('pixels') && largeCount >= (columns.includes('rate') ? 2 : 3)) {
    take('width', isLarge);
    take('height', isLarge);
  }
  take('rate', isLarge);
  take('bits', (cells) => within(cells, 8, 32));
  take('binning', (cells) => within(cells, 1, 7) || most(cells, (cell) => /^(\d)\s*[x×]\s*\1$/i.test(cell)));
  take('title', (cells) => !most(cells, looksNumeric));
  return columns;
}

/** Columns of a block laid onto the grid from one of its columns on, where what it holds may stand there. */
function laidFrom(start: ModeKey, lines: Lines): readonly Column[] | undefined {
  const width = Math.max(0, ...lines.map((line) => line.length));
  const from = MODE_KEYS.indexOf(start);
  const columns = Array.from({ length: width }, (_, at): Column => MODE_KEYS[from + at]);
  const isFit = columns.every((key, at) => key === undefined || fits(key as ModeKey, cellsOf(lines, at)));
  return isFit ? columns : undefined;
}

function rowOf(line: readonly string[], columns: readonly Column[], mark: DecimalMark): PastedRow {
  const row: Partial<Record<ModeKey, string>> = {};
  const at = (column: Column) => line[columns.indexOf(column)] ?? '';
  for (const column of columns) {
    if (column === undefined || column === 'width' || column === 'height') continue;
    const text = readCell(column, at(column), mark);
    if (text !== '') row[column] = text;
  }
  if (columns.includes('width') && (at('width') !== '' || at('height') !== ''))
    row.pixels = readCell('pixels', `${readCell('bits', at('width'), mark)} x ${readCell('bits', at('height'), mark)}`, mark);
  return row;
} // prettier-ignore

/** Digits as typed and as read, for telling whether reading a cell chose between two meanings. */
const plainly = (text: string) => text.toLowerCase().replace(/[\s'’×x*]|fps|bits?/g, '');

function typedOf(line: readonly string[], columns: readonly Column[], row: PastedRow): PastedRow {
  const typed: Partial<Record<ModeKey, string>> = {};
  columns.forEach((column, at) => {
    if (column === undefined || column === 'width' || column === 'height') return;
    const cell = line[at] ?? '';
    if (cell !== '' && plainly(cell) !== plainly(row[column] ?? '')) typed[column] = cell;
  });
  return typed;
}

/** `Price`, or `column 3, “12”`. */
function namesLeftOut(columns: readonly Column[], heading: readonly string[] | undefined, lines: Lines): readonly string[] {
  return columns.flatMap((column, at) => {
    if (column !== undefined) return [];
    const name = heading?.[at] ?? '';
    const first = cellsOf(lines, at)[0];
    if (name !== '') return [name];
    return first === undefined ? [] : [`column ${at + 1}, “${first}”`];
  });
} // prettier-ignore

/**
 * Reads a pasted text. With headings its columns go by their words; without, they are laid onto the grid from `start` on
 * where what they hold may stand there, and else judged by what they hold.
 */
export function readPasted(text: string, start: ModeKey | undefined): PastedTable {
  const { lines: all, delimiter } = splitTable(text);
  const at = headingAt(all);
  const heading = at === undefined ? undefined : all[at];
  const lines = at === undefined ? all : all.slice(at + 1);
  const mark = decimalMarkOf(lines.flat(), delimiter === ';' ? ',' : '.');
  const width = Math.max(0, ...lines.map((line) => line.length), heading?.length ?? 0);
  const laid = heading !== undefined || start === undefined ? undefined : laidFrom(start, lines);
  const found = heading?.map(columnOfHeading) ?? laid ?? guessed(lines, mark);
  const columns = onceEach(Array.from({ length: width }, (_, i): Column => found[i]));
  const rows = lines.map((line) => rowOf(line, columns, mark));
  const kept = lines.flatMap((line, i) =>
    Object.keys(rows[i]!).length === 0 ? [] : [{ row: rows[i]!, typed: typedOf(line, columns, rows[i]!) }],
  );
  return {
    rows: kept.map(({ row }) => row),
    typed: kept.map(({ typed }) => typed),
    hasHeadings: heading !== undefined,
    isLaid: laid !== undefined,
    leftOut: namesLeftOut(columns, heading, lines),
    columns,
  };
}

/** Whether a text is more than one cell, and so no plain paste into one. */
export function isBlock(text: string): boolean {
  if (!/[\t\n;|]/.test(text.trim())) return false;
  const { lines } = splitTable(text);
  return lines.length > 1 || (lines[0]?.length ?? 0) > 1;
}
