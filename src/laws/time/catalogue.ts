/** The laws of time, in the order a reader meets them. */
import type { AnyLaw } from '../law.ts';
import {
  captureRateAtSpeed,
  captureRateWanted,
  captureTime,
  expansion,
  expansionExactly,
  playbackSpeed,
  screenTime,
} from './expansion.ts';
import { ghostGap } from './ghosting.ts';
import { fireOffset } from './lead.ts';
import { rampRealTime } from './profile.ts';
import { averagedAngle, framesToAverage } from './resample.ts';
import { frameTime, timecodeFrame, timecodeLabel } from './timecode.ts';

export const TIME_LAWS: readonly AnyLaw[] = [
  expansion,
  playbackSpeed,
  expansionExactly,
  screenTime,
  captureTime,
  captureRateWanted,
  captureRateAtSpeed,
  rampRealTime,
  framesToAverage,
  averagedAngle,
  ghostGap,
  frameTime,
  timecodeLabel,
  timecodeFrame,
  fireOffset,
];
