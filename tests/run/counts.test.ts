import { describe, expect, it } from 'vitest';
import { countSessions } from '../helpers/counting-reporter.ts';
import { noCounts, readCountsFile, readVitestReport, settleCounts } from './counts.ts';

const report = { numPassedTests: 4, numFailedTests: 1, numPendingTests: 2, numTodoTests: 1 };

describe('the totals of the test run', () => {
  it('read 4 passed, 1 failed, 3 skipped from a vitest report', () => {
    const testResults = [{ status: 'failed', assertionResults: [{ status: 'failed' }] }];
    expect(readVitestReport(JSON.stringify({ ...report, testResults }))).toEqual({ passed: 4, failed: 1, skipped: 3 });
  });

  it('count a test file that broke before its first test as 1 failure more', () => {
    const testResults = [{ status: 'failed', assertionResults: [] }];
    expect(readVitestReport(JSON.stringify({ ...report, testResults })).failed).toBe(2);
  });

  it('refuse a report without its numbers', () => {
    expect(() => readVitestReport('{"testResults":[]}')).toThrow('numPassedTests');
    expect(() => readCountsFile('{"passed":1,"failed":-1,"skipped":0}')).toThrow('failed');
  });

  it('count a suite that ran no test as 1 failure', () => {
    expect(settleCounts(noCounts, 0)).toEqual({ passed: 0, failed: 1, skipped: 0 });
    expect(settleCounts({ passed: 0, failed: 0, skipped: 3 }, 0).failed).toBe(1);
  });

  it('count a suite that ended badly without a failed test as 1 failure', () => {
    expect(settleCounts({ passed: 7, failed: 0, skipped: 0 }, 1)).toEqual({ passed: 7, failed: 1, skipped: 0 });
    expect(settleCounts({ passed: 7, failed: 2, skipped: 0 }, 1).failed).toBe(2);
    expect(settleCounts({ passed: 7, failed: 0, skipped: 0 }, 0).failed).toBe(0);
  });

  it('count browser tests in nested suites, and a page that broke outside its tests as 1 failure', () => {
    const test = (passed: boolean, skipped = false) => ({ name: 'a test', passed, skipped });
    const inner = { name: 'inner', suites: [], tests: [test(true), test(false, true)] };
    const outer = { name: 'outer', suites: [inner], tests: [test(true), test(false)] };
    expect(countSessions([{ passed: false, testResults: outer }])).toEqual({ passed: 2, failed: 1, skipped: 1 });
    expect(countSessions([{ passed: false }])).toEqual({ passed: 0, failed: 1, skipped: 0 });
  });
});
