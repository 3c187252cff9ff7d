import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { PatchPress, PatchStep } from '../../flicker/patchPlay.ts';
import { clampFrame } from './axis.ts';
import { openCopyPlayer, type CopyPlayer } from './copyPlayer.ts';
import { PAGE_CLOCK } from './pageClock.ts';
import type { Kept } from './kept.ts';
import { SPEEDS, UNASKED_CHANGES_per_s, type Speed } from './playback.ts';
import { createPlayhead, type Playhead } from './playhead.ts';
import { useAgreement, useOnceAgreed } from './useAgreement.ts';
import { useStopping } from './useStopping.ts';

export interface TransportGiven {
  readonly playhead: Playhead;
  readonly frameCount: number;
  readonly playback_fps: number;
  readonly kept: Kept;
  /** It flashes, or nobody knows whether it does: nothing plays before somebody was warned. */
  readonly isToWarn: boolean;
}

/** The hands on the clip: whatever shows or moves its frame does it through these. */
export interface Transport {
  readonly isPlaying: boolean;
  /** There is a copy that plays. */
  readonly canPlay: boolean;
  readonly speed: Speed;
  readonly isLooped: boolean;
  /** How far somebody has gone towards playing what may flash. */
  readonly warning: PatchStep;
  /** The frame whose picture is there: for a moment it may not be the one that is asked for. */
  readonly shown: Playhead;
  readonly seek: (frame: number) => void;
  readonly stepBy: (frames: number) => void;
  readonly toggle: () => void;
  readonly setSpeed: (speed: Speed) => void;
  readonly setLooped: (next: (isLooped: boolean) => boolean) => void;
  readonly press: (press: PatchPress) => void;
  readonly leastGap_ms: () => number;
  /** Given the copy while it is on the page. */
  readonly video: (element: HTMLVideoElement | null) => void;
}

/** Plays the small copy, and keeps the playhead where its picture is. */
export function useTransport(given: TransportGiven): Transport {
  const { playhead } = given;
  const [isPlaying, setPlaying] = useState(false);
  const [canPlay, setCanPlay] = useState(false);
  const [speed, setSpeed] = useState<Speed>(SPEEDS[0]!);
  const [isLooped, setLooped] = useState(false);
  const [shown] = useState(() => createPlayhead(0));
  const player = useRef<CopyPlayer>(undefined);
  const agreement = useAgreement(given.isToWarn);
  const { step, isAgreed, press } = agreement;
  const newest = useRef({ ...given, isPlaying, speed, isLooped, isAgreed });
  useEffect(() => {
    newest.current = { ...given, isPlaying, speed, isLooped, isAgreed };
  });

  const leastGap_ms = useCallback(() => (newest.current.isAgreed ? 0 : 1000 / UNASKED_CHANGES_per_s), []);
  const video = useCallback(
    (element: HTMLVideoElement | null) => {
      player.current?.close();
      player.current = undefined;
      setCanPlay(element !== null);
      if (!element) return;
      player.current = openCopyPlayer({
        video: element,
        clock: PAGE_CLOCK,
        frameCount: () => newest.current.frameCount,
        leastGap_ms,
        onFrame: playhead.set,
        onShown: shown.set,
        onPlaying: setPlaying,
      });
      player.current.seek(playhead.frame());
    },
    [playhead, shown, leastGap_ms],
  );

  const seek = useCallback(
    (frame: number) => {
      const at = clampFrame(frame, newest.current.frameCount);
      playhead.set(at);
      player.current?.seek(at);
    },
    [playhead],
  );
  const play = useCallback(() => {
    const now = newest.current;
    const range = now.isLooped ? { first: now.kept.inFrame, last: now.kept.outFrame } : { first: 0, last: now.frameCount - 1 }; // prettier-ignore
    player.current?.play({ ...range, isLooped: now.isLooped, play_fps: now.playback_fps * now.speed.factor });
  }, []);

  // Another speed, a loop, or other ends of it: what plays goes on with that.
  const { inFrame, outFrame } = given.kept;
  const isFirst = useRef(true);
  useEffect(() => {
    if (!isFirst.current && newest.current.isPlaying) play();
    isFirst.current = false;
  }, [play, speed, isLooped, inFrame, outFrame]);

  useOnceAgreed(agreement, play);

  const toggle = useCallback(() => {
    if (newest.current.isPlaying) player.current?.pause();
    else if (!player.current) return;
    else if (newest.current.isAgreed) play();
    else press('begin');
  }, [play, press]);
  const pause = useCallback(() => player.current?.pause(), []);
  useStopping(isPlaying, pause);
  const stepBy = useCallback((frames: number) => seek(playhead.frame() + frames), [seek, playhead]);
  const changeLooped = useCallback((next: (isLooped: boolean) => boolean) => setLooped(next), []);

  return useMemo(
    () => ({ isPlaying, canPlay, speed, isLooped, warning: step, shown, seek, stepBy, toggle, setSpeed, setLooped: changeLooped, press, leastGap_ms, video }),
    [isPlaying, canPlay, speed, isLooped, step, shown, seek, stepBy, toggle, changeLooped, press, leastGap_ms, video],
  );
} // prettier-ignore
