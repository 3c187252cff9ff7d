import { describe, expect, test } from 'vitest';
import type { PlayHow } from './clip/copyPlayer.ts';
import { openPairPlayer, steppedSpeed_fps, type PairSide } from './pairPlayer.ts';
import type { PairBrief } from './pairTime.ts';

/** Two copies that play when told to, each as fast as it is told times what the test says, and a page whose time the test passes. */
function bench(briefs: readonly [PairBrief, PairBrief], drift: readonly [number, number] = [1, 1]) {
  let now_ms = 0;
  let nextPicture: (() => void) | undefined;
  const told = { times: [] as number[], playing: [] as boolean[] };
  const copies = briefs.map((brief, i) => {
    const copy = { frame: 0, how: undefined as PlayHow | undefined, seeks: [] as number[] };
    const side: PairSide = {
      player: {
        seek: (frame) => {
          copy.how = undefined;
          copy.frame = frame;
          copy.seeks.push(frame);
        },
        play: (how) => void (copy.how = how),
        pause: () => void (copy.how = undefined),
        close: () => undefined,
      },
      brief,
      shown: () => Math.floor(copy.frame),
    };
    const pass = (ms: number) => {
      if (copy.how) copy.frame = Math.min(copy.how.last, copy.frame + (ms / 1000) * copy.how.play_fps * drift[i]!);
    };
    return { copy, side, pass };
  });
  const player = openPairPlayer({
    sides: [copies[0]!.side, copies[1]!.side],
    clock: {
      now_ms: () => now_ms,
      after: () => () => undefined,
      nextPicture: (run) => {
        nextPicture = run;
        return () => void (nextPicture = undefined);
      },
    },
    onTime: (time_s) => told.times.push(time_s),
    onPlaying: (isPlaying) => told.playing.push(isPlaying),
  });
  /** In pictures of 20 ms. */
  const pass = (ms: number) => {
    for (let gone = 0; gone < ms; gone += 20) {
      now_ms += 20;
      for (const copy of copies) copy.pass(20);
      const run = nextPicture;
      nextPicture = undefined;
      run?.();
    }
  };
  return { player, told, pass, first: copies[0]!.copy, second: copies[1]!.copy };
}

const clip = (frameRate_fps: number, frameCount = 200): PairBrief => ({ frameRate_fps, frameCount });
const HOW = { alignment: 'first', from_s: 0, to_s: 0.199, pace: 0.025 } as const;

describe('two copies', () => {
  test('of unlike rates play at one pace of the set', () => {
    const { player, pass, first, second, told } = bench([clip(1000), clip(500)]);
    player.play(HOW);
    pass(2000);
    expect([first.frame, second.frame]).toEqual([expect.closeTo(50, 0), expect.closeTo(25, 0)]);
    expect(told.times.at(-1)).toBeCloseTo(0.05, 3);
    expect(told.playing).toEqual([true]);
  });

  test('that run ahead or behind are brought back into step without being set anew', () => {
    const { player, pass, first, second } = bench([clip(1000), clip(1000)], [0.9, 1.08]);
    player.play(HOW);
    pass(4000);
    expect(Math.abs(first.frame - 100)).toBeLessThan(6);
    expect(Math.abs(second.frame - 100)).toBeLessThan(6);
    expect([first.seeks, second.seeks]).toEqual([[0], [0]]);
  });

  test('of which one hangs are set where it belongs once it is far off', () => {
    const { player, pass, first } = bench([clip(1000), clip(1000)], [0, 1]);
    player.play(HOW);
    pass(3000);
    expect(first.seeks.length).toBeGreaterThan(1);
    expect(first.seeks.at(-1)).toBeGreaterThan(25);
  });

  test('of unlike beginnings: the later one waits at its first frame, then goes on', () => {
    const late = {
      frameRate_fps: 1000,
      frameCount: 200,
      action: { onset: 20, peak: 60, end: 150, inFrame: 10, outFrame: 160 },
    };
    const early = {
      frameRate_fps: 1000,
      frameCount: 200,
      action: { onset: 90, peak: 100, end: 150, inFrame: 80, outFrame: 160 },
    };
    const { player, pass, first, second } = bench([late, early]);
    player.play({ alignment: 'onset', from_s: -0.09, to_s: 0.179, pace: 0.025 });
    pass(2000);
    expect([first.how, first.frame]).toEqual([undefined, 0]);
    expect(second.frame).toBeCloseTo(50, 0);
    pass(2000);
    expect(first.frame).toBeCloseTo(30, -0.5);
    expect(second.frame).toBeCloseTo(100, -0.5);
  });

  test('stop at one moment: when told to, and at the end', () => {
    const { player, pass, first, second, told } = bench([clip(1000), clip(500, 100)]);
    player.play(HOW);
    pass(1000);
    player.pause();
    expect([first.frame, second.frame]).toEqual([25, 13]);
    expect(told.playing).toEqual([true, false]);
    player.pause();
    expect(told.playing).toEqual([true, false]);
    player.play({ ...HOW, from_s: 0.19 });
    pass(1000);
    expect(told.playing).toEqual([true, false, true, false]);
    expect(told.times.at(-1)).toBe(0.199);
    expect([first.frame, second.frame]).toEqual([199, 99]);
    expect(first.how).toBeUndefined();
  });
});

test('what is behind plays faster, what is ahead slower, and neither by more than a quarter', () => {
  expect(steppedSpeed_fps(25, 0)).toBe(25);
  expect(steppedSpeed_fps(25, 3)).toBeCloseTo(27, 9);
  expect(steppedSpeed_fps(25, -3)).toBeCloseTo(23, 9);
  expect(steppedSpeed_fps(25, 500)).toBe(31.25);
});
