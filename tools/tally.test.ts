import { describe, expect, test } from 'vitest';
import { addTallies, closingLine, tallyVitest, type VitestReport } from './tally.mjs';

const fine = { code: 0, output: '' };

function report(...files: VitestReport['testResults']): VitestReport {
  return { testResults: files };
}

function file(name: string, ...statuses: readonly string[]): VitestReport['testResults'][number] {
  return {
    name,
    status: statuses.includes('failed') ? 'failed' : 'passed',
    message: '',
    assertionResults: statuses.map((status, index) => ({
      status,
      fullName: `${name} fact ${index + 1}`,
      failureMessages: status === 'failed' ? ['expected 1 to be 2\n    at line 3', 'and more'] : [],
    })),
  };
}

describe('the closing line', () => {
  test('says what passed and failed, and nothing of skipping when nothing was skipped', () => {
    expect(closingLine({ passed: 12, failed: 0, skipped: 0 })).toBe('12 passed, 0 failed');
  });

  test('adds what was skipped when something was', () => {
    expect(closingLine({ passed: 12, failed: 3, skipped: 4 })).toBe('12 passed, 3 failed, 4 skipped');
  });

  test('adds tallies part by part', () => {
    const sum = addTallies({ passed: 1, failed: 2, skipped: 3 }, { passed: 10, failed: 20, skipped: 30 });
    expect(sum).toEqual({ passed: 11, failed: 22, skipped: 33 });
  });
});

describe('counting a vitest run', () => {
  test('tests are counted over all files by how they ended', () => {
    const { tally } = tallyVitest(
      report(file('a', 'passed', 'passed', 'failed'), file('b', 'passed', 'skipped', 'todo')),
      {
        code: 1,
        output: '',
      },
    );
    expect(tally).toEqual({ passed: 3, failed: 1, skipped: 2 });
  });

  test('a failure is told with file, name and every message in full', () => {
    const { failures } = tallyVitest(report(file('a.test.ts', 'passed', 'failed')), { code: 1, output: '' });
    expect(failures).toEqual(['a.test.ts\na.test.ts fact 2\nexpected 1 to be 2\n    at line 3\nand more']);
  });

  test('a file that cannot be loaded is one failure, with the reason', () => {
    const broken = { name: 'b.test.ts', status: 'failed', message: 'Cannot find module', assertionResults: [] };
    const { tally, failures } = tallyVitest(report(file('a', 'passed'), broken), { code: 1, output: '' });
    expect(tally).toEqual({ passed: 1, failed: 1, skipped: 0 });
    expect(failures).toEqual(['b.test.ts\nCannot find module']);
  });

  test('a run that ends badly although every test passed is a failure with what it printed', () => {
    const { tally, failures } = tallyVitest(report(file('a', 'passed')), { code: 1, output: 'Unhandled error' });
    expect(tally).toEqual({ passed: 1, failed: 1, skipped: 0 });
    expect(failures[0]).toContain('Unhandled error');
  });

  test('a run without a report is a failure', () => {
    expect(tallyVitest(null, { code: 1, output: 'crashed' }).tally).toEqual({ passed: 0, failed: 1, skipped: 0 });
  });

  test('a run in which no test ran is a failure, not a pass', () => {
    expect(tallyVitest(report(), fine).tally).toEqual({ passed: 0, failed: 1, skipped: 0 });
  });
});
