import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { DeskService } from '../../main/desk/service.ts';
import { openDesk } from '../../main/desk/open.ts';
import { packageConfig } from '../../main/package/config.mjs';
import { type ShellOptions, runShell } from '../../main/shell/shell.ts';
import { DownloadStub, ElectronStub } from './support/electron-stub.ts';

const PAGE = 'app://windrow/index.html';
const REOPENED = 'The window stopped working, so Windrow opened it again. What you saved is there.';
const STOPPED = 'The window stopped working. What you saved is safe.';
const SILENT = 'The window does not answer. You can wait, or open it again. What you saved is safe.';
const FAILED = 'The window could not be opened. What you saved is safe.';

let base = '';
let electron = new ElectronStub();
let desk: DeskService | undefined;

beforeEach(async () => {
  base = await mkdtemp(join(tmpdir(), 'windrow-troubles-'));
  await mkdir(join(base, 'window'));
  electron = new ElectronStub();
});
afterEach(async () => {
  vi.useRealTimers();
  vi.restoreAllMocks();
  await desk?.close();
  await rm(base, { recursive: true });
});

async function openAndRemember(options: Parameters<typeof openDesk>[0]): ReturnType<typeof openDesk> {
  const opened = await openDesk(options);
  if (opened.ok) desk = opened.value;
  return opened;
}

async function startApp(changes: Partial<ShellOptions> = {}): Promise<NonNullable<(typeof electron.windows)[0]>> {
  await runShell({
    electron: electron.parts(),
    folder: join(base, 'desk'),
    root: join(base, 'window'),
    preload: '/app/preload.cjs',
    platform: 'linux',
    argv: [],
    openDesk: openAndRemember,
    createStore: () => ({ store: {}, set: () => undefined }),
    ...changes,
  });
  const [window] = electron.windows;
  if (window === undefined) throw new Error('No window was made.');
  return window;
}

/** The last window is closed, and the app is about to end; answers whether that was held back. */
function closeWindow(): boolean {
  electron.windows[0]?.destroy();
  let held = false;
  electron.app.emit('will-quit', { preventDefault: () => (held = true) });
  return held;
}

describe('the end', () => {
  test.each([
    ['hangs', async () => await new Promise<never>(() => undefined)],
    ['fails', async () => await Promise.reject(new Error('EIO'))],
  ])('the app ends in good time also when putting away %s', async (how, close) => {
    await startApp({
      openDesk: async (options) => {
        const opened = await openAndRemember(options);
        return opened.ok ? { ok: true, value: { ...opened.value, close } } : opened;
      },
    });
    vi.useFakeTimers({ toFake: ['setTimeout'] });
    expect(closeWindow()).toBe(true);
    await vi.advanceTimersByTimeAsync(4_999);
    expect(electron.app.quits).toBe(how === 'hangs' ? 0 : 1);
    await vi.advanceTimersByTimeAsync(1);
    expect(electron.app.quits).toBe(1);
    expect(closeWindow()).toBe(false);
  });

  test('a second start while the first one closes asks nothing of a window that is gone', async () => {
    const window = await startApp();
    window.destroy();
    expect(() => electron.app.emit('second-instance', {}, [], '/')).not.toThrow();
    expect(window.focused).toBe(false);
  });
});

describe('a page that is gone', () => {
  test('is opened again by itself once, and that is said; soon after, the person is asked', async () => {
    const window = await startApp();
    window.webContents.end('crashed');
    await expect.poll(() => electron.messages).toEqual([REOPENED]);
    expect(window.loaded).toEqual([PAGE, PAGE]);
    window.webContents.end('oom');
    await expect.poll(() => window.loaded).toHaveLength(3);
    expect(electron.messages).toEqual([REOPENED, STOPPED]);
    electron.press = () => 1;
    window.webContents.end('crashed');
    await expect.poll(() => electron.app.quits).toBe(1);
    expect(window.loaded).toHaveLength(3);
  });

  test('is opened by itself again when it had worked for a minute', async () => {
    const clock = vi.spyOn(performance, 'now').mockReturnValue(1_000);
    const window = await startApp();
    window.webContents.end('crashed');
    await expect.poll(() => electron.messages).toHaveLength(1);
    clock.mockReturnValue(61_000);
    window.webContents.end('crashed');
    await expect.poll(() => electron.messages).toEqual([REOPENED, REOPENED]);
    clock.mockReturnValue(120_999);
    window.webContents.end('crashed');
    await expect.poll(() => electron.messages).toEqual([REOPENED, REOPENED, STOPPED]);
  });

  test('is opened once the box is closed, when it stops while a box is open', async () => {
    const window = await startApp();
    let close = (_button: number): void => undefined;
    electron.press = async () => await new Promise((done) => (close = done));
    window.webContents.end('crashed');
    await expect.poll(() => electron.messages).toHaveLength(1);
    window.webContents.end('crashed');
    expect(window.loaded).toHaveLength(2);
    close(0);
    await expect.poll(() => window.loaded).toHaveLength(3);
    expect(electron.messages).toEqual([REOPENED]);
  });

  test('is left alone when it ended as it should, or its window was closed', async () => {
    const window = await startApp();
    window.webContents.end('clean-exit');
    window.destroy();
    window.webContents.end('crashed');
    electron.app.emit('child-process-gone', {}, { type: 'GPU', reason: 'crashed' });
    expect([window.loaded, electron.messages, window.webContents.repaints]).toEqual([[PAGE], [], 0]);
  });

  test('that could not be loaded at all is shown with a question; a loading given up is nothing', async () => {
    const window = await startApp();
    window.webContents.emit('did-fail-load', {}, -3, 'ERR_ABORTED', PAGE, true);
    window.webContents.emit('did-fail-load', {}, -2, 'ERR_FAILED', 'app://windrow/frame.html', false);
    expect(electron.messages).toEqual([]);
    window.webContents.emit('did-fail-load', {}, -2, 'ERR_FAILED', PAGE, true);
    await expect.poll(() => window.loaded).toHaveLength(2);
    expect([window.shown, electron.messages]).toEqual([true, [FAILED]]);
  });

  test('the picture is drawn anew when a helper of the system is gone', async () => {
    const window = await startApp();
    electron.app.emit('child-process-gone', {}, { type: 'GPU', reason: 'crashed' });
    expect(window.webContents.repaints).toBe(1);
  });
});

describe('a page that does not answer', () => {
  test('is waited for, or ended and opened again, as the person chooses', async () => {
    const window = await startApp();
    window.emit('unresponsive');
    await expect.poll(() => electron.messages).toEqual([SILENT]);
    expect(window.loaded).toHaveLength(1);
    electron.press = () => 1;
    window.emit('unresponsive');
    await expect.poll(() => window.loaded).toHaveLength(2);
    expect(electron.messages).toEqual([SILENT, SILENT]);
  });

  test('the question goes away when the page answers again', async () => {
    const window = await startApp();
    electron.press = async () => await new Promise<never>(() => undefined);
    window.emit('unresponsive');
    window.emit('unresponsive');
    await expect.poll(() => electron.messages).toEqual([SILENT]);
    window.emit('responsive');
    await expect.poll(() => window.listenerCount('responsive')).toBe(0);
    electron.press = () => 0;
    await expect
      .poll(() => {
        window.emit('unresponsive');
        return electron.messages.length;
      })
      .toBe(2);
    expect(window.loaded).toHaveLength(1);
  });
});

describe('files that the page gives out', () => {
  test('pass the fence, and the system asks where each goes', async () => {
    await startApp();
    expect(electron.session.loads('blob:app://windrow/0d9a')).toBe(true);
    const item = new DownloadStub('blob:app://windrow/0d9a');
    let stopped = false;
    electron.session.emit('will-download', { preventDefault: () => (stopped = true) }, item);
    expect(stopped).toBe(false);
    expect(item.options?.defaultPath).toBe('spring.card.json');
    item.emit('done', {}, 'completed');
    expect(electron.errors).toEqual([]);
  });

  test('are told of when they could not be written; one that the person gave up is not', async () => {
    await startApp();
    for (const state of ['cancelled', 'interrupted']) {
      const item = new DownloadStub('blob:app://windrow/0d9a');
      electron.session.emit('will-download', { preventDefault: () => undefined }, item);
      item.emit('done', {}, state);
    }
    expect(electron.errors).toEqual([
      'Windrow: spring.card.json could not be saved there. Make room on the disk, or choose another place.',
    ]);
  });

  test.each(['https://evil.example/a.exe', 'blob:https://evil.example/1', 'blob:app://windrow.evil/1', 'data:,x'])(
    'of another origin are saved nowhere: %s',
    async (url) => {
      await startApp();
      expect(electron.session.loads(url)).toBe(false);
      let stopped = false;
      electron.session.emit('will-download', { preventDefault: () => (stopped = true) }, new DownloadStub(url));
      expect(stopped).toBe(true);
    },
  );
});

test('when the computer wakes, the lock is looked at at once: another copy that is gone again by the first save is known', async () => {
  await startApp();
  const lock = join(base, 'desk', 'in-use.json');
  const ours = await readFile(lock, 'utf8');
  await writeFile(lock, '{"mark":"another","process":1,"computer":"elsewhere"}');
  electron.powerMonitor.emit('resume');
  await electron.invoke('desk:about', []);
  await writeFile(lock, ours);
  expect(await electron.invoke('desk:changePreferences', [{ theme: 'dark' }])).toMatchObject({
    ok: false,
    problem: { code: 'in-use' },
  });
});

test('what the desk does from time to time it also does on waking, until it is closed', async () => {
  let done = 0;
  let stop: (() => void) | undefined;
  await startApp({
    openDesk: async (options) => {
      stop = options.every?.(60_000, () => (done += 1));
      return await openAndRemember(options);
    },
  });
  electron.powerMonitor.emit('resume');
  expect(done).toBe(1);
  stop?.();
  electron.powerMonitor.emit('resume');
  expect(done).toBe(1);
});

test('a page with unsaved steps keeps its window until the person says that they may be lost', async () => {
  const window = await startApp();
  const contents = window.webContents;
  expect(contents.stops('will-prevent-unload', PAGE)).toBe(false);
  expect(electron.messages).toEqual(['Your last steps are not saved yet. If you go on now, they are lost.']);
  electron.leaves = true;
  expect(contents.stops('will-prevent-unload', PAGE)).toBe(true);
});

test('Windows gets the name under which the packages put the app', async () => {
  await startApp({ platform: 'win32' });
  const { appId } = packageConfig({ app: '', output: '', icons: '', electronVersion: '45.4.1' });
  expect(electron.app.userModelId).toBe(appId);
});
