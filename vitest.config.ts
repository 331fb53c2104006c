import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/setup.ts'],
    // Tests share nothing that a thread could spoil, and threads start sooner than processes.
    pool: 'threads',
    // All cores: the main thread has little to do meanwhile.
    maxWorkers: '100%',
    // Some tests start processes; on a busy machine a start alone may take a second.
    testTimeout: 30_000,
    hookTimeout: 60_000,
  },
});
