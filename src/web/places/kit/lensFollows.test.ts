import { expect, test } from 'vitest';
import { readShoot } from '../../../document/read.ts';
import { lensFollows, sensorWidth_m } from './lensFollows.ts';

const { shoot } = readShoot({
  longsecond: 1,
  kit: {
    cameras: { heron: { pitch: '6 µm', activeArea: '4096 x 2304' }, bare: {} },
    lenses: {
      macro: { focalLength: '65 mm', widest: 'T2.8', transmittance: 0.82, closeFocus: '275 mm' },
      near: { focalLength: '65 mm', closeFocus: '200 mm' },
      untold: {},
    },
  },
});
const follows = (id: string, imageWidth_m: number | undefined) =>
  Object.fromEntries(
    lensFollows({ lens: shoot.kit.lenses[id]!, imageWidth_m, system: 'metric' }).map(({ id: of, number, unit }) => [
      of,
      `${number} ${unit}`.trim(),
    ]),
  );

test('a 65 mm macro at T2.8 with 82 % and 275 mm close focus, worked by hand: 21.4°, 0.621 ×, 39.6 mm', () => {
  const width_m = sensorWidth_m(shoot.kit.cameras['heron']!);
  expect(width_m).toBeCloseTo(0.024576, 9);
  // 2 · atan(24.576 / 130) = 21.4°; D/f = 4.2308, so m = 0.621; 24.576 / 0.621 = 39.6 mm; 2.8 · √0.82 = 2.54.
  expect(follows('macro', width_m)).toEqual({
    'f-number': 'f/2⅔',
    angle: '21.4 °',
    magnification: '0.621 ×',
    field: '39.6 mm',
  });
});

test('without a sensor only what needs none follows, and without figures nothing does', () => {
  expect(sensorWidth_m(shoot.kit.cameras['bare']!)).toBeUndefined();
  expect(Object.keys(follows('macro', undefined))).toEqual(['f-number', 'magnification']);
  expect(follows('untold', 0.024)).toEqual({});
});

test('a close focus nearer than four focal lengths is beyond the law, and gives no figure instead of a wrong one', () => {
  expect(Object.keys(follows('near', 0.024))).toEqual(['angle']);
});
