/** Which clips may teach something, what of, and when that is said to have been. */
import type { LearnKind } from '../../../../turnover/learn/learnt.ts';
import type { MeasuredClip } from '../../../../turnover/measureReply.ts';
import type { ClipEntry } from '../../../../record/footage.ts';

/** Clips that were measured whole, those of a shot first, the newest first. */
export function teachable(clips: readonly ClipEntry[], shotId: string | undefined): readonly ClipEntry[] {
  const whole = clips.filter(({ isAside, brief }) => !isAside && brief?.isWhole === true).toReversed();
  return [...whole.filter((clip) => clip.shotId === shotId), ...whole.filter((clip) => clip.shotId !== shotId)];
}

/** Why a clip cannot teach anything as it is. */
export const whyNot = ({ brief }: ClipEntry): string | undefined =>
  brief?.isStale === undefined ? undefined : `measure it again first: ${brief.isStale}`;

/** Share of the picture that shows a pulse from which it may be a card under a lamp. */
const CARD_EXTENT = 0.8;

/** What clips show, as far as their measurements tell: where each has its light of firing, a rig; where one is still and pulses all over, a lamp. */
export function guessedKind(clips: readonly Pick<MeasuredClip, 'measurement'>[]): LearnKind {
  if (clips.length > 0 && clips.every(({ measurement }) => measurement.signal?.movement !== undefined)) return 'rig';
  const [only] = clips.length === 1 ? clips : [];
  const { action, flicker } = only?.measurement ?? {};
  const isCard = only !== undefined && !action && (flicker?.lines[0]?.extentFraction ?? 0) >= CARD_EXTENT;
  return isCard ? 'lamp' : 'event';
}

const twoDigits = (value: number): string => String(value).padStart(2, '0');

/** The day of a moment where the browser is, YYYY-MM-DD. */
export const dayOf = (moment: Date): string =>
  `${moment.getFullYear()}-${twoDigits(moment.getMonth() + 1)}-${twoDigits(moment.getDate())}`;

export interface Choice {
  readonly value: string;
  readonly label: string;
}

/** Items of the kit as choices, by what people call them. */
export const kitChoices = (items: Readonly<Record<string, { readonly title?: string | undefined }>>): readonly Choice[] =>
  Object.entries(items).map(([value, { title }]) => ({ value, label: title ?? value })); // prettier-ignore
