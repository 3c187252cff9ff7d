import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { fallSpeed_m_per_s } from './fall.ts';
import { swingOf } from './swing.ts';

/** A whole period is four times the way to the lowest point. */
const period_s = (release_deg: number) => 4 * swingOf({ arm_m: 1, release_deg, gravity_m_per_s2: 9.81 }).swingTime_s;
const SMALL_s = 2 * Math.PI * Math.sqrt(1 / 9.81);

describe('published values', () => {
  const table: readonly (readonly [number, string])[] = [
    [10, '2.009892627299'], [20, '2.021451257825'], [30, '2.040989889519'], [40, '2.068937851894'],
    [50, '2.105934619284'], [60, '2.152874666881'], [70, '2.210976180542'], [80, '2.281885924020'],
  ]; // prettier-ignore
  published('period of a pendulum of 1 m, g 9.81', period_s, table.map(([given, expected]) => ({ source: 'pendulum-table', at: `${given} degrees`, given, expected }))); // prettier-ignore

  const ratios: readonly (readonly [number, string])[] = [
    [15, '1.004301'], [45, '1.039973'], [90, '1.180341'], [120, '1.372881'], [150, '1.762204'], [175, '2.877664'],
  ]; // prettier-ignore
  published('period over that of a small swing', (release_deg: number) => period_s(release_deg) / SMALL_s, ratios.map(([given, expected]) => ({ source: 'pendulum-ratios', at: `${given} degrees`, given, expected }))); // prettier-ignore
});

const arm = fc.double({ min: 0.05, max: 5, noNaN: true });
const release = fc.double({ min: 1, max: 179, noNaN: true });

test('it is as fast at the bottom as if it had fallen there, and a longer arm takes longer by its square root', () => {
  fc.assert(
    fc.property(arm, release, (arm_m, release_deg) => {
      const { swingTime_s, lowestSpeed_m_per_s } = swingOf({ arm_m, release_deg });
      const fallHeight_m = arm_m * (1 - Math.cos((release_deg * Math.PI) / 180));
      expect(lowestSpeed_m_per_s / fallSpeed_m_per_s({ fallHeight_m })).toBeCloseTo(1, 6);
      expect(swingOf({ arm_m: 4 * arm_m, release_deg }).swingTime_s / swingTime_s).toBeCloseTo(2, 12);
    }),
  );
});

test('what has no meaning is refused by name', () => {
  expect(() => swingOf({ arm_m: 0, release_deg: 30 })).toThrow('arm_m must be positive');
  expect(() => swingOf({ arm_m: 1, release_deg: 0 })).toThrow('release_deg must be positive');
  expect(() => swingOf({ arm_m: 1, release_deg: 180 })).toThrow('release_deg must be from 0 to 179');
});
