/** Measured light of a shoot's lamps, for whoever has read it: plans use it by the hash that the document names. */
import type { Shoot } from '../document/schema.ts';
import type { Waveform } from '../laws/flicker/waveform.ts';
import { fileDoor, type FilesOf, type Told } from './fileDoor.ts';

/** One period of light, as `readMeasuredWaveform` folded it, by SHA-256 of the file. */
export type WaveformFiles = FilesOf<Waveform>;

const door = fileDoor<Waveform>();

/** Tells plans what the measured waveforms of a shoot hold, and why others of them are not read. */
export const tellWaveforms = door.tell;

/** What was told of a shoot's files; undefined where nobody read them. */
export const waveformsOf = (shoot: Shoot): WaveformFiles | undefined => door.toldOf(shoot)?.files;

/** The same with what was not read, for telling whether anything new was told. */
export const waveformsTold = (shoot: Shoot): Told<Waveform> | undefined => door.toldOf(shoot);
