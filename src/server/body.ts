/** Bodies of requests, each of a bounded size. */
import type { Context } from 'hono';
import { parsed, type Parsed, type Schema } from '../api/parsed.ts';
import { Fault } from '../base/fault.ts';

/** A shoot of the largest size, with room for what JSON adds to its text. */
export const LARGEST_BODY_B = 6 * 1024 * 1024;

/** How much of a body is read, and what to do where there is more. */
export interface BodyLimit {
  readonly most_B: number;
  readonly mend: string;
}

const JSON_LIMIT: BodyLimit = {
  most_B: LARGEST_BODY_B,
  mend: 'Send less at once; pictures and measurements belong beside the shoot, not in it.',
};

const MEGA = 1e6;

const tooLarge = ({ most_B, mend }: BodyLimit, where: string) =>
  new Fault({
    code: 'input.too-large',
    what: `The body is larger than the ${(most_B / MEGA).toFixed(1)} MB that this server reads`,
    where,
    mend,
  });

/** The whole body, where it is within a limit. Throws Fault `input.too-large`. */
export async function bodyBytes(c: Context, limit: BodyLimit, where: string): Promise<Buffer> {
  if (Number(c.req.header('content-length') ?? 0) > limit.most_B) throw tooLarge(limit, where);
  const chunks: Uint8Array[] = [];
  let size_B = 0;
  const stream = c.req.raw.body as ReadableStream<Uint8Array> | null;
  for await (const chunk of stream ?? []) {
    size_B += chunk.byteLength;
    // Leaving the loop cancels the stream: no more of it is read.
    if (size_B > limit.most_B) throw tooLarge(limit, where);
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}

/** The type of a body in small letters, without its parameters; empty where none is given. */
export function mediaType(c: Context): string {
  return (c.req.header('content-type') ?? '').split(';', 1).join().trim().toLowerCase();
}

function jsonOf(bytes: Uint8Array, where: string): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch (cause) {
    throw new Fault({
      code: 'input.not-json',
      what: 'The body is not JSON in UTF-8',
      where,
      mend: 'Send JSON; nothing was changed.',
      cause,
    });
  }
}

/** The body as a schema reads it. Throws Fault `input.wrong-type`, `input.too-large`, `input.not-json`, `input.malformed`. */
export async function parsedBody<Of extends Schema>(c: Context, schema: Of, where: string): Promise<Parsed<Of>> {
  const type = c.req.header('content-type') ?? 'none';
  if (!/^application\/json\s*(;\s*charset="?utf-8"?\s*)?$/i.test(type))
    throw new Fault({
      code: 'input.wrong-type',
      what: `The body's type must be application/json; it is ${type.slice(0, 100)}`,
      where,
      mend: 'Send it with the header content-type: application/json.',
    });
  return parsed(schema, jsonOf(await bodyBytes(c, JSON_LIMIT, where), where), where);
}
