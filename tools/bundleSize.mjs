/** The weight of the first screen: the script that a browser loads before anything is shown, compressed. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { isProgram, ROOT } from './run.mjs';

export const FIRST_SCREEN_LIMIT_B = 300_000;

/** @typedef {{ readonly file: string, readonly isEntry?: boolean, readonly imports?: readonly string[] }} Chunk */

/**
 * The script files of the first screen: each entry and all that it imports statically.
 * @param {Readonly<Record<string, Chunk>>} manifest
 * @returns {readonly string[]}
 */
export function firstScreenFiles(manifest) {
  /** @type {Set<string>} */
  const files = new Set();
  const add = (/** @type {string} */ key) => {
    const chunk = manifest[key];
    if (!chunk) throw new Error(`The manifest of the build has no entry for ${key}`);
    if (files.has(chunk.file)) return;
    files.add(chunk.file);
    for (const next of chunk.imports ?? []) add(next);
  };
  for (const [key, { isEntry }] of Object.entries(manifest)) if (isEntry) add(key);
  return [...files].filter((file) => /\.m?js$/.test(file));
}

/**
 * Weighs a built web folder.
 * @param {string} folder
 */
export function weighFirstScreen(folder) {
  const text = readFileSync(join(folder, '.vite/manifest.json'), 'utf8');
  const manifest = /** @type {Record<string, Chunk>} */ (JSON.parse(text));
  const files = firstScreenFiles(manifest).map((file) => ({
    file,
    size_B: gzipSync(readFileSync(join(folder, file)), { level: 9 }).length,
  }));
  return { files, total_B: files.reduce((sum, { size_B }) => sum + size_B, 0) };
}

/** @returns {Promise<import('./run.mjs').Ended>} */
export function checkBundleSize() {
  const { files, total_B } = weighFirstScreen(join(ROOT, 'dist/web'));
  const list = files.map(({ file, size_B }) => `${String(size_B).padStart(8)} B  ${file}`).join('\n');
  const verdict = `script of the first screen: ${total_B} B gzip, limit ${FIRST_SCREEN_LIMIT_B} B`;
  const code = files.length > 0 && total_B < FIRST_SCREEN_LIMIT_B ? 0 : 1;
  return Promise.resolve({ code, output: `${list}\n${verdict}` });
}

if (isProgram(import.meta.url)) {
  const { code, output } = await checkBundleSize();
  console.log(output);
  process.exitCode = code;
}
