/** A Chromium for the window's tests: the one that is there, or, on Debian as root, installed now. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { findChromium, onPath } from '../main/build/browser.mjs';

/** What to do when there is none. */
export const ADVICE =
  'No Chromium was found for the tests of the window. Install one (on Debian: apt-get install chromium), ' +
  'or name one: CHROMIUM=/path/to/chromium npm test';

/**
 * The path of a Chromium; also put into the environment, where the tests look for it.
 * @param {{ say: (sentence: string) => void }} options
 * @returns {Promise<string | undefined>}
 */
export async function chromiumForTests({ say }) {
  const found = findChromium(process.env) ?? (await bundledChromium()) ?? installedNow(say);
  if (found !== undefined) process.env['CHROMIUM'] = found;
  return found;
}

/** The one that Playwright fetched, if somebody asked it to. */
async function bundledChromium() {
  const { chromium } = await import('@playwright/test');
  const path = chromium.executablePath();
  return existsSync(path) ? path : undefined;
}

/** @param {(sentence: string) => void} say */
function installedNow(say) {
  const isDebianRoot = process.getuid?.() === 0 && onPath(['apt-get'], process.env) !== undefined;
  if (!isDebianRoot) return undefined;
  say('Installing Chromium for the tests of the window.');
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  spawnSync('apt-get', ['update', '-qq'], { stdio: ['ignore', 'ignore', 'inherit'], env });
  const packages = ['chromium', 'fonts-liberation', 'fonts-dejavu-core'];
  spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages], {
    stdio: ['ignore', 'ignore', 'inherit'],
    env,
  });
  return findChromium(process.env);
}
