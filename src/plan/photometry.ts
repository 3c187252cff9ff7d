/** Photometric files of a shoot, for whoever has read them: plans use them by the hash that the document names. */
import type { Shoot } from '../document/schema.ts';
import type { Photometry } from '../laws/light/photometry/photometry.ts';

/** By SHA-256 of the file. */
export type PhotometryFiles = ReadonlyMap<string, Photometry>;

const told = new WeakMap<Shoot['files'], PhotometryFiles>();

/**
 * Tells plans what the photometric files of a shoot hold. The hash decides what a file holds, so a plan made with it is
 * the same wherever it was read. It stays with the shoot's files through every edit that leaves those alone.
 */
export function tellPhotometry(shoot: Shoot, files: PhotometryFiles): void {
  told.set(shoot.files, files);
}

/** What was told of a shoot's files; undefined where nobody read them. */
export function photometryOf(shoot: Shoot): PhotometryFiles | undefined {
  return told.get(shoot.files);
}
