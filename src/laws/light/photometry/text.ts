/**
 * A photometric file's bytes as lines of text. Makers write these files in ASCII, UTF-8, UTF-16 with its mark, or the
 * single-byte page of Western Windows, and say nowhere which.
 */
import type { Notice } from './photometry.ts';
import { refuse } from './refusal.ts';

/** Far above any real file: a million values of a dozen characters each, with room. */
export const MOST_BYTES = 16 * 1024 * 1024;
export const MOST_LINES = 1_100_000;

export interface Lines {
  readonly lines: readonly string[];
  readonly notices: readonly Notice[];
}

/** What the bytes 0x80 to 0x9F stand for in the Western page; 0 where it has nothing. */
const WESTERN = [
  0x20ac, 0, 0x201a, 0x0192, 0x201e, 0x2026, 0x2020, 0x2021, 0x02c6, 0x2030, 0x0160, 0x2039, 0x0152, 0, 0x017d, 0, 0,
  0x2018, 0x2019, 0x201c, 0x201d, 0x2022, 0x2013, 0x2014, 0x02dc, 0x2122, 0x0161, 0x203a, 0x0153, 0, 0x017e, 0x0178,
];

/** Text from character codes, in pieces that no call of a function with many arguments chokes on. */
function textOfCodes(codes: Uint16Array): string {
  const pieces: string[] = [];
  for (let at = 0; at < codes.length; at += 4096) pieces.push(String.fromCharCode(...codes.subarray(at, at + 4096)));
  return pieces.join('');
}

function utf16(bytes: Uint8Array, isLittle: boolean): string {
  const codes = new Uint16Array((bytes.length - 2) >> 1);
  for (let i = 0; i < codes.length; i += 1) {
    const [first, second] = [bytes[2 + 2 * i]!, bytes[3 + 2 * i]!];
    codes[i] = isLittle ? first | (second << 8) : (first << 8) | second;
  }
  return textOfCodes(codes);
}

/** How many bytes a UTF-8 character has from its first; 0 for none that begins so. */
function lengthFromFirst(first: number): number {
  if (first < 0x80) return 1;
  if (first >= 0xc2 && first < 0xe0) return 2;
  if (first >= 0xe0 && first < 0xf0) return 3;
  return first >= 0xf0 && first < 0xf5 ? 4 : 0;
}

/** UTF-8 as text, or undefined where the bytes are not UTF-8. */
function utf8(bytes: Uint8Array): string | undefined {
  const codes = new Uint16Array(bytes.length);
  let written = 0;
  for (let at = 0; at < bytes.length;) {
    const first = bytes[at]!;
    const length = lengthFromFirst(first);
    if (length === 0 || at + length > bytes.length) return undefined;
    let code = length === 1 ? first : first & (0x7f >> length);
    for (let i = 1; i < length; i += 1) {
      const next = bytes[at + i]!;
      if ((next & 0xc0) !== 0x80) return undefined;
      code = (code << 6) | (next & 0x3f);
    }
    // Longer than it need be, half of a pair alone, or beyond the last character: not UTF-8.
    if ((length === 3 && code < 0x800) || (length === 4 && (code < 0x10000 || code > 0x10ffff))) return undefined;
    if (code >= 0xd800 && code < 0xe000) return undefined;
    if (code >= 0x10000) {
      codes[written] = 0xd800 + ((code - 0x10000) >> 10);
      written += 1;
      code = 0xdc00 + ((code - 0x10000) & 0x3ff);
    }
    codes[written] = code;
    written += 1;
    at += length;
  }
  return textOfCodes(codes.subarray(0, written));
}

function western(bytes: Uint8Array): string {
  const codes = new Uint16Array(bytes.length);
  for (let i = 0; i < bytes.length; i += 1) {
    const byte = bytes[i]!;
    codes[i] = byte >= 0x80 && byte < 0xa0 ? WESTERN[byte - 0x80] || 0xfffd : byte;
  }
  return textOfCodes(codes);
}

/** Bytes as text, with what had to be guessed. */
export function textOfBytes(bytes: Uint8Array): { readonly text: string; readonly notices: readonly Notice[] } {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return { text: utf16(bytes, true), notices: [] };
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return { text: utf16(bytes, false), notices: [] };
  const text = utf8(bytes);
  if (text !== undefined) return { text, notices: [] };
  return {
    text: western(bytes),
    notices: [
      {
        code: 'photometry.western-bytes',
        what: 'The text is not UTF-8 and was read as Western European; names may show wrong letters, numbers do not change.',
      },
    ],
  };
}

function countLines(text: string): number {
  let count = 1;
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code === 10 || (code === 13 && text.charCodeAt(at + 1) !== 10)) count += 1;
  }
  return count;
}

/**
 * The lines of a file given as text or bytes, whatever ends them. Refuses files over 16 MiB or 1,100,000 lines, and files
 * with zero bytes in them, which are not text.
 */
export function linesOf(file: string | Uint8Array): Lines {
  if (file.length > MOST_BYTES)
    refuse({
      code: 'photometry.too-long',
      what: `The file holds ${file.length} bytes, more than the ${MOST_BYTES} that are read`,
      line: 0,
      mend: 'Give the photometric file of one lamp, not an archive or a collection.',
    });
  const { text, notices } = typeof file === 'string' ? { text: file, notices: [] } : textOfBytes(file);
  if (text.includes('\0'))
    refuse({
      code: 'photometry.not-text',
      what: 'The file holds zero bytes, so it is not text',
      line: 0,
      mend: 'Give the .ies or .ldt file itself; unpack it first if it came in an archive.',
    });
  const count = countLines(text);
  if (count > MOST_LINES)
    refuse({
      code: 'photometry.too-long',
      what: `The file holds ${count} lines, more than the ${MOST_LINES} that are read`,
      line: 0,
      mend: 'Give the photometric file of one lamp, not an archive or a collection.',
    });
  const bare = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  return { lines: bare.split(/\r\n|\n|\r/), notices };
}
