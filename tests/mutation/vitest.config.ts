import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

/** The folders of tests that must notice a change; run.mjs names them. */
const folders: readonly string[] = JSON.parse(process.env.WINDROW_MUTATE ?? '["reading","plan","table"]');

export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  cacheDir: '../.cache/vite-mutation',
  test: { include: folders.map((folder) => `${folder}/**/*.test.ts`), environment: 'node', testTimeout: 300_000 },
});
