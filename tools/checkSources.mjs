/**
 * Fails when a law cites a source that docs/sources.yaml does not list, when a listed source is cited nowhere, when an
 * entry does not say what it is and how it was seen, or when the module made of the list is out of date.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import ts from 'typescript';
import { isProgram, ROOT } from './run.mjs';
import { commentsOf, isTest, lineAt, parseFile, sourceFiles, walk } from './sourceFiles.mjs';
import { readSources, sourcesModule } from './sources.mjs';

const LIST = 'docs/sources.yaml';
const MADE = 'src/laws/sources.ts';

/** @typedef {{ readonly key: string, readonly at: string }} Citation */

/**
 * What one source file cites as a source, and every word in quotes in it, any of which may be a key.
 * @param {ts.SourceFile} file
 * @param {string} name
 */
function citationsOf(file, name) {
  /** @type {Citation[]} */
  const cited = [];
  /** @type {Set<string>} */
  const quoted = new Set();
  const cite = (/** @type {string} */ key, /** @type {number} */ position) =>
    cited.push({ key, at: `${name}:${lineAt(file, position)}` });
  const isLaw = name.startsWith('src/laws/') && !isTest(name);
  const isPublished = file.statements.some(
    (statement) =>
      ts.isImportDeclaration(statement) &&
      ts.isStringLiteral(statement.moduleSpecifier) &&
      statement.moduleSpecifier.text.endsWith('/published.ts'),
  );
  walk(file, (node) => {
    if (ts.isStringLiteralLike(node)) quoted.add(node.text);
    if (!ts.isPropertyAssignment(node) || !ts.isIdentifier(node.name)) return;
    const { initializer: value, name: property } = node;
    if (isLaw && property.text === 'sources' && ts.isArrayLiteralExpression(value))
      for (const item of value.elements) if (ts.isStringLiteralLike(item)) cite(item.text, item.getStart(file));
    if (isPublished && property.text === 'source' && ts.isStringLiteralLike(value))
      cite(value.text, value.getStart(file));
  });
  for (const { text, position } of commentsOf(file)) {
    for (let at = text.indexOf('@source'); at >= 0; at = text.indexOf('@source', at + 1))
      cite(
        text
          .slice(at + '@source'.length)
          .trim()
          .split(/[\s*,;.]/)[0] ?? '',
        position + at,
      );
  }
  return { cited, quoted };
}

/**
 * Every page below docs/ but the list itself, as words that may be keys.
 * @param {string} root
 * @returns {ReadonlySet<string>}
 */
function wordsOfDocs(root) {
  const docs = join(root, 'docs');
  if (!existsSync(docs)) return new Set();
  const pages = readdirSync(docs, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((path) => path !== join(root, LIST));
  return new Set(pages.flatMap((path) => readFileSync(path, 'utf8').split(/[^a-z0-9-]+/)));
}

/**
 * Complaints about the sources of a tree holding src/, test/ and docs/; none when all is well.
 * @param {string} root
 * @returns {Promise<readonly string[]>}
 */
export async function sourceComplaints(root) {
  const { sources, complaints } = readSources(readFileSync(join(root, LIST), 'utf8'));
  if (complaints.length > 0) return complaints;
  /** @type {string[]} */
  const wrong = [];
  const mentioned = new Set(wordsOfDocs(root));
  for (const path of [...sourceFiles(join(root, 'src')), ...sourceFiles(join(root, 'test'))]) {
    const name = relative(root, path).split(sep).join('/');
    if (name === MADE) continue;
    const { cited, quoted } = citationsOf(parseFile(path), name);
    for (const { key, at } of cited) {
      mentioned.add(key);
      if (!sources.has(key)) wrong.push(`${at} cites "${key}", which ${LIST} does not list`);
    }
    for (const word of quoted) mentioned.add(word);
  }
  for (const key of sources.keys()) if (!mentioned.has(key)) wrong.push(`${LIST}: ${key} is cited nowhere`);
  const made = join(root, MADE);
  if (!existsSync(made) || readFileSync(made, 'utf8') !== (await sourcesModule(sources)))
    wrong.push(`${MADE} is not what ${LIST} makes it: run npm run sources`);
  return wrong;
}

if (isProgram(import.meta.url)) {
  const wrong = await sourceComplaints(ROOT);
  if (wrong.length > 0) {
    console.error(wrong.join('\n'));
    process.exitCode = 1;
  }
}
