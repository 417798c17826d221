import { resolve } from 'node:path';
import { configDefaults, defineConfig } from 'vitest/config';

/** Files in a world of their own: those that put other modules in the place of some (`vi.mock`), and all of the desk's. */
export const ALONE = ['tests/main/**/*.test.ts', 'tests/engine/look-back.test.ts'];

/** Everything that needs no browser window. The window's tests are Playwright's: `*.spec.ts`. */
export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  cacheDir: '.cache/vite',
  test: {
    setupFiles: ['tests/node-setup.ts'],
    environment: 'node',
    testTimeout: 60_000,
    hookTimeout: 60_000,
    maxWorkers: 2,
    unstubGlobals: true,
    unstubEnvs: true,
    restoreMocks: true,
    // As the window's tests, none is tried twice.
    retry: 0,
    projects: [
      // What one file has loaded, and what the engine has learned in it, serves the next of the same worker.
      {
        extends: true,
        test: {
          name: 'in one world',
          isolate: false,
          include: ['tests/**/*.test.ts'],
          exclude: [...configDefaults.exclude, ...ALONE],
        },
      },
      { extends: true, test: { name: 'alone', include: ALONE } },
    ],
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
