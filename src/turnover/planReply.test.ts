import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readShootText } from '../document/text.ts';
import { explain } from '../plan/explain.ts';
import { planShoot } from '../plan/plan.ts';
import { waysFor } from '../plan/ways/ways.ts';
import { planReply, traceReply } from './planReply.ts';
import { PlanReply, replySchemas, TraceReply } from './planSchema.ts';

const ROOT = new URL('../../', import.meta.url);
const read = (path: string) => readShootText(readFileSync(new URL(path, ROOT), 'utf8'));

const demo = read('demo/shoot.yaml');
const demoPlan = planShoot(demo.shoot);
const ways = new Map(
  demoPlan.shots.map(({ id, margins }) => {
    const short = margins.filter(({ state }) => state === 'short');
    return [id, new Map(short.map((margin) => [margin.id, waysFor(demo.shoot, demo.written, id, margin.id)]))];
  }),
);

const broken = readShootText('longsecond: 1\nshots:\n  pour: { frameWdth: 80 mm, depth: 3 }\n  drop:\n');

interface Node {
  readonly [key: string]: unknown;
}

/** Every number below a value with the keys that lead to it. */
function numbersBelow(value: unknown, keys: readonly string[] = []): readonly (readonly [readonly string[], number])[] {
  if (typeof value === 'number') return [[keys, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, item]) => numbersBelow(item, [...keys, key]));
}

/** Keys of every object below a value, in their order; a schema's parse puts them in its own. */
function keyOrder(value: unknown): readonly string[] {
  const orders = new Set<string>();
  const visit = (at: unknown): void => {
    if (typeof at !== 'object' || at === null) return;
    if (!Array.isArray(at)) orders.add(Object.keys(at).join(' '));
    Object.values(at).forEach(visit);
  };
  visit(value);
  return [...orders];
}

describe('the reply of a plan', () => {
  test.each([
    ['the demo, with ways', planReply(demoPlan, demo.problems, { ways })],
    ['every key of the form', planReply(planShoot(read('src/document/fixtures/shoot-v1.yaml').shoot), [])],
    ['a shoot with problems and next to nothing in it', planReply(planShoot(broken.shoot), broken.problems)],
    ['an empty shoot', planReply(planShoot(readShootText('longsecond: 1').shoot), [])],
  ])('%s fits its schema, and survives being printed', (_, reply) => {
    expect(PlanReply.safeParse(JSON.parse(JSON.stringify(reply))).error).toBeUndefined();
  });

  const reply = planReply(demoPlan, demo.problems, { ways });

  test('the keys come in the order of the schema, whatever the plan holds them in', () => {
    expect(keyOrder(reply)).toEqual(keyOrder(PlanReply.parse(reply)));
  });

  test('numbers are rounded to nine significant digits, exact rates are whole', () => {
    for (const [keys, value] of numbersBelow(reply)) {
      if (keys.includes('patch')) continue;
      expect(value, keys.join('/')).toBe(Number(value.toPrecision(9)));
      if (keys.at(-1) === 'num' || keys.at(-1) === 'den') expect(Number.isSafeInteger(value)).toBe(true);
    }
    expect(reply.shots[0]!.clocks!.playRate).toEqual({ num: 25, den: 1 });
  });

  test('every figure of a margin is the plan’s own', () => {
    demoPlan.shots.forEach(({ margins }, i) => {
      margins.forEach(({ have, need }, j) => {
        const told = reply.shots[i]!.margins[j]!;
        expect(told.have! / (have! || 1)).toBeCloseTo(have === 0 ? 0 : 1, 8);
        expect(told.need! / need!).toBeCloseTo(1, 8);
      });
    });
  });

  test('the problems come with path, place, finding and nearest name', () => {
    const { problems } = planReply(planShoot(broken.shoot), broken.problems);
    expect(problems[0]).toEqual({
      code: 'key.unknown',
      path: '/shots/pour/frameWdth',
      what: expect.stringContaining('frameWdth') as string,
      near: 'frameWidth',
      line: 3,
      column: 11,
    });
  });

  test('one shot alone may be asked for', () => {
    expect(planReply(demoPlan, [], { only: 'crown' }).shots.map(({ id }) => id)).toEqual(['crown']);
  });

  test('ways are there when asked for, and only then', () => {
    expect(reply.shots.find(({ id }) => id === 'crown')!.ways!['light']!.length).toBeGreaterThan(0);
    expect(planReply(demoPlan, []).shots.every((shot) => !('ways' in shot))).toBe(true);
  });
});

describe('the reply of a trace', () => {
  const trace = explain(demo.shoot, 'crown', 'lightNeeded_lx')!;

  test('fits its schema, and says the unit of every number', () => {
    const reply = traceReply('crown', [trace]);
    expect(TraceReply.safeParse(JSON.parse(JSON.stringify(reply))).error).toBeUndefined();
    expect(keyOrder(reply)).toEqual(keyOrder(TraceReply.parse(reply)));
    expect(reply.traces[0]).toMatchObject({ name: 'lightNeeded_lx', unit: 'lx' });
  });

  test('goes down to what is written', () => {
    expect(JSON.stringify(traceReply('crown', [trace]))).toContain('"path":"/shots/crown/frameWidth"');
  });
});

/** Numbers that need no unit: counts, ratios, indices, places in a text, in a clip and in a picture. */
const UNITLESS = /(Count|Ratio|Fraction|Speed|Price|Index)$|^(num|den|stop|number|line|column|cost|order|x|y)$/;

/** Every property of a schema that is a number, with the object it stands in and the key of that. */
function numberProperties(schema: unknown, under: string): readonly (readonly [key: string, object: Node, under: string])[] {
  if (typeof schema !== 'object' || schema === null) return [];
  const { properties } = schema as { readonly properties?: Node };
  const own = Object.entries(properties ?? {}).flatMap(([key, value]) => {
    const { type } = value as { readonly type?: string };
    return type === 'number' || type === 'integer' ? [[key, properties!, under] as const] : numberProperties(value, key);
  });
  const rest = Object.entries(schema).filter(([key]) => key !== 'properties');
  return [...own, ...rest.flatMap(([key, value]) => numberProperties(value, /^(items|anyOf|oneOf|\d+|additionalProperties)$/.test(key) ? under : key))];
} // prettier-ignore

describe.each(Object.entries(replySchemas()))('docs/schema/%s.schema.json', (name, schema) => {
  test('is what the code makes it: a change of the reply is a change of this file (npm run docs)', () => {
    const file = JSON.parse(readFileSync(new URL(`docs/schema/${name}.schema.json`, ROOT), 'utf8')) as unknown;
    expect(file).toEqual(JSON.parse(JSON.stringify(schema)));
  });

  test('names the unit of every number: in its key, in the key it stands under, or beside it', () => {
    const numbers = numberProperties(schema, '');
    expect(numbers.length).toBeGreaterThan(1);
    for (const [key, object, under] of numbers)
      expect([key, /_[A-Za-z]/.test(key) || UNITLESS.test(key) || 'unit' in object || 'kind' in object || /_[A-Za-z]/.test(under) || under === 'light' || under === 'stops' || key === 'stops' || key === 'spread']).toEqual([key, true]);
  }); // prettier-ignore

  test('lets keys pass that a later version may add', () => {
    expect(JSON.stringify(schema)).not.toContain('"additionalProperties":false');
  });
});
