/** A measured clip in the form in which it is told and kept, apart from the shot that it is held against. */
import type { TransferCurve } from '../measure/transfer.ts';
import type { ClipMeasured } from './measureClip.ts';
import type { MeasuredAlone } from './queueTypes.ts';
import type { MeasureBasis } from './types.ts';

export interface MeasuredBy {
  /** As people know the clip. */
  readonly name: string;
  readonly rateFrom: MeasureBasis['rateFrom'];
  /** Told by somebody. */
  readonly curve?: TransferCurve | undefined;
  /** What to do where nobody knows the rate on the set. */
  readonly mend: string;
}

export function measuredAlone({ clip, measurement, isWhole, notes }: ClipMeasured, { name, rateFrom, curve, mend }: MeasuredBy): MeasuredAlone {
  const given = clip.plane.isFloat ? undefined : curve;
  return {
    name,
    codec: clip.codec,
    pixelFormat: clip.pixelFormat,
    measurement,
    frameRateBasis: rateFrom,
    curve: given?.kind ?? clip.curve.says,
    curveBasis: given ? 'given' : clip.curve.basis,
    isWhole,
    notes: [
      ...notes.filter((note) => !given || !note.startsWith('The curve is taken')),
      ...(rateFrom === 'file' ? [`At what rate it was taken is not known: ${mend}, or every rate and speed here is that of the screen.`] : []),
    ],
  };
} // prettier-ignore
