import { isBuiltin } from 'node:module';
import { resolve } from 'node:path';

/**
 * Bundles TypeScript files for Node into a folder, so that a command of the tests runs what a build would.
 * @param {string[] | Record<string, string>} input paths, or paths by the names of their bundles
 * @param {string} outDir
 * @param {string} [root] the tree they belong to
 */
export async function bundleForNode(input, outDir, root = resolve(import.meta.dirname, '..')) {
  const { build } = await import('vite');
  await build({
    root,
    configFile: false,
    publicDir: false,
    logLevel: 'error',
    build: {
      ssr: true,
      outDir,
      target: 'node20',
      rollupOptions: { input, external: (/** @type {string} */ id) => isBuiltin(id) || id === '@playwright/test' },
    },
  });
}
