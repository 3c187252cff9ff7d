/**
 * docs/sources.yaml as data, and the module made of it: laws, plans and screens name a source by key and say how it was
 * seen without a YAML reader. `npm run sources` writes the module anew.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import * as prettier from 'prettier';
import { LineCounter, parseDocument } from 'yaml';
import { isProgram, ROOT } from './run.mjs';

export const SEEN = /** @type {const} */ (['opened', 'excerpt', 'memory', 'practice']);

/**
 * @typedef {{ readonly title: string, readonly seen: string }} Source
 * @typedef {{ readonly sources: ReadonlyMap<string, Source>, readonly complaints: readonly string[] }} ListedSources
 */

/**
 * The sources listed in YAML text, and what is wrong with the list.
 * @param {string} text
 * @returns {ListedSources}
 */
export function readSources(text) {
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines });
  /** @type {string[]} */
  const complaints = document.errors.map(
    ({ message, pos }) => `docs/sources.yaml:${lines.linePos(pos[0]).line} cannot be read: ${message}`,
  );
  /** @type {Map<string, Source>} */
  const sources = new Map();
  /** @type {unknown} */
  const listed = complaints.length > 0 ? {} : (document.toJS() ?? {});
  for (const [key, entry] of Object.entries(/** @type {Record<string, unknown>} */ (listed))) {
    const { title, seen } = /** @type {Record<string, unknown>} */ (entry ?? {});
    if (!/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/.test(key))
      complaints.push(`docs/sources.yaml: the key ${key} is not written in lower case with hyphens`);
    if (typeof title !== 'string' || title.trim() === '')
      complaints.push(`docs/sources.yaml: ${key} has no title (one with a colon in it needs quotes)`);
    if (typeof seen !== 'string' || !SEEN.some((word) => word === seen))
      complaints.push(`docs/sources.yaml: ${key} is seen "${String(seen)}", which is none of ${SEEN.join(', ')}`);
    sources.set(key, { title: String(title), seen: String(seen) });
  }
  return { sources, complaints };
}

/**
 * The text of src/laws/sources.ts for these sources.
 * @param {ReadonlyMap<string, Source>} sources
 */
export async function sourcesModule(sources) {
  const entries = [...sources]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, { title, seen }]) => `${JSON.stringify(key)}: { title: ${JSON.stringify(title)}, seen: '${seen}' },`);
  const module = `/** The sources that laws cite. Made from docs/sources.yaml by \`npm run sources\`: edit that file, not this one. */

export interface Source {
  readonly title: string;
  /** opened: the text was read; excerpt: a part or a page quoting it; memory: not looked up; practice: no source. */
  readonly seen: 'opened' | 'excerpt' | 'memory' | 'practice';
}

export const SOURCES: Readonly<Record<string, Source>> = {
${entries.join('\n')}
};

/** Whether a figure resting on these sources alone is assumed: none of them was read, whole or in part. */
export function isAssumed(keys: readonly string[]): boolean {
  return !keys.some((key) => SOURCES[key]?.seen === 'opened' || SOURCES[key]?.seen === 'excerpt');
}
`;
  const style = await prettier.resolveConfig(join(ROOT, 'src/laws/sources.ts'));
  return prettier.format(module, { ...style, parser: 'typescript' });
}

if (isProgram(import.meta.url)) {
  const { sources, complaints } = readSources(readFileSync(join(ROOT, 'docs/sources.yaml'), 'utf8'));
  if (complaints.length > 0) {
    console.error(complaints.join('\n'));
    process.exitCode = 1;
  } else {
    writeFileSync(join(ROOT, 'src/laws/sources.ts'), await sourcesModule(sources));
  }
}
