/** Everything in docs/ that is made from the code, by its path below the repository's root, as it stands in the file. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as prettier from 'prettier';
import { ROOT } from '../run.mjs';
import { lawsPage } from './lawsPage.mjs';
import { shootPage } from './shootPage.mjs';

/** A whole shoot to begin with, which the tests read and plan. */
export const FIRST_SHOOT = 'docs/guide/first-shoot.yaml';

/**
 * The modules that pages are made from: built ones for the tool, sources for the test.
 * @typedef {object} Made
 * @property {Pick<typeof import('../../src/base/kinds.ts'), 'KINDS'>} kinds
 * @property {Pick<typeof import('../../src/base/quantity.ts'), 'writeQuantity'>} quantity
 * @property {Pick<typeof import('../../src/document/schema.ts'), 'SHOOT'>} schema
 * @property {typeof import('../../src/laws/catalogue.ts')} catalogue
 * @property {typeof import('../../src/laws/law.ts')} law
 * @property {typeof import('../../src/laws/reckon.ts')} reckon
 * @property {typeof import('../../src/laws/sources.ts')} sources
 * @property {typeof import('../../src/cli/verbs/reckon.ts')} command
 * @property {Pick<typeof import('../../src/turnover/planSchema.ts'), 'replySchemas'>} replies
 * @property {Pick<typeof import('../../src/document/jsonSchema.ts'), 'shootJsonSchemaText'>} shootSchema
 */

/**
 * @param {Made} made
 * @returns {Promise<ReadonlyMap<string, string>>}
 */
export async function pages({
  kinds,
  quantity,
  schema,
  catalogue,
  law,
  reckon,
  sources,
  command,
  replies,
  shootSchema,
}) {
  const style = await prettier.resolveConfig(join(ROOT, 'README.md'));
  const page = (/** @type {string} */ markdown) => prettier.format(markdown, { ...style, parser: 'markdown' });
  const shoot = shootPage({
    shoot: schema.SHOOT,
    kinds: kinds.KINDS,
    writeQuantity: quantity.writeQuantity,
    example: readFileSync(join(ROOT, FIRST_SHOOT), 'utf8'),
  });
  const laws = lawsPage({ subjects: catalogue.SUBJECTS, law, reckon, sources, command });
  return new Map([
    ['docs/guide/writing-a-shoot.md', await page(shoot)],
    ['docs/guide/laws.md', await page(laws)],
    ['docs/schema/shoot.schema.json', shootSchema.shootJsonSchemaText()],
    ...Object.entries(replies.replySchemas()).map(
      ([name, reply]) =>
        /** @type {const} */ ([`docs/schema/${name}.schema.json`, `${JSON.stringify(reply, null, 2)}\n`]),
    ),
  ]);
}
