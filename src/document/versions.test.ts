import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { fixtureText } from '../../test/documents.ts';
import { applyPatch, invertPatch } from './patch.ts';
import { DOCUMENT_VERSION, SHOOT } from './schema.ts';
import type { Field, Shape } from './shape.ts';
import { readShootText } from './text.ts';
import { editText } from './textEdit.ts';
import { MIGRATIONS, migrate, migrationPatch, versionOf, type Migration } from './versions.ts';
import { isList, isRecord, type Written } from './written.ts';

const released = Array.from({ length: DOCUMENT_VERSION }, (_, i) => i + 1);
const fixtures = readdirSync(new URL('./fixtures/', import.meta.url)).sort();

/** A value and all that lies in it, made unchangeable. */
function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null) {
    Object.values(value).forEach(frozen);
    Object.freeze(value);
  }
  return value;
}

describe('released versions', () => {
  test('each has a frozen document, and there is no document of another', () => {
    expect(fixtures).toEqual(released.map((version) => `shoot-v${version}.yaml`));
  });

  test('each but the newest has one step up', () => {
    expect(MIGRATIONS.map(({ from }) => from)).toEqual(released.slice(0, -1));
  });

  test.each(released)(
    'the document of version %d is read to the newest without a problem, and not changed',
    (version) => {
      const text = fixtureText(version);
      const { written, problems } = readShootText(text);
      expect(versionOf(written)).toBe(version);
      expect(problems).toEqual([]);
      expect(versionOf(migrate(frozen(written)))).toBe(DOCUMENT_VERSION);
      expect(readFileSync(new URL(`./fixtures/shoot-v${version}.yaml`, import.meta.url), 'utf8')).toBe(text);
    },
  );
});

/** Fields of the table with the values a document writes for them; fields that several records share are one. */
function usesOf(of: Shape, values: readonly Written[], uses = new Map<Field, Written[]>()): Map<Field, Written[]> {
  if (of.shape === 'list') usesOf(of.of, values.filter(isList).flat(), uses);
  if (of.shape === 'map') usesOf(of.of, values.filter(isRecord).flatMap(Object.values<Written>), uses);
  if (of.shape !== 'record') return uses;
  for (const [key, field] of Object.entries(of.fields)) {
    const used = values.filter(isRecord).flatMap((record) => (Object.hasOwn(record, key) ? [[record[key]!]] : []));
    uses.set(field, [...(uses.get(field) ?? []), ...used.flat()]);
    usesOf(field.of, used.flat(), uses);
  }
  return uses;
}

test('the document of the newest version uses every key of the table', () => {
  const { written } = readShootText(fixtureText(DOCUMENT_VERSION));
  const unused = [...usesOf(SHOOT, [written])].filter(([, values]) => values.length === 0);
  const names = unused.map(([{ readAs, says }]) => `${readAs}: ${says}`);
  expect(names, 'write these into the newest fixture').toEqual([]);
});

describe('steps between versions', () => {
  const steps: readonly Migration[] = [
    { from: 1, patch: () => [{ op: 'move', from: '/shoot/place', path: '/shoot/where' }, { op: 'replace', path: '/longsecond', value: 2 }] },
    { from: 2, patch: (written) => [{ op: 'add', path: '/steps', value: Object.keys(written as object) }, { op: 'replace', path: '/longsecond', value: 3 }] },
  ]; // prettier-ignore
  const text = 'longsecond: 1\nshoot:\n  title: x # kept\n  place: y\n';

  test('are made in order, each seeing what the one before made', () => {
    const { written } = readShootText(text);
    expect(migrate(frozen(written), steps)).toEqual({
      longsecond: 3,
      shoot: { title: 'x', where: 'y' },
      steps: ['longsecond', 'shoot'],
    });
  });

  test('are edits, so that they can be taken back', () => {
    const { written } = readShootText(text);
    const patch = migrationPatch(written, steps);
    expect(applyPatch(migrate(written, steps), invertPatch(written, patch))).toEqual(written);
  });

  test('leave the comments of a text they are carried into', () => {
    const { written } = readShootText(text);
    const patch = migrationPatch(written, steps).filter(({ path }) => path !== '/longsecond');
    expect(editText(text, patch).text).toContain('title: x # kept');
  });

  test('a document of the newest version is the same object', () => {
    const { written } = readShootText(text);
    expect(migrate(written)).toBe(written);
  });
});
