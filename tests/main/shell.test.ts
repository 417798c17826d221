import { readdirSync, readFileSync } from 'node:fs';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { DESK_CALLS } from '../../main/desk/calls.ts';
import { openDesk } from '../../main/desk/open.ts';
import { channelOf } from '../../main/shell/channels.ts';
import { type ShellOptions, runShell } from '../../main/shell/shell.ts';
import { menuTemplate } from '../../main/shell/set-up-menu.ts';
import type { PlaceStoreOptions, PlaceStore } from '../../main/shell/window-place.ts';
import { ContentsStub, ElectronStub, OUR_FRAME } from './support/electron-stub.ts';
import { TRAVERSALS } from './support/traversals.ts';

const HOUSE = resolve(import.meta.dirname, '../..');
let base = '';
let electron = new ElectronStub();
let kept: Record<string, unknown> = {};
let storeOptions: PlaceStoreOptions[] = [];

beforeEach(async () => {
  base = await mkdtemp(join(tmpdir(), 'windrow-shell-'));
  await mkdir(join(base, 'window'));
  await writeFile(join(base, 'window', 'index.html'), '<!doctype html><title>Windrow</title>');
  await writeFile(join(base, 'secret.html'), 'SECRET');
  electron = new ElectronStub();
  kept = {};
  storeOptions = [];
});

afterEach(async () => {
  await quitApp();
  await rm(base, { recursive: true });
});

function memoryStore(options: PlaceStoreOptions): PlaceStore {
  storeOptions.push(options);
  return {
    get store() {
      return kept;
    },
    set: (fields) => {
      kept = { ...kept, ...fields };
    },
  };
}

async function startApp(changes: Partial<ShellOptions> = {}): Promise<void> {
  await runShell({
    electron: electron.parts(),
    folder: join(base, 'desk'),
    root: join(base, 'window'),
    preload: '/app/preload.cjs',
    platform: 'linux',
    argv: [],
    openDesk,
    createStore: memoryStore,
    ...changes,
  });
}

/** Lets the app end as Electron would: `will-quit` may be held back until the desk is put away. */
async function quitApp(): Promise<void> {
  let held = false;
  electron.app.emit('will-quit', { preventDefault: () => (held = true) });
  if (!held) return;
  const quits = electron.app.quits;
  await expect.poll(() => electron.app.quits).toBe(quits + 1);
}

/** All sources of the shell, for what must not be in them. */
function sources(folder: string): string {
  const all = readdirSync(join(HOUSE, folder), { recursive: true, encoding: 'utf8' });
  const files = all.filter((file) => file.endsWith('.ts'));
  expect(files.length).toBeGreaterThan(5);
  return files.map((file) => readFileSync(join(HOUSE, folder, file), 'utf8')).join('\n');
}

const HOSTILE = [
  'https://evil.example/',
  'http://127.0.0.1:8080/',
  'file:///etc/passwd',
  'javascript:alert(1)',
  'data:text/html,<script>1</script>',
  'blob:app://windrow.evil/1',
  'about:blank',
  'app://evil/index.html',
  'app://windrow.evil/index.html',
  'app://windrow@evil/',
  'APP://windrow/other.html',
  'chrome://settings',
  'devtools://devtools/bundled/inspector.html',
  'ftp://evil.example/',
  'mailto:someone@evil.example',
  'ms-settings:',
  'ws://evil.example/',
  '//evil.example/',
  'app://windrow:99/index.html',
  'view-source:https://evil.example/',
];

describe("Electron's security checklist", () => {
  test('1 only secure content: the only address ever loaded is our own', async () => {
    await startApp();
    expect(electron.windows.map(({ loaded }) => loaded)).toEqual([['app://windrow/index.html']]);
    const ours = /^(?:devtools:|app:\/\/windrow\/)/i;
    expect(HOSTILE.filter((url) => !ours.test(url) && electron.session.loads(url))).toEqual([]);
    expect(electron.session.loads('app://windrow/assets/a.js')).toBe(true);
  });

  test('2, 3, 4, 11 no Node in pages, contexts isolated, sandboxed, no web views', async () => {
    await startApp();
    expect(electron.windows[0]?.options.webPreferences).toEqual({
      preload: '/app/preload.cjs',
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webviewTag: false,
      spellcheck: false,
      navigateOnDragDrop: false,
    });
    expect(electron.log.indexOf('sandbox')).toBeLessThan(electron.log.indexOf('ready'));
    expect(electron.log.indexOf('schemes')).toBeLessThan(electron.log.indexOf('ready'));
    expect(sources('main')).not.toMatch(/no-sandbox/);
  });

  test('5 permissions: asked for or checked, none is given but to copy, and that to our page alone', async () => {
    await startApp();
    const { session } = electron;
    const page = { isMainFrame: true, requestingUrl: 'app://windrow/index.html#/warmup' };
    for (const permission of [
      'media',
      'geolocation',
      'notifications',
      'clipboard-read',
      'fullscreen',
      'openExternal',
      'usb',
    ]) {
      expect(session.grants(permission, page), permission).toEqual([false, false]);
    }
    const copy = 'clipboard-sanitized-write';
    expect(session.grants(copy, page)).toEqual([true, true]);
    expect(session.grants(copy, { ...page, isMainFrame: false })).toEqual([false, false]);
    for (const requestingUrl of ['https://evil.example/', 'app://windrow.evil/', 'blob:app://windrow/1', '']) {
      expect(session.grants(copy, { ...page, requestingUrl }), requestingUrl).toEqual([false, false]);
    }
    expect(session.checkHandler?.(null, copy, 'app://windrow/', { isMainFrame: true })).toBe(false);
    expect(session.deviceHandler?.()).toBe(false);
    expect(session.spellChecker).toBe(false);
  });

  test.each([
    'webSecurity',
    'allowRunningInsecureContent',
    'experimentalFeatures',
    'enableBlinkFeatures',
    'allowpopups',
    '<webview',
    'openExternal',
    'executeJavaScript',
    'sendSync',
    '@electron/remote',
  ])('6, 8, 9, 10, 11, 15 %s is nowhere in the source', (word) => {
    expect(sources('main')).not.toContain(word);
  });

  test('7 a content policy without holes comes with every reply', async () => {
    await startApp();
    for (const [url, status] of [
      ['app://windrow/', 200],
      ['app://windrow/none.js', 404],
    ] as const) {
      const reply = await electron.protocolHandler?.(new Request(url));
      expect(reply?.status).toBe(status);
      expect(reply?.headers.get('content-security-policy')).toMatch(/^default-src 'none'; script-src 'self';/);
      expect(reply?.headers.get('content-security-policy')).not.toMatch(/unsafe|data:|\*|http/);
      expect(reply?.headers.get('x-content-type-options')).toBe('nosniff');
    }
  });

  test('12, 13, 14 no guest page, no navigation to any of 20 hostile addresses, no new window', async () => {
    await startApp();
    expect(HOSTILE).toHaveLength(20);
    const contents = new ContentsStub();
    electron.app.emit('web-contents-created', {}, contents);
    for (const url of HOSTILE) {
      for (const name of ['will-navigate', 'will-frame-navigate', 'will-redirect', 'will-attach-webview']) {
        expect(contents.stops(name, url), `${name} ${url}`).toBe(true);
      }
      expect(contents.openHandler?.({ url })).toEqual({ action: 'deny' });
    }
  });

  test('13 the page may load itself anew, as it does after everything was deleted', async () => {
    await startApp();
    const contents = new ContentsStub();
    electron.app.emit('web-contents-created', {}, contents);
    const stopped = (url: string): boolean[] =>
      ['will-navigate', 'will-frame-navigate'].map((name) => contents.stops(name, url));
    for (const hash of ['', '#/settings']) {
      expect(stopped(`app://windrow/index.html${hash}`), hash).toEqual([false, false]);
    }
    for (const path of ['', 'licences.txt', 'index.html?a', 'index.html/..']) {
      expect(stopped(`app://windrow/${path}`), path).toEqual([true, true]);
    }
  });

  test('16 the Electron in use is a pinned release of a supported major', () => {
    const { devDependencies } = JSON.parse(readFileSync(join(HOUSE, 'package.json'), 'utf8'));
    expect(devDependencies.electron).toMatch(/^(4[5-9]|[5-9]\d)\.\d+\.\d+$/);
  });

  test('17 every call goes through one door: sender, frame, size and shape are checked', async () => {
    await startApp();
    expect([...electron.handlers.keys()].sort()).toEqual(DESK_CALLS.map(channelOf).sort());
    const about = await electron.invoke('desk:about', []);
    expect(about).toMatchObject({ ok: true, value: { host: 'electron' } });
    const foreign = [
      null,
      { ...OUR_FRAME, parent: {} },
      ...HOSTILE.filter((url) => !/^app:\/\/windrow\//i.test(url)).map((url) => ({ url, parent: null })),
    ];
    for (const call of DESK_CALLS) {
      for (const frame of foreign) {
        const refused = await electron.invoke(channelOf(call), [], frame);
        expect(refused).toMatchObject({ ok: false, problem: { code: 'not-allowed' } });
      }
      const large = await electron.invoke(channelOf(call), ['x'.repeat(1_000_001)]);
      expect(large).toMatchObject({ ok: false, problem: { code: 'too-large' } });
    }
    await expect(electron.invoke('desk:close', [])).rejects.toThrow('No handler');
  });

  test('17 fuzzed arguments are refused with a sentence, never thrown, and write nothing', async () => {
    await startApp();
    const looped: unknown[] = [];
    looped.push(looped);
    expect(await electron.invoke('desk:about', looped)).toMatchObject({ ok: false });
    expect(await electron.invoke('desk:about', [10n])).toMatchObject({ ok: false });
    const reading = ['about', 'readPreferences', 'listCards', 'listGames', 'notices', 'whyOnlyReading', 'listCopies'];
    const withArguments = DESK_CALLS.filter((call) => !reading.includes(call));
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...withArguments),
        fc.array(fc.anything(), { maxLength: 4 }),
        async (call, given) => {
          const result = await electron.invoke(channelOf(call), given);
          expect(result).toMatchObject({ ok: expect.any(Boolean) });
        },
      ),
      { seed: 17, numRuns: 2000 },
    );
    expect(await electron.invoke('desk:listGames', [])).toEqual({ ok: true, value: [] });
    expect(await electron.invoke('desk:listCards', [])).toMatchObject({ ok: true, value: [{ id: 'demo' }] });
  });

  test('18 pages come by our own protocol: 30 and more ways to climb out give 404', async () => {
    await startApp();
    for (const path of TRAVERSALS) {
      const reply = await electron.protocolHandler?.(new Request(`app://windrow${path}`));
      expect(reply?.status, path).toBe(404);
    }
    for (const url of ['app://evil/index.html', 'app://windrow:99/index.html', 'app:index.html']) {
      const reply = await electron.protocolHandler?.(new Request(url));
      expect(reply?.status, url).toBe(404);
    }
    const written = await electron.protocolHandler?.(new Request('app://windrow/index.html', { method: 'POST' }));
    expect(written?.status).toBe(405);
    expect(sources('main/shell')).not.toContain('file://');
  });

  test('20 the preload exposes at most 40 named functions, each of which does one thing, and nothing else', async () => {
    expect(DESK_CALLS.length).toBeLessThanOrEqual(40);
    const preload = await readFile(join(HOUSE, 'main/shell/preload.ts'), 'utf8');
    expect(preload.match(/exposeInMainWorld/g)).toHaveLength(1);
    expect(preload).not.toMatch(/ipcRenderer\.(once|send)|process\b|require/);
    expect(preload.match(/ipcRenderer\.on\(\w+/g)).toEqual(['ipcRenderer.on(BROUGHT_IN']);
  });

  test('CR-E1: what the window may ask for is a list that changes only on purpose', () => {
    expect([...DESK_CALLS].sort()).toMatchSnapshot();
  });
});

/** The screen of the stand-in for Electron. */
const AREA = { width: 1920, height: 1080 };

describe('the app', () => {
  test('CR-F7: the folder of the files is shown by the system; the page can name no other', async () => {
    await startApp();
    expect(await electron.invoke('desk:showFolder', [])).toMatchObject({ ok: true, value: true });
    expect(electron.folders).toEqual([join(base, 'desk')]);
    expect(await electron.invoke('desk:showFolder', ['/'])).toMatchObject({ ok: false });
    expect(electron.folders).toHaveLength(1);
  });

  test('CR-P8: it has a menu of its own, with a way to load the window anew and all that a field of words needs', async () => {
    await startApp();
    expect(electron.menu?.map(({ label }) => label)).toEqual(['Windrow', 'Edit', 'View']);
    for (const platform of ['linux', 'darwin', 'win32']) {
      const menu = menuTemplate({ platform, packaged: true });
      const text = JSON.stringify(menu);
      for (const role of ['quit', 'reload', 'undo', 'cut', 'copy', 'paste', 'selectAll']) {
        expect(text, `${role} on ${platform}`).toContain(`"role":"${role}"`);
      }
      expect(text).not.toContain('toggleDevTools');
      expect(text.includes('"role":"windowMenu"')).toBe(platform === 'darwin');
    }
    expect(JSON.stringify(menuTemplate({ platform: 'linux', packaged: false }))).toContain('toggleDevTools');
  });

  test('the keys of undo stay with the window, which takes back steps of the game; only macOS needs them in the menu', () => {
    const undoOf = (platform: string): unknown => {
      const edit = menuTemplate({ platform, packaged: true }).find(({ label }) => label === 'Edit');
      const parts = Array.isArray(edit?.submenu) ? edit.submenu : [];
      return parts.find(({ role }) => role === 'undo')?.registerAccelerator;
    };
    expect(['linux', 'win32', 'darwin'].map(undoOf)).toEqual([false, false, true]);
  });

  test('CR-J6: a second start ends at once and brings the first window to the front', async () => {
    await startApp();
    const second = new ElectronStub();
    second.app.alone = false;
    await startApp({ electron: second.parts() });
    expect(second).toMatchObject({ windows: [], app: { quits: 1 } });
    const [window] = electron.windows;
    if (window === undefined) throw new Error('no window was made');
    window.minimized = true;
    electron.app.emit('second-instance', {}, [], '/');
    expect(window).toMatchObject({ focused: true, minimized: false });
  });

  test('CR-J6: when another program has the folder, one sentence says so and the app ends', async () => {
    const folder = join(base, 'desk');
    const other = await openDesk({ folder, host: 'browser' });
    await startApp();
    expect(electron.errors).toEqual([
      'Windrow: Windrow is already open with this folder. Go to that window, or close it first.',
    ]);
    expect(electron).toMatchObject({ windows: [], app: { quits: 1 } });
    if (other.ok) await other.value.close();
  });

  test('the window opens where it was, unless that is off the screens, and its place is kept', async () => {
    kept = { window: { x: 50, y: 60, width: 900, height: 800, maximized: true } };
    await startApp();
    const [window] = electron.windows;
    expect(window?.options).toMatchObject({ x: 50, y: 60, width: 900, height: 800, show: false });
    expect(window?.maximized).toBe(true);
    window?.emit('ready-to-show');
    expect(window?.shown).toBe(true);
    window?.emit('close');
    expect(kept).toEqual({ window: { x: 10, y: 20, width: 1000, height: 700, maximized: true } });
  });

  test.each([
    { x: 5000, y: 60, width: 900, height: 800, maximized: false },
    { x: 50, y: -900, width: 900, height: 800, maximized: false },
    { x: 50, y: 60, width: 900, height: 1e9, maximized: false },
    { x: '50' },
    'nonsense',
  ])('a place that makes no sense (%j) is passed over', async (window) => {
    kept = { window };
    await startApp();
    expect(electron.windows[0]?.options).toMatchObject({ width: 1280, height: 860 });
    expect(electron.windows[0]?.options).not.toHaveProperty('x');
  });

  test('no window is smaller than 360 by 480', async () => {
    kept = { window: { x: 50, y: 60, width: 100, height: 100, maximized: false } };
    await startApp();
    const smallest = { minWidth: 360, minHeight: 480 };
    expect(electron.windows[0]?.options).toMatchObject({ x: 50, y: 60, width: 360, height: 480, ...smallest });
  });

  test.each([
    ['80 pixels of it lie on the screen', { x: AREA.width - 80 }, true],
    ['79 do', { x: AREA.width - 79 }, false],
    ['80 lie on it from the left', { x: 80 - 900 }, true],
    ['79 do', { x: 79 - 900 }, false],
    ['its top lies 81 above the lower edge', { y: AREA.height - 81 }, true],
    ['80 above', { y: AREA.height - 80 }, false],
    ['its top lies above the screen', { y: -1 }, false],
    ['it is 100,000 pixels wide', { width: 100_000 }, true],
    ['one more', { width: 100_001 }, false],
    ['it begins far to the left', { x: -99_900, width: 100_000 }, true],
  ])('a window opens where it was if %s: %j, %s', async (_, change, isThere) => {
    const place = { x: 50, y: 60, width: 900, height: 800, maximized: false, ...change };
    kept = { window: place };
    await startApp();
    const { maximized: __, ...bounds } = place;
    const opened = isThere ? bounds : { width: 1280, height: 860 };
    expect(electron.windows[0]?.options).toMatchObject(opened);
    expect('x' in (electron.windows[0]?.options ?? {})).toBe(isThere);
  });

  test('preferences lie with the games, written durably; the library keeps the place of the window, elsewhere', async () => {
    await startApp();
    const changed = await electron.invoke('desk:changePreferences', [{ textSize: 24 }]);
    expect(changed).toMatchObject({ ok: true, value: { textSize: 24 } });
    electron.windows[0]?.emit('close');
    const file = await readFile(join(base, 'desk', 'preferences.json'), 'utf8');
    expect(JSON.parse(file)).toEqual({ textSize: 24 });
    expect(Object.keys(kept)).toEqual(['window']);
    expect(storeOptions).toMatchObject([{ name: 'window', configFileMode: 0o600, clearInvalidConfig: true }]);
    expect(storeOptions[0]).not.toHaveProperty('cwd');
  });

  test('CR-J4: a settings file that can not be read is set aside, and told', async () => {
    await mkdir(join(base, 'desk'));
    await writeFile(join(base, 'desk', 'preferences.json'), '{"theme":');
    await startApp();
    await electron.invoke('desk:readPreferences', []);
    expect(await electron.invoke('desk:notices', [])).toMatchObject({
      value: [expect.stringContaining('preferences.json.damaged-')],
    });
  });

  test('a library that refuses its file, or its disk, costs the place of the window alone', async () => {
    const full = Object.assign(new Error('no room'), { code: 'ENOSPC' });
    const refusing = [
      () => {
        throw new SyntaxError('Unexpected token');
      },
      () => ({
        store: {},
        set: () => {
          throw full;
        },
      }),
    ];
    for (const createStore of refusing) {
      await startApp({ createStore });
      expect(electron.windows.at(-1)?.options).toMatchObject({ width: 1280, height: 860 });
      expect(() => electron.windows.at(-1)?.emit('close')).not.toThrow();
      await quitApp();
    }
    const broken = (): never => {
      throw new TypeError('a fault of ours');
    };
    await expect(startApp({ createStore: broken })).rejects.toThrow('a fault of ours');
  });

  test('CR-L1: the shell opens no port', () => {
    expect(sources('main/shell')).not.toMatch(/node:http|node:net|\.listen\(/);
  });
});
