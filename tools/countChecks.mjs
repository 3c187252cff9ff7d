/**
 * Counts the published checks: values that others printed, which the tests hold the laws against. Printed by source, and
 * apart those whose source was never read.
 *
 * A row counts where the third argument of `published` is, in the same file, an array written out, a `map` over one or
 * over a text split into words, or calls of a function that writes a row out. Anything else is a complaint, so that no row is left out unseen.
 */
import { readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import ts from 'typescript';
import { isProgram, ROOT } from './run.mjs';
import { isTest, lineAt, parseFile, sourceFiles, walk } from './sourceFiles.mjs';
import { readSources } from './sources.mjs';

/**
 * @typedef {{ readonly source: string, readonly count: number }} Row
 * @typedef {{ readonly bySource: ReadonlyMap<string, number>, readonly complaints: readonly string[] }} Counted
 */

/**
 * The initializer of the constant that a name stands for where it is used.
 * @param {ts.Identifier} use
 * @returns {ts.Expression | undefined}
 */
function constantOf(use) {
  for (let scope = use.parent; scope !== undefined; scope = scope.parent) {
    if (!ts.isBlock(scope) && !ts.isSourceFile(scope)) continue;
    for (const statement of scope.statements) {
      if (!ts.isVariableStatement(statement)) continue;
      for (const { name, initializer } of statement.declarationList.declarations)
        if (ts.isIdentifier(name) && name.text === use.text) return initializer;
    }
  }
  return undefined;
}

/**
 * A method called on something: `rows.map(…)`.
 * @param {ts.Expression} node
 * @param {string} name
 */
function methodCall(node, name) {
  if (!ts.isCallExpression(node) || !ts.isPropertyAccessExpression(node.expression)) return undefined;
  return node.expression.name.text === name ? { on: node.expression.expression, given: node.arguments[0] } : undefined;
}

/**
 * @param {ts.Expression} node
 * @returns {ts.Expression}
 */
function bare(node) {
  return ts.isAsExpression(node) || ts.isSatisfiesExpression(node) || ts.isParenthesizedExpression(node)
    ? bare(node.expression)
    : node;
}

/**
 * How many elements an expression has, or undefined where the file does not say.
 * @param {ts.Expression} of
 * @returns {number | undefined}
 */
function lengthOf(of) {
  const node = bare(of);
  if (ts.isArrayLiteralExpression(node)) {
    const lengths = node.elements.map((element) => (ts.isSpreadElement(element) ? lengthOf(element.expression) : 1));
    return lengths.reduce((sum, length) => (sum === undefined || length === undefined ? undefined : sum + length), 0);
  }
  if (ts.isIdentifier(node)) {
    const constant = constantOf(node);
    return constant && lengthOf(constant);
  }
  const mapped = methodCall(node, 'map');
  if (mapped) return lengthOf(mapped.on);
  const split = methodCall(node, 'split');
  if (split?.given && ts.isStringLiteralLike(split.on) && ts.isStringLiteralLike(split.given))
    return split.on.text.split(split.given.text).length;
  return undefined;
}

/**
 * The source that a row names: one written out, or made by a function of this file that writes it out.
 * @param {ts.Expression} row
 * @returns {string | undefined}
 */
function sourceIn(row) {
  const node = bare(row);
  if (ts.isArrowFunction(node)) return ts.isBlock(node.body) ? undefined : sourceIn(node.body);
  if (ts.isCallExpression(node) && ts.isIdentifier(node.expression)) {
    const made = constantOf(node.expression);
    return made && ts.isArrowFunction(made) ? sourceIn(made) : undefined;
  }
  if (!ts.isObjectLiteralExpression(node)) return undefined;
  for (const property of node.properties)
    if (ts.isPropertyAssignment(property) && ts.isIdentifier(property.name) && property.name.text === 'source')
      return ts.isStringLiteralLike(property.initializer) ? property.initializer.text : undefined;
  return undefined;
}

/**
 * The rows of the third argument of `published`, or undefined where they cannot be counted.
 * @param {ts.Expression} checks
 * @returns {readonly Row[] | undefined}
 */
function rowsOf(checks) {
  const node = bare(checks);
  if (ts.isIdentifier(node)) {
    const constant = constantOf(node);
    return constant && rowsOf(constant);
  }
  const mapped = methodCall(node, 'map');
  if (mapped) {
    const source = mapped.given && ts.isArrowFunction(mapped.given) ? sourceIn(mapped.given) : undefined;
    const count = lengthOf(mapped.on);
    return source === undefined || count === undefined ? undefined : [{ source, count }];
  }
  if (!ts.isArrayLiteralExpression(node)) return undefined;
  /** @type {Row[]} */
  const rows = [];
  for (const element of node.elements) {
    if (ts.isSpreadElement(element)) {
      const spread = rowsOf(element.expression);
      if (!spread) return undefined;
      rows.push(...spread);
    } else {
      const source = sourceIn(element);
      if (source === undefined) return undefined;
      rows.push({ source, count: 1 });
    }
  }
  return rows;
}

/**
 * The published checks of every test below some folders of a tree.
 * @param {string} root
 * @param {readonly string[]} folders
 * @returns {Counted}
 */
export function countChecks(root, folders = ['src', 'test']) {
  /** @type {Map<string, number>} */
  const bySource = new Map();
  /** @type {string[]} */
  const complaints = [];
  for (const path of folders.flatMap((folder) => sourceFiles(join(root, folder))).filter(isTest)) {
    const file = parseFile(path);
    walk(file, (node) => {
      if (!ts.isCallExpression(node) || !ts.isIdentifier(node.expression) || node.expression.text !== 'published')
        return;
      const checks = node.arguments[2];
      const rows = checks && rowsOf(checks);
      if (!rows) {
        const name = relative(root, path).split(sep).join('/');
        complaints.push(`${name}:${lineAt(file, node.getStart(file))} has published checks that cannot be counted`);
        return;
      }
      for (const { source, count } of rows) bySource.set(source, (bySource.get(source) ?? 0) + count);
    });
  }
  return { bySource, complaints };
}

/**
 * Adds up counts, of all sources or of some.
 * @param {ReadonlyMap<string, number>} bySource
 * @param {(source: string) => boolean} [isWanted]
 */
export function total(bySource, isWanted = () => true) {
  return [...bySource].reduce((sum, [source, count]) => (isWanted(source) ? sum + count : sum), 0);
}

/**
 * Whether a source was read, whole or in part.
 * @param {string} root
 * @returns {(source: string) => boolean}
 */
export function wasRead(root) {
  const { sources } = readSources(readFileSync(join(root, 'docs/sources.yaml'), 'utf8'));
  return (source) => ['opened', 'excerpt'].includes(sources.get(source)?.seen ?? '');
}

if (isProgram(import.meta.url)) {
  const { bySource, complaints } = countChecks(ROOT);
  const isRead = wasRead(ROOT);
  const lines = [...bySource].sort(([a, many], [b, more]) => more - many || (a < b ? -1 : 1));
  for (const [source, count] of lines)
    console.log(`${String(count).padStart(5)}  ${source}${isRead(source) ? '' : '  (not read)'}`);
  const read = total(bySource, isRead);
  console.log(
    `${read} published checks from ${lines.filter(([source]) => isRead(source)).length} sources that were read, ${total(bySource) - read} from memory`,
  );
  for (const complaint of complaints) console.error(complaint);
  if (complaints.length > 0) process.exitCode = 1;
}
