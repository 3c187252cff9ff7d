/**
 * `npm test`: installs what is needed, then runs every check, the build, all tests, the browser journeys and the weight
 * of the first screen. All of them run even when one fails; the last line counts them.
 */
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from './build.mjs';
import { checkBundleSize } from './bundleSize.mjs';
import { CHECKS } from './check.mjs';
import { ensureInstalled } from './install.mjs';
import { ensureRealClips } from './realClips.mjs';
import { runInstalled, runStep, took } from './run.mjs';
import { ensurePrograms } from './system.mjs';
import { addTallies, closingLine, NOTHING, tallyVitest } from './tally.mjs';

/** @typedef {import('./tally.mjs').Tally} Tally */

/** A step counts as one test. */
const judged = (/** @type {boolean} */ isPassed) => ({ ...NOTHING, [isPassed ? 'passed' : 'failed']: 1 });

/**
 * What cannot be run here is skipped on a person's machine and fails where nobody would see that it was skipped.
 * @param {string} what
 * @param {string} why
 * @returns {Tally}
 */
function without(what, why) {
  const isFailure = Boolean(process.env['CI']);
  console.log(`${isFailure ? 'FAILED' : 'skipped'} ${what}: ${why}`);
  return { ...NOTHING, [isFailure ? 'failed' : 'skipped']: 1 };
}

/**
 * Runs one project of vitest.config.ts and prints every failure in full.
 * @param {string} project
 * @param {string} title
 * @returns {Promise<Tally>}
 */
async function runTests(project, title) {
  const from_ms = performance.now();
  const folder = mkdtempSync(join(tmpdir(), 'longsecond-tests-'));
  try {
    const file = join(folder, 'report.json');
    const args = ['run', '--project', project, '--reporter=json', `--outputFile=${file}`, '--passWithNoTests=false'];
    const ended = await runInstalled('vitest/vitest.mjs', args);
    const text = existsSync(file) ? readFileSync(file, 'utf8') : 'null';
    const report = /** @type {import('./tally.mjs').VitestReport | null} */ (JSON.parse(text));
    const { tally, failures } = tallyVitest(report, ended);
    const line = `${title}: ${closingLine(tally)}`;
    console.log(`${tally.failed === 0 ? 'ok    ' : 'FAILED'}  ${line.padEnd(44)} ${took(from_ms).padStart(7)}`);
    for (const failure of failures) console.log(`\n${failure.trimEnd()}`);
    return tally;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** @returns {Promise<Tally>} */
async function runEverything() {
  await ensureInstalled();
  const missing = await ensurePrograms();
  const noRealClips = await ensureRealClips();
  let tally = NOTHING;
  const count = (/** @type {Tally} */ more) => {
    tally = addTallies(tally, more);
  };
  for (const check of CHECKS) count(judged(await runStep(check)));
  const isBuilt = await build();
  count(judged(isBuilt));
  if (missing.ffmpeg !== undefined) count(without('tests of footage', `ffmpeg is missing: ${missing.ffmpeg}`));
  if (noRealClips !== undefined) count(without('tests of clips that people filmed', noRealClips));
  count(await runTests('unit', 'tests'));
  if (missing.chromium !== undefined) count(without('browser journeys', `Chromium is missing: ${missing.chromium}`));
  else if (!isBuilt) count(without('browser journeys', 'the build failed'));
  else count(await runTests('journeys', 'browser journeys'));
  if (!isBuilt) count(without('weight of the first screen', 'the build failed'));
  else count(judged(await runStep({ title: 'weight of the first screen', run: checkBundleSize })));
  return tally;
}

/** @type {Tally} */
let tally;
try {
  tally = await runEverything();
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  tally = { ...NOTHING, failed: 1 };
}
console.log(closingLine(tally));
process.exitCode = tally.failed > 0 ? 1 : 0;
