import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fixtureText, writtenBy } from '../../test/documents.ts';
import { readShoot } from './read.ts';
import { readValue } from './readValue.ts';
import { SHOOT, type Shoot } from './schema.ts';
import { readShootText } from './text.ts';
import { writeClock, writtenAt, writtenValue, type ReadValue } from './write.ts';

describe('a value at its place', () => {
  test.each<[pointer: string, value: ReadValue, written: unknown]>([
    ['/shots/pour-1/depth', 0.008, '8 mm'],
    ['/shots/pour-1/stop', 2 ** 2.5 * 2 ** (1 / 6), 'T5.6⅓'],
    ['/shots/pour-1/shutter', { exposureTime_s: 1 / 2000 }, '1/2000 s'],
    ['/shots/pour-1/shutter', { shutterAngle_deg: 172.8 }, '172.8°'],
    ['/shots/pour-1/rate', { num: 24_000, den: 1001 }, '24000/1001'],
    ['/shots/pour-1/rate', { num: 1000, den: 1 }, 1000],
    ['/shots/pour-1/takes', 8, 8],
    ['/shots/pour-1/index', 800, 800],
    ['/shots/pour-1/speed/constant', 1 / 40, '1/40'],
    ['/shots/pour-1/speed/constant', 0.3, 0.3],
    ['/shots/pour-1/speed/knots/0/at', 0, '0 s'],
    ['/shots/pour-1/reframe', 0.1, 0.1],
    ['/shots/pour-1/seen', 'lit-on', 'lit-on'],
    ['/shots/pour-1/screenTime', 100, '100 s'],
    ['/shots/pour-1/lens', 'long-macro', 'long-macro'],
    ['/kit/lenses/m/focalLength', 100, '100 mm'],
    ['/kit/lenses/m/stopIncludesExtension', true, true],
    ['/kit/lenses/m/dayPrice', 190, 190],
    ['/kit/cameras/t/activeArea', { widthCount: 4096, heightCount: 2304 }, '4096 x 2304'],
    ['/kit/cameras/t/memory', 64e9, '64 GB'],
    ['/kit/cameras/t/modes/full/rate', 938, '938 fps'],
    ['/lighting/key/illuminance', 41_000, '41 klx'],
    ['/shoot/day/wrap', 25 * 3600 + 15 * 60, '25:15'],
  ])('%s, %j, is written %j', (pointer, value, written) => {
    expect(writtenAt(pointer, value)).toBe(written);
  });

  test('a spread stands after its value', () => {
    expect(writtenAt('/shots/pour-1/action/speed', 1.5, 0.2)).toBe('1.5 m/s ± 200 mm/s');
  });

  test('a place that the form does not have is a mistake of the program', () => {
    expect(() => writtenAt('/shots/pour-1/nix', 1)).toThrow(RangeError);
  });

  test('rounding noise in the last digit is not written', () => {
    expect(writtenAt('/shots/pour-1/depth', 0.1 + 0.2)).toBe('300 mm');
  });
});

test('a clock runs past midnight', () => {
  expect([0, 27_000, 86_400, 35 * 3600 + 59 * 60].map(writeClock)).toEqual(['00:00', '07:30', '24:00', '35:59']);
});

/** Every value with its path; what could not be read is no value. */
function valuesIn(value: unknown, path = ''): readonly (readonly [path: string, value: unknown])[] {
  if (typeof value !== 'object' || value === null) return [[path, value]];
  return Object.entries(value)
    .filter(([key]) => key !== 'unread')
    .flatMap(([key, item]) => valuesIn(item, `${path}/${key}`));
}

/** Throws unless both say the same, numbers to 12 digits. */
function expectAlike(again: Shoot, shoot: Shoot): void {
  const [now, before] = [valuesIn(again), new Map(valuesIn(shoot))];
  expect(now.map(([path]) => path).sort()).toEqual([...before.keys()].sort());
  for (const [path, value] of now) {
    const was = before.get(path);
    if (typeof value === 'number' && typeof was === 'number')
      expect(Math.abs(value - was), path).toBeLessThanOrEqual(2e-13 * Math.abs(was));
    else expect(value, path).toBe(was);
  }
}

describe('written, read, written, read', () => {
  test('the frozen document says the same after it', () => {
    const { shoot } = readShootText(fixtureText());
    const again = readShoot(writtenValue(SHOOT, shoot));
    expect(again.problems).toEqual([]);
    expectAlike(again.shoot, shoot);
  });

  test('whatever the table can hold says the same after it', () => {
    fc.assert(
      fc.property(writtenBy(SHOOT), (written) => {
        const { shoot } = readShoot(written);
        const again = readShoot(writtenValue(SHOOT, shoot));
        expectAlike(again.shoot, shoot);
      }),
      { numRuns: 100 },
    );
  }, 60_000);

  test('a quantity written twice is written the same', () => {
    const { of } = SHOOT.fields.shots.of.of.fields.depth;
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 9999, noNaN: true }), (depth_m) => {
        const once = writtenAt('/shots/a/depth', depth_m);
        const read = readValue(of, 'depth_m', once);
        if (!read.ok) throw new Error(read.what);
        expect(read.value).toBeCloseTo(depth_m, 10);
        expect(writtenAt('/shots/a/depth', read.value as number)).toBe(once);
      }),
    );
  });
});
