/**
 * Fails when a file under src/ imports what its folder may not see (tools/layers.mjs), or when files import each other
 * in a circle. Type imports, dynamic imports, import types and workers started by address all count.
 */
import { existsSync, readdirSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import ts from 'typescript';
import { LAYERS } from './layers.mjs';
import { isProgram, ROOT } from './run.mjs';
import { isTest, lineAt, parseFile, sourceFiles, walk } from './sourceFiles.mjs';

/** @typedef {{ readonly specifier: string, readonly line: number, readonly reference?: 'lib' | 'types' }} Import */

/**
 * The literal that names what a node imports, if it imports anything.
 * @param {ts.Node} node
 * @returns {ts.Node | undefined}
 */
function specifierOf(node) {
  if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return node.moduleSpecifier;
  if (ts.isExternalModuleReference(node)) return node.expression;
  if (ts.isImportTypeNode(node)) return ts.isLiteralTypeNode(node.argument) ? node.argument.literal : node.argument;
  if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) return node.arguments[0];
  if (ts.isCallExpression(node) && ts.isIdentifier(node.expression) && node.expression.text === 'require')
    return node.arguments[0];
  const isUrl = ts.isNewExpression(node) && ts.isIdentifier(node.expression) && node.expression.text === 'URL';
  if (isUrl && node.arguments?.[1]?.getText() === 'import.meta.url') return node.arguments[0];
  return undefined;
}

/**
 * @param {ts.SourceFile} file
 * @returns {readonly Import[]}
 */
function importsOf(file) {
  /** @type {Import[]} */
  const found = [];
  walk(file, (node) => {
    const named = specifierOf(node);
    if (!named) return;
    const line = lineAt(file, named.getStart(file));
    if (ts.isStringLiteralLike(named)) found.push({ specifier: named.text, line });
    else if (!ts.isNewExpression(node)) found.push({ specifier: '', line });
  });
  const references = /** @type {const} */ ([
    ['types', file.typeReferenceDirectives],
    ['lib', file.libReferenceDirectives],
  ]);
  for (const [reference, list] of references)
    for (const { fileName, pos } of list) found.push({ specifier: fileName, line: lineAt(file, pos), reference });
  for (const { fileName, pos } of file.referencedFiles)
    found.push({ specifier: `./${fileName}`, line: lineAt(file, pos) });
  return found;
}

/**
 * @param {string} specifier
 * @param {readonly string[]} packages
 */
function isAllowedPackage(specifier, packages) {
  return packages.some((name) =>
    name.endsWith('*')
      ? specifier.startsWith(name.slice(0, -1))
      : specifier === name || specifier.startsWith(`${name}/`),
  );
}

/**
 * Circles among files, each once, as the list of files that it runs through.
 * @param {ReadonlyMap<string, readonly string[]>} edges
 * @returns {readonly (readonly string[])[]}
 */
function circles(edges) {
  /** @type {Map<string, 'open' | 'done'>} */
  const state = new Map();
  /** @type {string[]} */
  const path = [];
  /** @type {string[][]} */
  const found = [];
  const enter = (/** @type {string} */ file) => {
    state.set(file, 'open');
    path.push(file);
    for (const next of edges.get(file) ?? []) {
      if (state.get(next) === 'open') found.push(path.slice(path.indexOf(next)));
      else if (!state.has(next)) enter(next);
    }
    path.pop();
    state.set(file, 'done');
  };
  for (const file of edges.keys()) if (!state.has(file)) enter(file);
  return found;
}

/**
 * Complaints about the imports under a src/ folder, each naming file, line and what is wrong; none when all is well.
 * @param {string} src
 * @param {Readonly<Record<string, import('./layers.mjs').Layer>>} [layers]
 * @returns {readonly string[]}
 */
export function importComplaints(src, layers = LAYERS) {
  const root = resolve(src);
  /** @type {string[]} */
  const wrong = [];
  /** @type {Map<string, string[]>} */
  const edges = new Map();
  if (existsSync(root)) {
    for (const entry of readdirSync(root, { withFileTypes: true })) {
      if (!entry.isDirectory()) wrong.push(`src/${entry.name} lies outside every folder of tools/layers.mjs`);
      else if (!layers[entry.name]) wrong.push(`src/${entry.name}/ is not in tools/layers.mjs`);
    }
  }
  for (const path of sourceFiles(root)) {
    const name = relative(root, path).split(sep).join('/');
    const folder = name.split('/')[0] ?? '';
    const layer = layers[folder];
    if (!layer) continue;
    const test = isTest(path);
    /** @type {string[]} */
    const within = [];
    for (const { specifier, line, reference } of importsOf(parseFile(path))) {
      const at = `src/${name}:${line}`;
      if (specifier === '') {
        wrong.push(`${at} imports by a name worked out at run time, which cannot be checked`);
      } else if (reference) {
        wrong.push(`${at} must not bring in types by reference (${specifier}): tsconfig files say which are there`);
      } else if (!specifier.startsWith('.')) {
        if (!test && !isAllowedPackage(specifier, layer.packages))
          wrong.push(
            `${at} must not import the package ${specifier}: ${folder}/ may use ${layer.packages.join(', ') || 'none'}`,
          );
      } else {
        const target = relative(root, join(dirname(path), specifier))
          .split(sep)
          .join('/');
        const to = target.split('/')[0] ?? '';
        if (to === '..') {
          if (!test) wrong.push(`${at} must not leave src/ for ${specifier}`);
        } else if (to !== folder && !layer.sees.includes(to)) {
          wrong.push(`${at} must not import ${target}: ${folder}/ sees only ${layer.sees.join(', ') || 'itself'}`);
        } else {
          if (!test && isTest(target)) wrong.push(`${at} must not import the test ${target}`);
          if (to === folder) within.push(target);
        }
      }
    }
    edges.set(name, within);
  }
  for (const circle of circles(edges)) {
    wrong.push(`src/${circle.join(' → ')} → ${circle[0]}: these files import each other in a circle`);
  }
  return wrong;
}

if (isProgram(import.meta.url)) {
  const wrong = importComplaints(join(ROOT, 'src'));
  if (wrong.length > 0) {
    console.error(wrong.join('\n'));
    process.exitCode = 1;
  }
}
