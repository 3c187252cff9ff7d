import { describe, expect, test } from 'vitest';
import { measured } from '../../../test/footage/measured.ts';
import { synthetic } from '../../../test/footage/synthetic.ts';
import { drawFour, drawKey } from '../../base/randomStream.ts';
import { normalQuantile } from '../../laws/chance/normal.ts';
import { rigTimesOf, type RigClip, type RigTimes } from './rigTimes.ts';

/** A clip in which a rig fired at one moment moves at another, both seen in the first frame that ends after. */
const clip = (latency_s: number, { fired_s = 0.0207, frameRate_fps = 2000, name = 'take' } = {}): RigClip => {
  const frameOf = (time_s: number) => Math.ceil(time_s * frameRate_fps);
  const frame = frameOf(fired_s);
  const signal = { frame, movement: frameOf(fired_s + latency_s), tile: 0, rise_stops: 2, litFraction: 1 };
  return { name, measurement: { signal, frameRate_fps } };
};

const rigOf = (clips: readonly RigClip[]): RigTimes => {
  const reading = rigTimesOf(clips);
  if (!reading.ok) throw new Error(reading.refusal.what);
  return reading.rig;
};

function draws(count: number, ...purpose: readonly string[]): (set: number, at: number) => readonly [number, number] {
  const key = drawKey(count, ...purpose);
  const four = new Float64Array(4);
  return (set, at) => {
    drawFour(key, set, at, 0, four);
    return [normalQuantile(four[0]!), four[1]!];
  };
}

describe('takes drawn about 40 ms by 2 ms', () => {
  test.each([4, 8, 30])('%d of them give both within their bands in eight sets of ten', (count) => {
    const draw = draws(count, 'rig');
    const SETS = 1000;
    let [latencies, jitters, sum] = [0, 0, 0];
    for (let set = 0; set < SETS; set += 1) {
      const rig = rigOf(Array.from({ length: count }, (_, i) => {
        const [z, share] = draw(set, i);
        return clip(0.04 + 0.002 * z, { fired_s: 0.02 + share / 2000 });
      })); // prettier-ignore
      if (Math.abs(rig.latency_s - 0.04) <= rig.latencyReach_s) latencies += 1;
      if (rig.jitterLow_s <= 0.002 && rig.jitterHigh_s >= 0.002) jitters += 1;
      sum += rig.jitter_s ** 2;
    }
    // Three standard deviations of counting a thousand sets; the reach of a middle is a little wide for few takes.
    expect(latencies / SETS).toBeGreaterThan(0.76);
    expect(latencies / SETS).toBeLessThan(0.88);
    expect(jitters / SETS).toBeGreaterThan(0.76);
    expect(jitters / SETS).toBeLessThan(0.84);
    expect(Math.sqrt(sum / SETS)).toBeCloseTo(0.002, 4);
  });

  test('nine in ten have moved by the later of the two figures', () => {
    const rig = rigOf([0.038, 0.039, 0.04, 0.041, 0.042, 0.0405].map((latency) => clip(latency)));
    expect(rig.ninetieth_s).toBeCloseTo(rig.latency_s + 1.2816 * rig.jitter_s, 6);
  });
});

describe('a spread that frames hide', () => {
  test('is told as the most it may be, and never as none', () => {
    const rig = rigOf([0.012, 0.0121, 0.0119, 0.01205, 0.0122].map((latency) => clip(latency)));
    expect(rig.isJitterTold).toBe(false);
    expect(rig.jitterLow_s).toBe(0);
    expect(rig.jitter_s).toBeGreaterThan(0.0002);
    expect(rig.jitter_s).toBeLessThan(0.0006);
  });

  test('of takes all alike is judged by their frames', () => {
    const rig = rigOf([1, 2, 3, 4].map(() => clip(0.012)));
    expect(rig.jitter_s).toBeGreaterThan(rig.quantised_s);
  });

  test('is no larger than what fewer frames would make of it', () => {
    const takes = [0.0301, 0.0316, 0.0288, 0.0307, 0.0295, 0.031];
    const fine = rigOf(takes.map((latency) => clip(latency, { frameRate_fps: 20_000 })));
    const coarse = rigOf(takes.map((latency, i) => clip(latency, { frameRate_fps: 1000, fired_s: 0.02 + i * 0.00017 })));
    expect(fine.isJitterTold).toBe(true);
    expect(Math.abs(fine.jitter_s - 0.00101)).toBeLessThan(0.00005);
    expect(coarse.jitter_s).toBeLessThan(2 * fine.jitter_s);
  }); // prettier-ignore
});

test('clips at several rates are taken together, each by its own frames', () => {
  const rig = rigOf([clip(0.03), clip(0.0302, { frameRate_fps: 1000 }), clip(0.0299, { frameRate_fps: 4000 })]);
  expect(rig.quantised_s).toBeCloseTo(Math.sqrt((1 / 1000 ** 2 + 1 / 2000 ** 2 + 1 / 4000 ** 2) / 18), 12);
});

test('a take far from the others is named and counts all the same', () => {
  const rig = rigOf([0.03, 0.0305, 0.0302, 0.0298, 0.061].map((latency, i) => clip(latency, { name: `take ${i}` })));
  expect(rig.takes.filter(({ isFar }) => isFar).map(({ name }) => name)).toEqual(['take 4']);
  expect(rig.jitter_s).toBeGreaterThan(0.01);
});

test('fewer than three takes, and clips that tell nothing, are refused by name', () => {
  const dark: RigClip = { name: 'dark', measurement: { frameRate_fps: 1000 } };
  const still: RigClip = { name: 'still', measurement: { frameRate_fps: 1000, signal: { frame: 20, tile: 0, rise_stops: 1, litFraction: 1 } } }; // prettier-ignore
  const soon = clip(0.0005, { name: 'soon' });
  const reading = rigTimesOf([dark, still, soon, clip(0.03)]);
  expect(reading).toMatchObject({ ok: false, refusal: { code: 'rig.few-takes' } });
  expect(reading.ok ? [] : reading.leftOut.map(({ name }) => name)).toEqual(['dark', 'still', 'soon']);
});

test('measured clips of a thing let go give what was put in, to a frame', () => {
  const RATE_fps = 1000;
  const latencies_s = [0.03, 0.0322, 0.0287, 0.0311];
  const clips = latencies_s.map((latency_s, i): RigClip => {
    const on_s = 0.0303 + 0.0007 * i;
    const scene = synthetic('fired', {
      width: 96,
      height: 54,
      rate_fps: RATE_fps,
      frames: 90,
      exposure_s: 1 / 2000,
      seed: 20 + i,
      lamps: [{ light: { kind: 'ripple', f_Hz: 100, depth: 0.1 } }],
      drop: { radius_px: 4, bright: 0.9, x_px: () => 40, y_px: (t_s) => 12 + 700 * Math.max(0, t_s - on_s - latency_s) },
      signal: { x_px: 88, y_px: 46, radius_px: 2, bright: 0.8, on_s },
    }); // prettier-ignore
    return { name: `take ${i}`, measurement: measured(scene) };
  });
  const rig = rigOf(clips);
  expect(Math.abs(rig.latency_s - 0.03055)).toBeLessThan(0.0015);
  rig.takes.forEach(({ latency_s }, i) => expect(Math.abs(latency_s - latencies_s[i]!)).toBeLessThan(0.0021));
});
