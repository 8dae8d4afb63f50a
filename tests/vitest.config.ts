import { fileURLToPath } from 'node:url';
import { configDefaults, defineConfig } from 'vitest/config';

// Everything that needs no browser. Browser tests have web-test-runner, journeys have e2e/vitest.config.ts.
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  cacheDir: '.cache/vitest',
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: [...configDefaults.exclude, 'tests/**/*.browser.test.ts', 'tests/e2e/**'],
    allowOnly: false,
    testTimeout: 30_000,
    // Left to itself it keeps one core free, which on a machine of two doubles the time.
    maxWorkers: '100%',
  },
});
