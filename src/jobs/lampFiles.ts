/** Files of a shoot's lamps out of the store: read, and told to plans that are made here. */
import { Fault } from '../base/fault.ts';
import type { Shoot } from '../document/schema.ts';
import { lampFileKey, lampFilesOf, tellLampFiles, type LampFile, type LampFileState } from '../plan/lampFiles.ts';
import type { ShootStore } from '../store/types.ts';

/** What a hash stands for never changes; this many files are kept read. */
const MOST_KEPT = 32;

const kept = new Map<string, LampFileState>();

async function stateOf(store: ShootStore, shootId: string, file: LampFile): Promise<LampFileState> {
  const key = lampFileKey(file);
  let bytes;
  try {
    // Asked for even where it is kept: a shoot is told only of what belongs to it.
    ({ bytes } = store.fileOf(shootId, file.sha256.toLowerCase()));
  } catch (error) {
    if (!(error instanceof Fault)) throw error;
    return { kind: 'unread', says: `${file.name} is not here: only its name was brought in` };
  }
  const known = kept.get(key);
  if (known) return known;
  const { readLampFile } = await import('../plan/readLampFile.ts');
  const state = readLampFile(file, new Uint8Array(bytes));
  // A refusal says the name under which the file was asked for, and is not for others.
  if (state.kind === 'unread') return state;
  kept.set(key, state);
  for (const oldest of kept.keys()) if (kept.size > MOST_KEPT) kept.delete(oldest);
  return state;
}

/** Tells plans what the files of a shoot's lamps hold. */
export async function tellStoredFiles(store: ShootStore, shootId: string, shoot: Shoot): Promise<void> {
  const states = new Map<string, LampFileState>();
  for (const file of lampFilesOf(shoot)) states.set(lampFileKey(file), await stateOf(store, shootId, file));
  tellLampFiles(shoot, (file) => states.get(lampFileKey(file)));
}
