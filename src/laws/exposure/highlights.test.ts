import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { highlightHeadroom_stops, lowestIsoSpeed } from './highlights.ts';
import { midGreyExposure_lx_s, saturationSpeed } from './iso12232.ts';

const headroom_stops = fc.double({ min: 0, max: 10, noNaN: true });
const over_stops = fc.double({ min: -5, max: 5, noNaN: true });
const speed = fc.integer({ min: 25, max: 102_400 });

describe('true of every rating', () => {
  test('the room is what lies between the exposure of middle grey and that of clipping', () => {
    fc.assert(
      fc.property(speed, speed, over_stops, (baseIsoSpeed, isoSpeed, overexposure_stops) => {
        // A sensor whose base index is its saturation speed.
        const clippingExposure_lx_s = 78 / baseIsoSpeed;
        expect(saturationSpeed({ clippingExposure_lx_s })).toBeCloseTo(baseIsoSpeed, 6);
        const baseHeadroom_stops = Math.log2(78 / 10);
        const grey_lx_s = midGreyExposure_lx_s({ isoSpeed }) * 2 ** overexposure_stops;
        expect(highlightHeadroom_stops({ baseHeadroom_stops, isoSpeed, baseIsoSpeed, overexposure_stops })).toBeCloseTo(
          Math.log2(clippingExposure_lx_s / grey_lx_s),
          9,
        );
      }),
    );
  });

  test('the lowest index leaves exactly the room wanted', () => {
    fc.assert(
      fc.property(headroom_stops, headroom_stops, speed, over_stops, (wanted, base, baseIsoSpeed, over) => {
        const camera = { baseHeadroom_stops: base, baseIsoSpeed, overexposure_stops: over };
        const isoSpeed = lowestIsoSpeed({ ...camera, wantedHeadroom_stops: wanted });
        expect(highlightHeadroom_stops({ ...camera, isoSpeed })).toBeCloseTo(wanted, 9);
      }),
    );
  });
});

test('a stop more of index is a stop more of room, a stop of overexposure a stop less', () => {
  const camera = { baseHeadroom_stops: 5, baseIsoSpeed: 500 };
  expect(highlightHeadroom_stops({ ...camera, isoSpeed: 500 })).toBe(5);
  expect(highlightHeadroom_stops({ ...camera, isoSpeed: 1000 })).toBe(6);
  expect(highlightHeadroom_stops({ ...camera, isoSpeed: 500, overexposure_stops: 1 })).toBe(4);
  expect(highlightHeadroom_stops({ ...camera, isoSpeed: 500, overexposure_stops: 6 })).toBe(-1);
});

test('what has no meaning is refused by name', () => {
  const camera = { baseHeadroom_stops: 5, baseIsoSpeed: 500 };
  expect(() => highlightHeadroom_stops({ ...camera, isoSpeed: 0 })).toThrow('isoSpeed must be positive');
  expect(() => highlightHeadroom_stops({ ...camera, isoSpeed: 500, overexposure_stops: NaN })).toThrow(
    'overexposure_stops must be finite, got NaN',
  );
  expect(() => lowestIsoSpeed({ ...camera, wantedHeadroom_stops: Infinity })).toThrow(
    'wantedHeadroom_stops must be finite, got Infinity',
  );
  expect(() => lowestIsoSpeed({ ...camera, wantedHeadroom_stops: 5, baseIsoSpeed: -1 })).toThrow(
    'baseIsoSpeed must be positive and finite, got -1',
  );
});
