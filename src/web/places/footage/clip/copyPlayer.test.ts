import { describe, expect, test } from 'vitest';
import { openCopyPlayer, type CopyPlayer, type VideoLike } from './copyPlayer.ts';

const [COUNT, DURATION_s] = [100, 4];

/** A video whose seeks end, and whose pictures come, when the test says so. */
function bench({ gap_ms = 0, hasFrames = true }: { readonly gap_ms?: number; readonly hasFrames?: boolean } = {}) {
  const heard = new Map<string, () => void>();
  const seeks: number[] = [];
  let time_s = 0;
  let now_ms = 0;
  let shownNext: ((mediaTime: number) => void) | undefined;
  let nextPicture: (() => void) | undefined;
  const waits: { readonly at_ms: number; readonly run: () => void }[] = [];
  const told = { frames: [] as number[], shown: [] as number[], playing: [] as boolean[] };
  const video: VideoLike & { paused: boolean } = {
    get currentTime() {
      return time_s;
    },
    set currentTime(to_s: number) {
      time_s = to_s;
      seeks.push(Math.floor((to_s / DURATION_s) * COUNT));
    },
    playbackRate: 1,
    duration: DURATION_s,
    paused: true,
    play: () => {
      video.paused = false;
      return Promise.resolve();
    },
    pause: () => {
      video.paused = true;
    },
    addEventListener: (name, run) => void heard.set(name, run),
    removeEventListener: (name) => void heard.delete(name),
    ...(hasFrames && {
      requestVideoFrameCallback: (run) => {
        shownNext = (mediaTime) => run(0, { mediaTime });
        return 1;
      },
      cancelVideoFrameCallback: () => {
        shownNext = undefined;
      },
    }),
  };
  const player: CopyPlayer = openCopyPlayer({
    video,
    clock: {
      now_ms: () => now_ms,
      after: (wait_ms, run) => {
        const wait = { at_ms: now_ms + wait_ms, run };
        waits.push(wait);
        return () => void waits.splice(waits.indexOf(wait), 1);
      },
      nextPicture: (run) => {
        nextPicture = run;
        return () => {
          nextPicture = undefined;
        };
      },
    },
    frameCount: () => COUNT,
    leastGap_ms: () => gap_ms,
    onFrame: (frame) => told.frames.push(frame),
    onShown: (frame) => told.shown.push(frame),
    onPlaying: (isPlaying) => told.playing.push(isPlaying),
  });
  return {
    player,
    video,
    told,
    seeks,
    listens: () => heard.size,
    known: () => heard.get('loadedmetadata')!(),
    seeked: () => heard.get('seeked')!(),
    ended: () => {
      video.paused = true;
      heard.get('ended')!();
    },
    picture: (frame: number) => {
      time_s = ((frame + 0.1) * DURATION_s) / COUNT;
      const run = hasFrames ? shownNext : nextPicture && (() => nextPicture!());
      run?.((frame * DURATION_s) / COUNT);
    },
    pass: (ms: number) => {
      now_ms += ms;
      for (const wait of waits.filter(({ at_ms }) => at_ms <= now_ms)) {
        waits.splice(waits.indexOf(wait), 1);
        wait.run();
      }
    },
  };
}

const soon = () => new Promise<void>((resolve) => setTimeout(resolve, 0));
const WHOLE = { first: 0, last: COUNT - 1, isLooped: false, play_fps: 25 };

describe('seeking', () => {
  test('asks for the middle of the frame, and tells which is there', () => {
    const { player, video, seeked, told } = bench();
    player.seek(37);
    expect(video.currentTime).toBeCloseTo((37.5 * DURATION_s) / COUNT, 12);
    seeked();
    expect(told.shown).toEqual([37]);
  });

  test('while one seek is under way keeps the newest wish alone', () => {
    const { player, seeks, seeked } = bench();
    for (const frame of [10, 11, 12, 13]) player.seek(frame);
    expect(seeks).toEqual([10]);
    seeked();
    expect(seeks).toEqual([10, 13]);
    seeked();
    expect(seeks).toEqual([10, 13]);
  });

  test('lets pictures through slowly where they may not change fast', () => {
    const { player, seeks, seeked, pass } = bench({ gap_ms: 200 });
    player.seek(1);
    seeked();
    player.seek(2);
    player.seek(3);
    expect(seeks).toEqual([1]);
    pass(199);
    expect(seeks).toEqual([1]);
    pass(1);
    expect(seeks).toEqual([1, 3]);
  });

  test('or playing waits for a copy that says how long it is', () => {
    const { player, video, seeks, known } = bench();
    (video as { duration: number }).duration = NaN;
    player.seek(5);
    player.play({ first: 0, last: COUNT - 1, isLooped: false, play_fps: 25 });
    expect([seeks, video.paused]).toEqual([[], true]);
    (video as { duration: number }).duration = DURATION_s;
    known();
    expect([seeks, video.paused]).toEqual([[5], false]);
  });
});

describe.each([[true], [false]])('playing, where the browser tells its pictures: %s', (hasFrames) => {
  test('tells each frame, and stops at the last', async () => {
    const { player, video, told, picture, seeked } = bench({ hasFrames });
    player.play(WHOLE);
    await soon();
    expect([video.paused, video.playbackRate]).toEqual([false, 1]);
    for (const frame of [1, 2, 3]) picture(frame);
    expect(told.frames).toEqual([0, 1, 2, 3]);
    picture(COUNT - 1);
    seeked();
    expect([video.paused, told.playing, told.frames.at(-1), told.shown.at(-1)]).toEqual([true, [true, false], 99, 99]);
  });

  test('of a loop goes back to its first frame and on', async () => {
    const { player, video, told, picture, seeked, seeks } = bench({ hasFrames });
    player.play({ ...WHOLE, first: 20, last: 40, isLooped: true });
    await soon();
    expect(seeks).toEqual([20]);
    seeked();
    picture(39);
    picture(41);
    expect([seeks, video.paused, told.frames.at(-1)]).toEqual([[20, 20], false, 20]);
    // What was there before the seek is told again, and counts for nothing.
    picture(41);
    expect(seeks).toEqual([20, 20]);
    seeked();
    picture(21);
    expect(told.frames.at(-1)).toBe(21);
  });

  test('goes on from where it stands, and from the start when it has come to the end', async () => {
    const { player, seeks, seeked } = bench({ hasFrames });
    player.seek(50);
    seeked();
    player.play(WHOLE);
    await soon();
    expect(seeks).toEqual([50]);
    player.seek(COUNT - 1);
    seeked();
    player.play(WHOLE);
    expect(seeks).toEqual([50, 99, 0]);
  });

  test('stops when a frame is asked for, at that frame', async () => {
    const { player, video, told, picture, seeks } = bench({ hasFrames });
    player.play(WHOLE);
    await soon();
    picture(5);
    player.seek(70);
    expect([video.paused, told.playing, seeks]).toEqual([true, [true, false], [70]]);
    picture(6);
    expect(told.frames.at(-1)).toBe(5);
  });

  test('stopped stands in the middle of the frame it had come to', async () => {
    const { player, video, picture } = bench({ hasFrames });
    player.play(WHOLE);
    await soon();
    picture(8);
    player.pause();
    expect(video.currentTime).toBeCloseTo((8.5 * DURATION_s) / COUNT, 12);
  });

  test('to the end of the copy is its end, or begins the loop anew', async () => {
    const { player, video, ended, told, seeks } = bench({ hasFrames });
    player.play({ ...WHOLE, isLooped: true });
    await soon();
    ended();
    expect([video.paused, seeks]).toEqual([false, [0]]);
    player.pause();
    expect(told.playing).toEqual([true, false]);
  });
});

test('a player that is closed listens to nothing', () => {
  const { player, listens } = bench();
  expect(listens()).toBe(3);
  player.close();
  expect(listens()).toBe(0);
});
