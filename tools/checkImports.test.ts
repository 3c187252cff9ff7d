import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { importComplaints } from './checkImports.mjs';
import { LAYERS } from './layers.mjs';
import { ROOT } from './run.mjs';
import { withTree } from './tree.mjs';

const PLAN = { 'src/plan/plan.ts': 'export interface Plan { readonly shots: number }\nexport const plan = 1;\n' };

function complaints(files: Readonly<Record<string, string>>): Promise<readonly string[]> {
  return withTree({ ...PLAN, ...files }, (folder) => importComplaints(join(folder, 'src')));
}

describe('imports that go up', () => {
  test('a law that imports the plan is named with file, line, target and what it may see', async () => {
    expect(await complaints({ 'src/laws/light/web.ts': "\nimport { plan } from '../../plan/plan.ts';\n" })).toEqual([
      'src/laws/light/web.ts:2 must not import plan/plan.ts: laws/ sees only base',
    ]);
  });

  test.each([
    ['an import of types only', "import type { Plan } from '../plan/plan.ts';"],
    ['an inline type import', "import { type Plan } from '../plan/plan.ts';"],
    ['an import type in an annotation', "export let it: import('../plan/plan.ts').Plan;"],
    ['a re-export', "export { plan } from '../plan/plan.ts';"],
    ['a re-export of everything', "export * from '../plan/plan.ts';"],
    ['an import made while running', "export const later = () => import('../plan/plan.ts');"],
    ['a worker started by its address', "export const at = new URL('../plan/plan.ts', import.meta.url);"],
    ['a reference', '/// <reference path="../plan/plan.ts" />'],
  ])('%s counts', async (_, line) => {
    expect(await complaints({ 'src/laws/stop.ts': `${line}\n` })).toEqual([
      'src/laws/stop.ts:1 must not import plan/plan.ts: laws/ sees only base',
    ]);
  });

  test('an import that only stands in a comment or a string does not count', async () => {
    const text = "// import { plan } from '../plan/plan.ts';\nexport const words = \"from '../plan/plan.ts'\";\n";
    expect(await complaints({ 'src/laws/stop.ts': text })).toEqual([]);
  });

  test('an import by a name worked out at run time is refused, as nothing can be said of it', async () => {
    const text = 'export const load = (name: string): Promise<unknown> => import(name);\n';
    expect(await complaints({ 'src/web/load.ts': text })).toEqual([
      'src/web/load.ts:1 imports by a name worked out at run time, which cannot be checked',
    ]);
  });

  test('screens and server do not see each other', async () => {
    const found = await complaints({
      'src/server/app.ts': "import '../web/main.ts';\nexport const app = 1;\n",
      'src/web/main.ts': "import { app } from '../server/app.ts';\n",
    });
    expect(found.map((line) => line.split(':')[0])).toEqual(['src/server/app.ts', 'src/web/main.ts']);
  });
});

describe('packages', () => {
  test.each([
    ['laws', 'zod'],
    ['laws', 'node:fs'],
    ['document', 'zod'],
    ['store', 'hono'],
    ['web', 'better-sqlite3'],
    ['web', 'react-dom-extra'],
    ['cli', 'fs'],
  ])('%s/ may not use %s, not even its types', async (folder, name) => {
    const found = await complaints({ [`src/${folder}/x.ts`]: `import type { It } from '${name}';\n` });
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(new RegExp(`^src/${folder}/x.ts:1 must not import the package ${name}: `));
  });

  test.each([
    ['document', 'yaml'],
    ['store', 'node:fs/promises'],
    ['server', '@hono/node-server/serve-static'],
    ['web', 'react-dom/client'],
    ['web', '@fontsource-variable/some-face/index.css'],
  ])('%s/ may use %s', async (folder, name) => {
    expect(await complaints({ [`src/${folder}/x.ts`]: `import '${name}';\n` })).toEqual([]);
  });

  test('types brought in by reference are refused: the compiler settings say which are there', async () => {
    expect(await complaints({ 'src/laws/x.ts': '/// <reference types="node" />\nexport const x = 1;\n' })).toEqual([
      'src/laws/x.ts:1 must not bring in types by reference (node): tsconfig files say which are there',
    ]);
  });
});

describe('circles', () => {
  test('files of one folder that import each other are named in order, types included', async () => {
    const found = await complaints({
      'src/laws/a.ts': "import type { B } from './b.ts';\nexport type A = B;\n",
      'src/laws/b.ts': "import type { C } from './deep/c.ts';\nexport type B = C;\n",
      'src/laws/deep/c.ts': "import type { A } from '../a.ts';\nexport type C = A;\n",
    });
    expect(found).toEqual([
      'src/laws/a.ts → laws/b.ts → laws/deep/c.ts → laws/a.ts: these files import each other in a circle',
    ]);
  });

  test('two ways down to one file are no circle', async () => {
    const found = await complaints({
      'src/laws/a.ts': "import './b.ts';\nimport './c.ts';\n",
      'src/laws/b.ts': "import './d.ts';\n",
      'src/laws/c.ts': "import './d.ts';\n",
      'src/laws/d.ts': 'export const d = 1;\n',
    });
    expect(found).toEqual([]);
  });
});

describe('tests beside the code', () => {
  test('a test may use any package and leave src/', async () => {
    const text = "import { expect } from 'vitest';\nimport '../../test/published.ts';\nimport '../../demo/shoot.ts';\n";
    expect(await complaints({ 'src/laws/x.test.ts': text, 'src/web/y.test.tsx': text })).toEqual([]);
  });

  test('a test still may not look up', async () => {
    expect(await complaints({ 'src/laws/x.test.ts': "import { plan } from '../plan/plan.ts';\n" })).toHaveLength(1);
  });

  test('code that is no test may neither leave src/ nor import a test', async () => {
    const found = await complaints({
      'src/laws/x.ts': "import '../../test/published.ts';\nimport './y.test.ts';\n",
      'src/laws/y.test.ts': 'export const y = 1;\n',
    });
    expect(found).toEqual([
      'src/laws/x.ts:1 must not leave src/ for ../../test/published.ts',
      'src/laws/x.ts:2 must not import the test laws/y.test.ts',
    ]);
  });
});

test('a folder nobody listed and a file outside all folders are named', async () => {
  expect(await complaints({ 'src/extra/x.ts': '', 'src/loose.ts': '' })).toEqual([
    'src/extra/ is not in tools/layers.mjs',
    'src/loose.ts lies outside every folder of tools/layers.mjs',
  ]);
});

test('each folder sees only folders listed before it, so no circle of folders can be written down', () => {
  const names = Object.keys(LAYERS);
  for (const [name, { sees }] of Object.entries(LAYERS)) {
    for (const seen of sees) {
      expect(names.indexOf(seen), `${name} sees ${seen}`).toBeGreaterThanOrEqual(0);
      expect(names.indexOf(seen), `${name} sees ${seen}`).toBeLessThan(names.indexOf(name));
    }
  }
});

test('the sources themselves import one way', () => {
  expect(importComplaints(join(ROOT, 'src'))).toEqual([]);
});
