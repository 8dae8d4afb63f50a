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
    // A journey asks until what it expects is there. How long that may take says nothing of the app, only of the machine.
    expect: { poll: { timeout: 60_000 } },
    // Axe alone takes ten seconds a face where the processor is a sixth as fast.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    // Files of one worker share their modules; each test has a browser profile of its own.
    isolate: false,
  },
});
