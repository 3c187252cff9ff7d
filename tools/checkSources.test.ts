import { describe, expect, test } from 'vitest';
import { sourceComplaints } from './checkSources.mjs';
import { readSources, sourcesModule } from './sources.mjs';
import { withTree } from './tree.mjs';

const LIST = `
dof-paper:
  title: A paper on depth of field
  seen: opened
ev-table:
  title: A table of exposure values
  seen: excerpt
`;
const CITING = `/**
 * A law.
 *
 * @source dof-paper the equation
 */
export const given = { sources: ['dof-paper', 'ev-table'] };
`;

async function complaints(files: Readonly<Record<string, string>>, list = LIST): Promise<readonly string[]> {
  const made = await sourcesModule(readSources(list).sources);
  return withTree(
    { 'docs/sources.yaml': list, 'src/laws/sources.ts': made, 'src/laws/depth.ts': CITING, ...files },
    sourceComplaints,
  );
}

test('a tree whose laws cite what is listed, and no more is listed, has no complaint', async () => {
  expect(await complaints({})).toEqual([]);
});

describe('citations', () => {
  test('a key that a description cites and nobody lists is named with its line', async () => {
    const law = "export const given = {\n  sources: ['ev-tabel'],\n};\n";
    expect(await complaints({ 'src/laws/light.ts': law })).toEqual([
      'src/laws/light.ts:2 cites "ev-tabel", which docs/sources.yaml does not list',
    ]);
  });

  test.each([
    ['a head comment', '/**\n * A law.\n * @source lost-book page 3\n */\nexport const x = 1;\n', 3],
    [
      'a one-line comment before a constant',
      'export const x = 1;\n/** For a dome. @source lost-book */\nexport const y = 2;\n',
      2,
    ],
    ['a comment at the end of a line', 'export const x = 1; // @source lost-book\n', 1],
    ['a comment inside a list', 'export const x = [\n  1, // @source lost-book\n  2,\n];\n', 2],
    ['a comment that ends the file', 'export const x = 1;\n/* @source lost-book */\n', 2],
  ])('%s counts', async (_, text, line) => {
    expect(await complaints({ 'src/laws/x.ts': text })).toEqual([
      `src/laws/x.ts:${line} cites "lost-book", which docs/sources.yaml does not list`,
    ]);
  });

  test('a published check cites its source too', async () => {
    const text =
      "import { published } from '../../test/published.ts';\npublished('x', f, [{ source: 'lost-book' }]);\n";
    expect(await complaints({ 'src/laws/x.test.ts': text })).toEqual([
      'src/laws/x.test.ts:2 cites "lost-book", which docs/sources.yaml does not list',
    ]);
  });

  test('the words of a string are no citation', async () => {
    expect(await complaints({ 'src/laws/x.ts': "export const x = 'see @source lost-book';\n" })).toEqual([]);
  });
});

describe('the list', () => {
  const EXTRA = `${LIST}never-cited:\n  title: A book nobody opens\n  seen: memory\n`;

  test('a source that is cited nowhere is named', async () => {
    expect(await complaints({}, EXTRA)).toEqual(['docs/sources.yaml: never-cited is cited nowhere']);
  });

  test.each([
    ['a page of docs', 'docs/guide.md', 'The figure is from never-cited, page 2.\n'],
    ['a test', 'test/shoot.test.ts', "export const from = 'never-cited';\n"],
    ['code outside the laws', 'src/document/kit.ts', "export const from = { source: 'never-cited' };\n"],
  ])('a mention in %s is enough', async (_, name, text) => {
    expect(await complaints({ [name]: text }, EXTRA)).toEqual([]);
  });

  test('a longer key that holds a shorter one is no mention of it', async () => {
    expect(await complaints({ 'docs/guide.md': 'See never-cited-again.\n' }, EXTRA)).toHaveLength(1);
  });

  test.each([
    ['no title', 'dof-paper:\n  seen: opened\n', 'dof-paper has no title'],
    ['a title that YAML took for a map', 'dof-paper:\n  title: { A: B }\n  seen: opened\n', 'dof-paper has no title'],
    ['no word on how it was seen', 'dof-paper:\n  title: T\n', 'dof-paper is seen "undefined"'],
    ['another word', 'dof-paper:\n  title: T\n  seen: read\n', 'which is none of opened, excerpt, memory, practice'],
    ['nothing at all', 'dof-paper:\n', 'dof-paper has no title'],
    ['a key in capitals', 'DoF:\n  title: T\n  seen: opened\n', 'the key DoF is not written in lower case'],
    ['a key listed twice', `${LIST}ev-table:\n  title: T\n  seen: opened\n`, 'docs/sources.yaml:8 cannot be read'],
  ])('an entry with %s is refused', (_, list, complaint) => {
    expect(readSources(list).complaints.join('\n')).toContain(complaint);
  });
});

test('a module that is not what the list makes it is named, with the command that makes it anew', async () => {
  expect(await complaints({ 'src/laws/sources.ts': 'export const SOURCES = {};\n' })).toEqual([
    'src/laws/sources.ts is not what docs/sources.yaml makes it: run npm run sources',
  ]);
});
