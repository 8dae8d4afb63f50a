import { type Counts, readCountsFile, readVitestReport } from './counts.ts';
import type { Command } from './run-command.ts';

/** Commands that together count as one test: all must end well. */
export interface CheckStep {
  readonly kind: 'check';
  readonly name: string;
  readonly commands: readonly Command[];
}

/** A program that runs many tests and writes a report with their numbers. */
export interface SuiteStep {
  readonly kind: 'suite';
  readonly name: string;
  readonly command: Command;
  readonly reportPath: string;
  readonly readReport: (text: string) => Counts;
}

const checkSteps: readonly CheckStep[] = [
  { kind: 'check', name: 'types', commands: [{ package: 'typescript', program: 'tsc', args: ['--noEmit'] }] },
  {
    kind: 'check',
    name: 'unused code',
    commands: [
      { package: 'knip', program: 'knip', args: ['--no-progress', '--treat-config-hints-as-errors'] },
      // Code that only tests reach belongs beside them.
      {
        package: 'knip',
        program: 'knip',
        args: [
          '--no-progress',
          '--config',
          '.knip-product.json',
          '--include',
          'files,exports,types,nsExports,enumMembers',
        ],
      },
    ],
  },
  {
    kind: 'check',
    name: 'format and lint',
    commands: [
      {
        package: '@biomejs/biome',
        program: 'biome',
        args: ['check', '--error-on-warnings', '--diagnostic-level=warn', '--max-diagnostics=50'],
      },
    ],
  },
  {
    kind: 'check',
    name: 'element and template lint',
    commands: [
      {
        package: 'eslint',
        program: 'eslint',
        args: ['--config', 'tests/eslint.config.mjs', '--max-warnings', '0', 'src/views'],
      },
      {
        package: 'lit-analyzer',
        program: 'lit-analyzer',
        args: ['--strict', '--maxWarnings', '0', 'src/views/**/*.ts'],
        // It ends well when it found no file.
        mustPrint: /\bin [1-9]\d* files?\b/,
      },
    ],
  },
];

const browserSuite: SuiteStep = {
  kind: 'suite',
  name: 'browser tests',
  command: {
    package: '@web/test-runner',
    program: 'web-test-runner',
    args: ['--config', 'tests/web-test-runner.config.mjs'],
  },
  reportPath: '.cache/browser-tests.json',
  readReport: readCountsFile,
};

/** The longest first, so that none is left at the end for one core while another rests. */
export const steps: readonly (CheckStep | SuiteStep)[] = [
  vitestSuite('unit, property, external and architecture tests', 'tests/vitest.config.ts', '.cache/unit-tests.json'),
  vitestSuite('end-to-end tests', 'tests/e2e/vitest.config.ts', '.cache/end-to-end-tests.json'),
  browserSuite,
  ...checkSteps,
];

function vitestSuite(name: string, config: string, reportPath: string): SuiteStep {
  // Two suites run at a time and share the cores.
  const share = ['--maxWorkers=50%'];
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${reportPath}`];
  return {
    kind: 'suite',
    name,
    command: { package: 'vitest', program: 'vitest', args: ['run', '--config', config, ...share, ...reporters] },
    reportPath,
    readReport: readVitestReport,
  };
}
