/**
 * `npm run soak`: logs 2,000 games in one window and checks that it is no larger after them than
 * after the first few; says the size after each hundred. `npm run soak -- 500` logs that many.
 */
import { spawnSync } from 'node:child_process';
import { join, resolve } from 'node:path';
import { freshBuild } from '../main/build/build.mjs';

const ROOT = resolve(import.meta.dirname, '..');
const USUAL = 2000;

const games = Number(process.argv[2] ?? USUAL);
if (!Number.isInteger(games) || games < 80) {
  console.error('Say a whole number of games, 80 or more: npm run soak -- 500');
  process.exitCode = 2;
} else {
  await freshBuild();
  const playwright = join(ROOT, 'node_modules/@playwright/test/cli.js');
  const args = ['test', '--config', 'tests/playwright.config.ts', '--workers', '1', 'window/soak.spec.ts'];
  const env = { ...process.env, WINDROW_SOAK: String(games) };
  process.exitCode =
    spawnSync(process.execPath, [playwright, ...args], { cwd: ROOT, env, stdio: 'inherit' }).status ?? 1;
}
