/** How frames of a clip and the time of its small copy belong together: the copy has one picture a frame. */

export interface CopyTime {
  readonly frameCount: number;
  /** Of the small copy, as it says itself. */
  readonly duration_s: number;
}

/** The middle of a frame's time: a browser that is asked for it shows that frame, however it rounds. */
export const seekTime_s = (frame: number, { frameCount, duration_s }: CopyTime): number =>
  ((frame + 0.5) * duration_s) / frameCount;

/** The frame whose picture begins at a time that a browser tells, which may be off by its last digits. */
export function frameShown(mediaTime_s: number, { frameCount, duration_s }: CopyTime): number {
  const frame = Math.round((mediaTime_s * frameCount) / duration_s);
  return Math.min(frameCount - 1, Math.max(0, frame));
}

/** The frame on the screen at a moment of playing. */
export function frameAtTime(time_s: number, { frameCount, duration_s }: CopyTime): number {
  const frame = Math.floor((time_s * frameCount) / duration_s + 1e-6);
  return Math.min(frameCount - 1, Math.max(0, frame));
}

export interface Speed {
  readonly id: string;
  /** Of the film's own. */
  readonly factor: number;
  readonly says: string;
}

/** As it will play in the film, and slower. */
export const SPEEDS: readonly Speed[] = [
  { id: 'film', factor: 1, says: 'as in the film' },
  { id: 'half', factor: 1 / 2, says: 'half as fast' },
  { id: 'quarter', factor: 1 / 4, says: 'a quarter as fast' },
  { id: 'eighth', factor: 1 / 8, says: 'an eighth as fast' },
];

/** Browsers play no slower and no faster. */
const [SLOWEST, FASTEST] = [1 / 16, 16];

/** What the copy must be played at for so many frames a second. */
export function copySpeed({ frameCount, duration_s }: CopyTime, play_fps: number): number {
  return Math.min(FASTEST, Math.max(SLOWEST, (play_fps * duration_s) / frameCount));
}

/** Where playing goes on: from the start once it has come to the end, and within what is looped. */
export function startOfPlay(frame: number, { first, last }: { readonly first: number; readonly last: number }): number {
  return frame < first || frame >= last ? first : frame;
}

/** A flash is a brightening and a darkening: three a second take six changes of the picture, and this stays below. */
export const UNASKED_CHANGES_per_s = 5;
