import { describe, expect, test } from 'vitest';
import { changed, readSound, SMALL } from '../../test/shoots.ts';
import type { Written } from '../document/written.ts';
import { seenFlicker } from '../laws/flicker/seen.ts';
import { flickerPicture, lightGroupsOf } from './flickerPicture.ts';
import { planShot } from './planShot.ts';

const KIT: Written = {
  mains: { title: 'Mains', waveform: { kind: 'led-ripple', depth: '40 %' } },
  fast: { title: 'Fast', waveform: { kind: 'led-pulses', rate: '1.7 kHz', duty: '40 %' } },
};

const shootWith = (lamps: Written, changes: Readonly<Record<string, Written | undefined>> = {}) =>
  readSound(changed(SMALL, { '/shots/one/rate': 1000, '/shots/one/screenTime': undefined, '/shots/one/shutter': '1/4000 s', '/kit/lamps': KIT, '/lighting/key/lamps': lamps, ...changes })); // prettier-ignore

function pictureOf(lamps: Written, frameCount = 60, changes = {}) {
  const shoot = shootWith(lamps, changes);
  const plan = planShot(shoot, 'one', 1);
  return { shoot, plan, picture: flickerPicture(shoot, plan, { frameCount })! };
}

const BOTH = { a: { lamp: 'mains', share: '70 %' }, b: { lamp: 'fast', share: '30 %' } };

const swing = (lights: Float64Array) => Math.log2(Math.max(...lights) / Math.min(...lights));

describe('the picture of flicker', () => {
  test.each([
    ['one lamp', { a: { lamp: 'mains' } }],
    ['one of pulses', { b: { lamp: 'fast' } }],
  ])('of %s has frames that swing as far as the plan says of so many', (_, lamps) => {
    const { shoot, picture } = pictureOf(lamps, 60);
    const seen = seenFlicker(lightGroupsOf(shoot, 'one')!, { frameRate_fps: 1000, exposureTime_s: 1 / 4000, playback_fps: 25, frameCount: 60 }); // prettier-ignore
    expect(swing(picture.frames)).toBeCloseTo(seen.worst.peakToPeak_stops, 2);
  });

  test('of lamps that keep no step swings no further than their worst together', () => {
    const { plan, picture } = pictureOf(BOTH, 200);
    expect(swing(picture.frames)).toBeLessThanOrEqual(plan.flicker!.seen!.worst.peakToPeak_stops + 1e-3);
    expect(swing(picture.frames)).toBeGreaterThan(0.7 * plan.flicker!.seen!.worst.peakToPeak_stops);
  });

  test('lays each exposure where its frame is taken, and holds the mean of the light in it', () => {
    const { picture } = pictureOf(BOTH, 24);
    const { mixed, windows, frames } = picture;
    expect(windows).toHaveLength(24);
    expect(windows[3]).toEqual({ from_s: 0.003, to_s: 0.003 + 1 / 4000 });
    const step_s = mixed.t_s[1]!;
    windows.forEach(({ from_s, to_s }, i) => {
      const within = [...mixed.light].filter((_, k) => mixed.t_s[k]! >= from_s && mixed.t_s[k]! + step_s <= to_s);
      const mean = within.reduce((sum, light) => sum + light, 0) / within.length;
      expect(Math.abs(mean - frames[i]!)).toBeLessThan(0.06);
    });
  });

  test('puts lamps on one phase together and the others a third of a mains cycle apart', () => {
    const on = (phase: number): Written => ({ lamp: 'mains', share: '30 %', phase });
    const { picture } = pictureOf({ a: on(1), b: on(2), c: on(3) }, 24);
    const [first, second, third] = picture.lamps.map(({ delay_s }) => delay_s);
    expect(second! - first!).toBeCloseTo(1 / 150, 9);
    expect(third! - first!).toBeCloseTo(2 / 150, 9);
    expect(swing(picture.frames)).toBeLessThan(1e-3);
  });

  test('plays at the rate of the first deliverable', () => {
    expect(pictureOf(BOTH).picture.play_fps).toBe(25);
  });
});

describe('nothing is drawn', () => {
  test('while a lamp is unknown, no lamp stands, or the shot has no settings', () => {
    const unknown = shootWith({ a: { lamp: 'mains' }, b: { lamp: 'fast' } });
    expect(flickerPicture(unknown, planShot(unknown, 'one', 1), { frameCount: 24 })).toBeUndefined();
    expect(lightGroupsOf(unknown, 'one')).toBeUndefined();
    const bare = readSound(SMALL);
    expect(flickerPicture(bare, planShot(bare, 'one', 1), { frameCount: 24 })).toBeUndefined();
    expect(lightGroupsOf(bare, 'one')).toBeUndefined();
    const noKit = shootWith({ a: { lamp: 'mains' } }, { '/kit/cameras': undefined });
    expect(flickerPicture(noKit, planShot(noKit, 'one', 1), { frameCount: 24 })).toBeUndefined();
  });

  test('of a shot that is not there, or of no frames', () => {
    const { shoot, plan } = pictureOf(BOTH);
    expect(lightGroupsOf(shoot, 'two')).toBeUndefined();
    expect(flickerPicture(shoot, plan, { frameCount: 0 })).toBeUndefined();
  });
});
