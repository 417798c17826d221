import { type ChildProcessWithoutNullStreams, execFileSync, spawn } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { findChromium, onPath, opener } from '../../main/build/browser.mjs';
import { chromiumHere } from '../chromium.mjs';
import { fetchedElectron, installedElectron } from '../../main/build/electron.mjs';
import { letIn } from '../main/support/let-in.mjs';

const DAY = 86_400_000;
const program =
  {
    darwin: 'Electron.app/Contents/MacOS/Electron',
    win32: 'electron.exe',
  }[process.platform as 'darwin' | 'win32'] ?? 'electron';
let root = '';
let said: string[] = [];
const say = (sentence: string): void => void said.push(sentence);

function write(file: string, text: string): string {
  const path = join(root, file);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
  return path;
}

/** An installer that does what its text says, run in Electron's package folder. */
function installer(text: string): void {
  write('node_modules/electron/package.json', '{ "version": "45.4.1" }');
  write('node_modules/electron/install.js', `const fs = require('fs');\nprocess.chdir(__dirname);\n${text}`);
}

const succeeding = `fs.mkdirSync(require('path').dirname('dist/${program}'), { recursive: true });
fs.writeFileSync('dist/${program}', '');
fs.writeFileSync('dist/version', 'v45.4.1');`;

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'windrow-start-'));
  said = [];
});

afterEach(() => rmSync(root, { recursive: true }));

test('Electron counts as installed only when it is whole and of the version asked for', () => {
  installer('');
  expect(installedElectron(root)).toBeUndefined();
  const path = write(`node_modules/electron/dist/${program}`, '');
  expect(installedElectron(root)).toBeUndefined();
  write('node_modules/electron/dist/version', 'v44.0.0');
  expect(installedElectron(root)).toBeUndefined();
  write('node_modules/electron/dist/version', '45.4.1\n');
  expect(installedElectron(root)).toBe(path);
});

test('Electron is fetched once, and the person is told', async () => {
  installer(succeeding);
  const path = await fetchedElectron(root, { say });
  expect(path).toBe(installedElectron(root));
  expect(path).toContain(program);
  expect(said).toEqual(['Fetching Electron, once; this takes a minute at most.']);
});

test('a fetch that failed is remembered for a day, then tried again', async () => {
  installer('process.exit(1);');
  expect(await fetchedElectron(root, { say, now: 1_000 })).toBeUndefined();
  installer(succeeding);
  expect(await fetchedElectron(root, { say, now: 1_000 + DAY - 1 })).toBeUndefined();
  expect(said).toHaveLength(1);
  expect(await fetchedElectron(root, { say, now: 1_000 + DAY })).toContain(program);
  expect(existsSync(join(root, '.cache/electron-fetch-failed'))).toBe(false);
});

test('a fetch that hangs ends at its time limit', async () => {
  installer('setInterval(() => undefined, 1000);');
  expect(await fetchedElectron(root, { say, limit: 300 })).toBeUndefined();
  expect(existsSync(join(root, '.cache/electron-fetch-failed'))).toBe(true);
});

test('without the package nothing is fetched and nothing is said', async () => {
  expect(await fetchedElectron(root, { say })).toBeUndefined();
  expect(said).toEqual([]);
});

test('the address is opened by what each system has for it, and by nothing where there is no screen', () => {
  const address = 'http://127.0.0.1:4000/';
  const xdg = write('bin/xdg-open', '');
  chmodSync(xdg, 0o755);
  const path = { PATH: join(root, 'bin') };
  expect(opener(address, {}, 'win32')?.args).toContain(address);
  // Everyone on the computer can see a command line there: it does not hold the address.
  expect(opener(address, {}, 'darwin')).toEqual({
    program: 'osascript',
    args: ['-'],
    input: `open location "${address}"\n`,
  });
  expect(opener(address, { ...path, DISPLAY: ':0' }, 'linux')).toEqual({ program: xdg, args: [address] });
  expect(opener(address, path, 'linux')).toBeUndefined();
});

test.skipIf(process.platform === 'win32')('CHROMIUM names the Chromium to use; else the path is searched', () => {
  const chromium = write('bin/chromium', '');
  expect(findChromium({ PATH: join(root, 'bin') })).not.toBe(chromium);
  chmodSync(chromium, 0o755);
  expect(findChromium({ PATH: join(root, 'bin') })).toBe(chromium);
  expect(findChromium({ PATH: join(root, 'bin'), CHROMIUM: join(root, 'none') })).toBeUndefined();
  const own = write('own', '');
  chmodSync(own, 0o755);
  expect(findChromium({ PATH: join(root, 'bin'), CHROMIUM: own })).toBe(own);
  // The window's tests take the one without windows, if no other is named.
  const shell = write('bin/chromium-headless-shell', '');
  chmodSync(shell, 0o755);
  expect(chromiumHere({ PATH: join(root, 'bin') })).toBe(shell);
  expect(chromiumHere({ PATH: join(root, 'bin'), CHROMIUM: own })).toBe(own);
  rmSync(shell);
  expect(chromiumHere({ PATH: join(root, 'bin') })).toBe(chromium);
});

interface Started {
  readonly child: ChildProcessWithoutNullStreams;
  readonly address: string;
  /** All that was printed so far. */
  readonly printed: () => string;
  readonly ended: Promise<number | null>;
}

const START = resolve(import.meta.dirname, '../../main/build/start.mjs');

/** Starts Windrow as `npm start` does, in the browser, on a folder of its own; resolves once an address and `words` were printed. */
async function startWindrow(args: readonly string[], env: NodeJS.ProcessEnv, words: RegExp): Promise<Started> {
  return await started(spawn(process.execPath, [START, '--browser', ...args], { env }), words);
}

async function started(child: ChildProcessWithoutNullStreams, words: RegExp): Promise<Started> {
  const ended = new Promise<number | null>((done) => child.on('close', done));
  let printed = '';
  const address = await new Promise<string>((found, lost) => {
    child.stdout.on('data', (chunk) => {
      printed += String(chunk);
      const url = /http:\/\/127\.0\.0\.1:\d+\S*(?=\s)/.exec(printed)?.[0];
      if (url !== undefined && words.test(printed)) found(url);
    });
    child.on('close', () => lost(new Error(`it ended too soon: ${printed}`)));
  });
  return { child, address, printed: () => printed, ended };
}

test('started without Electron, the address serves the window, and Ctrl+C ends it well', async () => {
  const env = { ...process.env, WINDROW_FOLDER: join(root, 'desk') };
  const { child, address, ended } = await startWindrow(['--no-open'], env, /Ctrl\+C/);
  const page = await fetch(new URL('/', address), { headers: { cookie: (await letIn(address)).cookie } });
  expect(await page.text()).toMatch(/<title>Windrow<\/title>/);
  child.kill('SIGINT');
  expect(await ended).toBe(0);
}, 60_000);

test.skipIf(process.platform !== 'linux')(
  'where there is no browser, one sentence says what to do',
  async () => {
    const { DISPLAY: _, WAYLAND_DISPLAY: __, ...others } = process.env;
    const env = { ...others, WINDROW_FOLDER: join(root, 'desk') };
    const { child, ended, printed } = await startWindrow([], env, /No browser/);
    expect(printed().match(/No browser.*/g)).toEqual([
      'No browser could be opened here. Open the address above in a browser yourself.',
    ]);
    child.kill('SIGINT');
    expect(await ended).toBe(0);
  },
  60_000,
);

test.skipIf(process.platform !== 'linux')(
  '`npm start` alone starts it, where Electron is not asked for and no browser can be opened',
  async () => {
    const { DISPLAY: _, WAYLAND_DISPLAY: __, ...others } = process.env;
    const env = { ...others, WINDROW_HOST: 'browser', WINDROW_FOLDER: join(root, 'desk') };
    const cwd = resolve(import.meta.dirname, '../..');
    const { child, address, ended } = await started(spawn('npm', ['start'], { cwd, env, detached: true }), /Ctrl\+C/);
    const page = await fetch(new URL('/', address), { headers: { cookie: (await letIn(address)).cookie } });
    expect(await page.text()).toMatch(/<title>Windrow<\/title>/);
    // Ctrl+C reaches every program of the terminal: npm, its shell and Windrow.
    process.kill(-(child.pid ?? 0), 'SIGINT');
    await ended;
    await expect(fetch(new URL('/', address))).rejects.toThrow('fetch failed');
  },
  60_000,
);

/** All addresses that were printed to their end. */
function addressesIn(text: string): readonly string[] {
  return text.match(/http:\/\/127\.0\.0\.1:\d+\S*(?=\s)/g) ?? [];
}

/** Gives a program a real terminal, of which the test is the keyboard. */
const TERMINAL = process.platform === 'linux' ? onPath(['script'], process.env) : undefined;

test.skipIf(TERMINAL === undefined)(
  'CR-L5: Enter in the terminal prints a new address, with which one comes back without a restart',
  async () => {
    // `exec`, as not every shell does so by itself: Ctrl+C is for Windrow, not for a shell between.
    const env = { ...process.env, SHELL: '/bin/sh', WINDROW_FOLDER: join(root, 'desk') };
    const command = `exec "${process.execPath}" "${START}" --browser --no-open`;
    const terminal = spawn(TERMINAL ?? '', ['--quiet', '--flush', '--return', '--command', command, '/dev/null'], {
      env,
    });
    const { child, address, ended, printed } = await started(terminal, /press Enter here/);
    const shutOut = await fetch(new URL('/', address));
    expect(await shutOut.text()).toContain('press Enter in the terminal');
    expect((await letIn(address)).cookie).not.toBe('');
    for (const count of [2, 3]) {
      child.stdin.write('\r');
      await expect.poll(() => new Set(addressesIn(printed())).size, { timeout: 20_000 }).toBe(count);
      const newest = addressesIn(printed()).at(-1) ?? '';
      expect(new URL(newest).origin).toBe(new URL(address).origin);
      const headers = await letIn(newest);
      const about = await fetch(new URL('/desk/about', newest), { method: 'POST', headers, body: '[]' });
      expect(about.status).toBe(200);
      expect((await letIn(newest)).cookie).toBe('');
    }
    child.stdin.write('\u0003');
    expect(await ended).toBe(0);
  },
  60_000,
);

test('without a terminal nothing waits for Enter and nothing speaks of it', async () => {
  const env = { ...process.env, WINDROW_FOLDER: join(root, 'desk') };
  const { child, address, ended, printed } = await startWindrow(['--no-open'], env, /Ctrl\+C/);
  child.stdin.write('\n\n');
  child.stdin.end();
  // Time in which an answer to Enter would have come.
  for (let turn = 0; turn < 20; turn += 1) await fetch(new URL('/', address));
  expect((await fetch(address, { redirect: 'manual' })).status).toBe(303);
  expect(addressesIn(printed())).toEqual([address]);
  expect(printed()).not.toMatch(/press Enter/i);
  expect(await (await fetch(new URL('/', address))).text()).not.toMatch(/press Enter/i);
  child.kill('SIGINT');
  expect(await ended).toBe(0);
}, 60_000);

test.skipIf(process.platform !== 'linux')(
  'CR-L5: what the opening of a browser shows on its command line opens to this person alone, once',
  async () => {
    const seen = join(root, 'seen');
    const opening = write(
      'bin/xdg-open',
      `#!/bin/sh\ntr '\\0' '\\n' < /proc/$$/cmdline > "${seen}.part"\nmv "${seen}.part" "${seen}"\n`,
    );
    chmodSync(opening, 0o755);
    const path = `${join(root, 'bin')}:${process.env['PATH'] ?? ''}`;
    const env = { ...process.env, PATH: path, DISPLAY: ':0', WINDROW_FOLDER: join(root, 'desk') };
    const { child, address, ended, printed } = await startWindrow([], env, /Ctrl\+C/);
    await expect.poll(() => existsSync(seen), { timeout: 20_000 }).toBe(true);
    const [shown = ''] = addressesIn(readFileSync(seen, 'utf8'));
    expect(new URL(shown).origin).toBe(new URL(address).origin);
    expect(printed()).not.toContain(shown);
    if (process.getuid?.() === 0) {
      const script = `fetch('${shown}', { redirect: 'manual' }).then(({ status }) => console.log(status))`;
      const other = { uid: 65_534, gid: 65_534, cwd: '/', env: {}, encoding: 'utf8' as const };
      expect(execFileSync(process.execPath, ['-e', script], other).trim()).toBe('403');
    }
    expect((await letIn(shown)).cookie).not.toBe('');
    expect((await letIn(shown)).cookie).toBe('');
    child.kill('SIGINT');
    expect(await ended).toBe(0);
  },
  60_000,
);

test('with damaged settings it starts, says so in one sentence, and keeps the file', async () => {
  write('desk/preferences.json', '{"theme":');
  const env = { ...process.env, WINDROW_FOLDER: join(root, 'desk') };
  const { child, address, ended } = await startWindrow(['--no-open'], env, /Ctrl\+C/);
  const headers = await letIn(address);
  const ask = async (call: string): Promise<unknown> => {
    const reply = await fetch(new URL(`/desk/${call}`, address), { method: 'POST', headers, body: '[]' });
    return await reply.json();
  };
  expect(await ask('readPreferences')).toMatchObject({ ok: true, value: { theme: 'system' } });
  expect(await ask('notices')).toEqual({
    ok: true,
    value: [expect.stringMatching(/^The settings could not be read.*kept as preferences\.json\.damaged-.*\.$/)],
  });
  child.kill('SIGINT');
  expect(await ended).toBe(0);
}, 60_000);

test('CR-J6: a second start on the same folder ends with one sentence and the code 1', async () => {
  const env = { ...process.env, WINDROW_FOLDER: join(root, 'desk') };
  const { child, ended } = await startWindrow(['--no-open'], env, /Ctrl\+C/);
  const second = spawn(process.execPath, [START, '--browser', '--no-open'], { env });
  let complaint = '';
  second.stderr.on('data', (chunk) => (complaint += String(chunk)));
  expect(await new Promise((done) => second.on('close', done))).toBe(1);
  expect(complaint.trim()).toBe('Windrow is already open with this folder. Go to that window, or close it first.');
  child.kill('SIGINT');
  expect(await ended).toBe(0);
}, 60_000);
