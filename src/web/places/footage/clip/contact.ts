/** Which frames stand on the contact sheet. */
import { clampFrame } from './axis.ts';
import { countOf, type Kept } from './kept.ts';

export const CONTACT_COUNT = 12;

export type ContactOf = 'kept' | 'peak';

/** About the peak: an eighth of what is kept. */
const PEAK_SHARE = 1 / 8;
/** Pictures before the peak, where the clip has them. */
const BEFORE = 5;

export interface ContactAsk {
  readonly kept: Kept;
  readonly peak: number | undefined;
  readonly frameCount: number;
}

/** Whole steps to both sides of the peak, which is one of them, as far as the clip reaches. */
function aboutPeak(peak: number, { kept, frameCount }: ContactAsk): readonly number[] {
  const step = Math.max(1, Math.round((PEAK_SHARE * countOf(kept)) / (CONTACT_COUNT - 1)));
  const before = Math.min(BEFORE, Math.floor(peak / step));
  const after = Math.min(CONTACT_COUNT - 1 - before, Math.floor((frameCount - 1 - peak) / step));
  const first = Math.max(peak % step, peak - (CONTACT_COUNT - 1 - after) * step);
  return Array.from({ length: Math.floor((peak + after * step - first) / step) + 1 }, (_, i) => first + i * step);
}

/** Frames evenly from the first to the last of what is kept, or about the peak; none twice, in order. */
export function contactFrames(of: ContactOf, ask: ContactAsk): readonly number[] {
  const { kept, peak, frameCount } = ask;
  if (of === 'peak' && peak !== undefined) return aboutPeak(peak, ask);
  const step = (kept.outFrame - kept.inFrame) / (CONTACT_COUNT - 1);
  const frames = Array.from({ length: CONTACT_COUNT }, (_, i) => clampFrame(kept.inFrame + i * step, frameCount));
  return [...new Set(frames)];
}
