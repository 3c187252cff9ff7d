/**
 * Builds what is run: src/ without its web folder into dist/node, the web folder into dist/web.
 * A fingerprint of the sources is kept beside the result, so that starting can tell whether to build again.
 */
import { createHash } from 'node:crypto';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, extname, join, relative, sep } from 'node:path';
import { isProgram, ROOT, runInstalled, runStep } from './run.mjs';

const DIST = join(ROOT, 'dist');
const STAMP = join(DIST, '.built');
const BUILD_FILES = [
  'package-lock.json',
  'tsconfig.base.json',
  'tsconfig.node.json',
  'tsconfig.json',
  'vite.config.ts',
  'tools/build.mjs',
];

const isSource = (/** @type {string} */ path) => !/\.test\.tsx?$/.test(path);

/**
 * Every file below a folder.
 * @param {string} folder
 * @returns {string[]}
 */
function filesBelow(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}

/** Names, sizes and times rather than contents: told in milliseconds, and a removed file shows as well as a changed one. */
function fingerprint() {
  const hash = createHash('sha256');
  const files = [...filesBelow(join(ROOT, 'src')).filter(isSource), ...BUILD_FILES.map((name) => join(ROOT, name))];
  for (const file of files) {
    const { size, mtimeMs } = statSync(file);
    hash.update(`${relative(ROOT, file)}\0${size}\0${mtimeMs}\n`);
  }
  return hash.digest('hex');
}

export function isBuilt() {
  return existsSync(STAMP) && readFileSync(STAMP, 'utf8') === fingerprint();
}

/** Removes what an earlier build left of sources that are gone, and copies files that the compiler does not. */
function tidyNodeOutput() {
  const src = join(ROOT, 'src');
  const out = join(DIST, 'node');
  const web = join(src, 'web') + sep;
  const sources = filesBelow(src).filter((file) => isSource(file) && !file.startsWith(web));
  const wanted = new Set();
  for (const file of sources) {
    const target = join(out, relative(src, file));
    if (extname(file) === '.ts') {
      const compiled = target.replace(/\.ts$/, '.js');
      wanted.add(compiled).add(`${compiled}.map`);
    } else {
      mkdirSync(dirname(target), { recursive: true });
      copyFileSync(file, target);
      wanted.add(target);
    }
  }
  for (const file of filesBelow(out)) if (!wanted.has(file)) rmSync(file);
}

/** @type {readonly import('./run.mjs').Step[]} */
const BUILD_STEPS = [
  {
    title: 'build of server and command',
    run: async () => {
      // With its output gone the compiler's own notes would make it believe that nothing needs emitting.
      if (!existsSync(join(DIST, 'node'))) rmSync(join(DIST, '.node.tsbuildinfo'), { force: true });
      const ended = await runInstalled('typescript/bin/tsc', ['-p', 'tsconfig.node.json']);
      if (ended.code === 0) tidyNodeOutput();
      return ended;
    },
  },
  { title: 'build of the screens', run: () => runInstalled('vite/bin/vite.js', ['build', '--logLevel', 'warn']) },
];

/**
 * Builds everything, a line a step.
 * @returns {Promise<boolean>} whether all of it was built
 */
export async function build() {
  const before = fingerprint();
  rmSync(STAMP, { force: true });
  for (const step of BUILD_STEPS) if (!(await runStep(step))) return false;
  writeFileSync(STAMP, before);
  return true;
}

if (isProgram(import.meta.url) && !(await build())) process.exitCode = 1;
