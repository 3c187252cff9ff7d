import { useCallback, useEffect, useRef, useState } from 'react';
import type { PatchPress, PatchStep } from '../flicker/patchPlay.ts';
import { openCopyPlayer, type CopyPlayer } from './clip/copyPlayer.ts';
import { PAGE_CLOCK } from './clip/pageClock.ts';
import { SPEEDS, UNASKED_CHANGES_per_s, type Speed } from './clip/playback.ts';
import { useAgreement, useOnceAgreed } from './clip/useAgreement.ts';
import { useStopping } from './clip/useStopping.ts';
import { openPairPlayer, type PairPlayer, type PairSide } from './pairPlayer.ts';
import { frameAt, reachOf, type Alignment, type PairBrief } from './pairTime.ts';

export interface PairPlayGiven {
  readonly briefs: readonly [PairBrief, PairBrief];
  readonly alignment: Alignment;
  readonly time_s: number;
  /** Frames a second that the first plays at in the film. */
  readonly playback_fps: number;
  /** One of them flashes, or nobody knows whether it does. */
  readonly isToWarn: boolean;
  readonly onTime: (time_s: number) => void;
}

export interface PairPlay {
  /** Both copies are on the page. */
  readonly canPlay: boolean;
  readonly isPlaying: boolean;
  readonly speed: Speed;
  readonly warning: PatchStep;
  readonly setSpeed: (speed: Speed) => void;
  readonly toggle: () => void;
  readonly press: (press: PatchPress) => void;
  /** Stops, and shows both at a moment. */
  readonly seek: (time_s: number) => void;
  /** Given each copy while it is on the page. */
  readonly videos: readonly [Attach, Attach];
}

type Attach = (element: HTMLVideoElement | null) => void;

interface Side {
  readonly player: CopyPlayer;
  shown: number;
}

/** Plays the copies of two clips together. */
export function usePairPlay(given: PairPlayGiven): PairPlay {
  const [isPlaying, setPlaying] = useState(false);
  const [hasCopy, setHasCopy] = useState<readonly [boolean, boolean]>([false, false]);
  const [speed, setSpeed] = useState<Speed>(SPEEDS[0]!);
  const agreement = useAgreement(given.isToWarn);
  const { step, isAgreed, press } = agreement;
  const newest = useRef({ ...given, speed, isAgreed, isPlaying });
  useEffect(() => {
    newest.current = { ...given, speed, isAgreed, isPlaying };
  });
  const sides = useRef<[Side | undefined, Side | undefined]>([undefined, undefined]);
  const pair = useRef<PairPlayer>(undefined);

  const seekSide = useCallback((which: 0 | 1, time_s: number) => {
    const { briefs, alignment } = newest.current;
    sides.current[which]?.player.seek(frameAt(briefs[which], alignment, time_s).frame);
  }, []);
  const seekBoth = useCallback(
    (time_s: number) => {
      for (const which of [0, 1] as const) seekSide(which, time_s);
    },
    [seekSide],
  );
  const attach = useCallback(
    (which: 0 | 1, element: HTMLVideoElement | null) => {
      pair.current?.pause();
      pair.current = undefined;
      sides.current[which]?.player.close();
      sides.current[which] = undefined;
      setHasCopy((was) => (which === 0 ? [element !== null, was[1]] : [was[0], element !== null]));
      if (!element) return;
      const side: Side = {
        player: openCopyPlayer({
          video: element,
          clock: PAGE_CLOCK,
          frameCount: () => newest.current.briefs[which].frameCount,
          leastGap_ms: () => (newest.current.isAgreed ? 0 : 1000 / UNASKED_CHANGES_per_s),
          onFrame: () => undefined,
          onShown: (frame) => {
            side.shown = frame;
          },
          onPlaying: () => undefined,
        }),
        shown: 0,
      };
      sides.current[which] = side;
      seekSide(which, newest.current.time_s);
      const of = sides.current;
      if (!of[0] || !of[1]) return;
      const sideOf = (i: 0 | 1): PairSide => ({ player: of[i]!.player, get brief() { return newest.current.briefs[i]; }, shown: () => of[i]!.shown });
      pair.current = openPairPlayer({ sides: [sideOf(0), sideOf(1)], clock: PAGE_CLOCK, onTime: (time_s) => newest.current.onTime(time_s), onPlaying: setPlaying });
    },
    [seekSide],
  );
  const first = useCallback<Attach>((element) => attach(0, element), [attach]);
  const second = useCallback<Attach>((element) => attach(1, element), [attach]);

  const play = useCallback(() => {
    const { briefs, alignment, time_s, playback_fps, speed: now } = newest.current;
    const { from_s, to_s, step_s } = reachOf(briefs, alignment);
    const isAtEnd = time_s >= to_s - step_s / 2;
    pair.current?.play({ alignment, from_s: isAtEnd ? from_s : time_s, to_s, pace: (playback_fps / briefs[0].frameRate_fps) * now.factor });
  }, []);
  const pause = useCallback(() => pair.current?.pause(), []);
  // At another speed what plays goes on with that.
  useEffect(() => {
    if (newest.current.isPlaying) play();
  }, [play, speed]);

  useOnceAgreed(agreement, play);

  const toggle = useCallback(() => {
    if (newest.current.isPlaying) pause();
    else if (newest.current.isAgreed) play();
    else press('begin');
  }, [pause, play, press]);
  const seek = useCallback(
    (time_s: number) => {
      pause();
      newest.current.onTime(time_s);
      seekBoth(time_s);
    },
    [pause, seekBoth],
  );
  // Together at another moment, both stand elsewhere.
  const { alignment } = given;
  useEffect(() => {
    pause();
    seekBoth(newest.current.time_s);
  }, [alignment, pause, seekBoth]);
  useStopping(isPlaying, pause);
  useEffect(() => pause, [pause]);
  return { canPlay: hasCopy[0] && hasCopy[1], isPlaying, speed, warning: step, setSpeed, toggle, press, seek, videos: [first, second] };
} // prettier-ignore
