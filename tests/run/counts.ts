/** What one step of the test run found. */
export interface Counts {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

export const noCounts: Counts = { passed: 0, failed: 0, skipped: 0 };

/** The two sums of a run. */
export function addCounts(left: Counts, right: Counts): Counts {
  return {
    passed: left.passed + right.passed,
    failed: left.failed + right.failed,
    skipped: left.skipped + right.skipped,
  };
}

/**
 * Counts corrected by how the program ended: a suite that failed without a failed test, or that ran no test at all,
 * is one failure. A green run that saw nothing would be a lie.
 */
export function settleCounts(counts: Counts, exitCode: number): Counts {
  const ranNothing = counts.passed + counts.failed === 0;
  const endedBadly = exitCode !== 0 && counts.failed === 0;
  return ranNothing || endedBadly ? { ...counts, failed: counts.failed + 1 } : counts;
}

/** Counts of a vitest JSON report; a test file that broke before its first test is one failure. */
export function readVitestReport(text: string): Counts {
  const report: unknown = JSON.parse(text);
  const brokenFiles = listField(report, 'testResults').filter(
    (file) => textField(file, 'status') === 'failed' && listField(file, 'assertionResults').length === 0,
  );
  return {
    passed: numberField(report, 'numPassedTests'),
    failed: numberField(report, 'numFailedTests') + brokenFiles.length,
    skipped: numberField(report, 'numPendingTests') + numberField(report, 'numTodoTests'),
  };
}

/** Counts as the browser tests' own reporter writes them. */
export function readCountsFile(text: string): Counts {
  const report: unknown = JSON.parse(text);
  return {
    passed: numberField(report, 'passed'),
    failed: numberField(report, 'failed'),
    skipped: numberField(report, 'skipped'),
  };
}

function numberField(holder: unknown, name: string): number {
  const value = field(holder, name);
  if (typeof value === 'number' && Number.isInteger(value) && value >= 0) return value;
  throw new Error(`The test report has no whole number "${name}".`);
}

function textField(holder: unknown, name: string): string {
  const value = field(holder, name);
  if (typeof value === 'string') return value;
  throw new Error(`The test report has no text "${name}".`);
}

function listField(holder: unknown, name: string): readonly unknown[] {
  const value = field(holder, name);
  if (Array.isArray(value)) return value;
  throw new Error(`The test report has no list "${name}".`);
}

function field(holder: unknown, name: string): unknown {
  return typeof holder === 'object' && holder !== null ? new Map(Object.entries(holder)).get(name) : undefined;
}
