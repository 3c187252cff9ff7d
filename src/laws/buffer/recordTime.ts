/**
 * How long a camera's memory lasts.
 *
 *     T = M / (B·F)        frames = ⌊M / B⌋        M = T·B·F
 *
 * T record time, s        M memory, bytes        B bytes a frame        F frame rate, fps
 *
 * M is what recording may use: memory sold as GB may mean 2³⁰ bytes, and cameras keep some for themselves. The time is
 * not rounded down to whole frames.
 *
 * @source frame-rate-practice memory over bytes a second
 */
import { requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

export interface FrameStream {
  readonly frameSize_B: number;
  readonly frameRate_fps: number;
}

/** How long a memory lasts. Throws RangeError outside positive inputs. */
export function recordTime_s(given: FrameStream & { readonly memory_B: number }): number {
  const { memory_B, frameSize_B, frameRate_fps } = given;
  requirePositive({ memory_B, frameSize_B, frameRate_fps });
  return memory_B / (frameSize_B * frameRate_fps);
}

/** Whole frames that a memory holds. Throws RangeError outside positive inputs. */
export function framesInMemory(given: { readonly memory_B: number; readonly frameSize_B: number }): number {
  const { memory_B, frameSize_B } = given;
  requirePositive({ memory_B, frameSize_B });
  return Math.floor(memory_B / frameSize_B);
}

/** Memory that a recording takes. Throws RangeError outside positive inputs. */
export function memoryNeeded_B(given: FrameStream & { readonly recordTime_s: number }): number {
  const { frameSize_B, frameRate_fps } = given;
  requirePositive({ recordTime_s: given.recordTime_s, frameSize_B, frameRate_fps });
  return given.recordTime_s * frameSize_B * frameRate_fps;
}

const COMMON = {
  holds: 'Uncompressed frames of one size; the memory that recording may use, all of it.',
  sources: ['frame-rate-practice'],
};

export const recordTime = law(recordTime_s, {
  id: 'record-time',
  title: 'Record time',
  says: 'How long the camera can roll before its memory is full.',
  equation: 'T = M / (B · F)',
  takes: { memory_B: 'Memory for recording', frameSize_B: 'Size of a frame', frameRate_fps: 'Frame rate' },
  gives: { recordTime_s: 'Record time' },
  words: ['buffer', 'RAM', 'how long', 'roll', 'capacity'],
  example: { memory_B: 64e9, frameSize_B: 13_271_040, frameRate_fps: 1000 },
  ...COMMON,
});

export const framesHeld = law(framesInMemory, {
  id: 'frames-in-memory',
  title: 'Frames in memory',
  says: 'How many whole frames the camera’s memory holds.',
  equation: 'frames = ⌊M / B⌋',
  takes: { memory_B: 'Memory for recording', frameSize_B: 'Size of a frame' },
  gives: { frameCount: { title: 'Frames', as: 'count' } },
  words: ['buffer', 'RAM', 'capacity'],
  example: { memory_B: 64e9, frameSize_B: 13_271_040 },
  ...COMMON,
});

export const memoryNeeded = law(memoryNeeded_B, {
  id: 'memory-needed',
  title: 'Memory a recording needs',
  says: 'How much camera memory an action takes at a frame rate.',
  equation: 'M = T · B · F',
  takes: { recordTime_s: 'Time to record', frameSize_B: 'Size of a frame', frameRate_fps: 'Frame rate' },
  gives: { memory_B: 'Memory' },
  words: ['buffer', 'RAM', 'partition'],
  example: { recordTime_s: 1.5, frameSize_B: 3_110_400, frameRate_fps: 2000 },
  ...COMMON,
});
