/**
 * `npm run package [-- --linux | --mac | --windows] [--folder]`: builds Windrow and packs it for
 * this system or the one named; `--folder` makes the program's folder only, no installer. An installer is
 * made only when what is shipped has no known fault (supply.mjs).
 */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { build, Platform } from 'electron-builder';
import { buildParts, ROOT } from '../build/build.mjs';
import { PARTS } from '../build/parts.mjs';
import { packageConfig, PRODUCT } from './config.mjs';
import { lookUpSupply, supplyReport } from './supply.mjs';

/**
 * Builds afresh and packs.
 * @param {{ system: 'linux' | 'mac' | 'windows', folderOnly: boolean, output: string, electronDist?: string, bare?: boolean }} options
 *   `bare`: for a stand-in of Electron's program: no icon (its making needs tools from the network), no signature
 * @returns {Promise<string[]>} the files made
 */
export async function pack({ system, folderOnly, output, electronDist, bare = false }) {
  const app = join(ROOT, '.cache/app');
  rmSync(app, { recursive: true, force: true });
  const parts = PARTS.filter(({ name }) => name === 'main' || name === 'renderer');
  await buildParts(parts, { root: ROOT, dist: app, logLevel: 'warn' });
  writeFileSync(join(app, 'package.json'), `${JSON.stringify(appPackage(), null, 2)}\n`);
  const electronVersion = readJson('node_modules/electron/package.json').version;
  const platform = { linux: Platform.LINUX, mac: Platform.MAC, windows: Platform.WINDOWS }[system];
  return build({
    projectDir: ROOT,
    targets: folderOnly ? platform.createTarget('dir') : platform.createTarget(),
    config: packageConfig({
      app,
      output,
      icons: bare ? app : join(ROOT, 'assets'),
      electronVersion,
      electronDist,
      bare,
    }),
  });
}

/** What the packed app says of itself; its libraries are inside its files, so it depends on nothing. */
function appPackage() {
  const { name, version, description, license } = readJson('package.json');
  const author = 'Windrow contributors';
  return { name, productName: PRODUCT, version, description, license, author, type: 'module', main: 'main/entry.js' };
}

/** @param {string} file */
function readJson(file) {
  return JSON.parse(readFileSync(join(ROOT, file), 'utf8'));
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  await packAsAsked();
}

async function packAsAsked() {
  const flag = /** @type {const} */ ({ type: 'boolean', default: false });
  const { values } = parseArgs({ options: { linux: flag, mac: flag, windows: flag, folder: flag } });
  const own = process.platform === 'darwin' ? 'mac' : process.platform === 'win32' ? 'windows' : 'linux';
  const system = values.linux ? 'linux' : values.mac ? 'mac' : values.windows ? 'windows' : own;
  const { text, exitCode } = supplyReport(lookUpSupply(), !values.folder);
  console.log(text);
  if (exitCode !== 0) {
    process.exitCode = exitCode;
    return;
  }
  const output = join(ROOT, 'dist/packages');
  mkdirSync(output, { recursive: true });
  for (const file of await pack({ system, folderOnly: values.folder, output })) console.log(file);
}
