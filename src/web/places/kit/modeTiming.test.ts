import { expect, test } from 'vitest';
import { readShoot } from '../../../document/read.ts';
import type { Camera } from '../../../document/schema.ts';
import { rateOfRows, sayMisfit, timingGroups } from './modeTiming.ts';

const camera = (modes: Readonly<Record<string, string>>): Camera => {
  const entries = Object.entries(modes).map(([id, text]) => {
    const [pixels = '', rate = '', binning = '1'] = text.split(',');
    return [id, { pixels, rate, binning: Number(binning) }] as const;
  });
  const { shoot } = readShoot({ longsecond: 1, kit: { cameras: { it: { modes: Object.fromEntries(entries) } } } });
  return shoot.kit.cameras['it']!;
};

// 1 / (rows × 0.4 µs + 20 µs), worked by hand.
const SOUND = {
  full: '4096x2304,1062 fps',
  uhd: '3840x2160,1131 fps',
  wide: '4096x1720,1412 fps',
  hd: '1920x1080,2212 fps',
  strip: '2048x720,3246 fps',
};

test('modes of one timing give it back, and none stands out', () => {
  const [group, ...more] = timingGroups(camera(SOUND));
  expect(more).toEqual([]);
  expect(group!.timing.rowTime_s * 1e6).toBeCloseTo(0.4, 2);
  expect(group!.timing.overhead_s * 1e6).toBeCloseTo(20, 0);
  expect(group!.isTested).toBe(true);
  expect(group!.fits.filter(({ isOff }) => isOff)).toEqual([]);
});

test('a rate typed 18 % too high is the one that is named', () => {
  const [group] = timingGroups(camera({ ...SOUND, half: '2048x1152,2454 fps' }));
  const off = group!.fits.filter(({ isOff }) => isOff);
  expect(off.map(({ id }) => id)).toEqual(['half']);
  expect(sayMisfit(off[0]!)).toBe('2048 × 1152 is listed 18 % faster than its neighbours: check the figure.');
});

test('900 rows are worked out from the model and rounded down; heights beyond the listed ones are marked', () => {
  const [group] = timingGroups(camera(SOUND));
  // 1 / (900 × 0.4 µs + 20 µs) = 2631.6 fps.
  const { rate_fps, isBeyond } = rateOfRows(group!, 900);
  expect(Math.abs(rate_fps - 2631)).toBeLessThanOrEqual(3);
  expect(Number.isInteger(rate_fps)).toBe(true);
  expect(isBeyond).toBe(false);
  expect(rateOfRows(group!, 480).isBeyond).toBe(true);
});

test('binned modes are held against one another, and a width with three heights stands for itself', () => {
  const groups = timingGroups(
    camera({
      a: '4096x2304,1000 fps',
      b: '4096x1152,1900 fps',
      c: '4096x576,3600 fps',
      d: '2048x1152,3000 fps',
      e: '2048x576,5600 fps',
      f: '1024x576,4000 fps,2',
    }),
  );
  expect(groups.map(({ widthCount, binningCount, isTested }) => [widthCount, binningCount, isTested])).toEqual([
    [4096, 1, true],
    [undefined, 1, false],
  ]);
});

test('two heights test nothing, and one fits nothing', () => {
  expect(timingGroups(camera({ a: '4096x2304,1062 fps' }))).toEqual([]);
  const [group] = timingGroups(camera({ a: '4096x2304,1062 fps', b: '4096x1152,900 fps', c: 'wide,1 fps' }));
  expect(group).toBeUndefined();
});
