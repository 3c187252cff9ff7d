import { describe, expect, test } from 'vitest';
import { changed, marginOf, planned, readSound, SMALL } from '../../test/shoots.ts';
import { readShoot } from '../document/read.ts';
import type { Written } from '../document/written.ts';
import { readIes } from '../laws/light/photometry/ies.ts';
import { explain } from './explain.ts';
import { lightOfSetup, towardsCamera } from './lighting.ts';
import { tellPhotometry } from './photometry.ts';
import { planShoot } from './plan.ts';
import { planShot } from './planShot.ts';

/** 20 000 lx at 3 m in a beam of 20°, and a panel of a metre whose face glows with 1000 cd/m². */
const LAMPS = {
  spot: {
    title: 'Spot',
    power: '1 kW',
    illuminance: '20 klx ± 1 klx',
    distance: '3 m',
    beam: '20°',
    field: '35°',
    flood: { illuminance: '2 klx', distance: '3 m', beam: '60°', field: '80°' },
  },
  panel: { title: 'Panel', power: '400 W', face: { width: '1 m', height: '1 m', luminance: '1000 cd/m² ± 50 cd/m²' } },
};
const KEY = { lamp: 'spot', at: '0 m, -3 m, 0 m' };
const BACK = { lamp: 'panel', at: '0 m, 1 m, 0 m' };

const lit = (lamps: Readonly<Record<string, Written>>, more: Readonly<Record<string, Written | undefined>> = {}) =>
  changed(SMALL, { '/kit/lamps': LAMPS, '/kit/modifiers': { silk: { title: 'Silk', loss: '1 stop' } }, '/lighting/key': { title: 'Key', lamps }, ...more }); // prettier-ignore
const FRONT = { azimuth_deg: 0, elevation_deg: 0 };
const at = (written: Written, view = FRONT) => lightOfSetup(readShoot(written).shoot, 'key', view);

describe('the light of a set-up', () => {
  test('is what its lamp was read to give, on a surface that faces both camera and lamp', () => {
    const light = at(lit({ key: KEY }));
    expect(light.illuminance_lx).toBeCloseTo(20_000, 6);
    expect(light.spread_lx).toBeCloseTo(1000, 6);
    expect(light.lamps).toMatchObject([{ id: 'key', title: 'Spot', shareFraction: 1, distance_m: 3, power_W: 1000 }]);
  });

  test('is half a stop for each half stop in front of a lamp, and goes with its level', () => {
    expect(at(lit({ key: { ...KEY, modifiers: ['silk'] } })).illuminance_lx).toBeCloseTo(10_000, 6);
    expect(at(lit({ key: { ...KEY, level: '25 %' } }))).toMatchObject({ illuminance_lx: expect.closeTo(5000, 6) as number, lamps: [{ power_W: 250 }] }); // prettier-ignore
    expect(at(lit({ key: { ...KEY, off: true } }))).toMatchObject({ illuminance_lx: 0, lamps: [{ power_W: 0 }] });
  });

  test('goes from spot to flood on the stated settings', () => {
    expect(at(lit({ key: { ...KEY, flood: 1 } })).illuminance_lx).toBeCloseTo(2000, 6);
    const half = at(lit({ key: { ...KEY, flood: '50 %' } })).illuminance_lx;
    // Halfway in equal ratios: √(20 000 · 2000).
    expect(half).toBeCloseTo(Math.sqrt(20_000 * 2000), 3);
  });

  test('of two lamps is their sum, their bands joined as independent', () => {
    const light = at(lit({ key: KEY, second: { ...KEY, level: '50 %' } }));
    expect(light.illuminance_lx).toBeCloseTo(30_000, 6);
    expect(light.spread_lx).toBeCloseTo(Math.hypot(1000, 500), 6);
    expect(light.lamps.map(({ shareFraction }) => shareFraction)).toEqual([expect.closeTo(2 / 3, 9), expect.closeTo(1 / 3, 9)]); // prettier-ignore
  });

  test('falls by the cosine as the camera goes round, and to nothing behind', () => {
    expect(at(lit({ key: KEY }), { azimuth_deg: 60, elevation_deg: 0 }).illuminance_lx).toBeCloseTo(10_000, 6);
    expect(at(lit({ key: KEY }), { azimuth_deg: 0, elevation_deg: 60 }).illuminance_lx).toBeCloseTo(10_000, 6);
    expect(at(lit({ key: KEY }), { azimuth_deg: 180, elevation_deg: 0 }).illuminance_lx).toBe(0);
  });

  test('counts on the surface that the set-up says, where that does not face the camera', () => {
    const behind = { ...KEY, at: '0 m, 3 m, 0 m' };
    expect(at(lit({ key: behind })).illuminance_lx).toBe(0);
    expect(at(lit({ key: behind }, { '/lighting/key/faces': '0 m, 1 m, 0 m' })).illuminance_lx).toBeCloseTo(20_000, 6);
    expect(at(lit({ key: behind }, { '/lighting/key/faces': 'the lamp' })).lacks).toMatchObject([{ path: '/lighting/key/faces', isUnread: true }]); // prettier-ignore
  });

  test('from a panel is that of its whole face', () => {
    // A metre square a metre away: 0.7523 of the luminance, by the closed form of parallel rectangles.
    const light = at(lit({ key: { ...KEY, lamp: 'panel', at: '0 m, -1 m, 0 m' } }));
    expect(light.illuminance_lx).toBeCloseTo(752.3, 1);
    // Its luminance may come from a reading on its axis instead.
    const read = { ...LAMPS.panel, face: { width: '1 m', height: '1 m' }, illuminance: '752.3 lx', distance: '1 m' };
    const other = at(lit({ key: { ...KEY, lamp: 'panel', at: '0 m, -2 m, 0 m' } }, { '/kit/lamps/panel': read }));
    const stated = at(lit({ key: { ...KEY, lamp: 'panel', at: '0 m, -2 m, 0 m' } }));
    expect(other.illuminance_lx / stated.illuminance_lx).toBeCloseTo(1, 4);
  });

  test('behind the subject is the luminance of the face that the camera looks at', () => {
    expect(at(lit({ back: BACK })).luminance).toMatchObject({ luminance_cd_per_m2: 1000, lamp: 'back' });
    expect(at(lit({ back: { ...BACK, level: '50 %', modifiers: ['silk'] } })).luminance).toMatchObject({ luminance_cd_per_m2: 250 }); // prettier-ignore
    expect(at(lit({ back: BACK }), { azimuth_deg: 90, elevation_deg: 0 }).luminance).toBeUndefined();
    expect(at(lit({ back: { ...BACK, off: true } })).luminance).toBeUndefined();
  });

  test('is not known while a lamp lacks something, which is named with where to write it', () => {
    const cases: readonly (readonly [Written, Readonly<Record<string, Written | undefined>>, string])[] = [
      [{ lamp: 'spot' }, {}, '/lighting/key/lamps/key/at'],
      [{ at: '0 m, -3 m, 0 m' }, {}, '/lighting/key/lamps/key/lamp'],
      [KEY, { '/kit/lamps/spot/beam': undefined }, '/kit/lamps/spot/beam'],
      [{ ...KEY, flood: 0.5 }, { '/kit/lamps/spot/flood/beam': undefined }, '/kit/lamps/spot/flood/beam'],
      [{ ...KEY, modifiers: ['silk'] }, { '/kit/modifiers/silk/loss': undefined }, '/kit/modifiers/silk/loss'],
      [{ ...KEY, lamp: 'panel' }, { '/kit/lamps/panel/face/luminance': undefined }, '/kit/lamps/panel/illuminance'],
      [KEY, { '/kit/lamps/spot/field': '10°' }, '/kit/lamps/spot'],
      [{ ...KEY, at: '0, 0, 0' }, {}, '/kit/lamps/spot'],
    ];
    for (const [lamp, more, path] of cases) {
      const light = at(lit({ key: lamp }, more));
      expect(light.illuminance_lx, path).toBeNaN();
      expect(light.lacks.map((lack) => lack.path)).toEqual([path]);
    }
  });

  test('says where a lamp stands nearer than five times its face', () => {
    const near = at(lit({ key: { ...KEY, at: '0 m, -0.8 m, 0 m' } }, { '/kit/lamps/spot/face': { width: '20 cm' } }));
    expect(near.lamps[0]!.notices).toEqual([expect.stringContaining('nearer than five times')]);
    expect(at(lit({ key: KEY }, { '/kit/lamps/spot/face': { width: '20 cm' } })).lamps[0]!.notices).toEqual([]);
  });
});

describe('a shot lit by lamps', () => {
  test('has their light for what it needs, with its band', () => {
    const plan = planned(lit({ key: KEY }));
    const margin = marginOf(plan, 'light');
    expect(margin.have).toBeCloseTo(20_000, 6);
    expect(margin.path).toBe('/lighting/key/lamps');
    expect(margin.stops!.high - margin.stops!.low).toBeGreaterThan(0);
  });

  test('goes by what was read on the day, where somebody read it', () => {
    expect(marginOf(planned(lit({ key: KEY }, { '/lighting/key/illuminance': '18 klx' })), 'light').have).toBe(18_000);
  });

  test('lit through, has the face behind it', () => {
    const plan = planned(lit({ back: BACK }, { '/shots/one/seen': 'lit-through' }));
    expect(marginOf(plan, 'light')).toMatchObject({ kind: 'luminance', have: 1000 });
    const without = planned(lit({ key: KEY }, { '/shots/one/seen': 'lit-through' }));
    expect(marginOf(without, 'light').state).toBe('unknown');
  });

  test('lacks what its lamps lack', () => {
    const { shoot } = readShoot(lit({ key: { ...KEY, at: 'over there' } }));
    expect(marginOf(planShot(shoot, 'one', 1), 'light')).toMatchObject({
      state: 'unknown',
      missing: [{ path: '/lighting/key/lamps/key/at', because: 'unread' }],
    });
  });

  test('is planned again when a lamp of the kit changes', () => {
    const have = (written: Written) => marginOf(planShoot(readSound(written)).shots[0]!, 'light').have;
    const before = lit({ key: KEY });
    expect(have(before)).toBeCloseTo(20_000, 6);
    expect(have(changed(before, { '/kit/lamps/spot/illuminance': '30 klx' }))).toBeCloseTo(30_000, 6);
  });

  test('explains its light by the document', () => {
    const { shoot } = readShoot(lit({ key: KEY }));
    expect(explain(shoot, 'one', 'illuminance_lx')).toMatchObject({ origin: { by: 'document', path: '/lighting/key/lamps' } }); // prettier-ignore
  });
});

describe('a lamp with a photometric file', () => {
  /** 1000 cd within 30° of its axis and nothing beyond. */
  const IES = ['IESNA:LM-63-1995', 'TILT=NONE', '1 -1 1 4 1 1 2 0 0 0', '1 1 100', '0 30 31 90', '0', '1000 1000 0 0', ''].join('\n'); // prettier-ignore
  const read = readIes(IES);
  const written = lit(
    { key: KEY },
    { '/kit/lamps/spot/file': 'web', '/files/web': { name: 'spot.ies', sha256: 'ab12' } },
  );

  test('gives what its file says, once somebody has read that', () => {
    expect(read.ok).toBe(true);
    const { shoot } = readShoot(written);
    expect(lightOfSetup(shoot, 'key', FRONT)).toMatchObject({ lacks: [{ path: '/kit/lamps/spot/file', what: expect.stringContaining('spot.ies') as string }] }); // prettier-ignore
    if (!read.ok) return;
    tellPhotometry(shoot, new Map([['ab12', read.photometry]]));
    expect(lightOfSetup(shoot, 'key', FRONT).illuminance_lx).toBeCloseTo(1000 / 9, 6);
    expect(marginOf(planShot(shoot, 'one', 1), 'light').have).toBeCloseTo(1000 / 9, 6);
  });
});

test('a camera in front looks from the near side, one at 90 degrees from the right, one at the top from above', () => {
  const rounded = (azimuth_deg: number, elevation_deg: number) => towardsCamera({ azimuth_deg, elevation_deg }).map((value) => Math.round(value * 1e9) / 1e9 + 0); // prettier-ignore
  expect(rounded(0, 0)).toEqual([0, -1, 0]);
  expect(rounded(90, 0)).toEqual([1, 0, 0]);
  expect(rounded(0, 90)).toEqual([0, 0, 1]);
});
