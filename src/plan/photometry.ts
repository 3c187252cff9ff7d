/** Photometric files of a shoot, for whoever has read them: plans use them by the hash that the document names. */
import type { Shoot } from '../document/schema.ts';
import type { Photometry } from '../laws/light/photometry/photometry.ts';
import { fileDoor, type FilesOf, type Told } from './fileDoor.ts';

/** By SHA-256 of the file. */
export type PhotometryFiles = FilesOf<Photometry>;

const door = fileDoor<Photometry>();

/** Tells plans what the photometric files of a shoot hold, and why others of them are not read. */
export const tellPhotometry = door.tell;

/** What was told of a shoot's files; undefined where nobody read them. */
export const photometryOf = (shoot: Shoot): PhotometryFiles | undefined => door.toldOf(shoot)?.files;

/** The same with what was not read, for telling whether anything new was told. */
export const photometryTold = (shoot: Shoot): Told<Photometry> | undefined => door.toldOf(shoot);
