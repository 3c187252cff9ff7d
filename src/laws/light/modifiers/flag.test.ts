import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { published } from '../../../../test/published.ts';
import { flagCutOf, flagDistance_m, penumbra_m } from './flag.ts';

describe('published values', () => {
  // A disc of 25 cm, 30 cm before a source of 40 cm, seen from its lower edge: what it covers lies above -12.5 cm.
  const disc = { sourceSize_m: 0.4, sourceToFlag_m: 0.3, flagToSurface_m: 0.3, edgeOffAxis_m: -0.125 };
  published('half width of the whole shadow', () => -100 * flagCutOf(disc).brightTo_m, [
    { source: 'penumbra-examples', at: 'disc of 25 cm, screen 30 cm beyond, in cm', given: {}, expected: '45' },
  ]);
  published('half width of the full shadow', () => -100 * flagCutOf(disc).darkFrom_m, [
    {
      source: 'penumbra-examples',
      at: 'disc of 25 cm, screen 30 cm beyond, in cm, as corrected',
      given: {},
      expected: '5',
    },
  ]);
});

const size = fc.double({ min: 0.01, max: 2, noNaN: true });

test('the soft edge lies between full light and full dark, and the flag placed for it has it', () => {
  fc.assert(
    fc.property(size, size, size, fc.double({ min: -1, max: 1, noNaN: true }), (s, a, b, edgeOffAxis_m) => {
      const given = { sourceSize_m: s, sourceToFlag_m: a, flagToSurface_m: b };
      const cut = flagCutOf({ ...given, edgeOffAxis_m });
      expect(cut.darkFrom_m - cut.brightTo_m).toBeCloseTo(penumbra_m(given), 9);
      const back_m = flagDistance_m({ sourceSize_m: s, sourceToSurface_m: a + b, penumbra_m: penumbra_m(given) });
      expect(back_m).toBeCloseTo(a, 9);
    }),
  );
});

test('rays from both ends of the source past the flag’s edge strike where the soft edge begins and ends', () => {
  fc.assert(
    fc.property(size, size, size, fc.double({ min: -1, max: 1, noNaN: true }), (s, a, b, edgeOffAxis_m) => {
      const cut = flagCutOf({ sourceSize_m: s, sourceToFlag_m: a, flagToSurface_m: b, edgeOffAxis_m });
      const strike = (from: number) => from + ((edgeOffAxis_m - from) * (a + b)) / a;
      expect(cut.brightTo_m).toBeCloseTo(strike(s / 2), 9);
      expect(cut.darkFrom_m).toBeCloseTo(strike(-s / 2), 9);
    }),
  );
});

test('a point casts a hard shadow, and so does a flag that lies on the surface', () => {
  expect(penumbra_m({ sourceSize_m: 0, sourceToFlag_m: 1, flagToSurface_m: 1 })).toBe(0);
  expect(penumbra_m({ sourceSize_m: 1, sourceToFlag_m: 1, flagToSurface_m: 0 })).toBe(0);
});

test('what has no meaning is refused by name', () => {
  const given = { sourceSize_m: 1, sourceToFlag_m: 1, flagToSurface_m: 1 };
  expect(() => penumbra_m({ ...given, sourceToFlag_m: 0 })).toThrow('sourceToFlag_m must be positive');
  expect(() => penumbra_m({ ...given, sourceSize_m: -1 })).toThrow('sourceSize_m must be zero or above');
  expect(() => flagCutOf({ ...given, edgeOffAxis_m: NaN })).toThrow('edgeOffAxis_m must be finite');
  expect(() => flagDistance_m({ sourceSize_m: 1, sourceToSurface_m: 1, penumbra_m: 0 })).toThrow('penumbra_m must be');
});
