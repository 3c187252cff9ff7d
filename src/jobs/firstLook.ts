/** Where a first look at a clip looks, and what it makes of what it saw. */
import { ratioOf } from '../base/rational.ts';
import type { Measurement } from '../measure/types.ts';
import type { Stretch } from '../media/decodeArgs.ts';
import type { Clip } from '../media/probe.ts';

const STRETCHES = 3;
/** Frames of a stretch at most, enough for a beat of the mains at most rates; of large pictures only so many pixels, but never fewer frames than flicker can be told by. */
const MOST_FRAMES = 120;
const MOST_PIXELS = 48 * 4096 * 2304;
const FEWEST_FRAMES = 24;

/** How many frames a clip has, as far as it says: counted, or by how long it lasts. */
export function framesSaid({ statedFrames, duration_s, fileRate }: Pick<Clip, 'statedFrames' | 'duration_s' | 'fileRate'>): number | undefined {
  if (statedFrames !== undefined) return statedFrames;
  return duration_s !== undefined && fileRate ? Math.round(duration_s * ratioOf(fileRate)) : undefined;
} // prettier-ignore

/** Frames one after the other, as flicker needs them, in stretches spread over the clip; none where it is hardly longer than they are. */
export function stretchesOf(clip: Pick<Clip, 'width' | 'height' | 'statedFrames' | 'duration_s' | 'fileRate'>): readonly Stretch[] {
  const frames = framesSaid(clip) ?? 0;
  const byPixels = Math.floor(MOST_PIXELS / (clip.width * clip.height));
  const frameCount = Math.max(FEWEST_FRAMES, Math.min(MOST_FRAMES, byPixels));
  if (frames < 2 * STRETCHES * frameCount) return [];
  return Array.from({ length: STRETCHES }, (_, i) => ({
    firstFrame: Math.floor(((frames - frameCount) * i) / (STRETCHES - 1)),
    frameCount,
  }));
} // prettier-ignore

/** Of several stretches, the one that shows most: the deepest flicker, else most movement. */
export function mostTelling(looks: readonly Measurement[]): Measurement {
  const depth = ({ flicker }: Measurement) => flicker.lines.find(({ looksLike }) => looksLike !== 'unsure')?.depthFraction ?? 0; // prettier-ignore
  const lively = ({ frames }: Measurement) => frames.activity.reduce((sum, value) => sum + value, 0);
  return [...looks].sort((a, b) => depth(b) - depth(a) || lively(b) - lively(a))[0]!;
}
