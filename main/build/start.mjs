/**
 * `npm start`: Windrow in its own window if Electron is there, else the same window in the browser.
 * `--browser`, or WINDROW_HOST=browser, asks for the browser; `--no-open` prints the address and opens nothing.
 */
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { openInBrowser } from './browser.mjs';
import { freshBuild, ROOT } from './build.mjs';
import { fetchedElectron, installedElectron } from './electron.mjs';

/** Milliseconds within which a failing Electron counts as one that could not start. */
const START_LIMIT = 10_000;
const SIGNALS = /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP']);

process.exitCode = await start();

/** @returns {Promise<number>} the exit code */
async function start() {
  const electron = await electronToUse();
  if (electron !== undefined) {
    await freshBuild(['main', 'renderer']);
    // Electron takes the app's name and entry from the package file in this folder.
    const began = Date.now();
    const code = await ended(spawn(electron, [ROOT], { stdio: 'inherit' }));
    if (code === 0 || Date.now() - began > START_LIMIT) return code;
    say('Electron did not start here, so Windrow opens in your browser.');
  }
  const dist = await freshBuild(['host', 'renderer']);
  return serveInBrowser(join(dist, 'host/main.js'), !process.argv.includes('--no-open'));
}

/** @returns {Promise<string | undefined>} */
async function electronToUse() {
  if (process.env['WINDROW_HOST'] === 'browser' || process.argv.includes('--browser')) return undefined;
  if (process.platform === 'linux' && process.getuid?.() === 0) {
    say("Electron's sandbox does not run for the root user, so Windrow opens in your browser.");
    return undefined;
  }
  const electron = installedElectron(ROOT) ?? (await fetchedElectron(ROOT, { say }));
  if (electron === undefined) say('Electron is not on this computer, so Windrow opens in your browser.');
  return electron;
}

/**
 * Runs the local host until it is stopped. It tells us an address to open, and prints another each
 * time that we ask: when Enter is pressed, if there is a terminal to press it in.
 * @param {string} script
 * @param {boolean} open
 */
function serveInBrowser(script, open) {
  // A group of its own, so that Ctrl+C reaches it once: through us.
  const detached = process.platform !== 'win32';
  const listens = process.stdin.isTTY ? ['--new-address-on-enter'] : [];
  const host = spawn(process.execPath, [script, ...listens], {
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    detached,
  });
  host.once('message', (address) => {
    if (process.stdin.isTTY) printOnEnter(host);
    if (open && !(typeof address === 'string' && openInBrowser(address)))
      say('No browser could be opened here. Open the address above in a browser yourself.');
  });
  return ended(host);
}

/** @param {import('node:child_process').ChildProcess} host */
function printOnEnter(host) {
  say('For another tab or browser, or to come back later, press Enter here: it prints a new address.');
  const lines = createInterface({ input: process.stdin });
  lines.on('line', () => {
    if (host.connected) host.send('new address');
  });
  // A terminal that is still listened to would keep this program alive.
  host.once('close', () => lines.close());
}

/**
 * Waits for a child's end. Asked to stop, it asks the child once and goes on waiting (Ctrl+C may
 * arrive twice, from the terminal and from npm); asked again a moment later, it stops the child.
 * @param {import('node:child_process').ChildProcess} child
 * @returns {Promise<number>} 0 when it ended well or was asked to stop
 */
function ended(child) {
  let askedAt = 0;
  for (const signal of SIGNALS) {
    process.on(signal, () => {
      if (askedAt === 0) child.kill(signal);
      else if (Date.now() - askedAt > 1_000) child.kill('SIGKILL');
      askedAt ||= Date.now();
    });
  }
  return new Promise((done) => {
    child.on('error', () => done(1));
    child.on('close', (code) => done(askedAt > 0 ? 0 : (code ?? 1)));
  });
}

/** @param {string} sentence */
function say(sentence) {
  console.log(sentence);
}
