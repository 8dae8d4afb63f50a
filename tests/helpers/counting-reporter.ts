import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Reporter, TestSession, TestSuiteResult } from '@web/test-runner';
import type { Counts } from '../run/counts.ts';

/** Writes how many browser tests passed and failed to a file, for the totals of the whole run. */
export function countingReporter(path: string): Reporter {
  return {
    start: () => rmSync(path, { force: true }),
    stop: ({ sessions }) => {
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(path, JSON.stringify(countSessions(sessions)));
    },
  };
}

/** The parts of a session that are counted. */
export type CountedSession = Pick<TestSession, 'passed' | 'testResults'>;

/** A file that broke outside its tests (an import, a syntax error) counts as one failure. */
export function countSessions(sessions: Iterable<CountedSession>): Counts {
  let passed = 0;
  let failed = 0;
  let skipped = 0;
  for (const session of sessions) {
    const tests = session.testResults === undefined ? [] : testsIn(session.testResults);
    const failedHere = tests.filter((test) => !test.passed && !test.skipped).length;
    passed += tests.filter((test) => test.passed && !test.skipped).length;
    skipped += tests.filter((test) => test.skipped).length;
    failed += failedHere === 0 && session.passed !== true ? 1 : failedHere;
  }
  return { passed, failed, skipped };
}

function testsIn(suite: TestSuiteResult): TestSuiteResult['tests'] {
  return [...suite.tests, ...suite.suites.flatMap(testsIn)];
}
