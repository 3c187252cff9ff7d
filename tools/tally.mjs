/** Counting what passed and failed, and the closing line that the counts are read from. */

/** @typedef {{ readonly passed: number, readonly failed: number, readonly skipped: number }} Tally */

/** @type {Tally} */
export const NOTHING = { passed: 0, failed: 0, skipped: 0 };

/**
 * @param {Tally} a
 * @param {Tally} b
 * @returns {Tally}
 */
export function addTallies(a, b) {
  return { passed: a.passed + b.passed, failed: a.failed + b.failed, skipped: a.skipped + b.skipped };
}

/**
 * `12 passed, 0 failed`, with `, 3 skipped` only when some were.
 * @param {Tally} tally
 */
export function closingLine({ passed, failed, skipped }) {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
}

/**
 * The part of vitest's JSON report that is read here.
 * @typedef {{
 *   readonly testResults: readonly {
 *     readonly name: string,
 *     readonly status: string,
 *     readonly message?: string,
 *     readonly assertionResults: readonly {
 *       readonly status: string,
 *       readonly fullName: string,
 *       readonly failureMessages?: readonly string[] | null,
 *     }[],
 *   }[],
 * }} VitestReport
 */

/**
 * Counts a vitest run. A file that could not be loaded counts as one failure, and so does a run that ended badly
 * although no test failed: an error outside every test must not pass unseen.
 * @param {VitestReport | null} report
 * @param {{ readonly code: number, readonly output: string }} ended
 * @returns {{ readonly tally: Tally, readonly failures: readonly string[] }}
 */
export function tallyVitest(report, { code, output }) {
  let tally = NOTHING;
  /** @type {string[]} */
  const failures = [];
  for (const file of report?.testResults ?? []) {
    for (const { status, fullName, failureMessages } of file.assertionResults) {
      if (status === 'passed') tally = addTallies(tally, { ...NOTHING, passed: 1 });
      else if (status === 'failed') {
        tally = addTallies(tally, { ...NOTHING, failed: 1 });
        failures.push(`${file.name}\n${fullName}\n${(failureMessages ?? []).join('\n')}`);
      } else tally = addTallies(tally, { ...NOTHING, skipped: 1 });
    }
    const isBroken = file.status === 'failed' && file.assertionResults.every(({ status }) => status !== 'failed');
    if (isBroken) {
      tally = addTallies(tally, { ...NOTHING, failed: 1 });
      failures.push(`${file.name}\n${file.message ?? 'could not be loaded'}`);
    }
  }
  if (code !== 0 && tally.failed === 0) {
    tally = addTallies(tally, { ...NOTHING, failed: 1 });
    failures.push(`vitest ended with code ${code} although no test failed\n${output}`);
  }
  if (tally.passed + tally.failed + tally.skipped === 0) {
    tally = { ...NOTHING, failed: 1 };
    failures.push(`vitest ran no test\n${output}`);
  }
  return { tally, failures };
}
