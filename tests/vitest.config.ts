import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

/** Everything that needs no browser window. The window's tests are Playwright's: `*.spec.ts`. */
export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  cacheDir: '.cache/vite',
  test: {
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/node-setup.ts'],
    environment: 'node',
    testTimeout: 60_000,
    hookTimeout: 60_000,
    maxWorkers: 2,
    // As the window's tests: a second try on a busy machine is told at the end (tests/suites.mjs).
    retry: process.env['CI'] === undefined ? 0 : 1,
    coverage: {
      provider: 'v8',
      include: ['core/**/*.ts', 'main/desk/**/*.ts', 'main/files/**/*.ts'],
      reportOnFailure: true,
      reportsDirectory: '.cache/coverage',
      reporter: ['text-summary', 'json-summary'],
      // The storage must not lose a game: no line or branch of it without a test (CR-D1). How often an `if` was passed by is
      // counted as a difference, which work that waits makes wrong now and then: two branches may seem to be missing.
      thresholds: { 'main/{desk,files}/**/*.ts': { branches: -2, functions: 100, lines: 100, statements: 100 } },
    },
  },
});
