/**
 * A Chromium for the window's tests: the one that is there, or, on Debian as root, installed now. The same Chromium
 * without windows of its own (`chromium-headless-shell`) is taken first: it begins a test in a third of the time.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { findChromium, onPath } from '../main/build/browser.mjs';

const SHELL = 'chromium-headless-shell';
/** The longest that asking for what there is, and installing it, may take, in milliseconds. */
const PATIENCE = { update: 120_000, install: 600_000 };

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
  const { env } = process;
  const there = chromiumHere(env) ?? (await bundledChromium());
  const isNamed = (env['CHROMIUM'] ?? '') !== '';
  // A person's computer that has a Chromium is left as it is.
  const wanted = there === undefined || (env['CI'] !== undefined && !isNamed && onPath([SHELL], env) === undefined);
  const found = (wanted ? installedNow(say, there === undefined) : undefined) ?? there;
  if (found !== undefined) env['CHROMIUM'] = found;
  return found;
}

/**
 * The one that is here: the one that CHROMIUM names, the one without windows, or any other.
 * @param {NodeJS.ProcessEnv} env
 */
export function chromiumHere(env) {
  const isNamed = (env['CHROMIUM'] ?? '') !== '';
  return (isNamed ? undefined : onPath([SHELL], env)) ?? findChromium(env);
}

/** The one that Playwright fetched, if somebody asked it to. */
async function bundledChromium() {
  const { chromium } = await import('@playwright/test');
  const path = chromium.executablePath();
  return existsSync(path) ? path : undefined;
}

/** @param {(sentence: string) => void} say @param {boolean} isNeeded whether there is none at all */
function installedNow(say, isNeeded) {
  const isDebianRoot = process.getuid?.() === 0 && onPath(['apt-get'], process.env) !== undefined;
  if (!isDebianRoot) return undefined;
  say('Installing Chromium for the tests of the window.');
  if (!apt(PATIENCE.update, 'update', '-qq') && !isNeeded) return undefined;
  const fonts = ['fonts-liberation', 'fonts-dejavu-core'];
  // Older systems have only the whole browser.
  for (const browser of [SHELL, 'chromium']) {
    apt(PATIENCE.install, 'install', '-y', '-qq', '--no-install-recommends', browser, ...fonts);
    const found = chromiumHere(process.env);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** Whether it went well. @param {number} timeout @param {readonly string[]} args */
function apt(timeout, ...args) {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  return spawnSync('apt-get', args, { stdio: ['ignore', 'ignore', 'inherit'], env, timeout }).status === 0;
}
