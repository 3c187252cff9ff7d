/** The files that a shoot's lamps name: which there are, and telling plans what has been read of them. */
import type { Shoot } from '../document/schema.ts';
import type { Waveform } from '../laws/flicker/waveform.ts';
import type { Photometry } from '../laws/light/photometry/photometry.ts';
import { tellPhotometry } from './photometry.ts';
import { tellWaveforms } from './waveforms.ts';

/** What a file holds, by what the shoot names it for. */
export type LampFileContent =
  | { readonly kind: 'photometry'; readonly photometry: Photometry }
  | { readonly kind: 'waveform'; readonly waveform: Waveform };

export type LampFileKind = LampFileContent['kind'];

export interface LampFile {
  readonly kind: LampFileKind;
  /** As the document writes it. */
  readonly sha256: string;
  readonly name: string;
}

/** What is known of a file: what it holds, or half a sentence on why that is not known, which begins with its name. */
export type LampFileState = LampFileContent | { readonly kind: 'unread'; readonly says: string };

/** The same bytes named for the same thing are one file. */
export const lampFileKey = ({ kind, sha256 }: Pick<LampFile, 'kind' | 'sha256'>): string =>
  `${kind} ${sha256.toLowerCase()}`;

/** Every file that a lamp of the kit names and whose hash the shoot says, once for each thing that it is named for. */
export function lampFilesOf({ kit, files }: Shoot): readonly LampFile[] {
  const found = new Map<string, LampFile>();
  const add = (kind: LampFileKind, id: string | undefined) => {
    const { name = id ?? '', sha256 } = (id === undefined ? undefined : files[id]) ?? {};
    if (sha256 !== undefined) found.set(`${kind} ${sha256}`, { kind, sha256, name });
  };
  for (const { file, measured } of Object.values(kit.lamps)) {
    add('photometry', file);
    for (const record of Object.values(measured)) add('waveform', record.file);
  }
  return [...found.values()];
}

const KINDS = ['photometry', 'waveform'] as const satisfies readonly LampFileKind[];

/**
 * Tells plans all that is known of a shoot's files, whichever lamps name them and whatever for: what is told then goes by
 * the files alone, and an edit of a lamp changes nothing of it.
 */
export function tellLampFiles(shoot: Shoot, stateOf: (file: LampFile) => LampFileState | undefined): void {
  const entries = Object.entries(shoot.files);
  // Without files there is nothing to tell, and nothing of the shoot's own to remember it by.
  if (entries.length === 0) return;
  const [grids, waves] = [new Map<string, Photometry>(), new Map<string, Waveform>()];
  const unread = { photometry: new Map<string, string>(), waveform: new Map<string, string>() };
  for (const [id, { name = id, sha256 }] of entries) {
    if (sha256 === undefined) continue;
    for (const kind of KINDS) {
      const state = stateOf({ kind, sha256, name });
      if (state?.kind === 'unread') unread[kind].set(sha256, state.says);
      else if (state?.kind === 'photometry') grids.set(sha256, state.photometry);
      else if (state) waves.set(sha256, state.waveform);
    }
  }
  tellPhotometry(shoot, grids, unread.photometry);
  tellWaveforms(shoot, waves, unread.waveform);
}
