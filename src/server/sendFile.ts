/** A file of this machine as an answer, whole or the part that is asked for (RFC 9110, section 14). */
import type { Context } from 'hono';
import { open, type FileHandle } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { Fault } from '../base/fault.ts';

interface Part {
  readonly first: number;
  readonly last: number;
}

/** The part that a Range asks for: 'whole' where it asks for none that is understood, 'beyond' where there is no such part. */
export function partOf(range: string | undefined, size_B: number): Part | 'whole' | 'beyond' {
  const match = /^bytes=(\d{0,15})-(\d{0,15})$/.exec((range ?? '').trim());
  const [, from = '', to = ''] = match ?? [];
  if (from === '' && to === '') return 'whole';
  if (from === '') {
    const first = Math.max(0, size_B - Number(to));
    return first < size_B ? { first, last: size_B - 1 } : 'beyond';
  }
  const [first, last] = [Number(from), to === '' ? size_B - 1 : Math.min(Number(to), size_B - 1)];
  if (to !== '' && Number(to) < first) return 'whole';
  return first < size_B ? { first, last } : 'beyond';
}

async function opened(path: string, where: string): Promise<FileHandle> {
  try {
    return await open(path, 'r');
  } catch (cause) {
    throw new Fault({
      code: 'footage.no-copy',
      what: 'The file is gone',
      where,
      mend: 'Have it made again.',
      cause,
    });
  }
}

interface Sent {
  readonly file: string;
  readonly headers: Readonly<Record<string, string>>;
}

/** Answers 200, 206, 304 or, by a Fault, 416. To a HEAD nothing is read. */
export async function sendFile(c: Context, { file, headers }: Sent): Promise<Response> {
  const handle = await opened(file, c.req.path.slice(0, 200));
  try {
    const { size, ino } = await handle.stat();
    // Its time is when it was asked for last. A file that is made anew takes the place of this one, and is another.
    const etag = `"${ino.toString(16)}-${size.toString(16)}"`;
    const more = { ...headers, etag, 'accept-ranges': 'bytes' };
    if (c.req.header('if-none-match') === etag) {
      await handle.close();
      return c.body(null, 304, more);
    }
    const isSame = (c.req.header('if-range') ?? etag) === etag;
    const part = isSame ? partOf(c.req.header('range'), size) : 'whole';
    if (part === 'beyond') {
      c.header('content-range', `bytes */${size}`);
      throw new Fault({
        code: 'footage.range-beyond',
        what: `The file has ${size} bytes, and the part asked for begins after them`,
        where: c.req.path.slice(0, 200),
        mend: 'Ask for the file anew, without a range.',
      });
    }
    const { first, last } = part === 'whole' ? { first: 0, last: size - 1 } : part;
    const lengths = {
      'content-length': String(last - first + 1),
      ...(part !== 'whole' && { 'content-range': `bytes ${first}-${last}/${size}` }),
    };
    const status = part === 'whole' ? 200 : 206;
    if (c.req.method === 'HEAD' || size === 0) {
      await handle.close();
      return c.body(null, status, { ...more, ...lengths });
    }
    // Closes the file when it is read to its end, or when nobody wants the rest.
    const bytes = Readable.toWeb(handle.createReadStream({ start: first, end: last })) as ReadableStream<Uint8Array>;
    return c.body(bytes, status, { ...more, ...lengths });
  } catch (error) {
    await handle.close();
    throw error;
  }
}
