/** Cuts what comes through a pipe into frames, and reads what ffmpeg tells of each as it lets it go. */

/** What is told of one frame. */
export interface FrameTold {
  /** In ticks of the clip's clock; absent where it has no time. */
  readonly pts?: number;
  readonly width: number;
  readonly height: number;
}

const FRAME = /^\[Parsed_showinfo[^\]]*\] n: *\d+ pts: *(-?\d+|NOPTS).* s:(\d+)x(\d+) /;
/** Lines that come with frames and tell nothing that is wanted. */
const CHATTER =
  /^\[Parsed_showinfo|^ {2,}|^(?:Input|Output|Stream|frame=|size=|video:|Press|\[swscaler|Guessed)|monotonically increasing dts to muxer/;

/** A reader of ffmpeg's words, line by line: of frames as they pass, and of complaints but for idle ones. */
export function createTelling(idle?: RegExp): {
  readonly hear: (text: string) => void;
  readonly frame: (index: number) => FrameTold | undefined;
  readonly complaints: () => { readonly count: number; readonly first: string };
  /** Forgets the complaints so far. */
  readonly forgive: () => void;
} {
  const told = new Map<number, FrameTold>();
  let [left, heard, complained, first] = ['', 0, 0, ''];
  const line = (text: string): void => {
    const match = FRAME.exec(text);
    if (match) {
      const [, pts = '', width, height] = match;
      told.set(heard, { width: Number(width), height: Number(height), ...(pts !== 'NOPTS' && { pts: Number(pts) }) });
      heard += 1;
    } else if (text.trim() !== '' && /error|invalid|corrupt|missing|conceal|truncat|could not/i.test(text) && !CHATTER.test(text) && !idle?.test(text)) {
      complained += 1;
      if (first === '') first = text.replace(/^\[[^\]]*\]\s*/, '').trim().slice(0, 200);
    }
  };
  return {
    hear: (text) => {
      const lines = (left + text).split(/\r?\n|\r/);
      // A line without end is nobody's words.
      left = lines.pop()!.slice(-4000);
      for (const one of lines) line(one);
    },
    frame: (index) => {
      const of = told.get(index);
      told.delete(index);
      return of;
    },
    complaints: () => ({ count: complained, first }),
    forgive: () => {
      [complained, first] = [0, ''];
    },
  };
} // prettier-ignore

interface PlacesGiven {
  readonly ticksPerFrame: number | undefined;
  /** The frame before the first, where there is one. */
  readonly after?: { readonly place: number; readonly pts: number | undefined; readonly isVariable: boolean };
}

/**
 * The places of frames by their times: one on where they follow each other, further where some are missing. The first time
 * that fits no place ends it: from there on the rate varies, and frames are counted.
 */
export function createPlaces({ ticksPerFrame, after }: PlacesGiven): {
  readonly next: (pts: number | undefined) => number;
  readonly isVariable: () => boolean;
} {
  // A clock of hardly more than one tick a frame cannot tell a place, but one of exactly one counts them.
  const isTicked = ticksPerFrame !== undefined && Math.abs(ticksPerFrame - 1) < 1e-9;
  const isFine = ticksPerFrame !== undefined && (ticksPerFrame >= 1.5 || isTicked);
  let place = after?.place ?? -1;
  let last = after?.pts;
  let isVariable = after?.isVariable ?? false;
  const next = (pts: number | undefined): number => {
    const steps = isFine && pts !== undefined && last !== undefined ? (pts - last) / ticksPerFrame : 1;
    last = pts ?? last;
    const whole = Math.max(1, Math.round(steps));
    // So it does only of frames that follow each other tick by tick: else its tick is not their rate.
    if (isTicked && place === 0 && whole !== 1) isVariable = true;
    // A time is rounded to a tick at both ends.
    if (isFine && Math.abs(steps - whole) > 0.1 + 1.01 / ticksPerFrame) isVariable = true;
    place += isVariable || place < 0 ? 1 : whole;
    return place;
  };
  return { next, isVariable: () => isVariable };
}

/** Collects the bytes of frames of one size. */
export function createFrameCutter(frame_B: number): {
  /** Takes what it can of a chunk from a byte on; how far it came, and whether a frame is whole. */
  readonly take: (chunk: Uint8Array, from: number) => { readonly to: number; readonly isWhole: boolean };
  readonly buffer: ArrayBuffer;
  /** Bytes of a frame that did not become whole. */
  readonly left_B: () => number;
} {
  const buffer = new ArrayBuffer(frame_B);
  const bytes = new Uint8Array(buffer);
  let filled = 0;
  return {
    buffer,
    take: (chunk, from) => {
      const count = Math.min(chunk.length - from, frame_B - filled);
      bytes.set(chunk.subarray(from, from + count), filled);
      filled += count;
      const isWhole = filled === frame_B;
      if (isWhole) filled = 0;
      return { to: from + count, isWhole };
    },
    left_B: () => filled,
  };
}
