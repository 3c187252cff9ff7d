import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { firstScreenFiles, weighFirstScreen } from './bundleSize.mjs';
import { withTree } from './tree.mjs';

const MANIFEST = {
  'index.html': { file: 'assets/main.js', isEntry: true, imports: ['_parts.js'], dynamicImports: ['places/Light.tsx'] },
  '_parts.js': { file: 'assets/parts.js', imports: ['_base.js'] },
  '_base.js': { file: 'assets/base.js', imports: ['_parts.js'] },
  'places/Light.tsx': { file: 'assets/light.js', imports: ['_parts.js'] },
  'face.woff2': { file: 'assets/face.woff2' },
};

describe('the script of the first screen', () => {
  test('is the entry and all that it imports statically, each once', () => {
    expect(firstScreenFiles(MANIFEST)).toEqual(['assets/main.js', 'assets/parts.js', 'assets/base.js']);
  });

  test('leaves out what is loaded later, styles and fonts', () => {
    const withStyle = { ...MANIFEST, 'style.css': { file: 'assets/main.css', isEntry: true } };
    expect(firstScreenFiles(withStyle)).toEqual(firstScreenFiles(MANIFEST));
  });

  test('is refused when the manifest names a part it does not hold', () => {
    const torn = { 'index.html': { file: 'a.js', isEntry: true, imports: ['_lost.js'] } };
    expect(() => firstScreenFiles(torn)).toThrow('_lost.js');
  });

  test('weighs what its files come to when compressed', async () => {
    const script = 'export const numbers = [1, 2, 3];'.repeat(50);
    const files = Object.fromEntries(
      ['main', 'parts', 'base', 'light'].map((name) => [`assets/${name}.js`, script + name]),
    );
    const { total_B } = await withTree({ '.vite/manifest.json': JSON.stringify(MANIFEST), ...files }, weighFirstScreen);
    const expected_B = ['main', 'parts', 'base'].reduce(
      (sum, name) => sum + gzipSync(script + name, { level: 9 }).length,
      0,
    );
    expect(total_B).toBe(expected_B);
  });
});
