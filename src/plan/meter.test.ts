import { describe, expect, test } from 'vitest';
import { changed, marginOf, planned, readSound, SMALL } from '../../test/shoots.ts';
import type { Written } from '../document/written.ts';
import { lightAt_lx } from '../laws/light/placed/source.ts';
import { explain } from './explain.ts';
import { correctionSaid, meteredLight } from './meter.ts';

type Changes = Readonly<Record<string, Written | undefined>>;

const LAMPS = {
  spot: { title: 'Spot', illuminance: '20 klx ± 1 klx', distance: '3 m', beam: '20°', field: '35°' },
  panel: { title: 'Panel', face: { width: '1 m', height: '1 m', luminance: '1000 cd/m² ± 50 cd/m²' } },
};
const FRONT = { azimuth_deg: 0, elevation_deg: 0 };
const lit = (more: Changes = {}) =>
  changed(SMALL, {
    '/kit/lamps': LAMPS,
    '/lighting/key': {
      title: 'Key',
      lamps: {
        key: { lamp: 'spot', at: '0 m, -3 m, 0 m' },
        fill: { lamp: 'spot', at: '0 m, -3 m, 0 m', level: '50 %' },
        back: { lamp: 'panel', at: '0 m, 1 m, 0 m' },
      },
    },
    ...more,
  });
const METERED = { '/lighting/key/illuminance': '24 klx ± 1.2 klx', '/lighting/key/reading': 'metered' };
const light = (more: Changes = {}) => meteredLight(readSound(lit(more)), 'key', FRONT);

describe('a reading from the set', () => {
  test('corrects every lamp alike, so that they add up to it and keep their shares', () => {
    const { meters, lamps, illuminance_lx, spread_lx } = light(METERED);
    expect(meters).toMatchObject([
      {
        kind: 'illuminance',
        read: 24_000,
        worked: expect.closeTo(30_000, 6) as number,
        factor: expect.closeTo(0.8, 9) as number,
      },
    ]);
    expect([illuminance_lx, spread_lx]).toEqual([expect.closeTo(24_000, 6), expect.closeTo(1200, 6)]);
    expect(lamps.map((lamp) => lamp.illuminance_lx)).toEqual([expect.closeTo(16_000, 6), expect.closeTo(8000, 6), 0]);
    expect(lamps.map((lamp) => lamp.shareFraction)).toEqual(
      light().lamps.map((lamp) => expect.closeTo(lamp.shareFraction, 9) as number),
    );
  });

  test('corrects what a lamp gives everywhere, as a map is drawn from it', () => {
    const [before, after] = [light().lamps[0]!.source!, light(METERED).lamps[0]!.source!];
    for (const [x, y, z] of [
      [0, 0, 0],
      [0.3, -0.2, 0.1],
      [-0.5, 0.4, -0.2],
    ] as const)
      expect(lightAt_lx(after, x, y, z, 0, -1, 0)).toBeCloseTo(0.8 * lightAt_lx(before, x, y, z, 0, -1, 0), 6);
  });

  test('of the brightness behind corrects the face that it was read of, and no other lamp', () => {
    const { meters, luminance, lamps } = light({
      '/lighting/key/luminance': '1500 cd/m²',
      '/lighting/key/reading': 'metered',
    });
    expect(meters).toMatchObject([{ kind: 'luminance', factor: 1.5 }]);
    expect(luminance).toMatchObject({ luminance_cd_per_m2: 1500, lamp: 'back' });
    expect(lamps[0]!.illuminance_lx).toBeCloseTo(20_000, 6);
  });

  test('that is only intended corrects nothing', () => {
    expect(light({ ...METERED, '/lighting/key/reading': 'stated' })).toMatchObject({
      meters: [],
      illuminance_lx: expect.closeTo(30_000, 6) as number,
    });
  });

  test('corrects nothing while the lamps cannot be worked out, or give nothing there', () => {
    expect(light({ ...METERED, '/lighting/key/lamps/key/at': undefined }).meters).toEqual([]);
    expect(
      light({ ...METERED, '/lighting/key/faces': '0 m, 1 m, 0 m', '/lighting/key/lamps/back/off': true }).meters,
    ).toEqual([]);
  });

  test('gives the shares of the plan, and says in the trace what it does to the lamps', () => {
    const written = lit(METERED);
    const plan = planned(written);
    expect(marginOf(plan, 'light').have).toBe(24_000);
    expect(plan.lamps.map(({ illuminance_lx }) => illuminance_lx)).toEqual([
      expect.closeTo(16_000, 6),
      expect.closeTo(8000, 6),
      0,
    ]);
    const trace = explain(readSound(written), 'one', 'illuminance_lx')!;
    expect(trace.origin).toMatchObject({
      by: 'document',
      path: '/lighting/key/illuminance',
      says: 'the reading counts, and its lamps are corrected by −0.3 stops to the reading',
    });
  });

  test('far from the lamps is told among the notes, with how far', () => {
    const told = (read: string) =>
      planned(lit({ ...METERED, '/lighting/key/illuminance': read })).notes.filter((note) =>
        note.startsWith('The meter'),
      );
    expect(told('24 klx')).toHaveLength(1);
    expect(told('15 klx')[0]).toMatch(
      /^The meter reads 1\.0 stops less than the lamps promise as they are written: the reading counts, and the lamps are corrected by −1\.0 stop to the reading; check/,
    );
    expect(told('29 klx')).toEqual([]);
  });
});

test('a correction is said with its sign, one stop as one, and none as a confirmation', () => {
  expect(correctionSaid({ stops: 0.34 })).toBe('corrected by +0.3 stops to the reading');
  expect(correctionSaid({ stops: -1.02 })).toBe('corrected by −1.0 stop to the reading');
  expect(correctionSaid({ stops: 0.04 })).toBe('as the reading confirms');
});
