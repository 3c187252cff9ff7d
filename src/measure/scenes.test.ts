/** Scenes whose truth is known, one thing at a time. All of them are synthetic: made, not filmed. */
import { describe, expect, test } from 'vitest';
import { flickerIn, measured } from '../../test/footage/measured.ts';
import { meanOf, synthetic, type Lamp, type Scene } from '../../test/footage/synthetic.ts';

/** Small and noisy: the mean of a frame is known to about four parts in a thousand. */
const SMALL: Scene = {
  width: 32,
  height: 24,
  rate_fps: 1000,
  frames: 300,
  exposure_s: 1 / 2000,
  seed: 1,
  lamps: [{ light: { kind: 'steady' } }],
  white_e: 240,
  fullWell_e: 1200,
  readNoise_e: 4,
};

const WIDE: Scene = { ...SMALL, width: 160, height: 96, frames: 200, white_e: 16_000, fullWell_e: 20_000 };

const ripple = (f_Hz: number, depth: number, phase_rad = 0): Lamp => ({
  light: { kind: 'ripple', f_Hz, depth, phase_rad },
});
const seeds = (count: number) => Array.from({ length: count }, (_, i) => i + 1);

describe('1: steady light', () => {
  test('is called flicker, or doubtful, in no more than one clip in fifty', () => {
    const wrong = seeds(50).filter((seed) => flickerIn(synthetic('steady', { ...SMALL, seed })).verdict !== 'steady');
    expect(wrong.length).toBeLessThanOrEqual(1);
  });

  test('with something moving through it neither', () => {
    const wrong = seeds(20).filter((seed) => {
      const drop = { radius_px: 4, bright: 0.9, x_px: (t_s: number) => 10 + 30 * t_s, y_px: (t_s: number) => -6 + (100 + 4 * seed) * t_s }; // prettier-ignore
      return flickerIn(synthetic('a drop', { ...SMALL, seed, drop })).verdict !== 'steady';
    });
    expect(wrong).toEqual([]);
  });
});

describe('2: the ripple of a lamp on the mains', () => {
  test('of half a percent is found in 95 clips of 100 at its rate', () => {
    const clips = 40;
    const right = seeds(clips).filter((seed) => {
      const { verdict, lines } = flickerIn(synthetic('faint', { ...SMALL, seed, lamps: [ripple(100, 0.005, seed)] }));
      return verdict === 'flicker' && Math.abs(lines[0]!.beat_Hz - 100) < Math.max(1, 4 * lines[0]!.deviation_Hz);
    });
    expect(right.length).toBeGreaterThanOrEqual(0.95 * clips);
  });

  test.each([
    [100, 0.02],
    [120, 0.1],
    [100, 0.3],
  ])('at %d Hz and %d deep has that rate, depth and extent', (f_Hz, depth) => {
    const scene = { ...SMALL, lamps: [ripple(f_Hz, depth, 0.4)] };
    const [line] = flickerIn(synthetic('ripple', scene)).lines;
    const through = Math.sin(Math.PI * f_Hz * scene.exposure_s) / (Math.PI * f_Hz * scene.exposure_s);
    expect(Math.abs(line!.beat_Hz - f_Hz)).toBeLessThan(0.01 + 4 * line!.deviation_Hz);
    expect(line!.depthFraction / (depth * through)).toBeCloseTo(1, 1);
    expect(Math.abs(line!.depthFraction - depth * through)).toBeLessThan(
      5 * line!.depthDeviationFraction + 0.03 * depth,
    );
    expect(line).toMatchObject({ looksLike: 'light', extentFraction: 1 });
    expect(line!.candidates[0]).toMatchObject({ mains_Hz: f_Hz / 2 });
  });

  test('lists what else it may be, and chooses none', () => {
    const [line] = flickerIn(synthetic('ripple', { ...SMALL, lamps: [ripple(100, 0.05)] })).lines;
    const rates = line!.candidates.slice(0, 5).map(({ rate_Hz }) => Math.round(rate_Hz / 10) * 10);
    expect(rates).toEqual([100, 900, 1100, 1900, 2100]);
  });
});

describe('3: pulsed diodes', () => {
  const pulses = (f_Hz: number, exposure_s: number) =>
    flickerIn(synthetic('pulses', { ...SMALL, exposure_s, lamps: [{ light: { kind: 'pulses', f_Hz, duty: 0.3 } }] }));

  test.each([1100, 4200, 25_300])('at %d Hz are steady where the shutter holds whole periods', (f_Hz) => {
    expect(pulses(f_Hz, Math.floor(f_Hz / 1300 + 1) / f_Hz).verdict).toBe('steady');
  });

  test.each([
    [1100, 100],
    [4200, 200],
    [25_300, 300],
  ])('at %d Hz beat at %d Hz where it does not', (f_Hz, beat_Hz) => {
    const { verdict, lines } = pulses(f_Hz, (Math.floor(f_Hz / 2000) + 0.5) / f_Hz);
    expect(verdict).toBe('flicker');
    expect(lines.some((line) => Math.abs(line.beat_Hz - beat_Hz) < 1)).toBe(true);
    const line = lines.find((of) => Math.abs(of.beat_Hz - beat_Hz) < 1)!;
    expect(line.candidates.some(({ rate_Hz }) => Math.abs(rate_Hz - f_Hz) < 2)).toBe(true);
  });
});

describe('4: a lamp that nearly keeps step with the frames', () => {
  test.each([999.7, 1000.3, 3000.3])('at %d Hz looks like a change of light, and is not called flicker', (f_Hz) => {
    const scene = { ...SMALL, lamps: [ripple(f_Hz, 0.3, 0.5)], exposure_s: 1 / 20_000 };
    const { verdict, lines, drift_stops, slowest_Hz } = flickerIn(synthetic('a slow beat', scene));
    expect(verdict).not.toBe('flicker');
    expect(lines).toEqual([]);
    expect(Math.abs(drift_stops)).toBeGreaterThan(0.05);
    expect(slowest_Hz).toBe(5);
  });

  test('a clip too short for the ripple of the mains cannot tell, whether it is there or not', () => {
    for (const depth of [0, 0.1]) {
      const scene = { ...SMALL, rate_fps: 10_000, exposure_s: 1 / 20_000, frames: 100, lamps: [ripple(100, depth)] };
      const { verdict, blindTo_Hz, why } = flickerIn(synthetic('a short clip', scene));
      expect({ verdict, blindTo_Hz }).toEqual({ verdict: 'cannot tell', blindTo_Hz: [100, 120] });
      expect(why).toContain('less than 1.5 cycles');
    }
  });
});

describe('5: three lamps on three phases', () => {
  const third = (2 * Math.PI) / 3;

  test('leave no ripple together', () => {
    const lamps = [0, 1, 2].map((phase) => ripple(100, 0.1, phase * third));
    expect(flickerIn(synthetic('three phases', { ...SMALL, lamps })).verdict).toBe('steady');
  });

  test('of which one is put out leave half of it', () => {
    const lamps = [0, 1].map((phase) => ripple(100, 0.1, phase * third));
    const [line] = flickerIn(synthetic('two phases', { ...SMALL, lamps })).lines;
    expect(line!.depthFraction / 0.05).toBeCloseTo(1, 1);
  });
});

test('6: a second lamp in one corner is found there, with its depth there', () => {
  const corner = (x: number, y: number) => (x < 0.4 && y < 0.4 ? 0.25 : 0);
  const lamps = [{ light: { kind: 'steady' } as const }, { ...ripple(120, 0.4), share: corner }];
  const { verdict, lines } = flickerIn(synthetic('a lamp in the corner', { ...SMALL, lamps }));
  expect(verdict).toBe('flicker');
  expect(lines[0]!.beat_Hz).toBeCloseTo(120, 0);
  expect(lines[0]!.depthFraction / ((0.4 * 0.25) / 1.25)).toBeCloseTo(1, 1);
  expect(lines[0]!.extentFraction).toBeLessThan(0.25);
  for (const at of lines[0]!.centre) expect(at).toBeLessThan(-0.4);
});

test('7: a rolling shutter draws bands, and their number is right', () => {
  const scene = { ...SMALL, height: 48, rate_fps: 240, row_s: 3.2e-4, lamps: [ripple(100, 0.1)] };
  const { verdict, lines } = flickerIn(synthetic('bands', scene));
  expect(verdict).toBe('flicker');
  expect(lines[0]!.looksLike).toBe('bands');
  expect(lines[0]!.bandsPerFrame! / (100 * 48 * 3.2e-4)).toBeCloseTo(1, 1);
});

describe('8: focus', () => {
  test('that comes and goes is sharpest where the truth has no blur', () => {
    const focus = measured(
      synthetic('a focus ramp', { ...WIDE, focus_px: (frame) => Math.abs(frame - 120) / 40 }),
    ).focus;
    expect(focus.verdict).toBe('changes');
    expect(Math.abs(focus.sharpestFrame - 120)).toBeLessThanOrEqual(5);
    expect(focus.sharpness[0]!).toBeLessThan(focus.sharpness[60]!);
  });

  test('that goes to and fro is said to hunt, and one that stays to be steady, under flicker too', () => {
    const hunting = { ...WIDE, focus_px: (frame: number) => 1.5 + Math.cos(frame / 12) };
    expect(measured(synthetic('hunting', hunting)).focus.verdict).toBe('hunts');
    expect(measured(synthetic('steady', { ...WIDE, lamps: [ripple(100, 0.2)] })).focus.verdict).toBe('steady');
  });

  test('of a plain card cannot be told, whatever its noise', () => {
    expect(measured(synthetic('a card', { ...WIDE, blobs: 0, white_e: 500 })).focus.verdict).toBe('cannot tell');
  });
});

test('9: steps of exposure by a third of a stop are a third of a stop', () => {
  const { frames } = measured(synthetic('steps', { ...WIDE, frames: 60, white_e: 8000, gain: (frame) => 2 ** (Math.floor(frame / 20) / 3) })); // prettier-ignore
  expect(Math.log2(frames.mean[30]! / frames.mean[10]!)).toBeCloseTo(1 / 3, 2);
  expect(Math.log2(frames.mean[50]! / frames.mean[30]!)).toBeCloseTo(1 / 3, 2);
});

describe('10: a drop that falls through', () => {
  const y_px = (t_s: number) => -12 + 1500 * Math.max(0, t_s - 0.05);
  const drop = { radius_px: 6, bright: 0.9, x_px: () => 80, y_px };
  const clip = synthetic('a drop', { ...WIDE, drop, lamps: [ripple(100, 0.1)] });
  const { action, motion, shake, flicker } = measured(clip);
  // The first frame with some of it in the picture, and the last.
  const [first, last] = [Math.ceil((50 / 1000 + (12 - 6.5) / 1500) * 1000), Math.floor((50 / 1000 + (12 + 96 + 6.5) / 1500) * 1000)]; // prettier-ignore

  test('is seen to come and go within a few frames', () => {
    expect(Math.abs(action!.onset - first)).toBeLessThanOrEqual(4);
    expect(Math.abs(action!.end - last)).toBeLessThanOrEqual(4);
    expect(action).toMatchObject({ isBegun: true, isEnded: true, confidence: 'clear' });
    expect(action!.in).toBe(action!.onset - 6);
    expect(action!.out).toBe(action!.end + 6);
  });

  test('moves as fast and the way it does', () => {
    expect(motion!.typical_px / 1.5).toBeCloseTo(1, 1);
    expect(Math.abs(motion!.direction_deg - 90)).toBeLessThan(3);
  });

  test('shakes nothing, and the flicker under it is found', () => {
    expect(shake.verdict).toBe('still');
    expect(flicker.lines[0]!.beat_Hz).toBeCloseTo(100, 0);
  });

  test('is not there in a clip of a still set, whose parts of the action are none', () => {
    const still = measured(synthetic('a still set', WIDE));
    expect(still.action).toBeUndefined();
    expect(still.motion).toBeUndefined();
  });

  test('in a clip cut short is said not to end', () => {
    const { action: cut } = measured({ ...clip, planes: clip.planes.slice(0, 90) });
    expect(cut).toMatchObject({ isBegun: true, isEnded: false });
  });
});

describe('11: frames that are missing or repeated', () => {
  const clip = synthetic('ripple', { ...SMALL, lamps: [ripple(100, 0.03)] });

  test('missing ones keep their place, and the flicker its rate', () => {
    const kept = clip.planes.flatMap((plane, frame) => (frame % 9 === 4 || (frame > 100 && frame < 120) ? [] : [{ plane, frame }])); // prettier-ignore
    const part = { ...clip, planes: kept.map(({ plane }) => plane) };
    const { missingFrames, flicker, frameCount } = measured(part, (i) => kept[i]!.frame);
    expect(missingFrames.length).toBe(300 - kept.length);
    expect(frameCount).toBe(300);
    expect(Math.abs(flicker.lines[0]!.beat_Hz - 100)).toBeLessThan(4 * flicker.lines[0]!.deviation_Hz + 0.05);
    // Taken for frames one after the other, the same clip has another rate.
    const [wrong] = measured(part).flicker.lines;
    expect(wrong === undefined || Math.abs(wrong.beat_Hz - 100) > 2).toBe(true);
  });

  test('repeated ones are told, each by its place', () => {
    const planes = clip.planes.map((plane, frame) => (frame === 50 || frame === 51 || frame === 200 ? clip.planes[frame === 200 ? 199 : 49]! : plane)); // prettier-ignore
    const { repeatedFrames, flicker, frames } = measured({ ...clip, planes });
    expect(repeatedFrames).toEqual([50, 51, 200]);
    expect([...frames.weight].filter((weight) => weight === 0)).toHaveLength(3);
    expect(flicker.lines[0]!.beat_Hz).toBeCloseTo(100, 0);
  });
});

test('12: clipped highlights hide flicker, and are left out of it', () => {
  const lamp = { kind: 'ripple', f_Hz: 100, depth: 0.1 } as const;
  const bright = { light: lamp, share: (x: number) => (x < 0.5 ? 1 : 0.1) };
  // The left half is lit ten times as much, and burns out.
  const scene = { ...SMALL, lamps: [bright], gain: () => 1, white_e: 240 };
  const clip = synthetic('clipped', scene);
  const burnt = clip.planes.map((plane) => plane.map((code, i) => (i % 32 < 16 ? 4095 : code)));
  const { lines, judgedTiles } = flickerIn({ ...clip, planes: burnt });
  expect(lines[0]!.depthFraction / 0.1).toBeCloseTo(1, 1);
  expect(judgedTiles).toBeLessThan(40);
  expect(meanOf(lamp, 0, 0.01)).toBeCloseTo(1, 9);
});
