import type { BrowserWindow, PowerMonitor } from 'electron';
import type { Result } from '../../core/base/result.ts';
import type { openDesk } from '../desk/open.ts';
import type { DeskService } from '../desk/service.ts';
import type { ElectronParts } from './electron.ts';
import { setUpCalls } from './set-up-calls.ts';
import { setUpEnd } from './set-up-end.ts';
import { setUpExports } from './set-up-exports.ts';
import { setUpNavigation, setUpPermissions } from './set-up-fences.ts';
import { setUpFiles } from './set-up-files.ts';
import { setUpLeaving } from './set-up-leaving.ts';
import { setUpMenu } from './set-up-menu.ts';
import { setUpProtocol, setUpScheme } from './set-up-protocol.ts';
import { setUpRecovery } from './set-up-recovery.ts';
import { setUpWindow } from './set-up-window.ts';
import { type PlaceStore, type PlaceStoreOptions, windowPlaceBy } from './window-place.ts';

/** The app's name to Windows, the same in the packages: its windows and its icon in the bar belong together by it. */
const APP_ID = 'windrow.desktop';

export interface ShellOptions {
  readonly electron: ElectronParts;
  /** The desk's folder. */
  readonly folder: string;
  /** The built window's folder. */
  readonly root: string;
  /** The built preload script. */
  readonly preload: string;
  readonly platform: string;
  /** What the program was started with, after its own name. */
  readonly argv: readonly string[];
  readonly openDesk: typeof openDesk;
  readonly createStore: (options: PlaceStoreOptions) => PlaceStore;
}

/** Runs the app from its start to its end. */
export async function runShell(options: ShellOptions): Promise<void> {
  const { electron, root, preload, platform } = options;
  const { app, protocol, ipcMain, menu, defaultSession } = electron;
  if (!setUpSingleInstance(electron)) return;
  app.enableSandbox();
  if (platform === 'win32') app.setAppUserModelId(APP_ID);
  setUpScheme(protocol);
  setUpNavigation(app);
  const takeFilesIn = setUpFiles(electron, options.argv);
  await app.whenReady();
  const opened = await openIn(options);
  if (!opened.ok) {
    electron.dialog.showErrorBox('Windrow', opened.problem.message);
    app.quit();
    return;
  }
  const desk = opened.value;
  setUpEnd(electron, desk);
  setUpPermissions(defaultSession());
  setUpExports(electron, defaultSession());
  setUpProtocol(protocol, root);
  setUpMenu(menu, { platform, packaged: app.isPackaged });
  setUpCalls(ipcMain, desk);
  const window = setUpWindow(electron, windowPlaceBy(options.createStore), preload);
  setUpRecovery(electron, window);
  setUpLeaving(electron, window);
  setUpSecondStart(electron, window);
  takeFilesIn({ desk, window });
}

/** False when the app runs already; this second one then ends. */
function setUpSingleInstance({ app }: ElectronParts): boolean {
  const first = app.requestSingleInstanceLock();
  if (!first) app.quit();
  return first;
}

/** A second start shows the window that is there, unless it was closed a moment ago. */
function setUpSecondStart({ app }: ElectronParts, window: BrowserWindow): void {
  app.on('second-instance', () => {
    if (window.isDestroyed()) return;
    if (window.isMinimized()) window.restore();
    window.focus();
  });
}

async function openIn({ electron, openDesk: open, folder }: ShellOptions): Promise<Result<DeskService>> {
  return await open({
    folder,
    host: 'electron',
    every: (milliseconds, call) => everyAndOnResume(electron.powerMonitor, milliseconds, call),
    showFolder: async (path) => (await electron.openFolder(path)) === '',
  });
}

/** Calls again and again, and at once when the computer wakes: another may have taken the folder meanwhile. */
function everyAndOnResume(powerMonitor: PowerMonitor, milliseconds: number, call: () => void): () => void {
  const timer = setInterval(call, milliseconds);
  timer.unref();
  powerMonitor.on('resume', call);
  return () => {
    clearInterval(timer);
    powerMonitor.off('resume', call);
  };
}
