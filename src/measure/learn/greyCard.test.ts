import { describe, expect, test } from 'vitest';
import { measured } from '../../../test/footage/measured.ts';
import { synthetic, type Scene } from '../../../test/footage/synthetic.ts';
import type { Measurement } from '../types.ts';
import { greyCardOf, type CardGiven } from './greyCard.ts';

const card = (more: Partial<Scene> = {}): Scene => ({
  width: 48,
  height: 32,
  rate_fps: 1070,
  frames: 600,
  exposure_s: 1 / 4000,
  seed: 6,
  blobs: 0,
  lamps: [{ light: { kind: 'ripple', f_Hz: 100, depth: 0.2 } }],
  ...more,
});

const measuredCard = (scene: Scene): Measurement => measured(synthetic('card', scene));

const read = (more: Partial<Scene> = {}, given: Partial<CardGiven> = {}) => {
  const scene = card(more);
  return greyCardOf({ measurement: measuredCard(scene), exposureTime_s: scene.exposure_s, mains_Hz: 50, ...given });
};

describe('a card under one lamp', () => {
  const measurement = measuredCard(card());
  const given: CardGiven = { measurement, exposureTime_s: 1 / 4000, mains_Hz: 50 };
  const reading = greyCardOf(given);

  test('gives the depth of its ripple, give or take what is said', () => {
    if (!reading.ok) throw new Error(reading.refusal.what);
    const { depthFraction, depthDeviationFraction, rate_Hz, period } = reading.wave;
    expect(Math.abs(depthFraction - 0.2)).toBeLessThan(4 * depthDeviationFraction);
    expect(depthDeviationFraction).toBeLessThan(0.002);
    expect(Math.abs(rate_Hz - 100)).toBeLessThan(0.01);
    expect(period.samples).toHaveLength(256);
  });

  test('says in words what could be told and what could not', () => {
    if (!reading.ok) throw new Error(reading.refusal.what);
    expect(reading.notices[0]).toMatch(/^Harmonics up to \d+ Hz could be told/);
  });

  test.each([
    ['with no shutter told', { exposureTime_s: 0 }, 'card.no-shutter'],
    ['with a shutter longer than a frame', { exposureTime_s: 1 / 500 }, 'card.long-shutter'],
    ['said to pulse at another rate', { rate_Hz: 130 }, 'card.which-rate'],
    ['where the mains are others', { mains_Hz: 60 }, 'card.which-rate'],
  ] as readonly (readonly [string, Partial<CardGiven>, string])[])('%s is refused', (_, more, code) => {
    const refused = greyCardOf({ ...given, ...more });
    expect(refused).toMatchObject({ ok: false, refusal: { code } });
  });

  test('is refused without any shutter', () => {
    expect(greyCardOf({ measurement, mains_Hz: 50 })).toMatchObject({ refusal: { code: 'card.no-shutter' } });
  });

  test('of a rate that somebody names is taken at that', () => {
    expect(greyCardOf({ ...given, mains_Hz: 60, rate_Hz: 100 })).toMatchObject({ ok: true });
  });
});

test('pulses far faster than the frames are unfolded at the rate that is named', () => {
  const reading = read({ lamps: [{ light: { kind: 'pulses', f_Hz: 2000, duty: 0.5, low: 0.2 } }], exposure_s: 1 / 20_000 }, { rate_Hz: 1990 }); // prettier-ignore
  if (!reading.ok) throw new Error(reading.refusal.what);
  expect(reading.wave.rate_Hz).toBeCloseTo(2000, 2);
  expect(Math.abs(reading.wave.depthFraction - 0.8 / 1.2)).toBeLessThan(2 * reading.wave.depthDeviationFraction);
});

describe('refused, with what to do', () => {
  const RIPPLE = { kind: 'ripple', f_Hz: 100, depth: 0.2 } as const;
  test.each([
    ['several lamps at rates of their own', { lamps: [{ light: RIPPLE }, { light: { ...RIPPLE, f_Hz: 163 } }] }, {}, 'card.several-lamps'],
    ['a steady lamp beside it', { lamps: [{ light: RIPPLE, share: (x) => 1.05 - x }, { light: { kind: 'steady' }, share: (x) => x }] }, {}, 'card.uneven'],
    ['a second lamp on another phase', { lamps: [{ light: RIPPLE, share: (x) => 0.9 - 0.6 * x }, { light: { ...RIPPLE, phase_rad: 2 }, share: (x) => 0.3 + 0.6 * x }] }, {}, 'card.out-of-step'],
    ['a light that does not pulse', { lamps: [{ light: { kind: 'steady' } }] }, {}, 'card.steady'],
    ['a card that burns out', { card: 1.3 }, {}, 'card.clipped'],
    ['a card that is black', { card: 0.004 }, {}, 'card.dark'],
    ['light that drifts', { gain: (frame) => 1 - 0.2 * (frame / 600) }, {}, 'card.drifts'],
    ['too few frames', { frames: 80 }, {}, 'card.short'],
    ['too few periods', { frames: 160 }, {}, 'card.short'],
    ['something that moves', { drop: { radius_px: 5, bright: 0.8, x_px: (t_s) => 4 + 400 * Math.max(0, t_s - 0.2), y_px: () => 16 } }, {}, 'card.action'],
    ['rows exposed one after another', { rate_fps: 960, row_s: 1 / 960 / 33, lamps: [{ light: { ...RIPPLE, f_Hz: 703 } }] }, { rate_Hz: 703 }, 'card.bands'],
    ['rows exposed one soon after another', { row_s: 1 / 16_000 }, {}, 'card.out-of-step'],
    ['a pulse of which nothing is left', { rate_fps: 115, exposure_s: 1 / 121, lamps: [{ light: { ...RIPPLE, f_Hz: 120, depth: 0.9 } }] }, { mains_Hz: 60 }, 'card.averaged'],
    ['a rate that nobody can tell', { lamps: [{ light: { ...RIPPLE, f_Hz: 2000 } }], exposure_s: 1 / 20_000 }, {}, 'card.which-rate'],
    ['pulses whose harmonics fall on one another', { rate_fps: 300, exposure_s: 1 / 8000, lamps: [{ light: { kind: 'pulses', f_Hz: 100, duty: 0.08, low: 0.8 } }] }, {}, 'card.unclear'],
  ] as readonly (readonly [string, Partial<Scene>, Partial<CardGiven>, string])[])('%s', (_, more, given, code) => {
    const reading = read(more, given);
    expect(reading).toMatchObject({ ok: false, refusal: { code } });
    if (!reading.ok) expect(reading.refusal.mend).toMatch(/^[A-Z].*\.$/);
  });
}); // prettier-ignore
