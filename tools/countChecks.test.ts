import { describe, expect, test } from 'vitest';
import { countChecks, total, wasRead } from './countChecks.mjs';
import { ROOT } from './run.mjs';
import { withTree } from './tree.mjs';

async function counted(text: string, name = 'src/laws/light.test.ts') {
  return withTree({ [name]: text }, (root) => {
    const { bySource, complaints } = countChecks(root);
    return { bySource: Object.fromEntries(bySource), complaints };
  });
}

describe('counting', () => {
  test.each([
    [
      'rows written out',
      `published('f', f, [{ source: 'a', at: 'x' }, { source: 'b' }, { source: 'a' }]);`,
      { a: 2, b: 1 },
    ],
    ['a constant', `const rows = [{ source: 'a' }];\npublished('f', f, rows);`, { a: 1 }],
    ['rows mapped from an array', `published('f', f, [1, 2, 3].map((given) => ({ source: 'a', given })));`, { a: 3 }],
    [
      'rows mapped from a constant',
      `const N = [1, 2];\npublished('f', f, N.map((given) => ({ source: 'a', given })));`,
      { a: 2 },
    ],
    [
      'rows mapped from words',
      `const W = '1 2 3 4'.split(' ');\npublished('f', f, W.map((w) => ({ source: 'a', w })));`,
      { a: 4 },
    ],
    [
      'rows spread',
      `const N = [1, 2];\npublished('f', f, [{ source: 'b' }, ...N.map((n) => ({ source: 'a', n }))]);`,
      { a: 2, b: 1 },
    ],
    [
      'rows made by a function of the file',
      `const row = (n) => ({ source: 'a', n });\npublished('f', f, [row(1), row(2)]);`,
      { a: 2 },
    ],
    [
      'the nearest of two constants of one name',
      `const N = [1];\ndescribe('x', () => {\n  const N = [1, 2, 3];\n  published('f', f, N.map((n) => ({ source: 'a', n })));\n});`,
      { a: 3 },
    ],
    ['calls of other functions', `other('f', f, [{ source: 'a' }]);`, {}],
  ])('%s', async (_, text, bySource) => {
    expect(await counted(text)).toEqual({ bySource, complaints: [] });
  });

  test('only tests are read', async () => {
    expect(await counted(`published('f', f, [{ source: 'a' }]);`, 'src/laws/light.ts')).toEqual({
      bySource: {},
      complaints: [],
    });
  });

  test.each([
    ['rows from elsewhere', `published('f', f, rows);`],
    ['rows made by a function from elsewhere', `published('f', f, [rowFor(3)]);`],
    ['a source that is not written out', `published('f', f, [{ source: key }]);`],
    ['rows mapped from what is not in the file', `published('f', f, ALL.map((given) => ({ source: 'a', given })));`],
    ['no rows at all', `published('f', f);`],
  ])('%s cannot be counted and are named with their line', async (_, text) => {
    expect(await counted(`\n${text}`)).toEqual({
      bySource: {},
      complaints: ['src/laws/light.test.ts:2 has published checks that cannot be counted'],
    });
  });
});

describe('the laws', () => {
  test('are held against at least 120 values from sources that were read', () => {
    const { bySource, complaints } = countChecks(ROOT, ['src/laws']);
    expect(complaints).toEqual([]);
    expect(total(bySource, wasRead(ROOT))).toBeGreaterThanOrEqual(120);
  });

  test('rest on many sources, none of them on more than a quarter of the checks', () => {
    const { bySource } = countChecks(ROOT, ['src/laws']);
    expect(bySource.size).toBeGreaterThanOrEqual(40);
    expect(Math.max(...bySource.values()) / total(bySource)).toBeLessThan(0.25);
  });
});
