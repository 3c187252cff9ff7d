import { describe, expect, test } from 'vitest';
import { changed, marginOf, planned, readSound, SMALL } from '../../test/shoots.ts';
import { readShoot } from '../document/read.ts';
import type { Written } from '../document/written.ts';
import { lightOfSetup, withSetup } from './lighting.ts';
import { planShot } from './planShot.ts';

type Changes = Readonly<Record<string, Written | undefined>>;

/** 20 000 lx at 3 m in a beam of 20°, and a panel of a metre whose face glows with 1000 cd/m². */
const LAMPS = {
  spot: { title: 'Spot', kind: 'led', illuminance: '20 klx ± 1 klx', distance: '3 m', beam: '20°', field: '35°' },
  panel: { title: 'Panel', kind: 'led', face: { width: '1 m', height: '1 m', luminance: '1000 cd/m² ± 50 cd/m²' } },
};
const KEY = { lamp: 'spot', at: '0 m, -3 m, 0 m' };
const SIDE = { lamp: 'spot', at: '3 m, 0 m, 0 m' };
const FRONT_PANEL = { lamp: 'panel', at: '0 m, -1 m, 0 m' };
const BACK = { lamp: 'panel', at: '0 m, 1 m, 0 m' };

/** Half a metre before the subject, on the way to the camera. */
const FLAG = { title: 'Cutter', at: '0 m, -500 mm, 0 m', width: '400 mm', height: '300 mm' };

const lit = (lamps: Changes, flags: Changes = {}, more: Changes = {}) =>
  changed(SMALL, { '/kit/lamps': LAMPS, '/lighting/key': { title: 'Key', lamps: lamps as Written, flags: flags as Written }, ...more }); // prettier-ignore
const FRONT = { azimuth_deg: 0, elevation_deg: 0 };
const at = (written: Written, view = FRONT) => lightOfSetup(readShoot(written).shoot, 'key', view);

describe('a flag', () => {
  test('takes away the light of the lamp that it stands before, and of no other', () => {
    const faces: Changes = { '/lighting/key/faces': '1 m, -1 m, 0 m' };
    const [open, flagged] = [{}, { cut: FLAG }].map((flags) => at(lit({ key: KEY, side: SIDE }, flags, faces)));
    expect(open!.lamps.map(({ illuminance_lx }) => illuminance_lx > 0)).toEqual([true, true]);
    expect(flagged!.lamps.map(({ illuminance_lx }) => illuminance_lx)).toEqual([0, open!.lamps[1]!.illuminance_lx]);
    expect(flagged!.illuminance_lx).toBeCloseTo(open!.illuminance_lx / 2, 6);
    expect(flagged!.flags).toMatchObject([{ id: 'cut', title: 'Cutter', isOff: false, lacks: [] }]);
  });

  test('that is taken away, or stands aside, takes nothing', () => {
    const open = at(lit({ key: KEY })).illuminance_lx;
    expect(at(lit({ key: KEY }, { cut: { ...FLAG, off: true } })).illuminance_lx).toBe(open);
    expect(at(lit({ key: KEY }, { cut: { ...FLAG, at: '300 mm, -500 mm, 0 m' } })).illuminance_lx).toBe(open);
  });

  test('before half of a panel takes half of its light, and a whole one all of it', () => {
    const open = at(lit({ panel: FRONT_PANEL })).illuminance_lx;
    const half = { ...FLAG, at: '2 m, -500 mm, 0 m', faces: '2 m, 0 m, 0 m', width: '4 m', height: '4 m' };
    expect(at(lit({ panel: FRONT_PANEL }, { half })).illuminance_lx).toBeCloseTo(open / 2, 9);
    const whole = { ...half, at: '0 m, -500 mm, 0 m', faces: '0 m, 0 m, 0 m' };
    expect(at(lit({ panel: FRONT_PANEL }, { whole })).illuminance_lx).toBe(0);
  });

  test('turns with what it is square to: edge on to a lamp it takes nothing', () => {
    const edgeOn = { ...FLAG, faces: '1 m, -500 mm, 0 m' };
    expect(at(lit({ key: KEY }, { cut: edgeOn })).illuminance_lx).toBeCloseTo(20_000, 6);
  });

  test('behind the subject hides the face there from the camera, and not from another side', () => {
    const cut = { ...FLAG, at: '0 m, 500 mm, 0 m' };
    expect(at(lit({ back: BACK })).luminance).toMatchObject({ luminance_cd_per_m2: 1000 });
    expect(at(lit({ back: BACK }, { cut })).luminance).toBeUndefined();
    expect(at(lit({ back: BACK }, { cut }), { azimuth_deg: 30, elevation_deg: 0 }).luminance).toBeUndefined();
    expect(at(lit({ back: BACK }, { cut: { ...cut, width: '100 mm' } }), { azimuth_deg: 20, elevation_deg: 0 }).luminance).toBeDefined(); // prettier-ignore
  });

  test('is in every plan of its shots: the margin of the light falls with it', () => {
    const plan = planned(lit({ key: KEY, second: KEY }, { cut: { ...FLAG, at: '0 m, -500 mm, 0 m', off: true } }));
    expect(marginOf(plan, 'light').have).toBeCloseTo(40_000, 6);
    expect(marginOf(planned(lit({ key: KEY }, { cut: FLAG })), 'light').have).toBe(0);
    const through: Changes = { '/shots/one/seen': 'lit-through' };
    const cut = { ...FLAG, at: '0 m, 500 mm, 0 m' };
    expect(marginOf(planned(lit({ back: BACK }, { cut }, through)), 'light').state).toBe('unknown');
  });

  test('without its place or size is named, with where it is written, and the light is not known', () => {
    const cases: readonly (readonly [Changes, string, boolean])[] = [
      [{ at: undefined }, 'at', false],
      [{ at: 'over there' }, 'at', true],
      [{ width: undefined }, 'width', false],
      [{ height: '12 lx' }, 'height', true],
      [{ faces: 'the lamp' }, 'faces', true],
      [{ faces: FLAG.at }, 'faces', false],
      [{ at: '0 m, 0 m, 0 m' }, 'faces', false],
    ];
    for (const [change, key, isUnread] of cases) {
      const light = at(changed(lit({ key: KEY }, { cut: FLAG }), Object.fromEntries(Object.entries(change).map(([k, v]) => [`/lighting/key/flags/cut/${k}`, v])))); // prettier-ignore
      expect(light.illuminance_lx, key).toBeNaN();
      expect(light.lacks).toMatchObject([{ path: `/lighting/key/flags/cut/${key}`, isUnread, title: expect.stringContaining('Cutter') as string }]); // prettier-ignore
    }
    const { shoot } = readShoot(lit({ key: KEY }, { cut: { ...FLAG, at: 'over there' } }));
    expect(marginOf(planShot(shoot, 'one', 1), 'light')).toMatchObject({ state: 'unknown', missing: [{ path: '/lighting/key/flags/cut/at' }] }); // prettier-ignore
    // Taken away, it need not be known.
    expect(at(lit({ key: KEY }, { cut: { off: true } })).illuminance_lx).toBeCloseTo(20_000, 6);
  });
});

describe('barn doors', () => {
  /** Aimed 10° to the left of the subject as the lamp looks: the subject is 10° to its right. */
  const panned = { ...KEY, aim: '-529 mm, 0 m, 0 m' };
  const withDoors = (doors: Written, lamp: Changes = panned) => at(lit({ key: { ...lamp, doors } }));

  test('cut a lamp’s light beyond their angle, left and right as it looks', () => {
    const open = at(lit({ key: panned })).illuminance_lx;
    expect(open).toBeGreaterThan(5000);
    expect(withDoors({ right: '9°' }).illuminance_lx).toBe(0);
    expect(withDoors({ right: '11°' }).illuminance_lx).toBe(open);
    expect(withDoors({ left: '1°', top: '1°', bottom: '1°' }).illuminance_lx).toBe(open);
  });

  test('cut above and below as it stands', () => {
    const tilted = { ...KEY, aim: '0 m, 0 m, 529 mm' };
    expect(withDoors({ bottom: '9°' }, tilted).illuminance_lx).toBe(0);
    expect(withDoors({ bottom: '11°' }, tilted).illuminance_lx).toBeGreaterThan(5000);
    expect(withDoors({ top: '1°' }, tilted).illuminance_lx).toBeGreaterThan(5000);
  });

  test('of a panel are not counted, and it says so', () => {
    const light = at(lit({ panel: { ...FRONT_PANEL, doors: { left: '0°', right: '0°' } } }));
    expect(light.illuminance_lx).toBeCloseTo(752.3, 1);
    expect(light.lamps[0]!.notices).toEqual([expect.stringMatching(/doors are not counted; stand a flag/)]);
  });

  test('that cannot be read are named', () => {
    expect(withDoors({ left: 'half way' })).toMatchObject({ illuminance_lx: NaN, lacks: [{ path: '/lighting/key/lamps/key/doors/left', isUnread: true }] }); // prettier-ignore
  });
});

describe('a lamp of a read share', () => {
  const HOUSE = { title: 'House lights', share: '20 %' };

  test('gives that share of all the light, and nothing else of it need be known', () => {
    const light = at(lit({ key: KEY, house: HOUSE }));
    expect(light.lacks).toEqual([]);
    expect(light.illuminance_lx).toBeCloseTo(25_000, 6);
    expect(light.lamps).toMatchObject([{ illuminance_lx: expect.closeTo(20_000, 6) as number }, { title: 'House lights', illuminance_lx: expect.closeTo(5000, 6) as number, shareFraction: expect.closeTo(0.2, 9) as number }]); // prettier-ignore
    expect(marginOf(planned(lit({ key: KEY, house: HOUSE })), 'light').have).toBeCloseTo(25_000, 6);
  });

  test('beside another of them leaves the rest to what is worked out', () => {
    const light = at(lit({ key: KEY, house: HOUSE, exit: { title: 'Exit sign', share: '5 %' } }));
    expect(light.illuminance_lx).toBeCloseTo(20_000 / 0.75, 6);
    expect(light.lamps.map(({ shareFraction }) => shareFraction)).toEqual([0.75, 0.2, 0.05].map((share) => expect.closeTo(share, 9) as number)); // prettier-ignore
  });

  test('goes by its share where it could be worked out too, follows the flags, and gives nothing while it is off', () => {
    const light = at(lit({ key: KEY, other: { ...SIDE, share: '50 %' } }));
    expect(light.lamps[1]!.illuminance_lx).toBeCloseTo(20_000, 6);
    const half = { ...FLAG, at: '2 m, -500 mm, 0 m', faces: '2 m, 0 m, 0 m', width: '4 m', height: '4 m' };
    const behind = at(lit({ panel: FRONT_PANEL, house: HOUSE }, { half }));
    expect(behind.illuminance_lx).toBeCloseTo(752.3 / 2 / 0.8, 1);
    expect(at(lit({ key: KEY, house: { ...HOUSE, off: true } })).illuminance_lx).toBeCloseTo(20_000, 6);
  });

  test('needs light that it is a share of, and leaves some of it', () => {
    const sum = at(lit({ key: KEY, house: { share: '60 %' }, exit: { share: '40 %' } }));
    expect(sum).toMatchObject({ illuminance_lx: NaN, lacks: [{ path: '/lighting/key/lamps/house/share', what: expect.stringContaining('sum to 100 %') as string }] }); // prettier-ignore
    const alone = at(lit({ house: HOUSE }));
    expect(alone).toMatchObject({ illuminance_lx: NaN, lacks: [{ what: expect.stringContaining('none of the lamps') as string }] }); // prettier-ignore
    const unread = at(lit({ key: KEY, house: { share: 'a little' } }));
    expect(unread).toMatchObject({ illuminance_lx: NaN, lacks: [{ path: '/lighting/key/lamps/house/share', isUnread: true }] }); // prettier-ignore
    expect(marginOf(planShot(readShoot(lit({ house: HOUSE })).shoot, 'one', 1), 'light')).toMatchObject({ state: 'unknown', missing: [{ path: '/lighting/key/lamps/house/share' }] }); // prettier-ignore
  });
});

test('the light of a set-up is worked out once for a view, and again once anything of it changes', () => {
  const shoot = readSound(lit({ key: KEY }, { cut: { ...FLAG, off: true } }));
  const light = lightOfSetup(shoot, 'key', FRONT);
  expect(lightOfSetup({ ...shoot, shots: {} }, 'key', { ...FRONT })).toBe(light);
  expect(lightOfSetup(shoot, 'key', { azimuth_deg: 60, elevation_deg: 0 }).illuminance_lx).toBeCloseTo(10_000, 6);
  expect(lightOfSetup(shoot, 'key', FRONT)).toBe(light);
  const flagged = withSetup(shoot, 'key', (setup) => ({ ...setup, flags: { cut: { ...setup.flags['cut']!, isOff: false } } })); // prettier-ignore
  expect(lightOfSetup(flagged, 'key', FRONT).illuminance_lx).toBe(0);
  const lamps = { ...shoot.kit.lamps, spot: { ...shoot.kit.lamps['spot']!, illuminance_lx: 10_000 } };
  expect(lightOfSetup({ ...shoot, kit: { ...shoot.kit, lamps } }, 'key', FRONT).illuminance_lx).toBeCloseTo(10_000, 6);
});
