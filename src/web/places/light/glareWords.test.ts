import { expect, test } from 'vitest';
import type { Glare } from '../../../plan/eyes.ts';
import { glareSaid } from './glareWords.ts';

const SPOT: Glare = {
  id: 'key',
  title: 'Key',
  lamp: 'spot',
  luminance_cd_per_m2: 2.546e7,
  diameter_m: 0.1,
  blueEfficacy_lm_per_W: 1000,
  infrared_W_per_m2: 0,
  distance_m: 1,
  lookTime_s: 39.27,
  blueDistance_m: 14.5,
  infraredDistance_m: 0.2,
  eyeDistance_m: 14.5,
};

test('a lamp that is near for eyes says for how long, from where, and why', () => {
  const { isNear, brightness, says } = glareSaid(SPOT, 'metric');
  expect([isNear, brightness]).toEqual([true, '25000 kcd/m²']);
  expect(says).toBe(
    'From the subject, 1 m off, the published limits let an eye rest on it for 39 s of a day. For the hundred seconds that people look in all, keep 14.5 m off, for its blue light.',
  );
  expect(glareSaid({ ...SPOT, infraredDistance_m: 20, eyeDistance_m: 20 }, 'metric').says).toMatch(
    /for its infrared\.$/,
  );
});

test('one that is not says only for how long, and that it is a published limit, and calls nothing safe', () => {
  const far = glareSaid(
    { ...SPOT, lookTime_s: 28_800, blueDistance_m: 0.2, eyeDistance_m: 0.2, distance_m: 3 },
    'metric',
  );
  expect(far).toMatchObject({
    isNear: false,
    says: 'From the subject, 3 m off, the published limits let an eye rest on it for all of a day.',
  });
  expect(far.says).not.toMatch(/safe/i);
});
