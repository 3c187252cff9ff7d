import { describe, expect, test } from 'vitest';
import { changed, DEMO, marginOf, planned, SMALL } from '../../test/shoots.ts';
import { readShoot } from '../document/read.ts';
import { planShoot } from './plan.ts';

const { shots } = planShoot(readShoot(DEMO).shoot);

describe('the picture of a shot', () => {
  test.each(shots.map((shot) => [shot.id, shot] as const))('of %s holds the figures its margins are judged by', (_, shot) => {
    const { picture, margins } = shot;
    expect(picture).toBeDefined();
    const need = (id: string) => margins.find((margin) => margin.id === id);
    const depth = need('depth');
    if (depth?.have !== undefined && picture?.sharpFar_m !== undefined)
      expect((picture.sharpNear_m! + picture.sharpFar_m) / depth.have).toBeCloseTo(1, 9);
    const clearance = need('clearance');
    if (clearance?.need !== undefined)
      expect(Math.max(picture!.clearanceWanted_m ?? 0, picture!.reachTowardsLens_m ?? 0)).toBe(clearance.need);
    const inside = need('in-the-picture');
    if (inside?.have !== undefined)
      expect(picture!.crops.flatMap(({ width_m, height_m }) => [width_m, height_m])).toContain(inside.need);
  }); // prettier-ignore

  test('crops a wide picture to a tall one about its middle, and says what is held back', () => {
    const tall = changed(SMALL, {
      '/deliverables/film/pixels': '540 x 1080',
      '/deliverables/film/safe': '90 %',
      '/shots/one/reframe': '20 %',
      '/shots/one/frameWidth': '40 mm',
    });
    const { picture } = planned(tall);
    expect(picture!.reframeFraction).toBe(0.2);
    const [crop] = picture!.crops;
    expect(crop).toMatchObject({ deliverable: 'film', title: 'Film', safeFraction: 0.9 });
    // 540 of 1080 rows' width, a fifth held back: 432 × 864 of 1920 × 1080 pixels.
    expect(crop!.width_m).toBeCloseTo(0.04, 9);
    expect(crop!.height_m).toBeCloseTo(0.08, 9);
    expect(picture!.fieldWidth_m).toBeCloseTo((0.04 * 1920) / 432, 9);
    expect(picture!.fieldHeight_m).toBeCloseTo((0.04 * 1080) / 432, 9);
  });

  test('is not there while the frame width is not written', () => {
    expect(planned(changed(SMALL, { '/shots/one/frameWidth': undefined })).picture).toBeUndefined();
  });

  test('has no far side where it is sharp without end', () => {
    const far = planned(changed(SMALL, { '/shots/one/frameWidth': '60 m', '/shots/one/stop': 'T22' }));
    expect(far.picture!.sharpNear_m).toBeGreaterThan(0);
    expect(far.picture!.sharpFar_m).toBeUndefined();
    expect(marginOf(far, 'depth').have).toBe(1000);
  });
});
