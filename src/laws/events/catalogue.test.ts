import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/published.ts';
import { lawNamed } from '../catalogue.ts';
import { LIQUIDS } from '../fluids/liquids.ts';
import { SOURCES } from '../sources.ts';
import { EVENTS, eventNamed } from './catalogue.ts';
import { parametersOf, type FilmedEvent } from './event.ts';

const PAGE = readFileSync(new URL('../../../docs/safety.md', import.meta.url), 'utf8');
const CAUTIONS = [...PAGE.matchAll(/^## (.+)$/gm)].map(([, heading]) =>
  heading!.toLowerCase().replace(/[^a-z0-9]+/g, '-'),
);

const named = (id: string): FilmedEvent => {
  const found = eventNamed(id);
  if (!found) throw new Error(`no event ${id}`);
  return found;
};

test('every event is found by its id, and no two share one', () => {
  expect(new Set(EVENTS.map(({ id }) => id)).size).toBe(EVENTS.length);
  for (const event of EVENTS) expect(eventNamed(event.id)).toBe(event);
  expect(eventNamed('nothing')).toBeUndefined();
});

test('the library has what a table top is asked for', () => {
  const ids = EVENTS.map(({ id }) => id);
  const asked =
    'fall fall-through-air pour viscous-coiling drop-impact crown cavity-and-jet fruit-into-tank bubble-rise carbonation bubble-burst film-burst balloon-burst glass-crack glass-shards popcorn egg powder-burst foam cork match-strike flame projectile spring-launch air-launch rail-travel';
  expect(ids).toEqual(expect.arrayContaining(asked.split(' ')));
});

describe.each(EVENTS.map((event) => [event.id, event] as const))('%s', (id, event) => {
  const figures = event.compute();

  test('is named in lower case with hyphens, says something, and ends its sentences', () => {
    expect(id).toMatch(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/);
    for (const sentence of [event.says, event.frameRateReasoning, figures.remark ?? 'None.'])
      expect(sentence).toMatch(/^[A-Z0-9].*\.$/s);
  });

  test('has typical figures in order, and works out to within them from its defaults, near the typical', () => {
    for (const name of ['speed_m_per_s', 'duration_s'] as const) {
      const spread = event.typical[name];
      const figuresInOrder = [0, spread.low, spread.typical, spread.high];
      expect(new Set(figuresInOrder).size, name).toBe(4);
      expect(
        figuresInOrder.toSorted((a, b) => a - b),
        name,
      ).toEqual(figuresInOrder);
      expect(figures[name], name).toBeGreaterThanOrEqual(spread.low);
      expect(figures[name], name).toBeLessThanOrEqual(spread.high);
      expect(Math.abs(figures[name] / spread.typical - 1), name).toBeLessThan(0.1);
    }
  });

  test('reaches somewhere finite where it says how far', () => {
    for (const reach of [figures.reachWidth_m, figures.reachHeight_m, figures.reachTowardsLens_m])
      if (reach !== undefined) expect(reach > 0 && reach < 20).toBe(true);
  });

  test('has frame rates in order, all of them rates that cameras have', () => {
    const { low, high } = event.frameRate_fps;
    expect(low).toBeLessThan(high);
    expect(low).toBeGreaterThanOrEqual(24);
    expect(high).toBeLessThanOrEqual(500_000);
  });

  test('has parameters whose names end in a unit that is known, each with a default', () => {
    for (const { name, kind, default: value } of parametersOf(event)) {
      if (name.includes('_')) expect(kind, name).toBeDefined();
      expect(Number.isFinite(value), name).toBe(true);
    }
  });

  test('gives the same from its defaults said aloud, and other figures from other parameters', () => {
    const said = Object.fromEntries(parametersOf(event).map(({ name, default: value }) => [name, Number(value)]));
    expect(event.compute(said)).toEqual(figures);
    const others = Object.entries(said).map(([name, value]) => event.compute({ ...said, [name]: value * 0.95 }));
    expect(others.some((other) => other.speed_m_per_s !== figures.speed_m_per_s)).toBe(true);
    expect(others.some((other) => other.duration_s !== figures.duration_s)).toBe(true);
  });

  test('refuses by name what is no number, for every parameter', () => {
    for (const { name } of parametersOf(event)) expect(() => event.compute({ [name]: NaN }), name).toThrow(RangeError);
  });

  test('names laws, sources and cautions that there are', () => {
    for (const law of event.laws) expect(lawNamed(law), law).toBeDefined();
    for (const key of event.sources) expect(Object.keys(SOURCES)).toContain(key);
    for (const key of event.cautions) expect(CAUTIONS).toContain(key);
  });
});

describe('published values', () => {
  published(
    'a whole fall',
    (fallHeight_m: number) => named('fall').compute({ fallHeight_m, seenHeight_m: fallHeight_m }).speed_m_per_s,
    [{ source: 'falling-with-drag', at: '100 m without air', given: 100, expected: '44.286906' }],
  );
  const kmAnHour = (bottle_degC: number) => named('cork').compute({ bottle_degC }).speed_m_per_s * 3.6;
  published('a cork, in km/h', kmAnHour, [
    { source: 'cork-speed', at: '4 °C, just under', given: 4, expected: '40' },
    { source: 'cork-speed', at: '18 °C, almost', given: 18, expected: '55' },
  ]);
  published('a crack in glass', () => named('glass-crack').compute().speed_m_per_s, [
    { source: 'glass-crack-film', at: 'at 78,597 fps', given: undefined, expected: '1458' },
  ]);
});

describe('common practice, no source: figures that crews carry in their heads', () => {
  test('common practice, no source: a crack crosses 0.1 m of glass in 69 µs, which 291,600 fps makes twenty frames', () => {
    const { duration_s, speed_m_per_s } = named('glass-crack').compute({ crackLength_m: 0.1 });
    expect(duration_s * 1e6).toBeCloseTo(68.6, 1);
    expect((20 * speed_m_per_s) / 0.1).toBe(291_600);
  });

  test('common practice, no source: the last 0.1 m of a fall of half a metre takes about 34 ms', () => {
    expect(named('fall').compute({ fallHeight_m: 0.5, seenHeight_m: 0.1 }).duration_s * 1000).toBeCloseTo(33.7, 1);
  });

  test('common practice, no source: a stretch longer than the fall is the whole fall, 0.319 s from half a metre', () => {
    const { duration_s, reachHeight_m } = named('fall').compute({ fallHeight_m: 0.5, seenHeight_m: 3 });
    expect(duration_s).toBeCloseTo(0.319, 3);
    expect(reachHeight_m).toBe(0.5);
  });
});

describe('remarks', () => {
  test('say whether a drop splashes, and honey does not', () => {
    const { density_kg_per_m3, viscosity_Pa_s, surfaceTension_N_per_m } = LIQUIDS.honey;
    const honey = { density_kg_per_m3, viscosity_Pa_s, surfaceTension_N_per_m };
    expect(named('drop-impact').compute().remark).toMatch(/splashes/);
    expect(named('drop-impact').compute(honey).remark).toMatch(/spreads without a splash/);
    expect(named('crown').compute().remark).toMatch(/breaks into drops/);
    expect(named('crown').compute(honey).remark).toMatch(/stays whole/);
  });

  test('keep people out of reach of what is thrown: 4.47 m/s could land 2 m away', () => {
    expect(named('spring-launch').compute().remark).toMatch(/land 2 m away/);
  });
});

describe('cautions', () => {
  test.each([
    ['glass-shards', 'glass'],
    ['glass-crack', 'glass'],
    ['powder-burst', 'powders-and-dust'],
    ['flame', 'flames'],
    ['match-strike', 'flames'],
    ['popcorn', 'flames'],
    ['cork', 'pressure-and-projectiles'],
    ['projectile', 'pressure-and-projectiles'],
    ['air-launch', 'pressure-and-projectiles'],
    ['spring-launch', 'moving-rigs'],
    ['rail-travel', 'moving-rigs'],
    ['arc-travel', 'moving-rigs'],
    ['fruit-into-tank', 'liquids-near-power'],
  ])('%s carries %s', (id, key) => expect(named(id).cautions).toContain(key));

  test('a projectile leaves shooting to licensed armourers', () => {
    expect(`${named('projectile').says} ${named('projectile').compute().remark}`).toMatch(/licensed armourer/);
  });

  test('nothing is called safe', () => {
    for (const event of EVENTS)
      expect([event.says, event.frameRateReasoning, event.compute().remark ?? ''].join(' ')).not.toMatch(/\bsafe/i);
  });
});

test('a drop of a fifth of an inch fallen 17 inches is over within the times drawn in worthington-splash', () => {
  const { duration_s } = named('cavity-and-jet').compute({ dropDiameter_m: 0.2 * 0.0254, fallHeight_m: 17 * 0.0254 });
  expect(duration_s).toBeGreaterThan(0.0314);
  expect(duration_s).toBeLessThan(0.295);
});
