import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LIMITS, type Margin, type MarginState } from '../../../plan/types.ts';
import { placeOnAxis } from '../../parts/marginScale.ts';
import { layStrip, sayWorst } from './strip.ts';

const margin = (title: string, state: MarginState, value?: number): Margin => ({
  id: LIMITS.find((limit) => limit === title.toLowerCase()) ?? 'light',
  title,
  isHard: false,
  state,
  kind: 'illuminance',
  sense: 'at-least',
  ...(value === undefined ? {} : { stops: { value, low: value, high: value } }),
  path: '',
  haveName: '',
  needName: '',
  missing: [],
  assumed: [],
});

const JUST_ENOUGH = placeOnAxis(0);

describe('the strip of limits', () => {
  test('puts short left of just enough and everything else right of it, however near', () => {
    const { marks } = layStrip([
      margin('Light', 'short', -0.001),
      margin('Noise', 'tight', -1e-16),
      margin('Depth', 'spare', 0.01),
    ]);
    const at = Object.fromEntries(marks.map(({ standing, at: place }) => [standing, place]));
    expect(at['short']).toBeLessThan(JUST_ENOUGH);
    expect(at['tight']).toBeGreaterThan(JUST_ENOUGH);
    expect(at['spare']).toBeGreaterThan(JUST_ENOUGH);
  });

  test('names limits beyond either end instead of drawing them, and those not known', () => {
    const strip = layStrip([
      margin('Light', 'short', -5),
      margin('Buffer', 'spare', 4),
      margin('Storage', 'spare', 9),
      margin('Depth', 'unknown'),
    ]);
    expect(strip.marks).toEqual([]);
    expect(strip.beyond.left).toEqual(['Light: short 5.0 stops']);
    expect(strip.beyond.right).toHaveLength(2);
    expect(strip.unknown).toEqual(['Depth: not known']);
    expect(strip.worstShort).toBe(0);
  });

  test('draws the bar to the worst of several short limits', () => {
    const strip = layStrip([
      margin('Noise', 'short', -0.2),
      margin('Light', 'short', -1.3),
      margin('Depth', 'spare', 1),
    ]);
    expect(strip.worstShort).toBeCloseTo(placeOnAxis(-1.3), 12);
  });

  test('never lays two marks on one another, loses none, and keeps every mark on its side', () => {
    const values = fc.array(fc.double({ min: -4, max: 4, noNaN: true }), { maxLength: 60 });
    fc.assert(
      fc.property(values, (stops) => {
        const { marks, beyond } = layStrip(stops.map((value) => margin('Light', value < 0 ? 'short' : 'spare', value)));
        expect(new Set(marks.map(({ at, level }) => `${at.toFixed(6)} ${level}`)).size).toBe(marks.length);
        expect(marks.length + beyond.left.length + beyond.right.length).toBe(stops.length);
        for (const { standing, at } of marks) expect(standing === 'short').toBe(at < JUST_ENOUGH);
      }),
    );
  });
});

describe('the worst limit in words', () => {
  test('is the shortest, with how many others are short, tight or not known', () => {
    const margins = [
      margin('Noise', 'short', -0.4),
      margin('Light', 'short', -1.32),
      margin('Blur', 'tight', 0.02),
      margin('Depth', 'unknown'),
      margin('Buffer', 'spare', 2),
    ];
    expect(sayWorst(margins)).toEqual({
      standing: 'short',
      worst: 'light short 1.3 stops',
      others: 'also 1 short, 1 tight, 1 not known',
    });
  });

  test('is the tightest where nothing is short', () => {
    const margins = [margin('Noise', 'tight', 0.31), margin('Blur', 'tight', 0.04)];
    expect(sayWorst(margins)).toMatchObject({
      standing: 'tight',
      worst: 'blur tight, just enough',
      others: 'also 1 tight',
    });
  });

  test('says what has least to spare where everything has some', () => {
    const margins = [margin('Noise', 'spare', 0.9), margin('Blur', 'spare', 0.44)];
    expect(sayWorst(margins)).toEqual({
      standing: 'spare',
      worst: 'all to spare; least is blur, 0.4 stops',
      others: '',
    });
  });

  test('does not call a shot spare while a limit is not known', () => {
    const margins = [margin('Noise', 'spare', 0.9), margin('Depth', 'unknown')];
    expect(sayWorst(margins)).toMatchObject({ standing: 'unknown', worst: 'depth not known' });
  });

  test('says so when there is nothing to judge', () => {
    expect(sayWorst([]).worst).toBe('nothing to judge yet');
  });
});
