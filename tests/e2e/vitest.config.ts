import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// Journeys on the built app: global-setup.ts builds and serves it once, the tests drive Chromium.
export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  cacheDir: '.cache/vitest-e2e',
  test: {
    include: ['tests/e2e/**/*.e2e.test.ts'],
    globalSetup: 'tests/e2e/global-setup.ts',
    allowOnly: false,
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // Two cores: two files at a time, each with its own Chromium.
    maxWorkers: 2,
  },
});
