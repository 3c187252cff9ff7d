/** Cells of a pasted table: numbers with either decimal mark, thousands parted in any way, sizes, units. */
import type { ModeKey } from './modeKeys.ts';

export type DecimalMark = '.' | ',';

/** Ordinary, unbreakable, thin and narrow spaces, and the marks that some put between thousands. */
const SPACES = /[\s\u00a0\u2009\u202f'’]/g;
const NUMBER = /^[+\-−]?\d[\d.,\s\u00a0\u2009\u202f'’]*$/;
const LIMIT_WORDS = /^(?:up\s+to|max\.?|maximum|≤|<=?|~|ca\.?)\s*/i;
const SIZE =
  /^(\d[\d.,\s\u00a0\u2009\u202f'’]*?)\s*(?:px\s*)?(?:x|×|\*|by)\s*(\d[\d.,\s\u00a0\u2009\u202f'’]*?)\s*(?:px|pixels)?$/i;
const RATE_UNIT = /^(.*?)\s*(k?)(?:fps|f\/s|hz|frames?\s*(?:\/|per|a)\s*s(?:ec(?:ond)?)?\.?)$/i; // prettier-ignore
const BITS = /^(\d+)[\s-]*bits?$/i;
const BINNED = /^(\d+)\s*(?:[x×:]\s*(\d+))?\s*[x×]?$/i;

/** Whether a cell begins as a value does, rather than as a word. */
export function looksNumeric(cell: string): boolean {
  return /^[+\-−≤<~]?\s*[.,]?\d/.test(cell.replace(LIMIT_WORDS, ''));
}

/** What a cell alone says about its decimal mark; 1 062, 1,062 and 1.062 say nothing. */
function markIn(cell: string): DecimalMark | undefined {
  const digits = cell.replace(SPACES, '');
  const both = /[.,](?=[^.,]*$)/.exec(digits);
  if (digits.includes('.') && digits.includes(',')) return both![0] as DecimalMark;
  const parts = /^\D*(\d+)((?:[.,]\d+)+)/.exec(digits);
  if (!parts) return undefined;
  const [, lead = '', rest = ''] = parts;
  const groups = rest.slice(1).split(/[.,]/);
  const mark = rest[0] as DecimalMark;
  if (groups.length > 1) return mark === '.' ? ',' : '.';
  return groups[0]!.length !== 3 || lead.length > 3 || lead === '0' ? mark : undefined;
}

/** The decimal mark that most cells which say one agree on, or `usual`. */
export function decimalMarkOf(cells: readonly string[], usual: DecimalMark): DecimalMark {
  const marks = cells.filter(looksNumeric).map(markIn);
  const commas = marks.filter((mark) => mark === ',').length;
  const points = marks.filter((mark) => mark === '.').length;
  if (commas === points) return usual;
  return commas > points ? ',' : '.';
}

/** A number as the shoot writes it: digits and a decimal point; undefined where the text is no number. */
export function plainNumber(text: string, mark: DecimalMark): string | undefined {
  const body = text.trim();
  if (!NUMBER.test(body)) return undefined;
  const digits = body.replace(SPACES, '').replaceAll('−', '-');
  const own = markIn(digits) ?? mark;
  const [whole = '', part, ...more] = digits.split(own);
  const groups = whole.split(own === '.' ? ',' : '.');
  const areThousands = groups.slice(1).every((group) => group.length === 3);
  if (more.length > 0 || !areThousands || (part !== undefined && !/^\d+$/.test(part))) return undefined;
  const value = `${groups.join('')}${part === undefined ? '' : `.${part}`}`;
  return /^[+-]?\d+(\.\d+)?$/.test(value) ? value : undefined;
}

/** Counts of pixels have no decimals: every mark in them parts thousands. */
const plainCount = (text: string) => {
  const digits = text.replace(SPACES, '');
  return /^\d{1,3}(?:[.,]\d{3})+$|^\d+$/.test(digits) ? digits.replace(/[.,]/g, '') : undefined;
};

/** `1920 × 1080`, `1,920 by 1,080`, `1920*1080 px` as the shoot writes a size; undefined for anything else. */
export function readSizeCell(cell: string): string | undefined {
  const [, across, down] = SIZE.exec(cell.trim()) ?? [];
  const [width, height] = [plainCount(across ?? ''), plainCount(down ?? '')];
  return width === undefined || height === undefined ? undefined : `${width} x ${height}`;
}

function readRateCell(cell: string, mark: DecimalMark): string {
  const body = cell.replace(LIMIT_WORDS, '');
  const [, before = body, kilo = ''] = RATE_UNIT.exec(body) ?? [];
  const number = plainNumber(before, mark);
  if (number !== undefined) return `${kilo === '' ? number : String(Number((Number(number) * 1000).toPrecision(12)))} fps`;
  return /^\d+\s*\/\s*\d+$/.test(before) ? `${before.replace(/\s/g, '')} fps` : cell;
} // prettier-ignore

function readBinningCell(cell: string, mark: DecimalMark): string {
  if (/^(?:none|no|off|[-–—])$/i.test(cell)) return '';
  const [, one, other = one] = BINNED.exec(cell) ?? [];
  return one !== undefined && one === other ? one : (plainNumber(cell, mark) ?? cell);
}

/** A cell as the shoot would write it under a key, or as it was typed where it cannot be read. */
export function readCell(key: ModeKey, cell: string, mark: DecimalMark): string {
  const body = cell.trim();
  if (body === '') return '';
  switch (key) {
    case 'title':
      return body;
    case 'pixels':
      return readSizeCell(body) ?? body;
    case 'rate':
      return readRateCell(body, mark);
    case 'binning':
      return readBinningCell(body, mark);
    case 'bits':
      return BITS.exec(body)?.[1] ?? plainNumber(body, mark) ?? body;
  }
}
