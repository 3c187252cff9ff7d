/**
 * Plays the small copy of a clip and stops it at any frame. While one seek is under way only the newest wish is kept, so
 * that dragging along the axis never queues up; and where pictures may not change fast, they are let through slowly.
 */
import { copySpeed, frameAtTime, frameShown, seekTime_s, startOfPlay } from './playback.ts';

/** What of a video element is used. */
export interface VideoLike {
  currentTime: number;
  playbackRate: number;
  readonly duration: number;
  readonly paused: boolean;
  readonly play: () => Promise<void>;
  readonly pause: () => void;
  readonly addEventListener: (name: string, heard: () => void) => void;
  readonly removeEventListener: (name: string, heard: () => void) => void;
  readonly requestVideoFrameCallback?: (shown: (now: number, of: { readonly mediaTime: number }) => void) => number;
  readonly cancelVideoFrameCallback?: (handle: number) => void;
}

/** What of the page is used. */
export interface Clock {
  readonly now_ms: () => number;
  /** Runs something later; the function returned takes that back. */
  readonly after: (wait_ms: number, run: () => void) => () => void;
  /** Runs something before the next picture of the page. */
  readonly nextPicture: (run: () => void) => () => void;
}

export interface PlayHow {
  readonly first: number;
  readonly last: number;
  readonly isLooped: boolean;
  /** Frames of the clip a second. */
  readonly play_fps: number;
}

export interface CopyPlayer {
  /** Shows a frame. */
  readonly seek: (frame: number) => void;
  readonly play: (how: PlayHow) => void;
  readonly pause: () => void;
  readonly close: () => void;
}

export interface CopyPlayerGiven {
  readonly video: VideoLike;
  readonly clock: Clock;
  readonly frameCount: () => number;
  /** Least time between pictures that were not played. */
  readonly leastGap_ms: () => number;
  /** The frame that playing has come to. */
  readonly onFrame: (frame: number) => void;
  /** The frame whose picture is there. */
  readonly onShown: (frame: number) => void;
  readonly onPlaying: (isPlaying: boolean) => void;
}

export function openCopyPlayer({ video, clock, frameCount, leastGap_ms, onFrame, onShown, onPlaying }: CopyPlayerGiven): CopyPlayer {
  let wanted: number | undefined;
  let isSeeking = false;
  let lastSeek_ms = -Infinity;
  let how: PlayHow | undefined;
  /** Asked for before the copy said how long it is. */
  let early: PlayHow | undefined;
  let shown = 0;
  /** The frame that it stands at, or is on its way to. */
  let at = 0;
  let cancelWait: (() => void) | undefined;
  let cancelWatch: (() => void) | undefined;
  const copy = () => ({ frameCount: frameCount(), duration_s: video.duration });
  const isReady = () => Number.isFinite(video.duration) && video.duration > 0;

  const seekNow = (frame: number) => {
    isSeeking = true;
    lastSeek_ms = clock.now_ms();
    video.currentTime = seekTime_s(frame, copy());
  };
  const next = () => {
    if (wanted === undefined || isSeeking || !isReady() || cancelWait) return;
    const wait_ms = how ? 0 : lastSeek_ms + leastGap_ms() - clock.now_ms();
    if (wait_ms > 0) {
      cancelWait = clock.after(wait_ms, () => {
        cancelWait = undefined;
        next();
      });
      return;
    }
    const frame = wanted;
    wanted = undefined;
    seekNow(frame);
  };
  const seek = (frame: number) => {
    wanted = at = frame;
    next();
  };
  const onSeeked = () => {
    isSeeking = false;
    shown = frameAtTime(video.currentTime, copy());
    onShown(shown);
    next();
  };

  const stop = () => {
    cancelWatch?.();
    cancelWatch = undefined;
    how = undefined;
    video.pause();
    onPlaying(false);
  };
  const pause = () => {
    if (!how) return;
    stop();
    // The middle of the frame: what plays on a little more after it was told to stop is taken back.
    seek(shown);
  };
  const comeTo = (frame: number) => {
    if (!how) return;
    const { first, last, isLooped } = how;
    if (frame < last) {
      shown = at = frame;
      onFrame(frame);
      onShown(frame);
    } else if (isLooped) {
      at = first;
      onFrame(first);
      seekNow(first);
      if (video.paused) void video.play().catch(stop);
    } else {
      shown = last;
      onFrame(last);
      pause();
    }
  };
  const watch = () => {
    if (!how) return;
    if (video.requestVideoFrameCallback) {
      const handle = video.requestVideoFrameCallback((_, { mediaTime }) => {
        if (!isSeeking) comeTo(frameShown(mediaTime, copy()));
        watch();
      });
      cancelWatch = () => video.cancelVideoFrameCallback?.(handle);
    } else
      cancelWatch = clock.nextPicture(() => {
        if (!isSeeking) comeTo(frameAtTime(video.currentTime, copy()));
        watch();
      });
  };
  const play = (next: PlayHow) => {
    if (!isReady()) {
      early = next;
      return;
    }
    cancelWatch?.();
    cancelWait?.();
    cancelWait = undefined;
    const from = startOfPlay(at, next);
    const isThere = from === at && wanted === undefined;
    how = next;
    wanted = undefined;
    at = from;
    video.playbackRate = copySpeed(copy(), next.play_fps);
    if (!isThere) seekNow(from);
    onFrame(from);
    onPlaying(true);
    // By then somebody may have stopped it, or begun anew.
    const isStill = () => how === next;
    video.play().then(() => isStill() && watch(), () => isStill() && stop());
  };

  const onLength = () => {
    next();
    if (early) play(early);
    early = undefined;
  };
  const onEnded = () => comeTo(Number.MAX_SAFE_INTEGER);
  const events = [['seeked', onSeeked], ['ended', onEnded], ['loadedmetadata', onLength]] as const;
  for (const [name, heard] of events) video.addEventListener(name, heard);
  return {
    seek: (frame) => {
      early = undefined;
      if (how) stop();
      seek(frame);
    },
    play,
    pause,
    close: () => {
      for (const [name, heard] of events) video.removeEventListener(name, heard);
      cancelWait?.();
      cancelWatch?.();
      how = undefined;
      video.pause();
    },
  };
} // prettier-ignore
