import { defineConfig } from 'vitest/config'

/** One browser at a time: two would fight for the processor and for the focus. */
const oneBrowser = { testTimeout: 120_000, hookTimeout: 120_000, fileParallelism: false }

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', '**/*.release.test.ts'],
          // What computes thousands of tests takes longer on a busy machine, and is right there too.
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          exclude: ['**/*.release.test.ts'],
          ...oneBrowser,
        },
      },
      {
        test: {
          name: 'release',
          include: ['tests/**/*.release.test.ts'],
          ...oneBrowser,
        },
      },
    ],
  },
})
