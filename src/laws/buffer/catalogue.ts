/** The laws of camera memory and its emptying, in the order a reader meets them. */
import type { AnyLaw } from '../law.ts';
import { frameSize } from './frame.ts';
import { framesHeld, memoryNeeded, recordTime } from './recordTime.ts';
import { frameRateByRows, frameRateByThroughput, rowsFit, rowTime } from './rows.ts';
import { dataRate, ethernetPayload, keptSize, saveTime } from './save.ts';
import { triggerRoom, triggerSetting } from './trigger.ts';

export const BUFFER_LAWS: readonly AnyLaw[] = [
  frameSize,
  recordTime,
  framesHeld,
  memoryNeeded,
  dataRate,
  frameRateByRows,
  rowTime,
  rowsFit,
  frameRateByThroughput,
  triggerRoom,
  triggerSetting,
  keptSize,
  saveTime,
  ethernetPayload,
];
