/** The laws of chance on the set, in the order a reader meets them. */
import type { AnyLaw } from '../law.ts';
import { threeMeet } from './cuesMeet.ts';
import { arrivalSpread, delayAtShare, delayChain, delaySpread } from './delays.ts';
import { inDepth, pairMeets, rigsMeeting, spreadToMeet } from './meeting.ts';
import { reactionDelay, reactionShare } from './reaction.ts';
import { chanceOfEnough, meanTakes, takesAtConfidence } from './takes.ts';
import { bestTriggerSetting, triggerCatch } from './triggerCatch.ts';

export const CHANCE_LAWS: readonly AnyLaw[] = [
  takesAtConfidence,
  chanceOfEnough,
  meanTakes,
  delaySpread,
  delayAtShare,
  delayChain,
  reactionShare,
  reactionDelay,
  triggerCatch,
  bestTriggerSetting,
  arrivalSpread,
  pairMeets,
  threeMeet,
  rigsMeeting,
  spreadToMeet,
  inDepth,
];
