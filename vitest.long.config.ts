import { defineConfig } from 'vitest/config';
import shared from './vitest.config.js';

/** The laws and the outside checks in full: minutes to an hour, where the everyday run takes a share of them. */
export default defineConfig({
  test: {
    ...shared.test,
    include: [
      'tests/properties/**/*.test.ts',
      'tests/reference/**/*.test.ts',
      'tests/ledger/{balance,second-reckoning}.test.ts',
    ],
    env: { LONG: 'yes' },
    testTimeout: 3_600_000,
  },
});
