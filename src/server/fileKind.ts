/** What a file is by its first bytes: the few kinds of picture that a page may show, or bytes that are only kept. */
import type { FileKind } from '../api/replies.ts';
import { Fault } from '../base/fault.ts';

export const LARGEST_FILE_B = 32_000_000;

const begins = (bytes: Uint8Array, text: string, at = 0) =>
  [...text].every((letter, index) => bytes[at + index] === letter.charCodeAt(0));

/** The signatures stand in the PNG, JFIF, GIF89a and WebP container specifications. */
export function kindOf(bytes: Uint8Array): FileKind {
  if (begins(bytes, '\x89PNG\r\n\x1a\n')) return 'image/png';
  if (begins(bytes, '\xff\xd8\xff')) return 'image/jpeg';
  if (begins(bytes, 'GIF87a') || begins(bytes, 'GIF89a')) return 'image/gif';
  if (begins(bytes, 'RIFF') && begins(bytes, 'WEBP', 8)) return 'image/webp';
  return 'application/octet-stream';
}

/**
 * The kind under which a file is kept. Throws Fault `file.svg-refused` or `file.not-a-picture` for what is sent as a
 * picture and is none that a page may show.
 */
export function keptKind({ bytes, type, name }: { readonly bytes: Uint8Array; readonly type: string; readonly name: string }): FileKind {
  const kind = kindOf(bytes);
  if (kind !== 'application/octet-stream' || !type.startsWith('image/')) return kind;
  if (type === 'image/svg+xml')
    throw new Fault({
      code: 'file.svg-refused',
      what: 'An SVG drawing is not taken as a picture, because it can run script',
      where: name,
      mend: 'Export it as PNG, JPEG, WebP or GIF and send that.',
    });
  throw new Fault({
    code: 'file.not-a-picture',
    what: `The file was sent as ${type.slice(0, 60)}, and its bytes are not those of a PNG, JPEG, WebP or GIF picture`,
    where: name,
    mend: 'Save it as PNG, JPEG, WebP or GIF and send that.',
  });
} // prettier-ignore
