import { fileURLToPath } from 'node:url';
import { configDefaults, defineConfig } from 'vitest/config';

// Everything that needs no browser. Browser tests have web-test-runner, journeys have e2e/vitest.config.ts.
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  cacheDir: '.cache/vitest',
  test: {
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/helpers/random-seed.ts'],
    exclude: [...configDefaults.exclude, 'tests/**/*.browser.test.ts', 'tests/e2e/**'],
    allowOnly: false,
    // How long a test may take says nothing of the program, only of the machine: on two cores with six other programs one
    // of 3 s took 49. What is to be quick is measured where it is tested.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    // Left to itself it keeps one core free, which on a machine of two doubles the time.
    maxWorkers: '100%',
    // Files of one worker share their modules: reading the engine and compiling the templates anew for each file was a
    // third of the time. So no test may leave anything behind, in a module or in the global scope.
    isolate: false,
    unstubGlobals: true,
    // Pricing a floor makes some megabytes that live until it is read. In the usual young space of 16 MB clearing up after
    // it takes a third of the time.
    execArgv: ['--max-semi-space-size=64'],
  },
});
