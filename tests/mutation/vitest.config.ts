import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

/** The tests that must notice a change, as patterns without their ending; run.mjs names them. */
const names: readonly string[] = JSON.parse(process.env.WINDROW_MUTATE ?? '["{reading,plan,table}/**/*"]');

export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  cacheDir: '../.cache/vite-mutation',
  test: { include: names.map((name) => `${name}.test.ts`), environment: 'node', testTimeout: 300_000 },
});
