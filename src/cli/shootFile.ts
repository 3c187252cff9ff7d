/** A shoot's text from a file or from standard input. */
import { createReadStream } from 'node:fs';
import { Fault } from '../base/fault.ts';
import { LARGEST_B } from '../document/yamlTree.ts';

/** How standard input is named on the command line. */
export const STANDARD_INPUT = '-';

const WORDS: Readonly<Record<string, readonly [what: string, mend: string]>> = {
  ENOENT: ['There is no such file', 'Check the name and the folder it is in.'],
  ENOTDIR: ['There is no such file', 'Check the name and the folder it is in.'],
  EISDIR: ['This is a folder, not a file', 'Name a file in it, for example shoot.yaml.'],
  EACCES: ['The file may not be read', 'Check its permissions.'],
  EPERM: ['The file may not be read', 'Check its permissions.'],
};

/** Why a file cannot be read, in words. */
export function unreadable(file: string, cause: unknown): Fault {
  const { code = '', message } = cause as NodeJS.ErrnoException;
  const [what, mend] = WORDS[code] ?? [`The file cannot be read: ${message}`, 'Check the file and the disk it is on.'];
  return new Fault({ code: 'shoot.unreadable-file', what, where: file, mend, cause });
}

async function collect(bytes: AsyncIterable<Uint8Array>, where: string): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  let size_B = 0;
  for await (const chunk of bytes) {
    chunks.push(chunk);
    size_B += chunk.length;
    if (size_B > LARGEST_B)
      throw new Fault({
        code: 'document.too-large',
        what: `The document holds more than ${LARGEST_B / 1e6} MB, and no shoot does`,
        where,
        mend: 'Check that this is a shoot; pictures and footage are named in it, not held in it.',
      });
  }
  return Buffer.concat(chunks);
}

function decoded(bytes: Uint8Array, where: string): string {
  const notText = (cause?: unknown): Fault =>
    new Fault({
      code: 'shoot.not-text',
      what: 'The file is not text in UTF-8',
      where,
      mend: 'Give a shoot as YAML or JSON, saved as UTF-8.',
      cause,
    });
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch (cause) {
    throw notText(cause);
  }
  if (text.includes('\0')) throw notText();
  return text;
}

export interface ShootSource {
  /** What it is called in messages. */
  readonly name: string;
  readonly text: string;
}

/**
 * Reads the text of a shoot from a file, or from `input` where the file is `-`. Throws a Fault `shoot.unreadable-file`,
 * `shoot.not-text` or `document.too-large`.
 */
export async function readShootSource(file: string, input: AsyncIterable<Uint8Array>): Promise<ShootSource> {
  const name = file === STANDARD_INPUT ? 'standard input' : file;
  try {
    const bytes = await collect(file === STANDARD_INPUT ? input : createReadStream(file), name);
    return { name, text: decoded(bytes, name) };
  } catch (error) {
    throw error instanceof Fault ? error : unreadable(name, error);
  }
}
