/** Bands of margins: what they must hold, and one held against drawing its inputs at random. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changed, DEMO, marginOf, planned, readSound, SMALL } from '../../test/shoots.ts';
import type { Written } from '../document/written.ts';
import { planShoot } from './plan.ts';
import type { Figure, LimitId } from './types.ts';

/** How many standard deviations of a Gaussian lie between its median and its ninetieth percentile. */
const P90_SIGMAS = 1.2816;

const bandOf = (changes: Readonly<Record<string, Written | undefined>>, id: LimitId): Figure => marginOf(planned(changed(SMALL, changes)), id).stops!; // prettier-ignore
const widthOf = ({ low, high }: Figure): number => high - low;

test('every band of the demo holds its figure', () => {
  for (const { margins } of planShoot(readSound(DEMO)).shots)
    for (const { stops } of margins) {
      expect(stops!.low).toBeLessThanOrEqual(stops!.value);
      expect(stops!.high).toBeGreaterThanOrEqual(stops!.value);
    }
});

describe('a spread of nothing', () => {
  const CERTAIN: Readonly<Record<string, Written>> = {
    '/shots/one/action/duration': '0.2 s ± 0 s',
    '/shots/one/action/speed': '1 m/s ± 0 m/s',
    '/lighting/key/illuminance': '40 klx ± 0 %',
    '/kit/cameras/body/headroom': '3 stops ± 0 stops',
    '/kit/cameras/body/readNoise': '20 e- ± 0 e-',
    '/shots/one/hero/life': '10 min ± 0 min',
    '/shots/one/hero/lightOn': '2 min ± 0 min',
    '/shots/one/attachments': [],
  };

  test('in all inputs leaves every band without width', () => {
    // How many electrons a photon gives is never stated with a spread; noise keeps the usual one.
    for (const { id, stops } of planned(changed(SMALL, CERTAIN)).margins)
      if (id !== 'noise') expect([id, widthOf(stops!)]).toEqual([id, 0]);
  });

  test.each([
    ['light', '/lighting/key/illuminance', '40 klx ± 5 %'],
    ['blur', '/shots/one/action/speed', '1 m/s ± 0.1 m/s'],
    ['buffer', '/shots/one/action/duration', '0.2 s ± 0.02 s'],
    ['highlights', '/kit/cameras/body/headroom', '3 stops ± 0.25 stops'],
    ['hero-life', '/shots/one/hero/life', '10 min ± 1 min'],
  ] as const)('in all but one leaves %s only the spread of %s', (id, path, value) => {
    const widths = planned(changed(SMALL, { ...CERTAIN, [path]: value })).margins;
    expect(widthOf(marginOf({ margins: widths }, id).stops!)).toBeGreaterThan(0);
  });
});

describe('a spread', () => {
  // log2(1.1 / 0.9) of speed either side, and the exposure held: 4 px ± 10 % of 4 px.
  test('of a tenth of the speed is a tenth of the blur', () => {
    const { value, low, high } = bandOf({ '/shots/one/action/speed': '1 m/s ± 0.1 m/s' }, 'blur');
    expect(high - value).toBeCloseTo(Math.log2(1.1 / 0.9) / 2, 9);
    expect(value - low).toBeCloseTo(Math.log2(1.1 / 0.9) / 2, 9);
  });

  test('of stops is as wide in stops', () => {
    const fixed = { '/shots/one/index': 800, '/shots/one/stop': 'T4', '/lighting/key/illuminance': '10 klx ± 0 %' };
    const { value, high } = bandOf({ ...fixed, '/kit/cameras/body/headroom': '3 stops ± 0.4 stops' }, 'highlights');
    // Behind half a stop of glass, a tenth of that unsure, which reaches highlights only where there is light to spare.
    expect(high - value).toBeCloseTo(0.4, 9);
  });

  test('that is wider never makes a band narrower, and moves no figure', () => {
    const percent = fc.integer({ min: 0, max: 80 });
    fc.assert(
      fc.property(percent, percent, (a, b) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)].map((p) => bandOf({ '/lighting/key/illuminance': `40 klx ± ${p} %` }, 'light')); // prettier-ignore
        expect(widthOf(more!)).toBeGreaterThanOrEqual(widthOf(less!) - 1e-12);
        expect(more!.value).toBe(less!.value);
      }),
      { numRuns: 40 },
    );
  });

  test('of almost all of a figure leaves the band finite', () => {
    for (const percent of [50, 90, 99])
      expect(widthOf(bandOf({ '/lighting/key/illuminance': `40 klx ± ${percent} %` }, 'light'))).toBeLessThan(8);
  });

  test('that nobody states is the usual one: a tenth of a reading, a quarter of an intention', () => {
    const read = bandOf({ '/lighting/key': { illuminance: '40 klx', reading: 'metered' }, '/shots/one/attachments': [] }, 'light'); // prettier-ignore
    expect(widthOf(read)).toBeCloseTo(Math.log2(1.1 / 0.9), 9);
    const wished = bandOf({ '/lighting/key': { illuminance: '40 klx', reading: 'stated' }, '/shots/one/attachments': [] }, 'light'); // prettier-ignore
    expect(widthOf(wished)).toBeCloseTo(Math.log2(1.26 / 0.74), 9);
  });

  test('leaves what was chosen where it is: rate, exposure and index do not move with it', () => {
    const wide = planned(changed(SMALL, { '/lighting/key/illuminance': '40 klx ± 60 %', '/shots/one/action/speed': '1 m/s ± 0.6 m/s' })); // prettier-ignore
    expect(wide.settings).toEqual(planned(SMALL).settings);
    expect(widthOf(marginOf(wide, 'noise').stops!)).toBeCloseTo(widthOf(bandOf({}, 'noise')), 9);
  });
});

/** Park and Miller's generator, and Box and Muller's Gaussians from it: the same draws wherever this runs. */
function gaussians(seed: number): () => number {
  let state = seed;
  const uniform = (): number => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647;
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** Eight cases in ten of `of`, over 20,000 draws. */
function drawnBand(of: (around: (value: number, halfWidth: number) => number) => number): readonly [low: number, high: number] {
  const next = gaussians(20_260);
  const around = (value: number, halfWidth: number): number => value + (halfWidth / P90_SIGMAS) * next();
  const drawn = Float64Array.from({ length: 20_000 }, () => of(around)).sort();
  return [drawn[2000]!, drawn[18_000]!];
} // prettier-ignore

describe('against 20,000 draws of its inputs', () => {
  test('the band of light is the eight cases in ten, within a tenth of its width', () => {
    // A close frame, so that the assumed pupil counts; T8, 1/4000 s, EI 3200, 40 klx ± 12 %, ND of 3 stops ± a tenth.
    const written = changed(SMALL, {
      '/lighting/key/illuminance': '40 klx ± 12 %',
      '/kit/lenses/macro/pupilMagnification': undefined,
      '/kit/attachments/nd-1/loss': '3 stops',
      '/shots/one/attachments': ['nd-1'],
      '/shots/one/frameWidth': '24 mm',
      '/shots/one/stop': 'T8',
      '/shots/one/shutter': '1/4000 s',
      '/shots/one/index': 3200,
    });
    const magnification = 19.2 / 24;
    const [low, high] = drawnBand((around) => {
      const [light_lx, pupil, filter_stops] = [around(40_000, 4800), around(1, 0.25), around(3, 0.3)];
      const needed_lx = ((250 * 8 ** 2) / (3200 / 4000)) * (1 + magnification / pupil) ** 2 * 2 ** filter_stops;
      return Math.log2(light_lx / needed_lx);
    });
    const { stops } = marginOf(planned(written), 'light');
    const tenth = (high - low) / 10;
    expect(Math.abs(widthOf(stops!) - (high - low))).toBeLessThan(tenth);
    expect(Math.abs(stops!.low - low)).toBeLessThan(tenth);
    expect(Math.abs(stops!.high - high)).toBeLessThan(tenth);
  });

  test('the band of the buffer is the eight cases in ten, within a tenth of its width', () => {
    const written = changed(SMALL, { '/shots/one/action/duration': '0.2 s ± 0.05 s', '/kit/cameras/body/memory': '1.5 GB' }); // prettier-ignore
    const recorded_s = 1.5e9 / (1000 * 3_110_400);
    const [low, high] = drawnBand((around) => Math.log2(recorded_s / (around(0.2, 0.05) + 2 * 0.1)));
    const { stops } = marginOf(planned(written), 'buffer');
    const tenth = (high - low) / 10;
    expect(Math.abs(stops!.low - low)).toBeLessThan(tenth);
    expect(Math.abs(stops!.high - high)).toBeLessThan(tenth);
  });
});
