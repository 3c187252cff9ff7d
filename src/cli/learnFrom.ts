/** `longsecond measure --learn`: what its options ask for, and the clips handed to what they teach. */
import { createHash } from 'node:crypto';
import { basename } from 'node:path';
import { Fault } from '../base/fault.ts';
import { parseQuantity } from '../base/quantity.ts';
import type { Written } from '../document/written.ts';
import { learnEvent } from '../turnover/learn/learnEvent.ts';
import { learnLamp } from '../turnover/learn/learnLamp.ts';
import { learnRig } from '../turnover/learn/learnRig.ts';
import type { Learning } from '../turnover/learn/learnt.ts';
import { onOneLine } from '../turnover/lines.ts';
import type { MeasuredClip } from '../turnover/measureReply.ts';

export type LearnAsked = { readonly kind: 'event' } | { readonly kind: 'rig' | 'lamp'; readonly id: string };

export interface LearnOptions {
  readonly learn?: LearnAsked;
  readonly shutter?: number;
  readonly ripple?: number;
  readonly level?: string;
  readonly colour?: string;
  readonly supply?: string;
  readonly out?: string;
}

const FORMS = 'event, rig=ID or lamp=ID';

export function parseLearn(text: string): LearnAsked {
  if (text === 'event') return { kind: 'event' };
  const found = /^(rig|lamp)=(.+)$/.exec(text);
  if (found) return { kind: found[1] as 'rig' | 'lamp', id: found[2]! };
  throw new Fault({
    code: 'measure.bad-learn',
    what: `--learn takes ${FORMS}, and got "${onOneLine(text)}"`,
    where: `longsecond measure --learn ${onOneLine(text)}`,
    mend: 'Write it such as --learn event, or --learn rig=dropper with the id of a rig of the kit.',
  });
}

/** An option that is a time or a rate above none. */
export const parsePositive =
  (option: string, kind: 'time' | 'frequency', example: string) =>
  (text: string): number => {
    const parsed = parseQuantity(kind, text);
    if (parsed.ok && parsed.value > 0) return parsed.value;
    throw new Fault({
      code: `measure.bad-${option.slice(2)}`,
      what: `${option} takes ${kind === 'time' ? 'an exposure time' : 'a rate'}, and got "${onOneLine(text)}"${parsed.ok ? '' : `: ${parsed.why}`}`,
      where: `longsecond measure ${option} ${onOneLine(text)}`,
      mend: `Write it such as ${option} ${example}.`,
    });
  };

/** Refuses options that do not go together, before anything is measured. */
export function requireLearnable({ learn, out, shot, quick, clips }: LearnOptions & { readonly shot: boolean; readonly quick: boolean; readonly clips: number }): void {
  const refuse = (what: string, mend: string): never => {
    throw new Fault({ code: 'measure.bad-learn', what, where: 'longsecond measure --learn', mend });
  };
  if (out !== undefined && learn?.kind !== 'lamp') refuse('--out writes the light of a lamp, and none is learnt', 'Give --learn lamp=ID with it.');
  if (!learn) return;
  if (!shot) refuse('What is learnt goes into a shoot, and none is named', 'Name a shot of it, such as --shot shoot.yaml#pour-1.');
  if (quick) refuse('What is learnt needs every frame, and --quick looks at a few', 'Leave out --quick.');
  if (learn.kind === 'lamp' && clips > 1) refuse(`A lamp is learnt from one clip of a grey card, and ${clips} are named`, 'Name one clip.');
} // prettier-ignore

export interface LearnGiven {
  readonly asked: LearnAsked;
  readonly options: LearnOptions;
  readonly written: Written;
  readonly shotId: string;
  /** Of the shot as planned, where nobody gives another. */
  readonly plannedExposure_s: number | undefined;
  readonly clips: readonly MeasuredClip[];
  /** YYYY-MM-DD. */
  readonly date: string;
}

export interface LearnDone {
  readonly learning: Learning;
  /** The light of a lamp as a file that has still to be written. */
  readonly csv?: string;
}

/** What the clips teach of what was asked. */
export function learnFrom({ asked, options, written, shotId, plannedExposure_s, clips, date }: LearnGiven): LearnDone {
  if (asked.kind === 'event') return { learning: learnEvent({ written, shotId, clips, date }) };
  if (asked.kind === 'rig') return { learning: learnRig({ written, rigId: asked.id, clips, date }) };
  const { shutter = plannedExposure_s, ripple, level = '', colour = '', supply = '', out } = options;
  const learning = learnLamp(
    {
      written,
      lampId: asked.id,
      clip: clips[0]!,
      ...(shutter !== undefined && { exposureTime_s: shutter }),
      ...(ripple !== undefined && { rate_Hz: ripple }),
      as: { level, colour, supply },
      date,
    },
    (text, name) => ({
      name: out === undefined ? name : basename(out),
      sha256: createHash('sha256').update(text).digest('hex'),
      size_B: Buffer.byteLength(text),
    }),
  );
  return { learning, ...(learning.ok && { csv: learning.learnt.csv.text }) };
}
