/** Puts what comes of some frames through a pipe of its own to the frames it was taken of. */
import { createFrameCutter } from './frames.ts';

export interface Aside<Taken> {
  /** Bytes as they come. */
  readonly take: (chunk: Uint8Array) => void;
  /** What was taken of a frame, counted from the first that came; undefined of most, and of one for which it is late. */
  readonly of: (frame: number) => Promise<Taken | undefined>;
}

interface AsideGiven<Taken> {
  readonly frame_B: number;
  /** Whether anything is taken of a frame. */
  readonly isTaken: (frame: number) => boolean;
  /** Of bytes whose room is not used again. */
  readonly view: (bytes: ArrayBuffer) => Taken;
}

/** It comes with its frame; what takes so long ends the waiting, for good. */
const LATE_ms = 500;
/** What nobody asks for, such as of frames that are read again, is let go. */
const MOST_HELD = 64;

/** A collector. Frames are asked for in order: what lies before the one asked for is let go. */
export function createAside<Taken>({ frame_B, isTaken, view }: AsideGiven<Taken>): Aside<Taken> {
  const cutter = createFrameCutter(frame_B);
  const held = new Map<number, Taken>();
  let next = 0;
  let isLate = false;
  let arrived: () => void = () => undefined;

  const take = (chunk: Uint8Array): void => {
    for (let at = 0; at < chunk.length;) {
      const { to, isWhole } = cutter.take(chunk, at);
      at = to;
      if (!isWhole) continue;
      while (!isTaken(next)) next += 1;
      held.set(next, view(cutter.buffer.slice(0)));
      next += 1;
      if (held.size > MOST_HELD) held.delete(held.keys().next().value!);
    }
    arrived();
  };

  const wait = (frame: number): Promise<void> =>
    new Promise((resolve) => {
      const timer = setTimeout(() => {
        isLate = true;
        resolve();
      }, LATE_ms);
      arrived = () => {
        if (!held.has(frame)) return;
        clearTimeout(timer);
        resolve();
      };
    });

  const of = async (frame: number): Promise<Taken | undefined> => {
    if (!isTaken(frame)) return undefined;
    if (!held.has(frame) && !isLate) await wait(frame);
    const taken = held.get(frame);
    for (const before of held.keys()) if (before <= frame) held.delete(before);
    return taken;
  };
  return { take, of };
}
