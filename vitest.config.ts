import { defineConfig } from 'vitest/config';

/** A failed comparison says its values at length: where nobody can run it again, “Array(1)” tells nothing. */
const chaiConfig = { truncateThreshold: 4000 };

/** What is to become so is waited for: on a busy machine that takes longer than a second. */
const expect = { poll: { timeout: 10_000 } };

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          chaiConfig,
          expect,
          environment: 'node',
          include: ['{src,test,tools,bench,demo,examples}/**/*.test.{ts,tsx,mjs}'],
          exclude: ['test/journeys/**'],
          setupFiles: ['test/setup.ts'],
          // Room for a busy machine: tests judge results, benchmarks judge time.
          testTimeout: 30_000,
        },
      },
      {
        test: {
          name: 'journeys',
          chaiConfig,
          expect,
          environment: 'node',
          include: ['test/journeys/**/*.test.ts'],
          // A journey drives a whole browser and server: one at a time, and slow machines are given time.
          fileParallelism: false,
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
