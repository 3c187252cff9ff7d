/** `npm run check`: everything that judges the sources without running them. Stops at the first failure. */
import { isProgram, ROOT, run, runInstalled, runStep } from './run.mjs';

const tsc = (/** @type {string} */ project, /** @type {string} */ notes) =>
  runInstalled('typescript/bin/tsc', [
    '-p',
    project,
    '--noEmit',
    '--incremental',
    '--tsBuildInfoFile',
    `.cache/${notes}.tsbuildinfo`,
  ]);

const prettier = () =>
  runInstalled('prettier/bin/prettier.cjs', [
    '--check',
    '--log-level=warn',
    '--cache',
    '--cache-location=.cache/prettier',
    '--cache-strategy=content',
    '.',
  ]);

/** @type {readonly import('./run.mjs').Step[]} */
export const CHECKS = [
  { title: 'types, pure folders', run: () => tsc('tsconfig.pure.json', 'pure') },
  { title: 'types, everything', run: () => tsc('tsconfig.json', 'all') },
  { title: 'lint', run: () => runInstalled('eslint/bin/eslint.js', ['--max-warnings=0', '.']) },
  { title: 'formatting', run: prettier },
  { title: 'imports go one way', run: () => run(process.execPath, [`${ROOT}/tools/checkImports.mjs`]) },
  { title: 'sources are listed and cited', run: () => run(process.execPath, [`${ROOT}/tools/checkSources.mjs`]) },
];

if (isProgram(import.meta.url)) {
  for (const check of CHECKS) {
    if (await runStep(check)) continue;
    process.exitCode = 1;
    break;
  }
}
