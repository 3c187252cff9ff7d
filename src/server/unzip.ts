/**
 * Zips from strangers, read by their central directory (PKWARE APPNOTE 6.3, classic form). Nothing is unpacked before
 * every entry's name and declared size has been judged, and no entry may grow beyond what it declared.
 */
import { inflateRawSync } from 'node:zlib';
import { Fault } from '../base/fault.ts';
import { LARGEST_FILE_B } from './fileKind.ts';
import { LARGEST_UNPACKED_B, MOST_ENTRIES, ZIP_LIMITS } from './zipLimits.ts';

export interface ZipEntry {
  /** Parts joined by `/`, none of which leads elsewhere. */
  readonly name: string;
  readonly size_B: number;
  /** Unpacks it. Throws Fault `zip.larger-than-declared` or `zip.malformed`. */
  readonly read: () => Buffer;
}

const END = 0x06054b50;
const CENTRAL = 0x02014b50;
const LOCAL = 0x04034b50;
const END_SIZE_B = 22;
const LONGEST_COMMENT_B = 0xffff;
const STORED = 0;
const DEFLATED = 8;
const ENCRYPTED = 1;

const malformed = (what: string, cause?: unknown) =>
  new Fault({
    code: 'zip.malformed',
    what: `The zip is damaged or cut short: ${what}`,
    where: 'the zip',
    mend: 'Make it again and send it anew; nothing was stored.',
    cause,
  });

const unsupported = (what: string) =>
  new Fault({
    code: 'zip.unsupported',
    what,
    where: 'the zip',
    mend: 'Make a plain zip without a password; nothing was stored.',
  });

const tooLarge = (what: string) =>
  new Fault({
    code: 'zip.too-large',
    what: `${what}; a zip may have ${ZIP_LIMITS}`,
    where: 'the zip',
    mend: 'Bring the shoot in as text, then send its files one by one; nothing was stored.',
  });

function requirePlainPath(name: string): void {
  const parts = name.replace(/\/$/, '').split('/');
  const isPlain =
    !/[\\\p{Cc}]/u.test(name) &&
    !/^[A-Za-z]:/.test(name) &&
    parts.every((part) => part !== '' && part !== '.' && part !== '..');
  if (isPlain) return;
  throw new Fault({
    code: 'zip.path-refused',
    what: `An entry is called ${JSON.stringify(name.slice(0, 100))}, which leads out of the zip`,
    where: 'the zip',
    mend: 'Do not trust where this zip came from; ask for it anew. Nothing was stored.',
  });
}

let table: Uint32Array | undefined;

function crcTable(): Uint32Array {
  return (table ??= Uint32Array.from({ length: 256 }, (_, index) => {
    let value = index;
    for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
    return value;
  }));
}

function crc32(bytes: Uint8Array): number {
  const sums = crcTable();
  let crc = 0xffffffff;
  for (let i = 0; i < bytes.length; i += 1) crc = sums[(crc ^ bytes[i]!) & 0xff]! ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}

interface Central {
  readonly name: string;
  readonly method: number;
  readonly crc: number;
  readonly packed_B: number;
  readonly size_B: number;
  readonly localAt: number;
}

function unpack(zip: Buffer, { name, method, crc, packed_B, size_B, localAt }: Central): Buffer {
  if (localAt + 30 > zip.length || zip.readUInt32LE(localAt) !== LOCAL) throw malformed(`no entry begins where ${JSON.stringify(name)} should`); // prettier-ignore
  const from = localAt + 30 + zip.readUInt16LE(localAt + 26) + zip.readUInt16LE(localAt + 28);
  if (from + packed_B > zip.length) throw malformed(`${JSON.stringify(name)} ends beyond it`);
  const packed = zip.subarray(from, from + packed_B);
  let bytes: Buffer;
  try {
    bytes = method === STORED ? packed : inflateRawSync(packed, { maxOutputLength: Math.max(1, size_B) });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ERR_BUFFER_TOO_LARGE')
      throw malformed(`${JSON.stringify(name)} does not unpack`, error);
    throw new Fault({
      code: 'zip.larger-than-declared',
      what: `${JSON.stringify(name)} says that it unpacks to ${size_B} bytes, and goes on beyond that`,
      where: 'the zip',
      mend: 'Do not trust where this zip came from; ask for it anew. Nothing was stored.',
      cause: error,
    });
  }
  if (bytes.length !== size_B) throw malformed(`${JSON.stringify(name)} unpacks to ${bytes.length} bytes, not ${size_B}`); // prettier-ignore
  if (crc32(bytes) !== crc) throw malformed(`the checksum of ${JSON.stringify(name)} differs`);
  return bytes;
}

function endOf(zip: Buffer): number {
  const first = Math.max(0, zip.length - END_SIZE_B - LONGEST_COMMENT_B);
  for (let at = zip.length - END_SIZE_B; at >= first; at -= 1)
    if (zip.readUInt32LE(at) === END && at + END_SIZE_B + zip.readUInt16LE(at + 20) === zip.length) return at;
  throw malformed('it has no directory');
}

function readCentral(zip: Buffer, at: number, end: number): { readonly entry: Central; readonly next: number } {
  if (at + 46 > end || zip.readUInt32LE(at) !== CENTRAL) throw malformed('its directory is broken');
  const nameLength = zip.readUInt16LE(at + 28);
  const next = at + 46 + nameLength + zip.readUInt16LE(at + 30) + zip.readUInt16LE(at + 32);
  if (next > end) throw malformed('its directory is broken');
  const entry: Central = {
    name: zip.toString('utf8', at + 46, at + 46 + nameLength),
    method: zip.readUInt16LE(at + 10),
    crc: zip.readUInt32LE(at + 16),
    packed_B: zip.readUInt32LE(at + 20),
    size_B: zip.readUInt32LE(at + 24),
    localAt: zip.readUInt32LE(at + 42),
  };
  if (zip.readUInt16LE(at + 8) & ENCRYPTED) throw unsupported(`${JSON.stringify(entry.name)} is locked by a password`);
  if (entry.method !== STORED && entry.method !== DEFLATED)
    throw unsupported(`${JSON.stringify(entry.name)} is packed by method ${entry.method}, which is not read here`);
  if ([entry.packed_B, entry.size_B, entry.localAt].includes(0xffffffff))
    throw unsupported('The zip is of the form for more than 4 GB');
  return { entry, next };
}

/**
 * What a zip holds, folders left out. Throws Fault `zip.malformed`, `zip.unsupported`, `zip.too-many`, `zip.too-large`
 * or `zip.path-refused`.
 */
export function readZip(bytes: Uint8Array): readonly ZipEntry[] {
  const zip = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (zip.length < END_SIZE_B) throw malformed('it has no directory');
  const end = endOf(zip);
  const count = zip.readUInt16LE(end + 10);
  if (count > MOST_ENTRIES)
    throw new Fault({
      code: 'zip.too-many',
      what: `The zip has ${count} entries; it may have ${ZIP_LIMITS}`,
      where: 'the zip',
      mend: 'Leave out what the shoot does not name; nothing was stored.',
    });
  const entries: Central[] = [];
  let at = zip.readUInt32LE(end + 16);
  for (let i = 0; i < count; i += 1) {
    const { entry, next } = readCentral(zip, at, end);
    requirePlainPath(entry.name);
    if (!entry.name.endsWith('/')) entries.push(entry);
    at = next;
  }
  if (new Set(entries.map(({ name }) => name)).size < entries.length) throw malformed('two entries have one name');
  const largest = entries.find(({ size_B }) => size_B > LARGEST_FILE_B);
  if (largest) throw tooLarge(`${JSON.stringify(largest.name)} unpacks to ${largest.size_B} bytes`);
  const total_B = entries.reduce((sum, { size_B }) => sum + size_B, 0);
  if (total_B > LARGEST_UNPACKED_B) throw tooLarge(`The zip unpacks to ${total_B} bytes`);
  return entries.map((entry) => ({ name: entry.name, size_B: entry.size_B, read: () => unpack(zip, entry) }));
}
