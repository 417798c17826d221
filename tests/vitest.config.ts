import { defineConfig } from 'vitest/config';

/** Everything that needs no browser window. The window's tests are Playwright's: `*.spec.ts`. */
export default defineConfig({
  root: import.meta.dirname,
  cacheDir: '../.cache/vite',
  test: {
    include: ['**/*.test.ts'],
    environment: 'node',
    testTimeout: 60_000,
    hookTimeout: 60_000,
    maxWorkers: 2,
    coverage: {
      provider: 'v8',
      include: ['../core/**/*.ts', '../main/desk/**/*.ts'],
      allowExternal: true,
      reportOnFailure: true,
      reportsDirectory: '../.cache/coverage',
      reporter: ['text-summary', 'json-summary'],
    },
  },
});
