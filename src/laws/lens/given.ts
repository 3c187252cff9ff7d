/** Words for the inputs that several laws of this folder take, so that each is asked for in one way. */
import type { TakenDetails } from '../law.ts';

/** A lens whose entrance and exit pupils look alike from both ends. */
export const SYMMETRIC_PUPIL_RATIO = 1;

export const FOCAL_LENGTH = 'Focal length';

export const MAGNIFICATION = {
  title: 'Magnification',
  as: 'ratio',
  note: 'image size over subject size: 0.5 where crews say 1:2',
} as const satisfies TakenDetails<number>;

export const PUPIL_MAGNIFICATION = {
  title: 'Pupil magnification',
  as: 'ratio',
  default: SYMMETRIC_PUPIL_RATIO,
  note: 'exit pupil over entrance pupil, seen from the back and from the front; 1 if alike, above 1 for retrofocus lenses',
} as const satisfies TakenDetails<number>;

export const F_NUMBER = {
  title: 'f-number',
  as: 'fStop',
  note: 'the geometric f-number as marked for distant focus, not the T-stop',
} as const satisfies TakenDetails<number>;

export const CIRCLE_OF_CONFUSION = {
  title: 'Circle of confusion',
  note: 'the largest blur on the sensor that passes for sharp: a choice, not a fact',
} as const satisfies TakenDetails<number>;

export const BINNING = {
  title: 'Sensor pixels across one picture pixel',
  as: 'count',
  default: 1,
  note: '2 where a mode bins or skips every second pixel both ways',
} as const satisfies TakenDetails<number>;
