/**
 * The parts that `dist` is made of. Each is one call of the bundler:
 * - `main/entry.js`: Electron's main process, one ESM file with its libraries inside;
 * - `main/preload.cjs`: the sandboxed preload, which must be one CommonJS file;
 * - `host/main.js`: the local host that serves the same window in a browser;
 * - `cli/main.js`: the commands;
 * - `renderer/`: the window, with its workers as module workers.
 */
import { existsSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import { join } from 'node:path';

/**
 * @typedef {import('vite').InlineConfig} Config
 * @typedef {{ name: string, config: Config }} Part
 */

/**
 * The parts whose entry is there, each to be built into `out`.
 * @param {string} root
 * @param {string} out
 * @returns {Part[]}
 */
export function partsOf(root, out) {
  const scripts = [
    { name: 'main', entry: 'main/shell/entry.ts', file: 'entry.js' },
    { name: 'main', entry: 'main/shell/preload.ts', file: 'preload.cjs' },
    { name: 'host', entry: 'main/host/main.ts', file: 'main.js' },
    { name: 'cli', entry: 'main/cli/main.ts', file: 'main.js' },
  ].filter(({ entry }) => existsSync(join(root, entry)));
  const parts = scripts.map(({ name, entry, file }) => ({
    name: `${name}/${file}`,
    config: scriptConfig(root, join(root, entry), join(out, name), file),
  }));
  const hasWindow = existsSync(join(root, 'renderer/index.html'));
  return hasWindow ? [...parts, { name: 'renderer', config: windowConfig(root, join(out, 'renderer')) }] : parts;
}

/** @param {string} root @returns {Config} */
function commonConfig(root) {
  return { root, configFile: false, publicDir: false, cacheDir: join(root, '.cache/vite') };
}

/** @param {string} root @param {string} entry @param {string} outDir @param {string} file @returns {Config} */
function scriptConfig(root, entry, outDir, file) {
  return {
    ...commonConfig(root),
    ssr: { noExternal: true, target: 'node' },
    build: {
      ssr: entry,
      outDir,
      emptyOutDir: false,
      target: 'node20',
      minify: false,
      rollupOptions: {
        external: (/** @type {string} */ id) => id === 'electron' || isBuiltin(id),
        output: { format: file.endsWith('.cjs') ? 'cjs' : 'es', entryFileNames: file, codeSplitting: false },
      },
    },
  };
}

/**
 * How the window is built, and served while it is worked on.
 * @param {string} root
 * @param {string} outDir
 * @param {string} [page] the page in `renderer/`
 * @returns {Config}
 */
export function windowConfig(root, outDir, page = 'index.html') {
  return {
    ...commonConfig(root),
    root: join(root, 'renderer'),
    base: './',
    worker: { format: 'es' },
    build: {
      outDir,
      emptyOutDir: false,
      target: 'es2024',
      // The content policy allows no data: addresses, and the window needs no polyfill.
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      rollupOptions: { input: join(root, 'renderer', page) },
    },
  };
}
