/** Files of a shoot's lamps that lie beside it under the names it gives them: read, and told to plans. */
import { createHash } from 'node:crypto';
import { readFile, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import type { Shoot } from '../document/schema.ts';
import { lampFileKey, lampFilesOf, tellLampFiles, type LampFile, type LampFileState } from '../plan/lampFiles.ts';
import { STANDARD_INPUT } from './shootFile.ts';

/** Above this a file beside a shoot is no file of a lamp, as the server would not have taken it either. */
const LARGEST_B = 32_000_000;

async function stateOf(folder: string, file: LampFile): Promise<LampFileState> {
  const { name, sha256 } = file;
  const unread = (says: string): LampFileState => ({ kind: 'unread', says });
  if (basename(name) !== name) return unread(`${name} is no name of a file beside the shoot`);
  let bytes;
  try {
    const path = join(folder, name);
    if ((await stat(path)).size > LARGEST_B) return unread(`${name} is larger than ${LARGEST_B / 1e6} MB`);
    bytes = new Uint8Array(await readFile(path));
  } catch {
    return unread(`${name} does not lie beside the shoot`);
  }
  if (createHash('sha256').update(bytes).digest('hex') !== sha256.toLowerCase())
    return unread(`the ${name} beside the shoot is another than the one it names by its hash`);
  const { readLampFile } = await import('../plan/readLampFile.ts');
  return readLampFile(file, bytes);
}

/** Tells plans what the files beside a shoot hold; of a shoot from standard input nothing lies beside it. */
export async function tellFilesBeside(source: string, shoot: Shoot): Promise<void> {
  if (source === STANDARD_INPUT) return;
  const states = new Map<string, LampFileState>();
  for (const file of lampFilesOf(shoot)) states.set(lampFileKey(file), await stateOf(dirname(source), file));
  tellLampFiles(shoot, (file) => states.get(lampFileKey(file)));
}
