import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { DeskService } from '../../main/desk/service.ts';
import { openDesk } from '../../main/desk/open.ts';
import { packageConfig } from '../../main/package/config.mjs';
import { type ShellOptions, runShell } from '../../main/shell/shell.ts';
import { DownloadStub, ElectronStub } from './support/electron-stub.ts';

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
  ])('the app ends in good time also when putting away %s', async (_how, close) => {
    await startApp({
      openDesk: async (options) => {
        const opened = await openAndRemember(options);
        return opened.ok ? { ok: true, value: { ...opened.value, close } } : opened;
      },
    });
    vi.useFakeTimers({ toFake: ['setTimeout'] });
    expect(closeWindow()).toBe(true);
    await vi.advanceTimersByTimeAsync(6_000);
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

test('Windows gets the name under which the packages put the app', async () => {
  await startApp({ platform: 'win32' });
  const { appId } = packageConfig({ app: '', output: '', icons: '', electronVersion: '45.4.1' });
  expect(electron.app.userModelId).toBe(appId);
});
