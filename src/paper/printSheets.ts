/** Sheets to a PDF: the one door of this folder. */
import { onOneLine } from '../turnover/lines.ts';
import { paragraph, type Sheet } from '../turnover/sheets/sheet.ts';
import { layOut, withFeet, type PaperSize } from './layOut.ts';
import { makePen } from './pen.ts';
import { openTypeface } from './typeface.ts';
import { writePdf } from './writePdf.ts';

export interface PrintOptions {
  readonly size: PaperSize;
  /** Which revision of the shoot it is of, where it has one. */
  readonly revision?: number;
  /** When it is printed, by the clock of whoever asks. */
  readonly printedAt: Date;
}

const twoDigits = (value: number): string => String(value).padStart(2, '0');

/** "2027-03-09 07:30 UTC": the same wherever it is printed. */
export function printedWords(at: Date): string {
  const day = [at.getUTCFullYear(), twoDigits(at.getUTCMonth() + 1), twoDigits(at.getUTCDate())].join('-');
  return `${day} ${twoDigits(at.getUTCHours())}:${twoDigits(at.getUTCMinutes())} UTC`;
}

/** Said on a sheet whose words hold what no part of the typeface prints. */
function lackingSays(lacking: ReadonlySet<string>): string {
  const codes = [...lacking].slice(0, 12).map((character) => `U+${character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`);
  return `A question mark may stand for a character that this typeface lacks (${codes.join(', ')}${lacking.size > 12 ? ' and more' : ''}). Printed from the browser it is shown.`;
} // prettier-ignore

/** The sheet with a word on what it lacks, before its notes. */
function withLack(sheet: Sheet, lacking: ReadonlySet<string>): Sheet {
  const { blocks } = sheet;
  const last = blocks[blocks.length - 1];
  const says = paragraph(lackingSays(lacking), 'small');
  return { ...sheet, blocks: last?.block === 'blank' ? [...blocks.slice(0, -1), says, last] : [...blocks, says] };
}

/** Sheets with a word on what they lack, where some character of them cannot be printed: found by setting each once. */
export function withLacks(sheets: readonly Sheet[], size: PaperSize): readonly Sheet[] {
  return sheets.map((sheet) => {
    const typeface = openTypeface();
    layOut([sheet], { pen: makePen(typeface), size });
    return typeface.lacking.size === 0 ? sheet : withLack(sheet, typeface.lacking);
  });
}

/** The bytes of a PDF of these sheets; the same sheets, size, revision and time give the same bytes. */
export async function printSheets(sheets: readonly Sheet[], { size, revision, printedAt }: PrintOptions): Promise<Uint8Array> {
  const typeface = openTypeface();
  const pen = makePen(typeface);
  const options = { pen, size };
  const [first] = sheets;
  const of = revision === undefined ? '' : `revision ${revision}, `;
  const pages = withFeet(layOut(withLacks(sheets, size), options), options, { says: `${of}printed ${printedWords(printedAt)}` });
  const kinds = [...new Set(sheets.map(({ over }) => over))].join(', ');
  const title = first && sheets.length === 1 ? `${first.title}, ${first.over.toLowerCase()}` : kinds;
  return writePdf(pages, typeface, {
    title: onOneLine(title),
    subject: onOneLine(first === undefined ? '' : [first.shoot, first.about].filter((part) => part !== '').join(', ')),
    createdAt: printedAt,
    size,
  });
} // prettier-ignore
