import { describe, expect, expectTypeOf, test } from 'vitest';
import { kindOfSuffix, unitSuffix } from '../base/kinds.ts';
import type { Rational } from '../base/rational.ts';
import { fieldAt, isCollectionShape, readKeyOf } from './fieldAt.ts';
import { spreadKey } from './read.ts';
import { SHOOT, type Shoot, type Shot, type ShotDefaults } from './schema.ts';
import type { Field, RecordShape, Shape, Shutter, Size } from './shape.ts';

describe('the read types that the table gives', () => {
  test('numbers are named with their units, and may be missing', () => {
    expectTypeOf<Shot['depth_m']>().toEqualTypeOf<number | undefined>();
    expectTypeOf<Shot['takeCount']>().toEqualTypeOf<number | undefined>();
    expectTypeOf<Shot['shutter']>().toEqualTypeOf<Shutter | undefined>();
    expectTypeOf<Shot['rate']>().toEqualTypeOf<Rational | undefined>();
    expectTypeOf<Shoot['kit']['cameras'][string]['activeArea']>().toEqualTypeOf<Size | undefined>();
  });

  test('what may carry a spread has a key for it, and nothing else has', () => {
    expectTypeOf<Shot['action']['speedSpread_m_per_s']>().toEqualTypeOf<number | undefined>();
    expectTypeOf<Shoot['kit']['cameras'][string]['readNoiseSpread_e']>().toEqualTypeOf<number | undefined>();
    expectTypeOf<Shot>().not.toHaveProperty('depthSpread_m');
  });

  test('maps, lists and records are there even when they are not written', () => {
    expectTypeOf<Shot['rigs']>().toEqualTypeOf<readonly string[]>();
    expectTypeOf<Shoot['shots']>().toEqualTypeOf<Readonly<Record<string, Shot>>>();
    expectTypeOf<Shot['hero']['product']>().toEqualTypeOf<string | undefined>();
  });

  test('a choice is one of its words', () => {
    expectTypeOf<Shot['seen']>().toEqualTypeOf<'lit-on' | 'lit-through' | 'by-reflection' | undefined>();
  });

  test('every record may list what could not be read', () => {
    expectTypeOf<Shot['unread']>().toEqualTypeOf<readonly string[] | undefined>();
    expectTypeOf<Shoot['shoot']['day']['unread']>().toEqualTypeOf<readonly string[] | undefined>();
  });

  test('a shot has all that its defaults have', () => {
    expectTypeOf<Shot>().toExtend<ShotDefaults>();
  });
});

interface Row {
  readonly at: string;
  readonly key: string;
  readonly field: Field;
}

function recordsOf(of: Shape, at = ''): readonly { readonly at: string; readonly of: RecordShape }[] {
  if (of.shape === 'map' || of.shape === 'list') return recordsOf(of.of, `${at}/x`);
  if (of.shape !== 'record') return [];
  const inner = Object.entries(of.fields).flatMap(([key, field]) => recordsOf(field.of, `${at}/${key}`));
  return [{ at, of }, ...inner];
}

const records = recordsOf(SHOOT);
const rows: readonly Row[] = records.flatMap(({ at, of }) =>
  Object.entries(of.fields).map(([key, field]) => ({ at: `${at}/${key}`, key, field })),
);

describe('the table', () => {
  test('has rows', () => {
    expect(rows.length).toBeGreaterThan(100);
  });

  test('every quantity is read under a key that ends in a unit of its kind', () => {
    for (const { at, field } of rows) {
      if (field.of.shape !== 'quantity') continue;
      const kind = kindOfSuffix(unitSuffix(field.readAs));
      if (kind === undefined) expect(field.of.kind, at).toMatch(/^[ft]Stop$/);
      else expect(kind, at).toBe(field.of.kind);
    }
  });

  test('every plain number says by its name what it is', () => {
    const ends = { ratio: /(?:Ratio|Fraction|Factor|Price)$/, fraction: /Fraction$/, count: /(?:Count|version)$/, isoSpeed: /isoSpeed$/i }; // prettier-ignore
    for (const { at, field } of rows)
      if (field.of.shape === 'number') expect(field.readAs, at).toMatch(ends[field.of.as]);
  });

  test('no two keys of a record are read under one name, spreads included', () => {
    for (const { at, of } of records) {
      const names = Object.entries(of.fields).flatMap(([key, field]) => {
        const name = readKeyOf(key, field);
        return field.of.shape === 'quantity' && field.of.spread ? [name, spreadKey(name)] : [name];
      });
      expect(new Set(['unread', ...names]).size, at).toBe(names.length + 1);
    }
  });

  test('every collection is read under its written key, so that paths to ids are the same in both forms', () => {
    for (const { at, field } of rows) if (isCollectionShape(field.of)) expect(field.readAs, at).toBe('');
  });

  test('every reference leads to a map of ids', () => {
    for (const { at, field } of rows) {
      const of = field.of.shape === 'list' ? field.of.of : field.of;
      if (of.shape === 'reference') expect(fieldAt(`/${of.to.replaceAll('.', '/')}`)?.of.shape, at).toBe('map');
    }
  });

  test('every row is said in a sentence or less', () => {
    for (const { at, field } of rows) expect(field.says, at).toMatch(/^[A-Z].*\.$/s);
  });
});

describe('the field at a pointer', () => {
  test.each([
    ['', 'record', ''],
    ['/shots', 'map', ''],
    ['/shots/pour-1', 'record', ''],
    ['/shots/pour-1/depth', 'quantity', 'depth_m'],
    ['/shots/pour-1/speed/knots/1/at', 'quantity', 'screenTime_s'],
    ['/shots/pour-1/rigs/-', 'reference', ''],
    ['/kit/cameras/tall/modes/full/rate', 'quantity', 'maxRate_fps'],
    ['/shoot/day/meals/0', 'clock', ''],
  ])('%s is a %s', (pointer, shape, readAs) => {
    expect(fieldAt(pointer)).toMatchObject({ of: { shape }, readAs });
  });

  test.each(['/nix', '/shots/pour-1/nix', '/shots/pour-1/depth/deeper', '/shoot/day/meals/x', 'shots', '/toString'])(
    '%s is none',
    (pointer) => {
      expect(fieldAt(pointer)).toBeUndefined();
    },
  );
});
