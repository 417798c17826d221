/** Browsers on this computer: the person's own for using Windrow, a Chromium for its tests. */
import { spawn } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

const CHROMIUM_NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
const CHROMIUM_PLACES = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:/Program Files/Google/Chrome/Application/chrome.exe',
  'C:/Program Files (x86)/Google/Chrome/Application/chrome.exe',
];

/** @param {string} path */
function canRun(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * The first of these programs on the person's path.
 * @param {readonly string[]} names
 * @param {NodeJS.ProcessEnv} env
 */
export function onPath(names, env) {
  const folders = (env['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '');
  return names.flatMap((name) => folders.map((folder) => join(folder, name))).find(canRun);
}

/**
 * A Chromium: the one that CHROMIUM names, or one on the path or in a usual place.
 * @param {NodeJS.ProcessEnv} env
 * @returns {string | undefined}
 */
export function findChromium(env) {
  const named = env['CHROMIUM'];
  if (named !== undefined && named !== '') return canRun(named) ? named : undefined;
  return onPath(CHROMIUM_NAMES, env) ?? CHROMIUM_PLACES.find(canRun);
}

/**
 * The command that opens an address in the person's browser, if there is a screen to show it on;
 * `input` is what it reads. Of the systems where other users can see a command line, macOS is told
 * the address by the input; the others can't be, so that theirs opens to this person alone.
 * @param {string} address
 * @param {NodeJS.ProcessEnv} env
 * @param {NodeJS.Platform} platform
 * @returns {{ program: string, args: string[], input?: string } | undefined}
 */
export function opener(address, env, platform) {
  if (platform === 'win32') return { program: 'rundll32', args: ['url.dll,FileProtocolHandler', address] };
  if (platform === 'darwin') return { program: 'osascript', args: ['-'], input: `open location "${address}"\n` };
  if (env['DISPLAY'] === undefined && env['WAYLAND_DISPLAY'] === undefined) return undefined;
  const program = onPath(['xdg-open'], env) ?? findChromium(env);
  return program === undefined ? undefined : { program, args: [address] };
}

/**
 * Opens an address; whether it worked is for the person to see. Answers false when there is nothing to open it with.
 * @param {string} address
 */
export function openInBrowser(address) {
  const command = opener(address, process.env, process.platform);
  if (command === undefined) return false;
  const child = spawn(command.program, command.args, { stdio: ['pipe', 'ignore', 'ignore'], detached: true });
  child.on('error', () => undefined);
  child.stdin.on('error', () => undefined).end(command.input);
  child.unref();
  return true;
}
