import { describe, expect, test } from 'vitest';
import { measuredClip } from '../../test/footage/measuredClip.ts';
import type { PlannedShot } from './measureAgainst.ts';
import type { MeasuredClip } from './measureReply.ts';
import { pairNotes, pairRows } from './pairRows.ts';

const dropAt = (speed_px_per_s: number) => ({ radius_px: 6, bright: 0.9, x_px: () => 80, y_px: (t_s: number) => -12 + speed_px_per_s * Math.max(0, t_s - 0.04) }); // prettier-ignore
const pulsing = (f_Hz: number, depth: number) => ({ lamps: [{ light: { kind: 'ripple', f_Hz, depth } }] as const });
/** 160 px show 160 mm. */
const SHOT = { id: 'pour', title: 'Pour', fieldWidth_m: 0.16, lamps: [] } satisfies PlannedShot;

const still = measuredClip({});
const rowOf = (first: MeasuredClip, second: MeasuredClip, title: string) =>
  pairRows([first, second]).find((row) => row.title === title)!;

describe('a clip beside itself', () => {
  test('is the same in every figure', () => {
    const drop = measuredClip({ drop: dropAt(1500) }, { shot: SHOT });
    for (const clip of [still, drop])
      for (const { differs, isSame, of } of pairRows([clip, clip])) {
        expect([differs, isSame]).toEqual([of[0] === 'cannot be told' ? 'cannot be told' : 'the same', of[0] !== 'cannot be told']); // prettier-ignore
        expect(of[1]).toBe(of[0]);
      }
  });
});

describe('light', () => {
  test('that is twice as bright is one stop brighter, and the other way round', () => {
    // The same card under half the light: black is exact, so that a factor of light is a factor of its mean.
    const dim = measuredClip({ white_e: 8000 });
    expect(rowOf(dim, still, 'Middle tones').differs).toMatch(/^the second (?:1|0\.99|1\.0\d*) stops? brighter$/);
    expect(rowOf(still, dim, 'Middle tones').differs).toMatch(/^the second (?:1|0\.99|1\.0\d*) stops? darker$/);
  });

  test('that burns out says how much of the picture', () => {
    const burnt = measuredClip({ white_e: 90_000 });
    expect(rowOf(still, burnt, 'Burnt out, at most').differs).toMatch(/^the second [\d.]+ % of the picture more$/);
    expect(rowOf(still, burnt, 'Brightest hundredth').of[1]).toBe('at white');
  });
});

describe('flicker', () => {
  const [shallow, deep] = [measuredClip(pulsing(100, 0.1)), measuredClip(pulsing(100, 0.3))];
  test('of one alone says which', () => {
    expect(rowOf(still, deep, 'Flicker').differs).toBe('only the second pulses');
    expect(rowOf(deep, still, 'Flicker').differs).toBe('only the first pulses');
  });

  test('of both says which is deeper, and that one lamp may be both', () => {
    expect(rowOf(shallow, deep, 'Flicker').differs).toMatch(/^the second 0\.\d+ stops deeper; a lamp at (?:99|100)[.\d]* Hz would beat so in both$/); // prettier-ignore
  });

  test('at two rates of the camera leaves only the rate of the lamp that fits both', () => {
    // A lamp at 900 Hz beats at 100 Hz at 1000 frames a second and at 130 Hz at 770: only 900 Hz does both.
    const [a, b] = [measuredClip(pulsing(900, 0.5)), measuredClip({ ...pulsing(900, 0.5), rate_fps: 770 })];
    expect(rowOf(a, b, 'Flicker').differs).toMatch(/; a lamp at (?:899|900|901)[.\d]* Hz would beat so in both$/);
    expect(rowOf(a, b, 'Taken at')).toMatchObject({ of: ['1000 fps', '770 fps'], differs: '−230 fps', isSame: false });
  });

  test('of two lamps has no rate that fits both', () => {
    expect(rowOf(shallow, measuredClip(pulsing(137, 0.1)), 'Flicker').differs).toMatch(
      /no one lamp would beat so in both$/,
    );
  });

  test('of a clip too short to tell is not told', () => {
    expect(rowOf(still, measuredClip({ frames: 5 }), 'Flicker')).toMatchObject({
      differs: 'cannot be told',
      isSame: false,
    });
  });
});

describe('movement', () => {
  const [slow, fast] = [{ drop: dropAt(1000) }, { drop: dropAt(1400) }];
  test('is in metres a second where both are to scale, and in widths of the picture where one is not', () => {
    const toScale = rowOf(measuredClip(slow, { shot: SHOT }), measuredClip(fast, { shot: SHOT }), 'Fastest movement');
    expect(toScale.of.every((says) => /^[\d.]+ m\/s$/.test(says))).toBe(true);
    const [a, b] = toScale.of.map(parseFloat) as [number, number];
    // Within a tenth, which is how finely two digits say it.
    expect(Math.abs(a - 1)).toBeLessThanOrEqual(0.1001);
    expect(Math.abs(b - 1.4)).toBeLessThanOrEqual(0.1001);
    expect(toScale.differs).toMatch(/^the second (?:3[0-9]|4[0-9]) % faster$/);
    const bare = rowOf(measuredClip(slow, { shot: SHOT }), measuredClip(fast), 'Fastest movement');
    expect(bare.of.every((says) => says.endsWith('widths a second'))).toBe(true);
    expect(bare.differs).toBe(toScale.differs);
  });

  test('that is in one clip alone has no length to compare', () => {
    expect(rowOf(still, measuredClip(slow), 'Action').differs).toBe('only in the second');
  });
});

test('what makes figures of two clips doubtful is said', () => {
  expect(pairNotes([still, still])).toEqual([]);
  const other = { ...still, curve: 'rec709', curveBasis: 'assumed', frameRateBasis: 'file', isWhole: false } as const;
  expect(pairNotes([still, other])).toHaveLength(4);
});
