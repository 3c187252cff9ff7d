import { describe, expect, test } from 'vitest';
import { changed, marginOf, planned, readSound, SMALL } from '../../test/shoots.ts';
import { readShoot } from '../document/read.ts';
import { WARMS } from '../document/schema.ts';
import type { Written } from '../document/written.ts';
import { PRODUCTS } from '../laws/heat/products.ts';
import { explain } from './explain.ts';
import { HEAT_KINDS, USUAL_START_degC } from './heat.ts';
import { planShoot } from './plan.ts';
import { planShot } from './planShot.ts';

type Changes = Readonly<Record<string, Written | undefined>>;

/** A filament and diodes that each give 100 klx where they stand. */
const LAMPS = {
  hot: { title: 'Hot', kind: 'tungsten', illuminance: '100 klx ± 5 klx', distance: '2 m', beam: '20°', field: '35°' },
  cool: { title: 'Cool', kind: 'led', illuminance: '100 klx ± 5 klx', distance: '2 m', beam: '20°', field: '35°' },
};
const FRONT = { lamp: 'hot', at: '0 m, -2 m, 0 m' };

/** Dark chocolate two millimetres thick, ten kelvin below where its gloss goes, in air as warm as itself. */
const CHOCOLATE: Changes = {
  '/shots/one/hero': { product: 'curl', lightOn: '10 s ± 1 s' },
  '/kit/products': { curl: { title: 'Curl', warms: 'dark-chocolate', start: '18 °C', thickness: '2 mm' } },
  '/shoot/air': '18 °C',
  '/kit/lamps': LAMPS,
};

const of = (lighting: Written, more: Changes = {}) =>
  changed(SMALL, { ...CHOCOLATE, '/lighting/key': lighting, ...more });
const lifeOf = (written: Written) => planned(written).heroLife!;
const byLamps = (lamps: Readonly<Record<string, Written>>, more: Changes = {}) => of({ title: 'Key', lamps }, more);

test('what a product may warm like is what the law knows, and each has a start of its own, colder than its change', () => {
  expect(Object.keys(WARMS)).toEqual(Object.keys(PRODUCTS));
  for (const [kind, start] of Object.entries(USUAL_START_degC))
    expect(start).toBeLessThan(PRODUCTS[kind as keyof typeof PRODUCTS].changes_degC);
});

// Worked in the project's reference with the efficacies 27.1 and 300 lm/W and nine tenths taken up: chocolate of 2 mm,
// 10 K warmer, 1300 kg/m³, 1.7 kJ/(kg·K), under 100 klx: 13 s of a filament, 147 s of diodes.
describe('the life of a product under the light of its set-up', () => {
  test('is 13 s of chocolate under 100 klx of a hot filament, and 147 s under as much of diodes', () => {
    expect(lifeOf(byLamps({ key: FRONT })).life.value).toBeCloseTo(13.3, 1);
    expect(lifeOf(byLamps({ key: { ...FRONT, lamp: 'cool' } })).life.value).toBeCloseTo(147.3, 1);
  });

  test('adds up the heat of lamps of all kinds, each by its own share of the light', () => {
    const { life, heat } = lifeOf(byLamps({ key: { ...FRONT, level: '50 %' }, fill: { ...FRONT, lamp: 'cool' } }));
    // 44 200 J/m² over 0.9 · (50 000 / 27.1 + 100 000 / 300).
    expect(life.value).toBeCloseTo(44_200 / (0.9 * (50_000 / 27.1 + 100_000 / 300)), 6);
    expect(heat).toMatchObject([
      {
        lamp: 'tungsten',
        illuminance_lx: expect.closeTo(50_000, 3) as number,
        irradiance_W_per_m2: expect.closeTo(1845, 0) as number,
      },
      {
        lamp: 'led',
        illuminance_lx: expect.closeTo(100_000, 3) as number,
        absorbed_W_per_m2: expect.closeTo(300, 0) as number,
      },
    ]);
  });

  test('counts on the side that takes up most, also where the camera does not see it', () => {
    const behind = lifeOf(byLamps({ key: { ...FRONT, at: '0 m, 2 m, 0 m' } }));
    expect(behind.life.value).toBeCloseTo(13.3, 1);
    // Of two lamps at right angles the side between them takes up √2 of what faces one.
    const two = lifeOf(byLamps({ key: FRONT, side: { ...FRONT, at: '2 m, 0 m, 0 m' } }));
    expect(two.heat[0]!.illuminance_lx).toBeCloseTo(1e5 * Math.SQRT2, 2);
    // Nothing is gained from a lamp that is off.
    expect(lifeOf(byLamps({ key: FRONT, side: { ...FRONT, off: true } })).life.value).toBeCloseTo(13.3, 1);
  });

  test('counts lamps of a read share as the kind they are, and takes the heat of what a flag shades away', () => {
    // A quarter of the light from filaments overhead, 100 klx of diodes worked out: a third as much again.
    const house = lifeOf(byLamps({ key: { ...FRONT, lamp: 'cool' }, house: { lamp: 'hot', share: '25 %' } }));
    expect(house.life.value).toBeCloseTo(44_200 / (0.9 * (100_000 / 300 + 100_000 / 3 / 27.1)), 6);
    const flags = { cut: { at: '0 m, 0.5 m, 0 m', width: '1 m', height: '1 m' } };
    const shaded = of({ lamps: { key: { ...FRONT, lamp: 'cool' }, back: { ...FRONT, at: '0 m, 2 m, 0 m' } }, flags });
    expect(lifeOf(shaded).life.value).toBeCloseTo(147.3, 1);
  });

  test('goes by the meter, which corrects the lamps without changing their shares', () => {
    const half = of({ lamps: { key: FRONT }, illuminance: '50 klx ± 2 klx', reading: 'metered' });
    expect(lifeOf(half).life.value).toBeCloseTo(26.6, 1);
    const trace = explain(readSound(half), 'one', 'heroLife_s')!;
    expect(JSON.stringify(trace)).toContain(
      'Light of hot filaments on the product, from its lamps, corrected by −1.0 stop to the reading',
    );
  });

  test('under a reading alone counts the hottest lamp that can be meant, and says that it was assumed', () => {
    const bare = planned(of({ illuminance: '100 klx', reading: 'metered' }));
    expect(bare.heroLife!.life.value).toBeCloseTo(13.3, 1);
    expect(bare.heroLife!.assumed).toMatchObject([{ name: 'productTungsten_lx', path: '/lighting/key/lamps' }]);
    // Lamps that cannot be worked out still say what they are.
    const cool = planned(of({ illuminance: '100 klx', lamps: { key: { lamp: 'cool' } } }));
    expect(cool.heroLife!.life.value).toBeCloseTo(147.3, 1);
  });

  test('of ice and ice cream is also what the air brings, whatever the light', () => {
    const ice = {
      '/kit/products/curl/warms': 'ice-cream',
      '/kit/products/curl/start': '-18 °C',
      '/shoot/air': '22 °C',
    };
    const { airHeat_W_per_m2, life } = lifeOf(byLamps({ key: { ...FRONT, lamp: 'cool' } }, ice));
    expect(airHeat_W_per_m2).toBe(400);
    expect(life.value).toBeCloseTo((1.1 * (1880 * 15 + 22_200)) / ((0.8 * 1e5) / 300 + 400), 6);
  });

  test('is no longer than it holds with the lights off', () => {
    const held = lifeOf(byLamps({ key: { ...FRONT, lamp: 'cool' } }, { '/kit/products/curl/hold': '1 min ± 10 s' }));
    expect(held).toMatchObject({ life: { value: 60, high: 60 }, isHeld: true });
  });

  test('takes the usual start, air and thickness where nobody wrote them, and names all three', () => {
    const bare = changed(byLamps({ key: FRONT }, { '/kit/products/curl': { warms: 'butter' } }), {
      '/shoot/air': undefined,
    });
    expect(
      lifeOf(bare)
        .assumed.map(({ path }) => path)
        .sort(),
    ).toEqual(['/kit/products/curl/start', '/kit/products/curl/thickness', '/shoot/air']);
    expect(lifeOf(bare)).toMatchObject({ start_degC: 5, air_degC: 22, thickness_m: 0.002 });
  });

  test('is nothing where the product comes too warm', () => {
    expect(
      marginOf(planned(byLamps({ key: FRONT }, { '/kit/products/curl/start': '30 °C' })), 'hero-life'),
    ).toMatchObject({ have: 0, state: 'short' });
  });
});

describe('the limit of hero life', () => {
  test('is judged from the shortest credible time, which is the low end of its band', () => {
    const exact = { '/shots/one/hero/lightOn': '10 s ± 0 s', '/kit/lamps/hot/illuminance': '100 klx ± 0 klx' };
    const { stops, have, need } = marginOf(planned(byLamps({ key: FRONT }, exact)), 'hero-life');
    expect([have, need]).toEqual([expect.closeTo(13.3, 1), 10]);
    expect(stops!.low).toBeCloseTo(stops!.value, 9);
    expect(stops!.high - stops!.value).toBeCloseTo(1, 6);
    // What the lamps and the hands may be off by reaches both ways.
    const loose = marginOf(planned(byLamps({ key: FRONT })), 'hero-life').stops!;
    expect(loose.value - loose.low).toBeGreaterThan(0.1);
    expect(loose.high - loose.value).toBeGreaterThan(1);
  });

  test('goes by what somebody wrote of the shot, whatever the light', () => {
    const written = planned(byLamps({ key: FRONT }, { '/shots/one/hero/life': '8 min' }));
    expect(marginOf(written, 'hero-life').have).toBe(480);
    expect(written.heroLife).toBeUndefined();
  });

  test('asks for the light-on time once something is known to melt', () => {
    const margin = marginOf(planned(byLamps({ key: FRONT }, { '/shots/one/hero/lightOn': undefined })), 'hero-life');
    expect(margin).toMatchObject({
      state: 'unknown',
      missing: [{ name: 'lightOn_s', path: '/shots/one/hero/lightOn' }],
    });
  });

  test.each([
    ['no set-up', { '/shots/one/lighting': undefined }, '/shots/one/lighting', 'absent'],
    ['a set-up with neither lamp nor reading', { '/lighting/key': {} }, '/lighting/key/illuminance', 'absent'],
    [
      'a lamp that lacks its place',
      { '/lighting/key/lamps/key/at': undefined },
      '/lighting/key/lamps/key/at',
      'absent',
    ],
    ['a reading that cannot be read', { '/lighting/key/illuminance': 'a lot' }, '/lighting/key/illuminance', 'unread'],
    [
      'a product of which nobody can read what it warms like',
      { '/kit/products/curl/warms': 'lard' },
      '/kit/products/curl/warms',
      'unread',
    ],
    ['a start that cannot be read', { '/kit/products/curl/start': 'cold' }, '/kit/products/curl/start', 'unread'],
    [
      'a holding time that cannot be read',
      { '/kit/products/curl/hold': 'a while' },
      '/kit/products/curl/hold',
      'unread',
    ],
  ] as const)('is unknown with %s, and says where, once', (_, more, path, because) => {
    const { shoot } = readShoot(byLamps({ key: FRONT }, more));
    const margin = marginOf(planShot(shoot, 'one', 1), 'hero-life');
    expect(margin).toMatchObject({ state: 'unknown', missing: [{ path, because }] });
    expect(margin.missing).toHaveLength(1);
  });

  test('is not asked for where the product melts like nothing that is known', () => {
    const jar = byLamps(
      { key: FRONT },
      { '/kit/products/curl/warms': undefined, '/shots/one/hero/lightOn': undefined },
    );
    expect(planned(jar).margins.some(({ id }) => id === 'hero-life')).toBe(false);
  });

  test('is planned again when the air, the lamp of the kit or the product changes', () => {
    const lifeIn = (more: Changes) =>
      planShoot(readSound(byLamps({ key: FRONT }, more))).shots[0]!.heroLife!.life.value;
    const now = lifeIn({});
    expect(lifeIn({ '/shoot/air': '25 °C' })).toBeLessThan(now);
    expect(lifeIn({ '/kit/lamps/hot/kind': 'led' })).toBeGreaterThan(now);
    expect(lifeIn({ '/kit/products/curl/thickness': '4 mm' })).toBeCloseTo(2 * now, 6);
  });

  test('calls for the caution on heat, and where it is short for more of it', () => {
    const keys = (more: Changes) => planned(byLamps({ key: FRONT }, more)).cautions.filter(({ key }) => key === 'heat');
    expect(keys({})).toHaveLength(1);
    expect(keys({ '/shots/one/hero/lightOn': '1 min' })).toHaveLength(2);
  });
});

test('a trace of the life leads through the law of the product and the heat of each kind down to what was written', () => {
  const trace = explain(readSound(byLamps({ key: FRONT })), 'one', 'heroLife_s')!;
  const shortest = trace.inputs.find(({ name }) => name === 'shortestLife_s')!;
  expect(shortest.origin).toMatchObject({ by: 'law', law: 'product-under-light' });
  const heats = shortest.inputs.filter(({ origin }) => origin.by === 'law' && origin.law === 'lamp-heat');
  expect(heats).toHaveLength(HEAT_KINDS.length);
  expect(heats[0]!.inputs[0]!.origin).toMatchObject({ by: 'document', path: '/lighting/key/lamps' });
});
