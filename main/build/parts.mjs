/**
 * The parts that `dist` is made of:
 * - `main`: `main/entry.js`, Electron's main process, one ESM file with its libraries inside, and
 *   `main/preload.cjs`, the sandboxed preload, which must be one CommonJS file;
 * - `host`: `host/main.js`, the local host that serves the same window in a browser;
 * - `cli`: `cli/main.js`, the commands;
 * - `renderer`: the window, with its workers as module workers, and the licences of all that is shipped.
 */
import { existsSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import { join } from 'node:path';
import { licencesPlugin } from './licences.mjs';

/**
 * @typedef {import('vite').InlineConfig} Config
 * @typedef {'main' | 'host' | 'cli' | 'renderer'} PartName
 * @typedef {{ name: PartName, sources: readonly string[], files: readonly { entry: string, file: string }[] }} Part
 */

const PACKAGE = ['package.json', 'package-lock.json'];
const SCRIPT_SOURCES = ['core', 'main', 'assets', ...PACKAGE];

/** @type {readonly Part[]} */
export const PARTS = [
  {
    name: 'main',
    sources: SCRIPT_SOURCES,
    files: [
      { entry: 'main/shell/entry.ts', file: 'entry.js' },
      { entry: 'main/shell/preload.ts', file: 'preload.cjs' },
    ],
  },
  { name: 'host', sources: SCRIPT_SOURCES, files: [{ entry: 'main/host/main.ts', file: 'main.js' }] },
  { name: 'cli', sources: SCRIPT_SOURCES, files: [{ entry: 'main/cli/main.ts', file: 'main.js' }] },
  {
    name: 'renderer',
    sources: ['core', 'renderer', 'assets', 'main/desk', 'main/build', 'LICENSE', ...PACKAGE],
    files: [{ entry: 'renderer/index.html', file: 'index.html' }],
  },
];

/**
 * The calls of the bundler that make a part in `out`; files whose entry is not there are left out.
 * @param {string} root
 * @param {Part} part
 * @param {string} out
 * @returns {Config[]}
 */
export function configsOf(root, part, out) {
  const present = part.files.filter(({ entry }) => existsSync(join(root, entry)));
  const folder = join(out, part.name);
  if (part.name === 'renderer') return present.map(() => windowConfig(root, folder));
  return present.map(({ entry, file }) => scriptConfig(root, join(root, entry), folder, file));
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
 * The frame, the parts but the one with a chart, and the Table until a rack is dealt, which is what the window opens with:
 * one chunk with all that they need.
 */
const START =
  /renderer\/(parts\/(?!wr-reach-check)|shell|session|tokens|places\/table\/wr-(table-place|deal-panel|rack-panel)\.ts)/;

/**
 * How the window is built, and served while it is worked on.
 * @param {string} root
 * @param {string} outDir
 * @returns {Config}
 */
export function windowConfig(root, outDir) {
  return {
    ...commonConfig(root),
    root: join(root, 'renderer'),
    base: './',
    plugins: [licencesPlugin(root)],
    worker: { format: 'es' },
    build: {
      outDir,
      emptyOutDir: false,
      target: 'es2024',
      // The content policy allows no data: addresses, and the window needs no polyfill.
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      rollupOptions: {
        input: join(root, 'renderer/index.html'),
        // Not many small chunks: the first load stays within five requests.
        output: { codeSplitting: { groups: [{ name: 'start', test: START }] } },
      },
    },
  };
}
