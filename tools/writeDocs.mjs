/** `npm run docs`: writes the pages and schemas of docs/ that are made from the code as built. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { build, isBuilt } from './build.mjs';
import { pages } from './docs/pages.mjs';
import { isProgram, ROOT } from './run.mjs';

/** A built module; its type is that of its source. */
async function built(/** @type {string} */ path) {
  /** @type {unknown} */
  const module = await import(new URL(`../dist/node/${path}.js`, import.meta.url).href);
  return /** @type {any} */ (module);
}

async function writeDocs() {
  if (!isBuilt() && !(await build())) {
    console.error('The build failed, so the pages cannot be made');
    process.exitCode = 1;
    return;
  }
  const made = await pages({
    kinds: await built('base/kinds'),
    quantity: await built('base/quantity'),
    schema: await built('document/schema'),
    catalogue: await built('laws/catalogue'),
    law: await built('laws/law'),
    reckon: await built('laws/reckon'),
    sources: await built('laws/sources'),
    command: await built('cli/verbs/reckon'),
    replies: await built('turnover/planSchema'),
    shootSchema: await built('document/jsonSchema'),
  });
  for (const [path, text] of made) {
    const file = join(ROOT, path);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
    console.log(path);
  }
}

if (isProgram(import.meta.url)) await writeDocs();
