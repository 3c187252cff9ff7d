/**
 * docs/safety.md as data, for screens that print a caution where a law names it. `npm run sources` writes the module
 * anew.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import * as prettier from 'prettier';
import { isProgram, ROOT } from './run.mjs';

export const CAUTIONS_MODULE = 'src/web/places/reckoner/cautions.ts';

const keyOf = (/** @type {string} */ heading) =>
  heading
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');

/**
 * The sections of the page by key, and its paragraph on what they are and are not.
 * @param {string} markdown
 */
export function readCautions(markdown) {
  const [head = '', ...sections] = markdown.split(/^## /m);
  const whatTheyAre = (head.trim().split(/\n\n+/).at(-1) ?? '').replace(/^This page is/, 'This is');
  const cautions = sections.map((section) => {
    const [title = '', ...lines] = section.split('\n').filter((line) => line.trim() !== '');
    const points = lines.filter((line) => line.startsWith('- ')).map((line) => line.slice(2));
    const says = lines.filter((line) => !line.startsWith('- ')).join(' ');
    return /** @type {const} */ ([keyOf(title), { title, says, points }]);
  });
  return { whatTheyAre, cautions: Object.fromEntries(cautions) };
}

/**
 * The text of the module for a safety page.
 * @param {string} markdown
 */
export async function cautionsModule(markdown) {
  const { whatTheyAre, cautions } = readCautions(markdown);
  const module = `/** The cautions that laws name. Made from docs/safety.md by \`npm run sources\`: edit that file, not this one. */

export interface Caution {
  readonly title: string;
  readonly says: string;
  readonly points: readonly string[];
}

export const CAUTIONS: Readonly<Record<string, Caution>> = ${JSON.stringify(cautions)};

/** What every caution is and is not. */
export const WHAT_CAUTIONS_ARE = ${JSON.stringify(whatTheyAre)};
`;
  const style = await prettier.resolveConfig(join(ROOT, CAUTIONS_MODULE));
  return prettier.format(module, { ...style, parser: 'typescript' });
}

if (isProgram(import.meta.url)) {
  const page = readFileSync(join(ROOT, 'docs/safety.md'), 'utf8');
  writeFileSync(join(ROOT, CAUTIONS_MODULE), await cautionsModule(page));
}
