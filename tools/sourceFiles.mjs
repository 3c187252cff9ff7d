/** TypeScript sources as syntax trees, for the checks that read them. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import ts from 'typescript';

export const isTest = (/** @type {string} */ path) => /\.test\.tsx?$/.test(path);

/**
 * Absolute paths of every .ts and .tsx file below a folder; none when the folder is missing.
 * @param {string} folder
 */
export function sourceFiles(folder) {
  return ts.sys.readDirectory(resolve(folder), ['.ts', '.tsx']).sort();
}

/**
 * @param {string} file
 * @returns {ts.SourceFile}
 */
export function parseFile(file) {
  const kind = file.endsWith('.tsx') ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
  return ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.ES2023, true, kind);
}

/**
 * Calls `visit` with every node of a tree.
 * @param {ts.Node} node
 * @param {(node: ts.Node) => void} visit
 * @returns {void}
 */
export function walk(node, visit) {
  visit(node);
  ts.forEachChild(node, (child) => walk(child, visit));
}

/**
 * The line of a node, counted from 1.
 * @param {ts.SourceFile} file
 * @param {number} position
 */
export function lineAt(file, position) {
  return file.getLineAndCharacterOfPosition(position).line + 1;
}

/**
 * Every comment of a file, in order, with its position.
 * @param {ts.SourceFile} file
 * @returns {readonly { readonly text: string, readonly position: number }[]}
 */
export function commentsOf(file) {
  /** @type {Map<number, number>} */
  const found = new Map();
  const collect = (/** @type {ts.Node} */ node) => {
    if (ts.isJSDoc(node)) return;
    if (node.getChildCount(file) > 0) return void node.getChildren(file).forEach(collect);
    // A token: the comments before it, and those that end the line of the token before.
    const at = node.getFullStart();
    const ranges = [
      ...(ts.getTrailingCommentRanges(file.text, at) ?? []),
      ...(ts.getLeadingCommentRanges(file.text, at) ?? []),
    ];
    for (const { pos, end } of ranges) found.set(pos, end);
  };
  collect(file);
  return [...found]
    .sort(([a], [b]) => a - b)
    .map(([position, end]) => ({ position, text: file.text.slice(position, end) }));
}
