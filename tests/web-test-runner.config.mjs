import { fileURLToPath } from 'node:url';
import { esbuildPlugin } from '@web/dev-server-esbuild';
import { defaultReporter, summaryReporter } from '@web/test-runner';
import { chromeLauncher } from '@web/test-runner-chrome';
import { tsImport } from 'tsx/esm/api';

const fromTests = (path) => tsImport(path, import.meta.url);
const { chromiumFlags, findChromium } = await fromTests('./helpers/find-chromium.ts');
const { bundledPackages } = await fromTests('./helpers/bundled-packages.ts');
const { jsonModules } = await fromTests('./helpers/json-modules.ts');
const { countingReporter } = await fromTests('./helpers/counting-reporter.ts');

const rootDir = fileURLToPath(new URL('..', import.meta.url));

export default {
  rootDir,
  files: ['tests/**/*.browser.test.ts', '!**/node_modules/**'],
  nodeResolve: { exportConditions: ['browser'] },
  // One page at a time is the page in front: a browser draws no frames for one behind.
  concurrency: 1,
  browsers: [
    chromeLauncher({
      launchOptions: { executablePath: await findChromium(), args: [...chromiumFlags] },
      concurrency: 1,
    }),
  ],
  plugins: [
    jsonModules(),
    bundledPackages(rootDir, ['hyperformula', 'papaparse']),
    esbuildPlugin({ ts: true, target: 'es2022', tsconfig: `${rootDir}/tsconfig.json` }),
  ],
  reporters: [
    defaultReporter({ reportTestProgress: process.stdout.isTTY === true }),
    summaryReporter({ flatten: true }),
    countingReporter(`${rootDir}/.cache/browser-tests.json`),
  ],
  // On a slow or busy machine a file's modules alone take long to load, and axe takes seconds a look.
  browserStartTimeout: 120_000,
  testsStartTimeout: 120_000,
  testsFinishTimeout: 600_000,
  testFramework: { config: { timeout: 60_000 } },
};
