import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/setup.ts'],
    // Tests share nothing that a thread could spoil: threads start sooner than processes, and one that has loaded and
    // compiled the code keeps it for the next file.
    pool: 'threads',
    isolate: false,
    // All cores: the main thread has little to do meanwhile.
    maxWorkers: '100%',
    // Some tests start processes; on a busy machine a start alone may take a second.
    testTimeout: 30_000,
    hookTimeout: 60_000,
  },
});
