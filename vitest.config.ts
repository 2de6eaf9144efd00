import { defineConfig } from 'vitest/config'

/** Long looks at pages, which wait for nothing: they run beside the other tests of a release. */
const looks = ['access', 'frameworks', 'legible', 'widget'].map((name) => `tests/browser/${name}.release.test.ts`)
/** One window at a time: two of a browser would fight for the processor. */
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
          exclude: ['**/*.release.test.ts', '**/*-firefox.test.ts'],
          ...oneBrowser,
        },
      },
      {
        test: {
          name: 'firefox',
          include: ['tests/browser/**/*-firefox.test.ts'],
          ...oneBrowser,
        },
      },
      {
        test: {
          name: 'release',
          include: ['tests/browser/**/*.release.test.ts'],
          exclude: ['**/*-firefox.release.test.ts', ...looks],
          ...oneBrowser,
        },
      },
      {
        test: {
          name: 'release-looks',
          include: looks,
          ...oneBrowser,
        },
      },
      {
        test: {
          name: 'release-firefox',
          include: ['tests/browser/**/*-firefox.release.test.ts'],
          ...oneBrowser,
        },
      },
      {
        test: {
          name: 'release-unit',
          include: ['tests/**/*.release.test.ts'],
          exclude: ['tests/browser/**'],
          ...oneBrowser,
        },
      },
    ],
  },
})
