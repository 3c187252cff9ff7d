import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { fixtureText, writtenBy } from '../../test/documents.ts';
import { KINDS, type Kind, type KindName } from '../base/kinds.ts';
import { parseQuantity } from '../base/quantity.ts';
import { shootJsonSchema, shootJsonSchemaText } from './jsonSchema.ts';
import { readShoot } from './read.ts';
import { SHOOT } from './schema.ts';
import { readShootText } from './text.ts';
import { isList, isRecord, isSame, type Written, type WrittenRecord } from './written.ts';

const schema = shootJsonSchema();
const definitions = schema['$defs'] as Readonly<Record<string, WrittenRecord>>;

test('the schema in the documentation is the one the table makes', () => {
  const file = readFileSync(new URL('../../docs/schema/shoot.schema.json', import.meta.url), 'utf8');
  expect(file === shootJsonSchemaText(), 'npm run docs writes it anew').toBe(true);
});

const TYPES: Readonly<Record<string, (value: Written) => boolean>> = {
  string: (value) => typeof value === 'string',
  number: (value) => typeof value === 'number',
  null: (value) => value === null,
  object: isRecord,
  array: isList,
};

/** The parts of JSON Schema that ours uses, as the standard words them; unknown ones are refused. */
const RULES: Readonly<Record<string, (value: Written, rule: never, whole: WrittenRecord) => boolean>> = {
  type: (value, names: string | string[]) => [names].flat().some((name) => TYPES[name]!(value)),
  enum: (value, values: Written[]) => values.some((item) => isSame(item, value)),
  const: (value, item: Written) => isSame(item, value),
  pattern: (value, pattern: string) => typeof value !== 'string' || new RegExp(pattern, 'u').test(value),
  maxLength: (value, most: number) => typeof value !== 'string' || [...value].length <= most,
  minimum: (value, least: number) => typeof value !== 'number' || value >= least,
  exclusiveMinimum: (value, least: number) => typeof value !== 'number' || value > least,
  maximum: (value, most: number) => typeof value !== 'number' || value <= most,
  multipleOf: (value, unit: number) => typeof value !== 'number' || Number.isInteger(value / unit),
  maxItems: (value, most: number) => !isList(value) || value.length <= most,
  items: (value, rule: WrittenRecord) => !isList(value) || value.every((item) => isValid(item, rule)),
  required: (value, keys: string[]) => !isRecord(value) || keys.every((key) => Object.hasOwn(value, key)),
  properties: (value, rules: Readonly<Record<string, WrittenRecord>>) =>
    !isRecord(value) || Object.entries(rules).every(([key, rule]) => !Object.hasOwn(value, key) || isValid(value[key]!, rule)), // prettier-ignore
  additionalProperties: (value, rule: false | WrittenRecord, whole) => {
    const named = Object.keys((whole['properties'] ?? {}) as object);
    const others = isRecord(value) ? Object.keys(value).filter((key) => !named.includes(key)) : [];
    return others.every((key) => rule !== false && isValid((value as WrittenRecord)[key]!, rule));
  },
  propertyNames: (value, rule: WrittenRecord) => !isRecord(value) || Object.keys(value).every((key) => isValid(key, rule)), // prettier-ignore
  anyOf: (value, rules: WrittenRecord[]) => rules.some((rule) => isValid(value, rule)),
  not: (value, rule: WrittenRecord) => !isValid(value, rule),
  $ref: (value, name: string) => isValid(value, definitions[name.replace('#/$defs/', '')]!),
};
const NOTES = ['$schema', '$id', '$defs', 'title', 'description', 'examples'];

function isValid(value: Written, rule: WrittenRecord): boolean {
  return Object.entries(rule).every(([name, part]) => {
    if (NOTES.includes(name)) return true;
    const holds = RULES[name];
    if (!holds) throw new Error(`the schema uses ${name}`);
    return holds(value, part as never, rule);
  });
}

describe('the schema takes what the reader takes', () => {
  test('the frozen document', () => {
    expect(isValid(readShootText(fixtureText()).written, schema)).toBe(true);
  });

  test('whatever the table can hold', () => {
    fc.assert(
      fc.property(writtenBy(SHOOT), (written) => {
        const shoot = { ...(written as WrittenRecord), longsecond: 1 };
        expect(isValid(shoot, schema)).toBe(true);
      }),
      { numRuns: 100 },
    );
  }, 60_000);

  test('every spelling of every unit, in either case and after every form of number', () => {
    const numbers = ['5', '1.5', '.5', '1/2000', '1⅓', '½', '4 500', '1e3', '-2', '5 1/2'];
    for (const [name, definition] of Object.entries(definitions)) {
      const kindName = name.replace('-with-spread', '') as KindName;
      if (!Object.hasOwn(KINDS, kindName)) continue;
      const kind: Kind = KINDS[kindName];
      const spellings = kind.units.flatMap(({ symbol, also = [] }) => [symbol, ...also]);
      for (const unit of [...spellings, ...spellings.map((text) => text.toLowerCase())])
        for (const number of numbers)
          for (const text of [`${number} ${unit}`, `${number}${unit}`])
            if (parseQuantity(kindName, text).ok) expect(isValid(text, definition), `${name}: ${text}`).toBe(true);
    }
  });

  test('feet and inches, stops in all spellings, bare rates', () => {
    for (const text of [`5'6"`, `5 ft 6½ in`, `6 feet 1 inch`]) expect(isValid(text, definitions['length']!), text).toBe(true); // prettier-ignore
    for (const text of ['T5.6', '5.6⅓', 't/8', 'T5.6 1/3', 5.6]) expect(isValid(text, definitions['tStop']!), String(text)).toBe(true); // prettier-ignore
    for (const text of ['1000', 1000, '24000/1001', '1000 fps']) expect(isValid(text, definitions['rate']!), String(text)).toBe(true); // prettier-ignore
  });

  test('every example it gives', () => {
    for (const [name, definition] of Object.entries(definitions))
      for (const example of (definition['examples'] ?? []) as Written[])
        expect(isValid(example, definition), `${name}: ${JSON.stringify(example)}`).toBe(true);
  });
});

describe('the schema refuses what the reader refuses', () => {
  const shoots = (keys: Written): WrittenRecord => ({ longsecond: 1, shots: { a: keys } });

  test.each<[title: string, written: WrittenRecord]>([
    ['an unknown key', shoots({ shuter: '1 s' })],
    ['a number without its unit', shoots({ depth: 8 })],
    ['text without its unit', shoots({ depth: '8' })],
    ['a unit of another kind', shoots({ depth: '8 klx' })],
    ['a spread where none is taken', shoots({ depth: '8 mm ± 1 mm' })],
    ['a word that is no choice', shoots({ seen: 'dark' })],
    ['a shutter without its unit', shoots({ shutter: '1/2000' })],
    ['a list too long', shoots({ rigs: Array<string>(51).fill('a') })],
    ['an item that says nothing', shoots({ rigs: [null] })],
    ['an id that is none', { longsecond: 1, shots: { '1st': {} } }],
    ['an id that objects answer to', { longsecond: 1, shots: { constructor: {} } }],
    ['a share above one', shoots({ reframe: 25 })],
    ['half a take', shoots({ takes: 1.5 })],
    ['a time of day beyond the day', { longsecond: 1, shoot: { day: { call: '36:00' } } }],
    ['a section of another kind', { longsecond: 1, kit: [] }],
  ])('%s', (_title, written) => {
    expect(readShoot(written).problems).not.toEqual([]);
    expect(isValid(written, schema)).toBe(false);
  });

  test('a document without its version, or of another', () => {
    expect(isValid({ shots: {} }, schema)).toBe(false);
    expect(isValid({ longsecond: 2 }, schema)).toBe(false);
  });
});
