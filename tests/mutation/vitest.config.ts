import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

/** The tests that must notice a change made to the numbers: reading, plan and table. */
export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  cacheDir: '../.cache/vite-mutation',
  test: { include: ['{reading,plan,table}/**/*.test.ts'], environment: 'node', testTimeout: 60_000 },
});
