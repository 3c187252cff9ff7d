/**
 * Plays the small copies of two clips in one time of the set. The clock of the page leads: each copy plays by itself and is
 * made a little faster or slower as it is behind or ahead, and is set where it belongs once it is far off.
 */
import type { Clock, CopyPlayer } from './clip/copyPlayer.ts';
import { anchorOf, frameAt, type Alignment, type PairBrief } from './pairTime.ts';

export interface PairSide {
  readonly player: CopyPlayer;
  readonly brief: PairBrief;
  /** The frame whose picture is there. */
  readonly shown: () => number;
}

export interface PairPlayHow {
  readonly alignment: Alignment;
  readonly from_s: number;
  readonly to_s: number;
  /** Time of the set over time of whoever looks. */
  readonly pace: number;
}

export interface PairPlayerGiven {
  readonly sides: readonly [PairSide, PairSide];
  readonly clock: Clock;
  /** The moment that playing has come to. */
  readonly onTime: (time_s: number) => void;
  readonly onPlaying: (isPlaying: boolean) => void;
}

export interface PairPlayer {
  readonly play: (how: PairPlayHow) => void;
  /** Stops both at one moment. */
  readonly pause: () => void;
}

/** Both are looked at so often; off by more than the second of these, in time of whoever looks, one is set anew. */
const LOOK_ms = 400;
const FAR_ms = 1000;
/** What is behind is caught up with in about this long, by no more than this share faster. */
const CATCH_UP_ms = 1500;
const MOST_FASTER = 0.25;

/** Frames a second that a copy which is off by so many must play at to come back into step. */
export function steppedSpeed_fps(play_fps: number, behindFrames: number): number {
  const share = (behindFrames / play_fps) * (1000 / CATCH_UP_ms);
  return play_fps * (1 + Math.min(MOST_FASTER, Math.max(-MOST_FASTER, share)));
}

export function openPairPlayer({ sides, clock, onTime, onPlaying }: PairPlayerGiven): PairPlayer {
  let how: PairPlayHow | undefined;
  let [begun_ms, looked_ms] = [0, 0];
  let cancel: (() => void) | undefined;
  const isRunning: [boolean, boolean] = [false, false];

  const timeNow_s = ({ from_s, to_s, pace }: PairPlayHow): number =>
    Math.min(to_s, from_s + ((clock.now_ms() - begun_ms) / 1000) * pace);
  const setBoth = (alignment: Alignment, time_s: number) => {
    for (const { player, brief } of sides) player.seek(frameAt(brief, alignment, time_s).frame);
  };
  const stop = (time_s: number) => {
    if (!how) return;
    const { alignment } = how;
    how = undefined;
    cancel?.();
    isRunning.fill(false);
    // A seek stops what plays, and shows the very frame.
    setBoth(alignment, time_s);
    onTime(time_s);
    onPlaying(false);
  };

  const keepStep = (now: PairPlayHow, time_s: number, isTimeToLook: boolean) => {
    sides.forEach(({ player, brief, shown }, i) => {
      const { frame, beyond } = frameAt(brief, now.alignment, time_s);
      const play_fps = brief.frameRate_fps * now.pace;
      const run = (speed_fps: number) => player.play({ first: 0, last: brief.frameCount - 1, isLooped: false, play_fps: speed_fps }); // prettier-ignore
      if (beyond) {
        if (isRunning[i]) player.seek(frame);
        isRunning[i] = false;
      } else if (!isRunning[i]) {
        player.seek(frame);
        run(play_fps);
        isRunning[i] = true;
      } else if (isTimeToLook) {
        const behind = anchorOf(brief, now.alignment) + time_s * brief.frameRate_fps - shown();
        if (Math.abs(behind) > (FAR_ms / 1000) * play_fps) player.seek(frame);
        run(steppedSpeed_fps(play_fps, behind));
      }
    });
  };
  const next = () => {
    if (!how) return;
    const now = how;
    const time_s = timeNow_s(now);
    if (time_s >= now.to_s) {
      stop(now.to_s);
      return;
    }
    const isTimeToLook = clock.now_ms() - looked_ms >= LOOK_ms;
    if (isTimeToLook) looked_ms = clock.now_ms();
    keepStep(now, time_s, isTimeToLook);
    onTime(time_s);
    cancel = clock.nextPicture(next);
  };
  return {
    play: (given) => {
      cancel?.();
      how = given;
      begun_ms = looked_ms = clock.now_ms();
      isRunning.fill(false);
      onPlaying(true);
      next();
    },
    pause: () => how && stop(timeNow_s(how)),
  };
}
