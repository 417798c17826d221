/**
 * Electron's program file: installed by hand, or fetched once. npm fetches the package only, not
 * the program (install scripts are refused), and an offline computer can't get it at all; then the
 * browser serves. A fetch that failed is remembered for a day, so that the next start is quick.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const DAY = 86_400_000;
const FETCH_LIMIT = 60_000;
const PROGRAM = /** @type {Record<string, string>} */ ({
  darwin: 'Electron.app/Contents/MacOS/Electron',
  win32: 'electron.exe',
});

/**
 * The program's path if a whole Electron of the version asked for is there.
 * @param {string} root
 * @returns {string | undefined}
 */
export function installedElectron(root) {
  const folder = join(root, 'node_modules/electron');
  const program = join(folder, 'dist', PROGRAM[process.platform] ?? 'electron');
  const versionFile = join(folder, 'dist/version');
  if (!existsSync(program) || !existsSync(versionFile)) return undefined;
  const wanted = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')).version;
  return readFileSync(versionFile, 'utf8').trim().replace(/^v/, '') === wanted ? program : undefined;
}

/**
 * Tries to fetch Electron, unless that failed within the last day or the package is not there.
 * @param {string} root
 * @param {{ say: (sentence: string) => void, now?: number, limit?: number }} options
 * @returns {Promise<string | undefined>} the program's path if it is there now
 */
export async function fetchedElectron(root, { say, now = Date.now(), limit = FETCH_LIMIT }) {
  const installer = join(root, 'node_modules/electron/install.js');
  const memory = join(root, '.cache/electron-fetch-failed');
  if (!existsSync(installer) || failedLately(memory, now)) return undefined;
  say('Fetching Electron, once; this takes a minute at most.');
  await runQuietly(installer, limit);
  const program = installedElectron(root);
  if (program === undefined) {
    mkdirSync(dirname(memory), { recursive: true });
    writeFileSync(memory, String(now));
  } else {
    rmSync(memory, { force: true });
  }
  return program;
}

/** @param {string} memory @param {number} now */
function failedLately(memory, now) {
  if (!existsSync(memory)) return false;
  const age = now - Number(readFileSync(memory, 'utf8'));
  return age >= 0 && age < DAY;
}

/** Runs the installer until it ends or the time is over. @param {string} script @param {number} limit */
function runQuietly(script, limit) {
  return new Promise((done) => {
    const child = spawn(process.execPath, [script], { stdio: 'ignore', timeout: limit, killSignal: 'SIGKILL' });
    child.on('error', () => done(undefined));
    child.on('close', () => done(undefined));
  });
}
