/** A measured clip for eyes: what it is, its verdict in sentences, and how it stands against the plan. */
import { showNumber } from '../base/quantity.ts';
import { onOneLine, wrapped, type Ink } from './lines.ts';
import type { ClipReply } from './measureReply.ts';

const BASIS: Readonly<Record<ClipReply['frameRateBasis'], string>> = {
  given: '',
  plan: ', as planned',
  file: ', for want of another: the rate at which it plays',
};

function headOf({ widthCount, heightCount, frameCount, frameRate_fps, frameRateBasis, playback_fps, codec, isWhole }: ClipReply): string {
  const rate = `${showNumber(frameRate_fps, 5)} fps${BASIS[frameRateBasis]}`;
  const shown = frameRateBasis === 'file' ? '' : `, shown at ${showNumber(playback_fps, 5)}`;
  const part = isWhole ? '' : ', a first look at some of them';
  return `${codec}, ${widthCount} × ${heightCount}, ${frameCount} frames${part}, taken at ${rate}${shown}.`;
} // prettier-ignore

/** Whether a sentence of the verdict says that something is amiss. */
export const isAmiss = (says: string): boolean => /^(?:Pulses|Bands|Colour (?:drifts|strays)|Colours pulse|It flashes|It ends|Focus (?:hunts|changes)|The picture (?:shakes|moves)|Frames? |Dust|One pixel|\d+ pixels)|burnt out in/.test(says); // prettier-ignore

/** One clip in lines. */
export function clipLines(clip: ClipReply, ink: Ink): readonly string[] {
  const title = ink.strong(onOneLine(clip.clip));
  const sentences = clip.verdict.flatMap((says) => wrapped(onOneLine(says), 2, 4).map((line) => (isAmiss(says) ? ink.short(line) : line))); // prettier-ignore
  const against = clip.against.flatMap(({ says, state }) => wrapped(onOneLine(says), 4, 6).map((line) => (state === 'as planned' || state === 'better' ? line : ink.tight(line)))); // prettier-ignore
  const notes = clip.notes.flatMap((says) => wrapped(onOneLine(says), 2, 4).map(ink.faint));
  return [
    title,
    ...wrapped(headOf(clip), 2, 4).map(ink.faint),
    ...sentences,
    ...(clip.shot ? wrapped(onOneLine(`Against the plan of ${clip.shot.title}:`), 2, 4) : []),
    ...(clip.shot && against.length === 0 ? ['    nothing of it could be held against the plan.'] : against),
    ...notes,
  ];
}
